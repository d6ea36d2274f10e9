/** The next reading against brute force over the whole grid. */
import { describe, expect, test } from 'vitest';
import {
  defaultAccuracyPercent,
  mostPlannedVolts,
  plannedDigitVolts,
  plannedHz,
} from '../../src/decide/identify/constants.ts';
import { observe } from '../../src/decide/identify/gaussian.ts';
import { jointOf } from '../../src/decide/identify/hypothesis.ts';
import {
  type IdentifyModel,
  identify,
  modelOf,
  type ReadingPoint,
  type RiderReading,
} from '../../src/decide/identify/index.ts';
import { posteriorOf } from '../../src/decide/identify/posterior.ts';
import { levelReadings, readingUncertaintyDb } from '../../src/decide/identify/reading.ts';
import { dbRatio } from '../../src/measure/index.ts';
import { call, families, modelFor, profilesOf, read, riderOf, unitOf } from './riders.ts';

/**
 * The expected fall of entropy at one point, the long way: put every level the meter may show, a quarter of a
 * decibel apart, through Bayes' rule with the joint density of all readings, and average the entropies.
 */
function fallOfEntropy(model: IdentifyModel, readings: readonly RiderReading[], point: ReadingPoint): number {
  const levels = levelReadings(readings);
  const hypotheses = [...model.groups, ...model.strangers];
  const before = posteriorOf(model, levels);
  const priors = [...before.groups, ...before.strangers].map((one) => one.probability);
  const joints = hypotheses.map((hypothesis) => {
    const expected = [...levels, { ...point, levelDbv: 0, uncertaintyDb: 0 }].flatMap((one, index) => {
      const prediction = hypothesis.predict(one);
      if (!prediction) return [];
      const volts = dbRatio(prediction.levelDbv);
      const uncertaintyDb =
        index < levels.length
          ? one.uncertaintyDb
          : readingUncertaintyDb(
              volts,
              defaultAccuracyPercent(point.hz),
              Math.max(plannedDigitVolts(volts), ...readings.map((one) => one.digitVolts)),
            );
      return [{ ...one, prediction, uncertaintyDb }];
    });
    return jointOf(hypothesis, expected);
  });
  const alone = hypotheses.map((hypothesis, index) => {
    const mean = joints[index]?.mean ?? [];
    const covariance = (joints[index]?.covariance ?? []).slice(0, -1).map((row) => row.slice(0, -1));
    expect(hypothesis.prior).toBeGreaterThan(0);
    return observe(
      { mean: mean.slice(0, -1), covariance },
      levels.map((one) => one.levelDbv),
    ).logDensity;
  });
  const entropy = (ps: readonly number[]): number =>
    -ps.reduce((sum, p) => sum + (p > 0 ? p * Math.log2(p) : 0), 0);
  let expectedEntropy = 0;
  const width = 0.25;
  for (let level = -90; level < 40; level += width) {
    const densities = joints.map((joint, index) => {
      const both = observe(joint, [...levels.map((one) => one.levelDbv), level]).logDensity;
      return (priors[index] ?? 0) * Math.exp(both - (alone[index] ?? 0));
    });
    const total = densities.reduce((sum, one) => sum + one, 0);
    if (total > 1e-14) expectedEntropy += width * total * entropy(densities.map((one) => one / total));
  }
  return entropy(priors) - expectedEntropy;
}

