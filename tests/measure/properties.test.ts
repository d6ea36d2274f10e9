/** What must hold of every output, whatever was read: checked on units made up by fast-check. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomStream } from '../../src/demo/random.ts';
import {
  type Characteristic,
  characterise,
  exactCentre,
  type ProfileOutput,
  pointsOf,
  type Quantity,
  type Run,
} from '../../src/measure/index.ts';
import { type Row, run, session } from './bench.ts';
import { unit } from './ideal-unit.ts';

const settings = { numRuns: 25, seed: 20260314 };

/** A unit, and the seed of the deviations of its readings. */
const made = fc.record({
  stepDb: fc.double({ min: 1, max: 3, noNaN: true }),
  railStep: fc.integer({ min: 18, max: 29 }),
  boostDb: fc.double({ min: 0, max: 9, noNaN: true }),
  boostHz: fc.double({ min: 40, max: 110, noNaN: true }),
  cornerHz: fc.double({ min: 12, max: 90, noNaN: true }),
  order: fc.integer({ min: 1, max: 3 }),
  trebleHz: fc.double({ min: 6000, max: 30_000, noNaN: true }),
  rearDb: fc.double({ min: -60, max: 3, noNaN: true }),
  seed: fc.nat(1_000_000),
});
type Made = typeof made extends fc.Arbitrary<infer T> ? T : never;

/** What a bench reads of it: levels, responses at two steps, the other outputs; each reading 0.1 % off by chance. */
function rowsOf(shape: Made): Row[] {
  const random = randomStream(shape.seed, 'readings');
  const seen = (volts: number): number => volts * (1 + 0.001 * random.gaussian());
  const levelDb = (hz: number): number =>
    shape.boostDb / (1 + (2 * Math.log2(hz / shape.boostHz)) ** 2) -
    10 * Math.log10(1 + (shape.cornerHz / hz) ** (2 * shape.order)) -
    10 * Math.log10(1 + (hz / shape.trebleHz) ** 4);
  const volts = (step: number): number =>
    3 * 10 ** ((Math.min(step, shape.railStep + 0.5) - shape.railStep) * (shape.stepDb / 20));
  const rows: Row[] = [];
  for (let step = 1; step <= 30; step += 1) {
    const thdPercent = step <= shape.railStep ? 0.1 : 4 * (step - shape.railStep);
    for (const repeat of step % 5 === 0 ? [1, 2, 3] : [1]) {
      rows.push(['FL', step, 1000, seen(volts(step)), thdPercent, repeat]);
    }
  }
  for (const step of [8, 12]) {
    for (let band = -17; band <= 13; band += 1) {
      if (band === 0) continue;
      const hz = exactCentre(band);
      const there = volts(step) * 10 ** ((levelDb(hz) - levelDb(1000)) / 20);
      for (const repeat of [1, 2]) rows.push(['FL', step, hz, seen(there), null, repeat]);
    }
    for (const channel of ['FR', 'RL', 'RR'] as const) {
      const trimDb = channel === 'FR' ? 0.1 : shape.rearDb;
      rows.push([channel, step, 1000, seen(volts(step) * 10 ** (trimDb / 20))]);
    }
  }
  return rows;
}

function timesVolts(rows: readonly Row[], factor: number): Row[] {
  return rows.map(
    ([channel, step, hz, volts, thd = null, repeat = 1]): Row => [
      channel,
      step,
      hz,
      volts * factor,
      thd,
      repeat,
    ],
  );
}

/** Another session that read the same with a meter of its own, 0.1 % higher. */
function secondSession(rows: readonly Row[]): Run {
  return run(timesVolts(rows, 1.001), { bench: 'second', source: 'bench-y' }, 't');
}

/** What each kind of influence contributes to the standard uncertainty, all its lines together. */
function budgetOf({ budget }: Quantity): Record<string, number> {
  const names = [...new Set(budget.map(({ name }) => name))].sort();
  return Object.fromEntries(
    names.flatMap((name) => {
      const lines = budget.filter((line) => line.name === name);
      const size = Math.hypot(...lines.map((line) => line.standardUncertainty));
      // What cancels but for rounding is none.
      return size < 1e-12 ? [] : [[name, size]];
    }),
  );
}

