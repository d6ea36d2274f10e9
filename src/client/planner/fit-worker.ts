/** Fits an equaliser’s filters beside the page, so that the page goes on answering while it takes its time. */
import type { Correctable } from '../../decide/plan/equaliser/correction.ts';
import { usualCorrection } from '../../decide/plan/equaliser/usual.ts';
import { plainCorrection } from './plain-correction.ts';

self.addEventListener('message', ({ data }: MessageEvent<Correctable>) => {
  self.postMessage(plainCorrection(usualCorrection(data)));
});