describe('the next reading', () => {
  test.each([
    ['dialstone', false, [] as ReadingPoint[]],
    ['lanternby', false, [{ channel: 'FL', step: 13, hz: 63 }] as ReadingPoint[]],
    ['brasslight', true, [{ channel: 'RL', step: 3, hz: 1000 }] as ReadingPoint[]],
  ])('%s, level known %s, after %j: the most telling of the grid by brute force', (family, known, taken) => {
    const model = modelFor(family, known);
    const rider = riderOf(profilesOf(family)[0] ?? '', 'grid', known ? 0.3 : 3);
    const readings = taken.map((point) => read(rider, point));
    const { nextReading } = identify(model, readings);
    if (!nextReading) throw new Error('a next reading was expected');
    const falls = model.planned.map((point) => fallOfEntropy(model, readings, point));
    const chosen = fallOfEntropy(model, readings, nextReading);
    expect(falls.length).toBeGreaterThan(100);
    expect(Math.abs(chosen - nextReading.expectedBits)).toBeLessThan(0.01);
    // Of readings within a hundredth of a bit the quietest is taken; the rest is hypotheses left out below 0.001.
    expect(chosen).toBeGreaterThan(Math.max(...falls) - 0.02);
    // The choice matters: the usual reading of the grid tells much less.
    expect(chosen).toBeGreaterThan(falls.reduce((sum, one) => sum + one, 0) / falls.length + 0.1);
  });

  test('is at a measured step and frequency, bearable and clean for every profile', () => {
    for (const family of families) {
      const model = modelFor(family, false);
      expect(model.planned.length, family).toBeGreaterThan(50);
      for (const point of model.planned) {
        expect(plannedHz).toContain(point.hz);
        expect(['FL', 'RL']).toContain(point.channel);
        for (const group of model.groups) {
          const prediction = group.predict(point);
          expect(prediction?.headroomDb).toBeGreaterThanOrEqual(3);
          expect(dbRatio(prediction?.levelDbv ?? 99)).toBeLessThanOrEqual(mostPlannedVolts);
        }
      }
    }
  });

  test('says what each profile would show: the truth is met where the profile is the one', () => {
    const model = modelFor('northpane', true);
    const rider = { ...riderOf('northpane/zb802-0s-01', 'expect', 0), offsetDb: 0 };
    const { nextReading } = identify(model, [read(rider, { channel: 'FL', step: 16, hz: 63 })]);
    if (!nextReading) throw new Error('a next reading was expected');
    const said = nextReading.expect.find((one) => one.profiles.includes(rider.profile))?.voltsRms ?? 0;
    expect(said / read(rider, nextReading).voltsRms).toBeCloseTo(1, 0.8);
  });

  test('asks for no point twice, and for none where only twins are left', () => {
    const unit = unitOf('brasslight');
    const twins = ['brasslight/8b0s-i5z', 'brasslight/i1l0-s5g'];
    const model = modelOf({ ...unit, profiles: unit.profiles.filter(({ id }) => twins.includes(id)) }, true);
    const rider = riderOf('brasslight/i1l0-s5g', 'only twins', 0.3);
    const readings: RiderReading[] = [];
    let found = identify(model, readings);
    while (found.nextReading && readings.length < 10) {
      const { channel, step, hz } = found.nextReading;
      expect(readings.some((one) => one.channel === channel && one.step === step && one.hz === hz)).toBe(
        false,
      );
      readings.push(read(rider, found.nextReading));
      found = identify(model, readings);
    }
    expect(found.nextReading).toBeUndefined();
    expect(readings.length).toBeLessThan(10);
    expect(found.sureness).toBe('sure');
    expect(found.candidates.map((one) => one.probability)).toEqual([
      found.candidates[0]?.probability,
      found.candidates[0]?.probability,
    ]);
  });

  test('a meter that shows tenths of a volt is not asked to read millivolts', () => {
    const model = modelFor('brasslight', false);
    const point: ReadingPoint = { channel: 'FL', step: 16, hz: 63 };
    const rider = riderOf('brasslight/8b0s-i5z', 'digits', 0);
    const fine = read(rider, point);
    const coarse = { ...fine, voltsRms: Math.round(fine.voltsRms * 10) / 10, digitVolts: 0.1 };
    const volts = (reading: RiderReading): number =>
      identify(model, [reading]).nextReading?.expect[0]?.voltsRms ?? Number.NaN;
    expect(volts(coarse)).toBeGreaterThan(0.3);
    expect(volts(fine)).toBeLessThan(volts(coarse));
  });

  test('a meter said to be finer expects to learn more', () => {
    const model = modelFor('glasswick', false);
    const { readings } = call(model, riderOf('glasswick/0x5b0', 'finer', 3));
    const first = readings.slice(0, 1);
    const coarse = identify(model, first, 20).nextReading?.expectedBits ?? 0;
    const fine = identify(model, first, 0.5).nextReading?.expectedBits ?? 0;
    expect(fine).toBeGreaterThan(coarse);
  });
});
