/**
 * The guided walk: shows one screen at a time. Every answer is a link to another screen’s fragment, so that
 * the address holds the state, and the browser’s own back button and a reload keep it.
 */

import { keepAwake } from './wake-lock.ts';
import { bindKeys } from './walk-keys.ts';
import { part } from './walk-parts.ts';
import { bindSpeech } from './walk-speech.ts';
import { bindTimer, type StepTimer } from './walk-timer.ts';

/** What the browser remembers with each entry of its history. */
interface Kept {
  /** How many screens of this walk lie before it. */
  readonly depth: number;
  readonly startedAt?: number | undefined;
}

function walk(root: HTMLElement): void {
  const screens = new Map(
    [...root.querySelectorAll<HTMLElement>('.walk-screen')].map((screen) => [screen.id, screen]),
  );
  const first = [...screens.values()][0];
  if (!first) return;
  const live = part(root, '[data-live]', HTMLElement);
  const awake = part(root, '[data-awake]', HTMLElement);
  const timers = new Map<HTMLElement, StepTimer>();
  let shown: HTMLElement | undefined;
  let depth = 0;

  const say = bindSpeech(part(root, '[data-speak]', HTMLButtonElement), () => spokenText(shown));
  const setAwake = keepAwake((isAwake) => {
    awake.hidden = !isAwake;
  });
  const keep = (kept: Kept): void => window.history.replaceState(kept, '');

  const timerOf = (screen: HTMLElement): StepTimer | undefined => {
    const element = screen.querySelector<HTMLElement>('.timer');
    if (!element) return undefined;
    const known = timers.get(element);
    if (known) return known;
    const timer = bindTimer(element, {
      tell: (words) => {
        live.textContent = words;
        say(words);
      },
      keep: (startedAt) => keep({ depth, startedAt }),
    });
    timers.set(element, timer);
    return timer;
  };

  const show = (moved: boolean): void => {
    const screen = screens.get(decodeURIComponent(window.location.hash.slice(1))) ?? first;
    const kept = keptState();
    depth = kept?.depth ?? (shown ? depth + 1 : 0);
    if (!kept) keep({ depth });
    if (shown) timerOf(shown)?.leave();
    for (const one of screens.values()) one.hidden = one !== screen;
    shown = screen;
    setAwake(screen !== first);
    live.textContent = screen.querySelector('.walk-progress')?.textContent ?? '';
    if (moved) {
      root.scrollIntoView();
      screen.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true });
      say(spokenText(screen));
    }
    timerOf(screen)?.resume(kept?.startedAt);
  };

  const back = (): void => {
    if (depth > 0) {
      window.history.back();
      return;
    }
    // Opened in the middle: the page itself knows what lies before.
    const link = shown?.querySelector<HTMLAnchorElement>('[data-back]');
    if (link) window.location.replace(link.hash);
  };

  root.hidden = false;
  root.addEventListener('click', (event) => {
    if (!(event.target instanceof Element) || !event.target.closest('[data-back]')) return;
    event.preventDefault();
    back();
  });
  bindKeys(root, () => shown, back);
  window.addEventListener('hashchange', () => {
    // A fragment elsewhere on the page is none of ours.
    if (window.location.hash === '' || screens.has(window.location.hash.slice(1))) show(true);
  });
  show(screens.has(window.location.hash.slice(1)));
}

function keptState(): Kept | undefined {
  const state: unknown = window.history.state;
  if (typeof state !== 'object' || state === null || !('depth' in state)) return undefined;
  const startedAt = 'startedAt' in state ? state.startedAt : undefined;
  return {
    depth: Number(state.depth),
    startedAt: typeof startedAt === 'number' ? startedAt : undefined,
  };
}

/** What is read aloud of a screen: everything but the answers and the count. */
function spokenText(screen: HTMLElement | undefined): string {
  const parts = screen?.querySelectorAll(
    '.walk-progress, h2, .cautions li, .walk-here, .walk-facts div, .walk-see .label, .walk-see p:not(.label), .walk-see li, .walk-choices li',
  );
  return [...(parts ?? [])]
    .map((one) => (one.textContent ?? '').replace(/\s+/g, ' ').trim())
    .map((text) => (/[.:?!]$/.test(text) ? text : `${text}.`))
    .join(' ');
}

function bindPrint(button: HTMLElement): void {
  button.hidden = false;
  button.addEventListener('click', () => window.print());
}

const root = document.querySelector<HTMLElement>('.walk');
const printButton = document.querySelector<HTMLElement>('[data-print]');
if (root) {
  document.documentElement.classList.add('walking');
  walk(root);
}
if (printButton) bindPrint(printButton);
