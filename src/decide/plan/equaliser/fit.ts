/** Filters that bring a response to a target: found by least squares from many starts. */
import type { Filter, FilterKind } from '../../../measure/index.ts';
import { add, boundsOf, curveDb, filterOf, type Setting, togetherDb } from './curve.ts';
import { descend, squares } from './least-squares.ts';
import type { EqualiserLimits } from './limits.ts';
import { levelled, type Wrong } from './wrong.ts';

interface Placed {
  readonly kind: FilterKind;
  readonly setting: Readonly<Setting>;
}

interface Candidate {
  readonly filters: readonly Placed[];
  readonly cost: number;
}

/** How many of the best part-built sets are built on: more find better sets, and take longer. */
const beam = 3;
/** How many of the places tried for one more filter are followed up. */
const promising = 5;
/** Below this largest error more filters are not worth their setting, dB. */
const goodEnoughDb = 0.02;

/**
 * The filters that leave the least sum of squared errors, the overall level being free. Sets are built up one filter
 * at a time from the best ones so far, each new filter tried at several places; full sets from starts scattered over
 * all settings join them; then each filter of the best sets is taken out and placed anew, until nothing gets better.
 * The same response always gives the same filters.
 */
export function fitFilters(wrong: Wrong, limits: EqualiserLimits): Filter[] {
  let best: Candidate[] = [{ filters: [], cost: squares(levelled(wrong.errorDb)) }];
  const goodEnough = goodEnoughDb ** 2;
  const most = Math.min(limits.mostFilters, Math.floor((wrong.grid.frequencies.length - 1) / 3));
  for (let count = 0; count < most && (best[0]?.cost ?? 0) > goodEnough; count += 1) {
    const grown = best.flatMap(({ filters }) => extended(wrong, limits, filters));
    best = theBest([...best, ...grown]);
  }
  const scattered =
    (best[0]?.cost ?? 0) > goodEnough ? theBest(scatteredSets(wrong, limits, most), mostScattered) : [];
  const settled = [...best, ...scattered].map(({ filters }) => refined(wrong, limits, filters, 200));
  const improved = theBest(settled)
    .slice(0, 2)
    .map((one) => replaced(wrong, limits, one));
  const [first] = theBest(improved);
  return (first?.filters ?? []).map(({ kind, setting }) => filterOf(kind, setting));
}

/** How many starts each choice of kinds gets. */
const startsEach = 24;

/** How many of the scattered sets are carried on to the end: a few rounds do not show yet which of them ends lowest. */
const mostScattered = 16;

/**
 * Full sets from starts scattered over all settings, for every choice of kinds: what building up one filter at a time
 * does not come by. The places follow Kronecker's sequence by powers of the root of x^(d+1) = x + 1 (after Roberts,
 * from memory): evenly spread, and always the same.
 */
function scatteredSets(wrong: Wrong, limits: EqualiserLimits, count: number): Candidate[] {
  const root = generalGoldenRatio(3 * count);
  return choices(limits.kinds, count).flatMap((kinds, choice) =>
    Array.from({ length: startsEach }, (_, start) => {
      const filters = kinds.map((kind, index): Placed => {
        const setting = boundsOf(kind, limits).map(([least, most], variable) => {
          const along = (0.5 + (choice * startsEach + start + 1) * root ** -(3 * index + variable + 1)) % 1;
          return least + along * (most - least);
        });
        return { kind, setting: settingAt(setting, 0) };
      });
      return refined(wrong, limits, filters, 10);
    }),
  );
}

function generalGoldenRatio(dimensions: number): number {
  let root = 1;
  for (let round = 0; round < 60; round += 1) root = (1 + root) ** (1 / (dimensions + 1));
  return root;
}

/** Peaking filters, with or without one each of the other kinds. */
function choices(kinds: readonly FilterKind[], count: number): FilterKind[][] {
  let some: FilterKind[][] = [[]];
  for (const kind of kinds) {
    if (kind !== 'peaking') some = [...some, ...some.map((one) => [...one, kind])];
  }
  return some
    .filter((one) => one.length === count || (one.length < count && kinds.includes('peaking')))
    .map((one) => [...one, ...Array.from({ length: count - one.length }, () => 'peaking' as const)]);
}

/** Differs by less than this share of the cost: the same set found twice. */
const sameShare = 1e-3;

function theBest(candidates: readonly Candidate[], most = beam): Candidate[] {
  const kept: Candidate[] = [];
  for (const one of [...candidates].sort((a, b) => a.cost - b.cost)) {
    const known = kept.some(
      ({ cost, filters }) =>
        filters.length === one.filters.length && Math.abs(cost - one.cost) <= sameShare * cost,
    );
    if (!known) kept.push(one);
    if (kept.length === most) break;
  }
  return kept;
}

