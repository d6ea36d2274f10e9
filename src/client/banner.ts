/** The line at the foot of the window that says how old a page is. */

/** What the rider may do about it. */
export interface Offer {
  readonly text: string;
  readonly act: () => void;
}

let banner: HTMLElement | undefined;

/** Shows a sentence and, where there is one, an offer; it lies over the page, so nothing moves under a thumb. */
export function showBanner(sentence: string, offer?: Offer): void {
  if (!banner) {
    banner = document.createElement('div');
    banner.className = 'banner';
    const line = document.createElement('p');
    line.setAttribute('role', 'status');
    banner.append(line);
    document.body.append(banner);
  }
  banner.querySelector('button')?.remove();
  const line = banner.querySelector('p');
  // Words that come into an element already there are read out.
  requestAnimationFrame(() => {
    if (line) line.textContent = sentence;
  });
  if (!offer) return;
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'button';
  button.textContent = offer.text;
  button.addEventListener('click', () => {
    button.disabled = true;
    offer.act();
  });
  banner.append(button);
}

export function hideBanner(): void {
  banner?.remove();
  banner = undefined;
}
