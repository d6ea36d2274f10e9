/** Equaliser settings against another optimiser, over many responses. */
import { test } from 'vitest';
import { expectNearReference, worseThanReference } from '../decide/plan/random-responses.ts';

// 1000 in all, by the hundred: on a busy machine one test would run into its time limit.
test.each([50_000, 50_100, 50_200, 50_300, 50_400, 50_500, 50_600, 50_700, 50_800, 50_900])(
  '100 random responses from seed %i: within 0.05 dB of the best of many random starts of Nelder and Mead',
  (seed) => {
    expectNearReference(worseThanReference(100, seed, 8));
  },
);