/** Takes each filter out in turn and places another, until a round brings no more than a thousandth. */
function replaced(wrong: Wrong, limits: EqualiserLimits, from: Candidate): Candidate {
  let best = from;
  for (let round = 0; round < 3 && best.cost > goodEnoughDb ** 2; round += 1) {
    const before = best.cost;
    for (let out = 0; out < best.filters.length; out += 1) {
      const rest = best.filters.filter((_, index) => index !== out);
      const [next] = theBest(extended(wrong, limits, rest));
      if (!next) continue;
      const settled = refined(wrong, limits, next.filters, 200);
      if (settled.cost < best.cost) best = settled;
    }
    if (before - best.cost <= sameShare * before) break;
  }
  return best;
}

/** The set with one more filter, tried at every place worth trying; the most promising are adjusted further. */
function extended(wrong: Wrong, limits: EqualiserLimits, filters: readonly Placed[]): Candidate[] {
  const left = errorsWith(wrong, filters);
  const tried = places(wrong.grid.frequencies, left, filters, limits).map((one) =>
    refined(wrong, limits, [...filters, one], 3),
  );
  return tried
    .sort((a, b) => a.cost - b.cost)
    .slice(0, promising)
    .map((one) => refined(wrong, limits, one.filters, 12));
}

/** Where another filter may help: at each hump and dip of what is left, narrow and wide, and shelves at some corners. */
function places(
  frequencies: readonly number[],
  left: readonly number[],
  filters: readonly Placed[],
  { kinds }: EqualiserLimits,
): Placed[] {
  const has = (kind: FilterKind): boolean => kinds.includes(kind);
  const isFree = (kind: FilterKind): boolean => has(kind) && !filters.some((one) => one.kind === kind);
  const found: Placed[] = [];
  if (has('peaking')) {
    const summits = left.flatMap((level, index) => {
      const size = Math.abs(level);
      const beside = [left[index - 1] ?? 0, left[index + 1] ?? 0].map((one) => one * Math.sign(level));
      return beside.every((one) => one <= size) ? [{ index, size }] : [];
    });
    for (const { index } of summits.sort((a, b) => b.size - a.size).slice(0, 4)) {
      for (const q of [1, 4]) {
        const lnHz = Math.log(frequencies[index] ?? 1);
        found.push({ kind: 'peaking', setting: [lnHz, -(left[index] ?? 0), Math.log(q)] });
      }
    }
  }
  const meanOver = (within: (hz: number) => boolean): number => {
    const some = left.filter((_, index) => within(frequencies[index] ?? 0));
    return some.length === 0 ? 0 : some.reduce((sum, one) => sum + one, 0) / some.length;
  };
  const shelf = (kind: FilterKind, hz: number, within: (other: number) => boolean): void => {
    const gainDb = meanOver((one) => !within(one)) - meanOver(within);
    found.push({ kind, setting: [Math.log(hz), gainDb, Math.log(Math.SQRT1_2)] });
  };
  if (isFree('low-shelf')) for (const hz of [60, 200, 700]) shelf('low-shelf', hz, (one) => one < hz);
  if (isFree('high-shelf')) {
    for (const hz of [1000, 3000, 9000]) shelf('high-shelf', hz, (one) => one > hz);
  }
  if (isFree('high-pass')) {
    for (const hz of [30, 80])
      found.push({ kind: 'high-pass', setting: [Math.log(hz), 0, Math.log(Math.SQRT1_2)] });
  }
  return found;
}

/** Adjusts all filters of a set together. */
function refined(
  { grid, errorDb }: Wrong,
  limits: EqualiserLimits,
  filters: readonly Placed[],
  steps: number,
): Candidate {
  const filterAt = (at: readonly number[], index: number): Filter =>
    filterOf(filters[index]?.kind ?? 'peaking', settingAt(at, index));
  const bounds = filters.flatMap(({ kind }) => boundsOf(kind, limits));
  const move = 1e-4;
  const solution = descend(
    {
      bounds,
      residuals: (at) => {
        const sum = [...errorDb];
        filters.forEach((_, index) => {
          add(sum, curveDb(filterAt(at, index), grid));
        });
        return levelled(sum);
      },
      slopes: (at) => {
        const now = filters.map((_, index) => curveDb(filterAt(at, index), grid));
        return at.map((value, variable) => {
          const [least, most] = bounds[variable] ?? [0, 0];
          if (least === most) return grid.frequencies.map(() => 0);
          const index = Math.floor(variable / 3);
          const moved = curveDb(filterAt(at.with(variable, value + move), index), grid);
          return levelled(moved.map((level, place) => (level - (now[index]?.[place] ?? 0)) / move));
        });
      },
    },
    filters.flatMap(({ setting }) => [...setting]),
    steps,
  );
  return {
    filters: filters.map(({ kind }, index) => ({ kind, setting: settingAt(solution.at, index) })),
    cost: solution.cost,
  };
}

function settingAt(at: readonly number[], index: number): Setting {
  return [at[3 * index] ?? 0, at[3 * index + 1] ?? 0, at[3 * index + 2] ?? 0];
}

function errorsWith({ grid, errorDb }: Wrong, filters: readonly Placed[]): number[] {
  const sum = [...errorDb];
  add(
    sum,
    togetherDb(
      filters.map(({ kind, setting }) => filterOf(kind, setting)),
      grid,
    ),
  );
  return levelled(sum);
}
