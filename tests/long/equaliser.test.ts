/** Equaliser settings against another optimiser, over many responses. */
import { test } from 'vitest';
import { expectNearReference, worseThanReference } from '../decide/plan/random-responses.ts';

test('1000 random responses: within 0.05 dB of the best of many random starts of Nelder and Mead', () => {
  expectNearReference(worseThanReference(1000, 50_000, 12));
});