/** An output as plain data: readings sorted, budgets and uncertainties written out. */
function plain(output: ProfileOutput) {
  const figures = (one: Quantity) => ({
    value: one.value,
    unit: one.unit,
    bound: one.bound,
    standardUncertainty: one.standardUncertainty,
    expandedUncertainty: one.expandedUncertainty,
    budget: budgetOf(one),
  });
  const characteristic = (one: Characteristic) => ({
    ...figures(one),
    name: one.name,
    conditions: one.conditions,
    readings: [...one.readings].sort(),
    sources: [...one.sources].sort(),
  });
  return {
    characteristics: output.characteristics.map(characteristic),
    others: output.others.map(characteristic),
    levelByStep: output.levelByStep.map((one) => ({
      ...one,
      volts: figures(one.volts),
      readings: [...one.readings].sort(),
    })),
    stepLaw: output.stepLaw.map((one) => ({ ...one, stepSize: figures(one.stepSize) })),
    responses: output.responses.map(({ step, points }) => ({
      step,
      points: points.map(({ hz, level, readings }) => ({
        hz,
        level: figures(level),
        readings: [...readings].sort(),
      })),
    })),
    boostBehaviour: output.boostBehaviour,
    mutedChannels: [...output.mutedChannels].sort(),
    conditions: output.conditions,
    normalised: output.normalised,
    missing: output.missing,
  };
}

/** The same structure, names and words, and numbers within rounding; volts times `factor`. */
function expectSame(actual: unknown, expected: unknown, factor = 1, path = ''): void {
  if (typeof expected === 'number') {
    const wanted = expected;
    const tolerance = 1e-6 * Math.abs(wanted) + 1e-9;
    if (wanted === actual) return;
    expect(Math.abs(Number(actual) - wanted), `${path}: ${actual}, not ${wanted}`).toBeLessThan(tolerance);
  } else if (Array.isArray(expected)) {
    expect(Array.isArray(actual) && actual.length, path).toBe(expected.length);
    expected.forEach((one, index) => {
      expectSame((actual as unknown[])[index], one, factor, `${path}[${index}]`);
    });
  } else if (expected !== null && typeof expected === 'object') {
    expect(Object.keys(actual as object).sort(), path).toEqual(Object.keys(expected).sort());
    for (const [key, one] of Object.entries(inVolts(expected) ? scaledVolts(expected, factor) : expected)) {
      expectSame((actual as Record<string, unknown>)[key], one, factor, `${path}.${key}`);
    }
  } else expect(actual, path).toBe(expected);
}

function inVolts(figures: object): boolean {
  return 'unit' in figures && figures.unit === 'V';
}

function scaledVolts(figures: object, factor: number): object {
  const scale = (key: string, one: unknown): unknown => {
    if (key === 'budget' && one !== null && typeof one === 'object')
      return Object.fromEntries(Object.entries(one).map(([name, size]) => [name, Number(size) * factor]));
    return typeof one === 'number' && /^(value|.*Uncertainty)$/.test(key) ? one * factor : one;
  };
  return Object.fromEntries(Object.entries(figures).map(([key, one]) => [key, scale(key, one)]));
}

test('the order of the readings changes nothing in the whole output', () => {
  fc.assert(
    fc.property(made, fc.nat(1_000_000), (shape, order) => {
      const rows = rowsOf(shape);
      const runs = [run(rows), secondSession(rows)];
      const random = randomStream(order, 'order');
      const shuffled = runs.map((one) => {
        const keyed = one.readings.map((reading) => ({ reading, key: random.uniform(0, 1) }));
        return { ...one, readings: keyed.sort((a, b) => a.key - b.key).map(({ reading }) => reading) };
      });
      expectSame(plain(characterise('p', shuffled, unit)), plain(characterise('p', runs, unit)));
    }),
    settings,
  );
});

test('volts and the meter’s last digit times a factor: volts times the factor, all else the same', () => {
  const instrument = (factor: number) => ({
    ...session.instrument,
    resolutionVolts: session.instrument.resolutionVolts * factor,
  });
  fc.assert(
    fc.property(made, fc.double({ min: 0.05, max: 20, noNaN: true }), (shape, factor) => {
      const rows = rowsOf(shape);
      const scaled = timesVolts(rows, factor);
      const before = plain(characterise('p', [run(rows)], unit));
      const after = plain(characterise('p', [run(scaled, { instrument: instrument(factor) })], unit));
      expect(before.characteristics.length).toBeGreaterThan(8);
      expectSame(after, before, factor);
    }),
    settings,
  );
});

