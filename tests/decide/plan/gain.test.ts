/** Levels against inputs, gain setting and headroom. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gainStep, gainTarget } from '../../../src/decide/plan/gain-target.ts';
import { headroom } from '../../../src/decide/plan/headroom.ts';
import { matchInput } from '../../../src/decide/plan/input-match.ts';
import { levelChange, type VolumeScale } from '../../../src/decide/plan/steps.ts';
import { characterise } from '../../../src/measure/index.ts';
import { lineText, lineTexts } from '../../../src/views/line-texts.ts';
import { found, responseRun, unit, value } from '../../measure/ideal-unit.ts';
import { characteristic, expectWellTold, line, linesOf, refusalOf } from './told.ts';

const clean = (volts: number, halfWidth = 0) => characteristic('clean-volts', volts, 'V', halfWidth);
const match = (...of: Parameters<typeof matchInput>) => linesOf(matchInput(...of));
const input = (leastVolts: number, mostVolts: number) => ({ leastVolts, mostVolts, sources: ['sheet'] });

describe('clean volts against an input', () => {
  // 2 V is 6.0206 dBV, 4 V 12.0412 dBV: recomputed with an independent program.
  test('2 V into 4 to 8 V: short by 6.02 dB, a quarter of the power', () => {
    const { fit, lines } = match(clean(2), input(4, 8));
    expectWellTold(lines);
    expect(fit).toBe('short');
    expect(line(lines, 'above-least-input').result.value).toBeCloseTo(6.0206 - 12.0412, 4);
    expect(line(lines, 'power-reached').result.value).toBe(0.25);
    expect(lines.some(({ id }) => id === 'attenuation')).toBe(false);
  });
  test('8 V into 0.2 to 4 V: over by 6.02 dB; the attenuation covers the uncertainty', () => {
    const { fit, lines } = match(clean(8, 0.1), input(0.2, 4));
    expect(fit).toBe('over');
    expect(line(lines, 'above-most-input').result.value).toBeCloseTo(6.0206, 4);
    const needed = line(lines, 'attenuation').result;
    expect(needed.bound).toBe('at-least');
    expect((8 + clean(8, 0.1).expandedUncertainty) * 10 ** (-needed.value / 20)).toBeCloseTo(4, 9);
    expect(line(lines, 'above-most-input')).toMatchObject({
      readings: ['bench:12'],
      sources: ['bench', 'sheet'],
    });
  });
  test('3 V ± 0.1 V into 1 to 8 V: within; into 2.95 to 8 V: borderline', () => {
    expect(match(clean(3, 0.1), input(1, 8)).fit).toBe('within');
    expect(match(clean(3, 0.1), input(2.95, 8)).fit).toBe('borderline');
    expect(match(clean(3), input(3, 8)).fit).toBe('within');
  });

  test('a silent output is refused', () => {
    expect(refusalOf(matchInput(clean(0), input(1, 8)))).toContain('silent');
  });

  const volts = fc.double({ min: 0.05, max: 20, noNaN: true });
  const share = fc.integer({ min: 0, max: 200 }).map((thousandths) => thousandths / 1000);
  const attenuationOf = (at: number, range: ReturnType<typeof input>): number =>
    match(clean(at, 0.01), range).lines.find(({ id }) => id === 'attenuation')?.result.value ?? 0;

  test('an input that takes more, or needs less, never asks for more attenuation', () => {
    fc.assert(
      fc.property(volts, volts, volts, volts, (at, least, most, more) => {
        const before = attenuationOf(at, input(least, most));
        expect(attenuationOf(at, input(least, most + more))).toBeLessThanOrEqual(before);
        expect(attenuationOf(at, input(least / 2, most))).toBe(before);
        expect(attenuationOf(at + more, input(least, most))).toBeGreaterThanOrEqual(before);
      }),
      { seed: 20260314 },
    );
  });
  test('a larger uncertainty never makes the borderline certain', () => {
    let borderline = 0;
    fc.assert(
      fc.property(volts, share, share, fc.integer({ min: 800, max: 1200 }), (at, less, more, near) => {
        const range = input((at * near) / 1000, (at * near) / 100);
        const [small, large] = [at * less, at * (less + more)];
        if (match(clean(at, small), range).fit !== 'borderline') return;
        borderline += 1;
        expect(match(clean(at, large), range).fit).toBe('borderline');
      }),
      { numRuns: 500, seed: 20260314 },
    );
    expect(borderline).toBeGreaterThan(50);
  });
});

describe('setting the gain', () => {
  const plan = { ratedWatts: 50, loadOhms: 4, sources: ['sheet'], overlapDb: 0, toneDbfs: 0 };
  test('without overlap a full-scale tone is set to the rated power', () => {
    const lines = linesOf(gainTarget(plan));
    expectWellTold(lines);
    expect(line(lines, 'gain-target').result.value).toBeCloseTo(
      line(lines, 'full-power-volts').result.value,
      12,
    );
  });
  test('50 W into 4 Ω with 5 dB of overlap: 14.142 V with a tone of −5 dB, 7.953 V with one of −10 dB', () => {
    const at = (toneDbfs: number) =>
      line(linesOf(gainTarget({ ...plan, overlapDb: 5, toneDbfs })), 'gain-target');
    expect(at(-5).result.value).toBeCloseTo(Math.sqrt(200), 9);
    expect(at(-10).result.value).toBeCloseTo(Math.sqrt(200) * 0.562341, 5);
    expect(at(-5)).toMatchObject({ commonPractice: true, sources: ['sheet'] });
    expect(at(-5).cautions).toEqual(expect.arrayContaining(['bridged-outputs', 'hearing', 'battery-drain']));
    expect(lineText(lineTexts(), 'gain-target').note).toMatch(/true-rms.*never put the clip/s);
  });
  test('a tone that would clip the amplifier, or an overlap no one sets, is refused', () => {
    expect(refusalOf(gainTarget({ ...plan, overlapDb: 5 }))).toContain('at most -5 dB');
    expect(refusalOf(gainTarget({ ...plan, overlapDb: 20, toneDbfs: -20 }))).toContain('0 to 15 dB');
  });
  test('the step is at the lower end of the range, and a tone hotter than the bench’s is refused', () => {
    const step = characteristic('highest-clean-step', 24, 'step', 0, { signalDbfs: -3 });
    const unsure = { ...step, expandedUncertainty: 1, standardUncertainty: 0.5, coverageFactor: 2 };
    expect(linesOf(gainStep(step, -3)).result.value).toBe(24);
    expect(linesOf(gainStep(unsure, -6)).result).toMatchObject({ value: 23, bound: 'at-most' });
    expect(refusalOf(gainStep(step, 0))).toContain('at most -3 dB');
  });
});

describe('headroom', () => {
  // An ideal unit of 2 dB a step that clips above step 25, with 6 dB at 80 Hz: three steps of 2 dB.
  const boosted = (gainDb: number) =>
    characterise('p', [responseRun((hz) => gainDb / (1 + (4 * Math.log2(hz / 80)) ** 2))], unit);
  const lossOf = (gainDb: number) => {
    const output = boosted(gainDb);
    return linesOf(
      headroom(value(output, 'highest-clean-step'), found(output, 'boosted-clean-step'), output),
    );
  };
  test('6 dB of boost on a ceiling at step 25 costs the steps it takes, 2 dB each', () => {
    const lines = lossOf(6);
    expectWellTold(lines);
    const clips = line(lines, 'boosted-band-clips').result.value;
    expect(clips).toBeGreaterThanOrEqual(23);
    expect(clips).toBeLessThanOrEqual(24);
    expect(line(lines, 'headroom-loss').result.value).toBeCloseTo(-2 * (25 - (clips - 1)), 2);
    expect(line(lines, 'headroom-loss').readings.length).toBeGreaterThan(0);
  });
  test('more boost never costs less', () => {
    const losses = [0, 2, 4, 6, 8, 10].map((gainDb) => line(lossOf(gainDb), 'headroom-loss').result.value);
    losses.forEach((loss, index) => {
      expect(loss).toBeLessThanOrEqual((losses[index - 1] ?? 0) + 1e-9);
    });
    expect(losses.at(-1)).toBeLessThan(-6);
  });
  test('without a response, or without levels between the steps, it is refused with the reason', () => {
    const output = boosted(6);
    const step = value(output, 'highest-clean-step');
    expect(refusalOf(headroom(step, undefined, output))).toContain('needs a response');
    const lower = characteristic('boosted-clean-step', 20, 'step');
    expect(refusalOf(headroom(step, lower, { levelByStep: [], stepLaw: [] }))).toContain('steps 20 and 25');
  });
  test('where a step was not read its level follows from the step law', () => {
    const output = boosted(6);
    const gaps = { ...output, levelByStep: output.levelByStep.filter(({ step }) => step !== 20) };
    const lower = characteristic('boosted-clean-step', 20, 'step');
    const lines = linesOf(headroom(value(output, 'highest-clean-step'), lower, gaps));
    expect(line(lines, 'headroom-loss').result.value).toBeCloseTo(-10, 2);
    expect(line(lines, 'headroom-loss').formula).toBe('n_1·d_1');
  });
  test('a step that is not certain by one makes the loss uncertain by about a step of 2 dB', () => {
    const output = boosted(6);
    const lossWith = (range: number) => {
      const step = characteristic('boosted-clean-step', 22, 'step', range);
      const lines = linesOf(headroom(value(output, 'highest-clean-step'), step, output));
      return line(lines, 'headroom-loss').result.expandedUncertainty;
    };
    expect(lossWith(1)).toBeGreaterThan(lossWith(0) + 1);
    expect(lossWith(1)).toBeLessThan(2.5);
  });
  test('up the scale the level rises by as much as it falls down it', () => {
    const output = boosted(6);
    const words = { id: 'change', symbol: 'L' };
    const change = (from: number, to: number, scale: VolumeScale) =>
      levelChange(scale, from, to, words)?.result.value;
    for (const scale of [output, { ...output, levelByStep: [] }]) {
      expect(change(10, 20, scale)).toBeCloseTo(20, 2);
      expect(change(20, 10, scale)).toBeCloseTo(-20, 2);
      expect(change(12, 12, scale)).toBeCloseTo(0, 9);
    }
  });
});
