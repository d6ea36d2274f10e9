/** Keys of the walk. They work while the focus is within it, and are never taken from a field. */

const fields = 'input, textarea, select, [contenteditable]';

/** `screen` is the one shown; `back` goes back. */
export function bindKeys(root: HTMLElement, screen: () => HTMLElement | undefined, back: () => void): void {
  root.addEventListener('keydown', (event) => {
    const { target, key } = event;
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    if (!(target instanceof Element) || target.closest(fields)) return;
    const shown = screen();
    if (!shown) return;
    const done = act(key, target, shown, back, event.repeat);
    if (done) event.preventDefault();
  });
}

/** Whether the key was for the walk. A key held down goes on once, not step after step. */
function act(key: string, target: Element, shown: HTMLElement, back: () => void, isRepeat: boolean): boolean {
  const control = target.closest<HTMLElement>('a, button, summary');
  if (key === 'Enter' || key === ' ') {
    // A button and a summary know both keys, a link only the first.
    if (control && (key === 'Enter' || !(control instanceof HTMLAnchorElement))) return isRepeat;
    if (!isRepeat) press(control ?? firstShown(shown, '[data-primary]'));
    return true;
  }
  if (isRepeat) return false;
  if (key === 'Escape' || key === 'Backspace') {
    back();
    return true;
  }
  if (key === 'x' || key === 'X') return press(firstShown(shown, '[data-other]'));
  if (/^[1-9]$/.test(key)) {
    return press(shown.querySelectorAll<HTMLElement>('.walk-choices a')[Number(key) - 1]);
  }
  return false;
}

function press(control: HTMLElement | undefined): boolean {
  control?.click();
  return control !== undefined;
}

function firstShown(within: HTMLElement, selector: string): HTMLElement | undefined {
  return [...within.querySelectorAll<HTMLElement>(selector)].find((one) => !one.hidden);
}
