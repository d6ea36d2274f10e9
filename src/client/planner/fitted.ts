/** The equaliser’s settings for a profile, fitted once: they depend on nothing else. */
import type { Correctable, Correction } from '../../decide/plan/equaliser/correction.ts';
import type { Refusal } from '../../decide/plan/line.ts';
import type { ProfileOutput } from '../../measure/quantity.ts';

type Fitted = Correction | Refusal;

let kept: { readonly profile: string; readonly fitted: Promise<Fitted> } | undefined;

/** In a worker, or on the page where the browser has none. */
export function fittedCorrection(output: ProfileOutput): Promise<Fitted> {
  if (kept?.profile === output.profile) return kept.fitted;
  const { responses, boostBehaviour, characteristics } = output;
  const asked: Correctable = { responses, boostBehaviour, characteristics };
  const fitted = inWorker(asked).catch(() => onPage(asked));
  kept = { profile: output.profile, fitted };
  return fitted;
}

function inWorker(asked: Correctable): Promise<Fitted> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./fit-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<Fitted>) => {
      worker.terminate();
      resolve(data);
    });
    worker.addEventListener('error', () => {
      worker.terminate();
      reject(new Error('the worker cannot run'));
    });
    worker.postMessage(asked);
  });
}

async function onPage(asked: Correctable): Promise<Fitted> {
  const { usualCorrection } = await import('../../decide/plan/equaliser/usual.ts');
  return usualCorrection(asked);
}
