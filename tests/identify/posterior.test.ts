/** Bayes' rule over profiles, and its integral over the tone's offset against numerical quadrature. */
import { describe, expect, test } from 'vitest';
import { unknownLevelDb } from '../../src/decide/identify/constants.ts';
import { observe } from '../../src/decide/identify/gaussian.ts';
import { type Expected, jointOf, ownVariance } from '../../src/decide/identify/hypothesis.ts';
import {
  type Identification,
  identify,
  modelOf,
  type ReadingPoint,
  type RiderReading,
} from '../../src/decide/identify/index.ts';
import { posteriorOf } from '../../src/decide/identify/posterior.ts';
import { levelReadings, readingUncertaintyDb } from '../../src/decide/identify/reading.ts';
import { dbRatio, dbv } from '../../src/measure/index.ts';
import { call, families, modelFor, profilesOf, read, riderOf, unitOf } from './riders.ts';

function reading(step: number, hz: number, voltsRms: number, rest: Partial<RiderReading> = {}): RiderReading {
  return { channel: 'FL', step, hz, voltsRms, accuracyPercent: 5, digitVolts: 0.001, ...rest };
}

function probabilities({ candidates, noneOfThese }: Identification): Map<string, number> {
  return new Map([
    ...candidates.map((one) => [one.profile, one.probability] as const),
    ['none', noneOfThese],
  ]);
}

function normal(x: number, mean: number, sd: number): number {
  return Math.exp(-(((x - mean) / sd) ** 2) / 2) / (sd * Math.sqrt(2 * Math.PI));
}

/** ∫ Π N(yᵢ; mᵢ + aᵢδ, sᵢ) N(δ; 0, σ) dδ by Simpson's rule over ±10 σ. */
function byQuadrature(points: readonly Expected[], levels: readonly number[], offsetDb: number): number {
  const slices = 4000;
  const width = (20 * offsetDb) / slices;
  let sum = 0;
  for (let i = 0; i <= slices; i += 1) {
    const offset = -10 * offsetDb + i * width;
    const density = points.reduce(
      (product, one, index) =>
        product *
        normal(
          levels[index] ?? 0,
          one.prediction.levelDbv + one.prediction.perOffset * offset,
          Math.sqrt(ownVariance(one)),
        ),
      normal(offset, 0, offsetDb),
    );
    sum += density * (i === 0 || i === slices ? 1 : i % 2 === 1 ? 4 : 2);
  }
  return (sum * width) / 3;
}

