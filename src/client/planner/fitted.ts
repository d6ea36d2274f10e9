/** The equaliser’s settings for a profile, fitted once: they depend on nothing else. */
import { type Correction, corrected } from '../../decide/plan/equaliser/corrected.ts';
import type { Settings } from '../../decide/plan/equaliser/settings.ts';
import { toCorrect } from '../../decide/plan/equaliser/to-correct.ts';
import type { Wrong } from '../../decide/plan/equaliser/wrong.ts';
import type { Refusal } from '../../decide/plan/line.ts';
import type { ProfileOutput } from '../../measure/quantity.ts';

type Fitted = Correction | Refusal;

let kept: { readonly profile: string; readonly fitted: Promise<Fitted> } | undefined;

/** In a worker, or on the page where the browser has none. */
export function fittedCorrection(output: ProfileOutput): Promise<Fitted> {
  if (kept?.profile !== output.profile) kept = { profile: output.profile, fitted: fitted(output) };
  return kept.fitted;
}

async function fitted(output: ProfileOutput): Promise<Fitted> {
  const asked = toCorrect(output);
  if ('refused' in asked) return asked;
  return corrected(asked, await inWorker(asked.wrong).catch(() => onPage(asked.wrong)));
}

function inWorker(wrong: Wrong): Promise<Settings> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./fit-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<Settings>) => {
      worker.terminate();
      resolve(data);
    });
    worker.addEventListener('error', () => {
      worker.terminate();
      reject(new Error('the worker cannot run'));
    });
    worker.postMessage(wrong);
  });
}

async function onPage(wrong: Wrong): Promise<Settings> {
  const { fitHere } = await import('./fit-here.ts');
  return fitHere(wrong);
}
