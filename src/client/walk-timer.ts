/** Runs the count of a step: start, phases, words. What it says comes from src/walk/timer.ts. */
import { phaseAt, type TimerPhase, type Timing, timerWords } from '../walk/timer.ts';
import { part } from './walk-parts.ts';

export interface StepTimer {
  /** Goes on with a count begun earlier, or begins where the step counts by itself. */
  readonly resume: (startedAt: number | undefined) => void;
  /** Stops without a word, when the step is left. */
  readonly leave: () => void;
}

export interface TimerEvents {
  /** A phase has begun: its words, once. */
  readonly tell: (words: string) => void;
  /** The count began or begins at this time, or was taken back. */
  readonly keep: (startedAt: number | undefined) => void;
}

const tickMs = 200;
const leadMs = 5000;

/** Binds a timer’s element. */
export function bindTimer(root: HTMLElement, { tell, keep }: TimerEvents): StepTimer {
  const timing = timingIn(root);
  const count = part(root, '.timer-count', HTMLElement);
  const words = part(root, '.timer-words', HTMLElement);
  const fill = part(root, '.timer-bar span', HTMLElement);
  const startButton = part(root, '[data-start]', HTMLButtonElement);
  const leadButton = root.querySelector<HTMLButtonElement>('[data-lead]');
  const anewButton = part(root, '[data-anew]', HTMLButtonElement);
  const again = part(root, '[data-over]', HTMLAnchorElement);
  const hint = words.textContent ?? '';
  const leastShare = timing.mostSeconds > 0 ? Math.min(1, timing.leastSeconds / timing.mostSeconds) : 0;
  root.style.setProperty('--least', `${100 * leastShare}%`);

  let interval: number | undefined;
  let phase: TimerPhase | undefined;

  const show = (now: TimerPhase | undefined, seconds: number): void => {
    const isRunning = now !== undefined;
    root.setAttribute('data-phase', now ?? 'ready');
    startButton.hidden = isRunning;
    if (leadButton) leadButton.hidden = isRunning;
    anewButton.hidden = !isRunning;
    again.hidden = now !== 'over';
    count.textContent = String(now === 'lead' ? Math.ceil(-seconds) : Math.floor(seconds));
    const share = timing.mostSeconds > 0 ? Math.max(0, seconds) / timing.mostSeconds : 1;
    fill.style.width = `${100 * Math.min(1, share)}%`;
    if (now === phase) return;
    phase = now;
    words.textContent = now ? timerWords(timing, now) : hint;
    if (now) tell(words.textContent);
  };
  const stop = (): void => {
    window.clearInterval(interval);
    interval = undefined;
  };
  const run = (startedAt: number): void => {
    stop();
    const tick = (): void => {
      const seconds = (Date.now() - startedAt) / 1000;
      const now = phaseAt(timing, seconds);
      // Left in a pocket, it would otherwise count for hours.
      show(now, now === 'over' ? Math.min(seconds, timing.mostSeconds) : seconds);
      if (now === 'over') stop();
    };
    interval = window.setInterval(tick, tickMs);
    tick();
  };
  const begin = (delayMs: number): void => {
    const startedAt = Date.now() + delayMs;
    keep(startedAt);
    run(startedAt);
  };

  startButton.addEventListener('click', () => begin(0));
  leadButton?.addEventListener('click', () => begin(leadMs));
  anewButton.addEventListener('click', () => {
    stop();
    keep(undefined);
    show(undefined, 0);
    startButton.focus();
  });

  return {
    resume: (startedAt) => {
      if (startedAt !== undefined) run(startedAt);
      else if (timing.kind === 'wait') begin(0);
      else show(undefined, 0);
    },
    leave: () => {
      stop();
      phase = undefined;
    },
  };
}

function timingIn({ dataset }: HTMLElement): Timing {
  const { kind, least, most, end } = dataset;
  return {
    kind: kind === 'wait' ? 'wait' : 'hold',
    leastSeconds: Number(least),
    mostSeconds: Number(most),
    end: isMoment(end) ? end : 'screen-changes',
  };
}

function isMoment(text: string | undefined): text is Timing['end'] {
  return (
    text === 'with-ignition' ||
    text === 'prompt-shown' ||
    text === 'prompt-gone' ||
    text === 'screen-changes' ||
    text === 'any-time'
  );
}
