/** Responses made of filters drawn at random, with the scatter of a bench. */

import { expect } from 'vitest';
import { togetherDb } from '../../../src/decide/plan/equaliser/curve.ts';
import { fitFilters } from '../../../src/decide/plan/equaliser/fit.ts';
import { gridOf, levelled } from '../../../src/decide/plan/equaliser/wrong.ts';
import type { EqualiserLimits } from '../../../src/decide/plan/index.ts';
import { type RandomStream, randomStream } from '../../../src/demo/random.ts';
import { exactCentre, type Filter, filterKinds } from '../../../src/measure/index.ts';
import { referenceRms } from './reference-equaliser.ts';

/** Third octaves from 20 Hz to 20 kHz. */
export const thirds = Array.from({ length: 31 }, (_, index) => exactCentre(index - 17));

export const equaliser: EqualiserLimits = {
  mostFilters: 3,
  kinds: filterKinds,
  hz: [20, 20_000],
  gainDb: [-12, 12],
  q: [0.4, 8],
};

export function randomFilter(random: RandomStream): Filter {
  const kind = (['peaking', 'peaking', 'peaking', 'low-shelf', 'high-shelf'] as const)[
    Math.floor(random.uniform(0, 5))
  ];
  const isPeak = kind === 'peaking' || kind === undefined;
  return {
    kind: kind ?? 'peaking',
    hz: 30 * 10 ** random.uniform(0, 2.5),
    gainDb: random.uniform(-9, 9),
    q: isPeak ? random.uniform(0.5, 5) : Math.SQRT1_2,
  };
}

/** Fits `count` responses of 2 to 6 filters with 0.2 dB of scatter both ways; gives by how much ours is worse, dB. */
export function worseThanReference(count: number, seed: number, startsEach: number): number[] {
  return Array.from({ length: count }, (_, index) => {
    const random = randomStream(seed + index, 'equaliser');
    const made = Array.from({ length: Math.floor(random.uniform(2, 7)) }, () => randomFilter(random));
    const grid = gridOf(thirds);
    const errorDb = togetherDb(made, grid).map((level) => level + 0.2 * random.gaussian());
    const curve = togetherDb(fitFilters({ grid, errorDb }, equaliser), grid);
    const left = levelled(errorDb.map((level, at) => level + (curve[at] ?? 0)));
    const ours = Math.sqrt(left.reduce((sum, one) => sum + one * one, 0) / left.length);
    return ours - referenceRms(thirds, errorDb, equaliser, random, startsEach);
  });
}

/** Every one within 0.05 dB of the best the reference finds. */
export function expectNearReference(worse: readonly number[]): void {
  const over = worse.filter((one) => one > 0.05);
  expect(over, `of ${worse.length}`).toEqual([]);
}
