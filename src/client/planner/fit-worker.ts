/** Fits an equaliser’s filters beside the page, so that the page goes on answering while it takes its time. */
import type { Wrong } from '../../decide/plan/equaliser/curve.ts';
import { fitFilters } from '../../decide/plan/equaliser/fit.ts';
import { usualEqualiser } from '../../decide/plan/equaliser/limits.ts';

self.addEventListener('message', ({ data }: MessageEvent<Wrong>) => {
  self.postMessage(fitFilters(data, usualEqualiser));
});