describe('repeats (type A): one relative standard deviation s, pooled over a session; s/√n at a point read n times', () => {
  const again = (rows: readonly Row[], times: number): Row[] =>
    Array.from({ length: times }, (_, round) =>
      rows.map(
        ([channel, step, hz, volts, thd, repeat = 1]): Row => [
          channel,
          step,
          hz,
          volts,
          thd ?? null,
          repeat + 10 * round,
        ],
      ),
    ).flat();

  /** All results but slopes: they are fitted with weights that follow the uncertainties, so their value moves too. */
  const resultsOf = (rows: readonly Row[]): { what: string; result: Quantity }[] => {
    const output = characterise('p', [run(rows)], unit);
    return [
      ...[...output.characteristics, ...output.others]
        .filter(({ name }) => !name.endsWith('-slope'))
        .map((one) => ({ what: `${one.name} at step ${one.conditions.step}`, result: one })),
      ...output.levelByStep.map(({ step, volts }) => ({ what: `level at step ${step}`, result: volts })),
      ...output.responses.flatMap(({ step, points }) =>
        points.map(({ hz, level }) => ({ what: `response at step ${step}, ${hz} Hz`, result: level })),
      ),
    ];
  };

  /** Compares results of the same name; gives how many. */
  const expectNoneWider = (before: readonly Row[], after: readonly Row[]): number => {
    const results = new Map(resultsOf(after).map(({ what, result }) => [what, result]));
    let compared = 0;
    for (const { what, result: old } of resultsOf(before)) {
      const now = results.get(what);
      if (now?.bound !== 'exact' || old.bound !== 'exact') continue;
      compared += 1;
      const most = 1 + 1e-9;
      expect(budgetOf(now).repeats ?? 0, what).toBeLessThanOrEqual((budgetOf(old).repeats ?? 0) * most);
      expect(now.standardUncertainty, what).toBeLessThanOrEqual(old.standardUncertainty * most);
      expect(now.expandedUncertainty, what).toBeLessThanOrEqual(old.expandedUncertainty * most);
    }
    return compared;
  };

  /** s of a session. */
  const pooled = (rows: readonly Row[]): number => {
    const [point] = pointsOf(run(rows));
    return (point?.influences.repeats.relative ?? 0) * Math.sqrt(point?.readings.length ?? 0);
  };

  test('all readings of a session read again with the same values: no repeats component, no u and no U widens', () => {
    fc.assert(
      fc.property(made, fc.integer({ min: 2, max: 5 }), (shape, times) => {
        const rows = rowsOf(shape);
        expect(pooled(again(rows, times))).toBeLessThan(pooled(rows));
        expect(expectNoneWider(rows, again(rows, times))).toBeGreaterThan(90);
      }),
      settings,
    );
  });

  test('one more repeat that reads the mean of its point: no repeats component, no u and no U of any point widens', () => {
    fc.assert(
      fc.property(made, fc.nat(1_000_000), (shape, pick) => {
        const rows = rowsOf(shape);
        const points = pointsOf(run(rows)).filter(({ channel }) => channel === 'FL');
        const point = points[pick % points.length];
        if (!point) throw new Error('no point');
        const more: Row = ['FL', point.step, point.hz, point.voltsRms, point.thdPercent, 99];
        expect(expectNoneWider(rows, [...rows, more])).toBeGreaterThan(90);
      }),
      settings,
    );
  });

  test('one more repeat widens s exactly where it lies further than s·√((n+1)/n) from the mean of its n: drawn from those that are there it may do either', () => {
    const seen = { wider: 0, narrower: 0 };
    fc.assert(
      fc.property(made, fc.nat(1_000_000), (shape, pick) => {
        const rows = rowsOf(shape);
        const before = pooled(rows);
        const repeated = rows.filter(([channel, step, hz, here]) => {
          const same = rows.filter((row) => row[0] === channel && row[1] === step && row[2] === hz);
          // Below 200 counts of the last digit a reading tells nothing of the scatter.
          return same.length > 1 && here > 0.021;
        });
        const [channel, step, hz, volts] = repeated[pick % repeated.length] ?? ['FL', 0, 0, 0];
        const same = rows.filter((row) => row[0] === channel && row[1] === step && row[2] === hz);
        const mean = same.reduce((sum, row) => sum + row[3], 0) / same.length;
        const ratio = Math.abs(volts / mean - 1) / (before * Math.sqrt((same.length + 1) / same.length));
        // Deviations are relative to the mean, which the repeat itself moves by a hair.
        fc.pre(Math.abs(ratio - 1) > 0.02);
        const after = pooled([...rows, [channel, step, hz, volts, null, 99]]);
        expect(after > before).toBe(ratio > 1);
        seen[after > before ? 'wider' : 'narrower'] += 1;
      }),
      { ...settings, numRuns: 100 },
    );
    expect(Math.min(seen.wider, seen.narrower)).toBeGreaterThan(5);
  });
});
