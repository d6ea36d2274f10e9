import { describe, expect, it } from 'vitest';
import { drawSessionErrors, readThdPercent, readVolts, type SessionErrors } from '../../src/demo/bench.ts';
import { randomStream } from '../../src/demo/random.ts';
import { sheetOf } from '../../src/demo/sheet.ts';
import { trueOutput } from '../../src/demo/truth.ts';
import { benches, findBench, sessions } from '../../src/demo/world/index.ts';

const exact: SessionErrors = { gainByBand: [0, 0, 0], thdGain: 0, levelDb: 0, loadRatio: 0, supplyVolts: 0 };

describe.each(benches)('the $id', ({ instrument }) => {
  const random = randomStream(1, 'bench test');

  it('reads within its specification: ± (% of reading + counts), and half a count for rounding', () => {
    for (let i = 0; i < 500; i += 1) {
      const errors = drawSessionErrors(instrument, { levelDb: 0, loadPercent: 0, supplyVolts: 0 }, random);
      for (const band of instrument.accuracy) {
        const volts = random.uniform(0.01, 10);
        const reading = readVolts(instrument, errors, volts, band.fromHz, 0, random);
        const limit =
          (volts * band.ofReadingPercent) / 100 + (band.counts + 0.5) * instrument.resolutionVolts;
        expect(Math.abs(reading - volts)).toBeLessThanOrEqual(limit + 1e-9);
      }
    }
  });

  it('reads in whole counts and never below zero', () => {
    for (let i = 0; i < 200; i += 1) {
      const counts = readVolts(instrument, exact, 0.001, 1000, 0, random) / instrument.resolutionVolts;
      expect(Math.abs(counts - Math.round(counts))).toBeLessThan(1e-6);
      expect(counts).toBeGreaterThanOrEqual(0);
    }
  });

  it('reads distortion within its limit and never below its floor', () => {
    const { thdFloorPercent: floor = 0, thdOfReadingPercent: limit = 0 } = instrument;
    for (let i = 0; i < 500; i += 1) {
      const errors = drawSessionErrors(instrument, { levelDb: 0, loadPercent: 0, supplyVolts: 0 }, random);
      expect(readThdPercent(instrument, errors, 0, random)).toBeCloseTo(floor, 12);
      const reading = readThdPercent(instrument, errors, 20, random) ?? Number.NaN;
      expect(Math.abs(Math.sqrt(reading ** 2 - floor ** 2) / 20 - 1)).toBeLessThanOrEqual(limit / 100 + 1e-9);
    }
  });

  it('refuses a frequency its specification does not cover', () => {
    expect(() => readVolts(instrument, exact, 1, 90_000, 0, random)).toThrow('does not cover 90000 Hz');
  });
});

describe.each(sessions)('the sheet of $id', (session) => {
  const rows = sheetOf(session);
  const { instrument, levelToleranceDb, loadTolerancePercent, repeatScatter } = findBench(session.bench);

  it('holds no reading twice', () => {
    const keys = rows.map((row) => [row.profile, row.channel, row.step, row.hz, row.repeat].join(' '));
    expect(new Set(keys).size).toBe(rows.length);
  });

  it('lies about the truth by no more than instrument, level, load and supply allow together', () => {
    // A load error enters by the divider, output over load resistance: less than 0.15 in every family.
    // The supply matters only near clipping; its effect there is at most in proportion to the rail.
    const supply = session.supply.toleranceVolts / (session.supply.volts / 2 - 2);
    const spread =
      10 ** (levelToleranceDb / 20) - 1 + (0.15 * loadTolerancePercent) / 100 + 5 * repeatScatter + supply;
    const outside = rows.filter((row) => {
      const truth = trueOutput(row.profile, row.channel, row.step, row.hz, {
        supplyVolts: session.supply.volts,
        loadOhms: session.loadOhms,
      }).voltsRms;
      const band = instrument.accuracy.find((each) => row.hz >= each.fromHz && row.hz < each.toHz);
      if (!band) throw new Error(`No accuracy band covers ${row.hz} Hz.`);
      const limit =
        truth * (band.ofReadingPercent / 100 + spread) + (band.counts + 0.5) * instrument.resolutionVolts;
      return Math.abs(row.voltsRms - truth) > limit * 1.01;
    });
    expect(outside).toEqual([]);
  });
});