describe('the posterior', () => {
  test('before any reading: uniform over profiles, as likely as not none of them', () => {
    const found = identify(modelFor('brasslight', false), []);
    expect(found.noneOfThese).toBeCloseTo(0.5, 12);
    for (const one of found.candidates) expect(one.probability).toBeCloseTo(0.5 / 7, 12);
    expect(found.sureness).toBe('not-sure');
  });

  test('makes one, and is the same in any order of the readings', () => {
    const model = modelFor('northpane', false);
    const readings = [
      reading(16, 63, 0.31),
      reading(25, 1000, 0.9),
      reading(30, 5000, 1.7),
      reading(25, 100, 0.95, { channel: 'RL' }),
    ];
    const found = identify(model, readings);
    const total = [...probabilities(found).values()].reduce((sum, one) => sum + one, 0);
    expect(total).toBeCloseTo(1, 12);
    for (const order of [
      [3, 2, 1, 0],
      [1, 3, 0, 2],
      [2, 0, 3, 1],
    ]) {
      expect(
        identify(
          model,
          order.flatMap((index) => readings[index] ?? []),
        ),
      ).toEqual(found);
    }
  });

  test('a reading repeated is worth one reading', () => {
    const model = modelFor('brasslight', false);
    const once = identify(model, [reading(12, 63, 1.9), reading(20, 1000, 3.5)]);
    const often = identify(model, [
      reading(12, 63, 1.9),
      reading(20, 1000, 3.5),
      ...Array.from({ length: 10 }, () => reading(12, 63, 1.9)),
    ]);
    for (const [profile, probability] of probabilities(once)) {
      expect(probabilities(often).get(profile)).toBeCloseTo(probability, 9);
    }
  });

  test('one reading of two profiles by hand: Bayes’ rule with u² = meter² + bench² + offset²', () => {
    const all = unitOf('dialstone');
    const unit = { ...all, profiles: all.profiles.filter(({ id }) => /1-1e|2-e5/.test(id)) };
    const model = modelOf(unit, false);
    const volts = 0.6;
    const { groups } = posteriorOf(model, levelReadings([reading(16, 1000, volts)]));
    const density = unit.profiles.map(({ output }) => {
      const level = output?.levelByStep.find((one) => one.step === 16)?.volts;
      if (!level) throw new Error('step 16 was not measured');
      const bench = (20 / Math.LN10) * (level.standardUncertainty / level.value);
      const u = Math.hypot(readingUncertaintyDb(volts, 5, 0.001), bench, unknownLevelDb);
      const z = (dbv(volts) - dbv(level.value)) / u;
      return Math.exp(-(z ** 2) / 2) / u;
    });
    const odds = (groups[0]?.probability ?? 0) / (groups[1]?.probability ?? 1);
    expect(Math.log(odds)).toBeCloseTo(Math.log((density[0] ?? 0) / (density[1] ?? 1)), 6);
    // 5 % and 1 mV in 0.6 V, both rectangular: 0.251 dB (GUM 4.3.7, worked by hand).
    expect(readingUncertaintyDb(volts, 5, 0.001)).toBeCloseTo(0.2509, 3);
  });

  test('all readings louder or softer by one factor: the same profile stands first, about as probable', () => {
    let compared = 0;
    for (const family of families) {
      const model = modelFor(family, false);
      for (const profile of profilesOf(family).filter((_, index) => index % 2 === 0)) {
        const { readings, found } = call(model, riderOf(profile, 'scaling', 0));
        if (found.sureness !== 'sure') continue;
        for (const db of [-2, 2]) {
          const scaled = identify(
            model,
            readings.map((one) => ({ ...one, voltsRms: one.voltsRms * dbRatio(db) })),
          );
          const label = `${profile} ${db} dB`;
          expect(scaled.candidates[0]?.profile, label).toBe(found.candidates[0]?.profile);
          const [before, after] = [found, scaled].map((one) => one.candidates[0]?.probability ?? 0);
          expect((after ?? 0) / (before ?? 1), label).toBeGreaterThan(0.75);
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(25);
  });

  test('… but not where the level is known', () => {
    const readings = [reading(12, 1000, 0.086), reading(20, 1000, 0.429), reading(16, 100, 0.19)];
    const model = modelFor('brasslight', true);
    expect(identify(model, readings).candidates[0]?.profile).toBe('brasslight/8b0s-15z');
    const louder = readings.map((one) => ({ ...one, voltsRms: one.voltsRms * dbRatio(3) }));
    expect(identify(model, louder).sureness).toBe('none-of-these');
  });

  test('profiles nobody measured count as none of these', () => {
    const unit = unitOf('brasslight');
    const model = modelOf(
      {
        ...unit,
        profiles: unit.profiles.map((one, index) => (index < 2 ? { id: one.id, output: undefined } : one)),
      },
      false,
    );
    expect(model.unmeasured).toEqual(unit.profiles.slice(0, 2).map((one) => one.id));
    const found = identify(model, []);
    expect(found.candidates.length).toBe(5);
    expect(found.noneOfThese).toBeCloseTo(0.5 + 0.5 * (2 / 7), 12);
  });
});

describe('the integral over the tone’s level', () => {
  test('agrees with quadrature on every profile of the demo, at points without interpolation', () => {
    let compared = 0;
    for (const family of families) {
      const model = modelFor(family, false);
      for (const profile of profilesOf(family)) {
        const rider = riderOf(profile, 'quadrature', 3);
        for (const group of model.groups) {
          const points = model.planned.filter((point) => {
            const prediction = group.predict(point);
            return point.channel === 'FL' && prediction && prediction.allowanceDb === 0;
          });
          const some = [0.2, 0.5, 0.9].flatMap((share) => points[Math.floor(share * points.length)] ?? []);
          const expected = levelReadings(some.map((point) => read(rider, point))).flatMap((reading) => {
            const prediction = group.predict(reading);
            return prediction ? [{ ...reading, prediction }] : [];
          });
          const levels = expected.map((one) => one.levelDbv);
          const numeric = byQuadrature(expected, levels, group.offsetDb);
          // Where the readings fit nowhere near, both are beyond what floating point holds.
          if (numeric < 1e-250) continue;
          const closed = observe(jointOf(group, expected), levels).logDensity;
          expect(closed).toBeCloseTo(Math.log(numeric), 7);
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(60);
  });

  test('readings a decibel apart from what is predicted alike cost little, apart from each other much', () => {
    const model = modelFor('brasslight', false);
    const [group] = model.groups;
    if (!group) throw new Error('no group');
    const density = (offs: readonly number[]): number => {
      const points = ([8, 14, 20] as const).map((step): ReadingPoint => ({ channel: 'FL', step, hz: 1000 }));
      const expected = points.flatMap((point): Expected[] => {
        const prediction = group.predict(point);
        return prediction ? [{ ...point, prediction, uncertaintyDb: 0.25 }] : [];
      });
      return observe(
        jointOf(group, expected),
        expected.map((one, index) => one.prediction.levelDbv + (offs[index] ?? 0)),
      ).logDensity;
    };
    // One standard deviation of the offset costs half a unit of log-likelihood, a little less for the errors.
    expect(density([0, 0, 0]) - density([3, 3, 3])).toBeCloseTo(0.5, 1);
    expect(density([0, 0, 0]) - density([3, 0, 0])).toBeGreaterThan(40);
  });
});

describe('twins', () => {
  test('are those of the demo world that share a tuning, no more', () => {
    const groups = families.flatMap((family) =>
      modelFor(family, false)
        .groups.filter((group) => group.profiles.length > 1)
        .map((group) => [...group.profiles].sort()),
    );
    const said = [...unitOf('brasslight').profiles, ...families.flatMap((one) => unitOf(one).profiles)];
    expect(said.length).toBeGreaterThan(30);
    expect(groups).toEqual([
      ['brasslight/8b0s-i5z', 'brasslight/i1l0-s5g'],
      ['dialstone/1-10', 'dialstone/6-00'],
      ['glasswick/0x5b0', 'glasswick/0x6a2'],
      ['northpane/bz268-1i-30', 'northpane/os518-b2-10'],
    ]);
  });

  test('come out equal, name each other, and are sure together', () => {
    const { found } = call(modelFor('glasswick', true), riderOf('glasswick/0x6a2', 'twins', 0.3));
    const [first, second] = found.candidates;
    expect(found.sureness).toBe('sure');
    expect(first?.probability).toBe(second?.probability);
    expect([first?.profile, second?.profile].sort()).toEqual(['glasswick/0x5b0', 'glasswick/0x6a2']);
    expect(first?.twins).toEqual([second?.profile]);
    expect(second?.twins).toEqual([first?.profile]);
  });
});
