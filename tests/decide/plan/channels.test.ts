/** Rear outputs, summed feeds, and the low end. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adviceTexts } from '../../../src/decide/plan/advice.ts';
import { boostPower, levelAt, protectiveHighPass, starves } from '../../../src/decide/plan/bandwidth.ts';
import { carryOver } from '../../../src/decide/plan/carry-over.ts';
import { rearGain, rearState, summedFeed } from '../../../src/decide/plan/channels.ts';
import { characterise, highPassDb } from '../../../src/measure/index.ts';
import { responseRun, responseStep, unit } from '../../measure/ideal-unit.ts';
import { characteristic, expectWellTold, line, linesOf, refusalOf } from './told.ts';

const four = ['FL', 'FR', 'RL', 'RR'];
const rearAt = (db: number) => characteristic('rear-to-front', db, 'dB', 0.1);

describe('rear outputs', () => {
  test('none, muted, playing or unknown', () => {
    expect(rearState(['FL', 'FR'], [], undefined).rear).toBe('none');
    expect(rearState(four, ['RL', 'RR'], undefined)).toEqual({ rear: 'muted', mutedChannels: ['RL', 'RR'] });
    expect(rearState(four, ['RL'], rearAt(-6))).toEqual({ rear: 'plays', mutedChannels: ['RL'] });
    expect(rearState(four, [], undefined).rear).toBe('unknown');
  });
  test('a rear 6 dB down needs 6 dB more gain, with the same uncertainty', () => {
    const { result } = rearGain(rearAt(-6));
    expect(result.value).toBe(6);
    expect(result.expandedUncertainty).toBeCloseTo(rearAt(-6).expandedUncertainty, 9);
  });
});

describe('a sum by equal resistors', () => {
  const sum = (feeds: number, resistorOhms: number, inputOhms: number) =>
    summedFeed({ feeds, resistorOhms, inputOhms, cleanVolts: characteristic('clean-volts', 10, 'V') });

  test('two alike lose nothing into an open input, one alone 6.02 dB; 1 kΩ at 10 V takes 0.1 W', () => {
    const lines = sum(2, 1000, 1e12);
    expectWellTold(lines);
    expect(line(lines, 'sum-of-alike').result.value).toBeCloseTo(0, 6);
    expect(line(lines, 'sum-of-one').result.value).toBeCloseTo(-6.0206, 4);
    expect(line(lines, 'sum-load').result.value).toBeCloseTo(2000, 4);
    expect(line(lines, 'sum-resistor-power').result.value).toBeCloseTo(0.1, 9);
    for (const one of lines) expect(one.cautions).toContain('bridged-outputs');
  });

  // The node's equation, solved by halving: the currents into the common point are nought.
  test('levels and load are those of the network', () => {
    const ohms = fc.integer({ min: 10, max: 100_000 });
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 4 }), ohms, ohms, (feeds, resistor, input) => {
        const nodeVolts = (volts: readonly number[]): number => {
          let [low, high] = [0, 1];
          for (let halving = 0; halving < 60; halving += 1) {
            const node = (low + high) / 2;
            const into = volts.reduce((all, one) => all + (one - node) / resistor, -node / input);
            if (into > 0) low = node;
            else high = node;
          }
          return low;
        };
        const alone = Array.from({ length: feeds }, (_, index) => (index === 0 ? 1 : 0));
        const lines = sum(feeds, resistor, input);
        const levelDb = (volts: readonly number[]) => 20 * Math.log10(nodeVolts(volts));
        expect(line(lines, 'sum-of-alike').result.value).toBeCloseTo(levelDb(alone.map(() => 1)), 6);
        expect(line(lines, 'sum-of-one').result.value).toBeCloseTo(levelDb(alone), 6);
        const amperes = (1 - nodeVolts(alone)) / resistor;
        expect(line(lines, 'sum-load').result.value * amperes).toBeCloseTo(1, 6);
      }),
      { seed: 20260314 },
    );
  });
});

describe('the low end', () => {
  // A second-order Butterworth high-pass at 80 Hz is 12.3046 dB down at 40 Hz (Audio EQ Cookbook, recomputed).
  const output = characterise('p', [responseRun((hz) => highPassDb(hz, 80, 2))], unit);
  const response = output.responses.find(({ step }) => step === responseStep) ?? { step: 0, points: [] };

  test('a high-pass at 80 Hz: the level at 40 Hz between its neighbours, and at one of them', () => {
    const between = linesOf(levelAt(response, 40, ['bench']));
    const at = linesOf(levelAt(response, response.points[3]?.hz ?? 0, ['bench']));
    expectWellTold([between]);
    expectWellTold([at]);
    expect(between.result.value).toBeCloseTo(-12.3046, 1);
    // The straight line between two third octaves is within its own uncertainty of the filter.
    expect(Math.abs(between.result.value - highPassDb(40, 80, 2))).toBeLessThan(
      between.result.expandedUncertainty,
    );
    expect(at.result.value).toBeCloseTo(highPassDb(response.points[3]?.hz ?? 0, 80, 2), 1);
    expect(between.readings.length).toBeGreaterThan(1);
    expect([
      starves(between.result, 3),
      starves(between.result, 12.3046),
      starves(between.result, 20),
    ]).toEqual(['yes', 'borderline', 'no']);
  });
  test('where it was not read it is refused, and says where it was', () => {
    expect(refusalOf(levelAt(response, 10, []))).toContain('20 to 19953 Hz');
  });

  const boost = (db: number) => characteristic('bass-boost', db, 'dB', 0.2);
  test('6.0206 dB is four times the power', () => {
    const power = boostPower(boost(6.0206));
    expect(power.result.value).toBeCloseTo(4, 4);
    // dp/dB = p·ln 10/10.
    const perDb = (4 * Math.LN10) / 10;
    expect(power.result.expandedUncertainty).toBeCloseTo(perDb * boost(6).expandedUncertainty, 3);
    expect(power.cautions).toContain('hearing');
  });

  test('a protective high-pass takes out what is too much, and is never below the speaker’s own limit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 12 }),
        fc.integer({ min: 40, max: 120 }),
        fc.constantFrom(1, 2, 3, 4),
        (boostDb, hz, order) => {
          const protection = { lowestHz: 70, mostBoostDb: 3, order, sources: ['sheet'] } as const;
          const at = characteristic('bass-boost-frequency', hz, 'Hz', 1);
          const lines = protectiveHighPass(boost(boostDb), at, protection);
          expectWellTold(lines);
          const corner = line(lines, 'protective-high-pass').result.value;
          expect(corner).toBeGreaterThanOrEqual(70);
          const left = boostDb + boost(boostDb).expandedUncertainty + highPassDb(hz, corner, order);
          expect(left).toBeLessThanOrEqual(3 + 1e-9);
          expect(line(lines, 'high-pass-slope').result.value).toBeCloseTo(6.0206 * order, 4);
        },
      ),
      { seed: 20260314 },
    );
  });
});

test.each([
  ['amplified', true, true],
  ['amplified', false, false],
  ['unamplified', true, false],
  ['unamplified', false, false],
] as const)(
  '%s profile, factory amplifier stays %s: the code goes along %s (common practice, no source)',
  (system, keeps, goes) => {
    const rule = carryOver(system, keeps);
    expect(rule.holds).toBe(goes);
    expect(adviceTexts()[rule.advice]).toContain(goes ? 'Carry the old code over' : 'Do not carry');
  },
);

test('a larger uncertainty never makes a borderline low end certain', () => {
  const thousandths = fc.integer({ min: -3000, max: 3000 }).map((one) => one / 1000);
  let borderline = 0;
  fc.assert(
    fc.property(thousandths, fc.nat(2000), fc.nat(2000), (db, less, more) => {
      const level = (halfWidth: number) => characteristic('ripple', db - 3, 'dB', halfWidth / 1000);
      if (starves(level(less), 3) !== 'borderline') return;
      borderline += 1;
      expect(starves(level(less + more), 3)).toBe('borderline');
    }),
    { numRuns: 500, seed: 20260314 },
  );
  expect(borderline).toBeGreaterThan(50);
});

test('between third octaves any high-pass is met within the uncertainty', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 25, max: 120 }),
      fc.integer({ min: 1, max: 3 }),
      fc.integer({ min: 30, max: 300 }),
      (cornerHz, order, hz) => {
        const truthDb = (at: number) => highPassDb(at, cornerHz, order) - highPassDb(1000, cornerHz, order);
        const [response] = characterise('p', [responseRun(truthDb)], unit).responses;
        const { result } = linesOf(levelAt(response ?? { step: 0, points: [] }, hz, []));
        expect(Math.abs(result.value - truthDb(hz))).toBeLessThan(result.expandedUncertainty);
      },
    ),
    { numRuns: 100, seed: 20260314 },
  );
});
