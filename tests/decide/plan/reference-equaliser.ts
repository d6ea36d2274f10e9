/**
 * An equaliser fitted another way: Nelder and Mead's simplex (Computer Journal 7:308, 1965, standard coefficients,
 * from memory) from many random starts, for every choice of kinds, levels from biquad coefficients.
 */
import type { EqualiserLimits } from '../../../src/decide/plan/index.ts';
import type { RandomStream } from '../../../src/demo/random.ts';
import { type Biquad, biquadOf, type Filter, type FilterKind } from '../../../src/measure/index.ts';

const rate = 48_000;

/** The least root of the mean square that is found, dB, the overall level being free. */
export function referenceRms(
  frequencies: readonly number[],
  errorDb: readonly number[],
  limits: EqualiserLimits,
  random: RandomStream,
  startsEach: number,
): number {
  const phis = frequencies.map((hz) => Math.sin((Math.PI * hz) / rate) ** 2);
  const found: { cost: Cost; end: Corner }[] = [];
  for (const kinds of choices(limits)) {
    const bounds = kinds.flatMap((kind) => [
      limits.hz.map(Math.log),
      kind === 'high-pass' ? [0, 0] : limits.gainDb,
      (kind === 'peaking' ? limits.q : [0.4, 1]).map(Math.log),
    ]);
    const cost: Cost = (place) => {
      const set = place.map((one, index) => {
        const [low = 0, high = 0] = bounds[index] ?? [];
        return low + (high - low) * Math.min(1, Math.max(0, one));
      });
      const biquads = kinds.map((kind, index): Biquad => {
        const [lnHz = 0, gainDb = 0, lnQ = 0] = set.slice(3 * index, 3 * index + 3);
        const filter: Filter = { kind, hz: Math.exp(lnHz), gainDb, q: Math.exp(lnQ) };
        return biquadOf(filter, rate);
      });
      return spread(phis, errorDb, biquads) + outside(place);
    };
    for (let start = 0; start < startsEach; start += 1) {
      const from = kinds.flatMap(() => [0, 0, 0].map(() => random.uniform(0, 1)));
      found.push({ cost, end: simplex(cost, from, 400) });
    }
  }
  // The most promising go on, each simplex spread anew where the last one came to rest.
  found.sort((a, b) => a.end.cost - b.end.cost);
  const ends = found.slice(0, 5).map(({ cost, end }) => {
    let best = end;
    for (let round = 0; round < 3; round += 1) best = simplex(cost, best.at, 1500);
    return best.cost;
  });
  return Math.min(...ends);
}

type Cost = (at: readonly number[]) => number;
interface Corner {
  readonly at: readonly number[];
  readonly cost: number;
}

/** Peaking filters, with or without one each of the others. */
function choices({ kinds, mostFilters }: EqualiserLimits): FilterKind[][] {
  const others = kinds.filter((kind) => kind !== 'peaking');
  let subsets: FilterKind[][] = [[]];
  for (const kind of others) subsets = [...subsets, ...subsets.map((one) => [...one, kind])];
  return subsets
    .filter((one) => one.length <= mostFilters)
    .map((one) => [...one, ...Array.from({ length: mostFilters - one.length }, () => 'peaking' as const)]);
}

function spread(phis: readonly number[], errorDb: readonly number[], biquads: readonly Biquad[]): number {
  let [sum, squares] = [0, 0];
  for (let index = 0; index < phis.length; index += 1) {
    const phi = phis[index] ?? 0;
    let ratio = 1;
    for (const { b, a } of biquads) ratio *= square(b, phi) / square(a, phi);
    const level = (errorDb[index] ?? 0) + 10 * Math.log10(ratio);
    sum += level;
    squares += level * level;
  }
  const mean = sum / phis.length;
  return Math.sqrt(Math.max(0, squares / phis.length - mean * mean));
}

function square(c: readonly [number, number, number], phi: number): number {
  const at0 = c[0] + c[1] + c[2];
  return at0 * at0 - 4 * (c[0] * c[1] + 4 * c[0] * c[2] + c[1] * c[2]) * phi + 16 * c[0] * c[2] * phi * phi;
}

/** A slope back into the box. */
function outside(place: readonly number[]): number {
  return place.reduce((sum, one) => sum + 10 * (Math.max(0, -one) + Math.max(0, one - 1)), 0);
}

function simplex(cost: Cost, start: readonly number[], steps: number): Corner {
  const corner = (at: readonly number[]): Corner => ({ at, cost: cost(at) });
  const corners = [
    start,
    ...start.map((one, index) => start.with(index, one + (one > 0.5 ? -0.2 : 0.2))),
  ].map(corner);
  for (let step = 0; step < steps; step += 1) {
    corners.sort((a, b) => a.cost - b.cost);
    const [best, worst] = [corners[0], corners.at(-1)];
    if (!best || !worst || worst.cost - best.cost < 1e-5) break;
    const rest = corners.slice(0, -1);
    const centre = start.map(
      (_, index) => rest.reduce((sum, { at }) => sum + (at[index] ?? 0), 0) / rest.length,
    );
    const along = (by: number) =>
      corner(centre.map((one, index) => one + by * ((worst.at[index] ?? 0) - one)));
    const mirrored = along(-1);
    let next = mirrored;
    if (mirrored.cost < best.cost) {
      const further = along(-2);
      if (further.cost < mirrored.cost) next = further;
    } else if (mirrored.cost >= (rest.at(-1)?.cost ?? 0)) {
      next = along(mirrored.cost < worst.cost ? -0.5 : 0.5);
      if (next.cost >= Math.min(mirrored.cost, worst.cost)) {
        for (let index = 1; index < corners.length; index += 1) {
          corners[index] = corner(best.at.map((one, place) => (one + (corners[index]?.at[place] ?? 0)) / 2));
        }
        continue;
      }
    }
    corners[corners.length - 1] = next;
  }
  return corners.reduce((best, one) => (one.cost < best.cost ? one : best));
}
