/** Volts, loads and times of the planner against standards. */
import { describe, expect, test } from 'vitest';
import {
  allowedTime,
  fullPowerVolts,
  musicShare,
  oneSpeaker,
  speakerLoad,
} from '../../src/decide/plan/index.ts';
import { given, workedOut } from '../../src/decide/plan/line.ts';

const amplifier = { ratedWatts: 100, ratedOhms: 4, leastOhms: 2, sources: [] };

test('1 W into 8 Ω is 2.828 V, the volts sensitivities are stated at (IEC 60268-5, from memory; recomputed)', () => {
  expect(fullPowerVolts(1, 8, []).result.value).toBeCloseTo(2.828427, 6);
});

test.each([
  [4, 3.2],
  [8, 6.4],
])('a speaker rated %s Ω may fall to %s Ω (IEC 60268-5, 16.1, as transcribed)', (ohms, lowest) => {
  const { lines } = speakerLoad(oneSpeaker('front left', ohms), amplifier, []);
  expect(lines.find(({ id }) => id === 'lowest-impedance')?.result.value).toBeCloseTo(lowest, 12);
});

test('one-eighth of rated power stands for music (16 CFR 432.3(c))', () => {
  expect(musicShare).toBe(0.125);
});

describe('NIOSH 98-126 (1998), table 1-1, as transcribed', () => {
  test.each([
    [85, 480],
    [88, 240],
    [94, 60],
    [100, 15],
  ])('%s dB(A): %s minutes a day', (level, minutes) => {
    const at = workedOut({
      id: 'level',
      symbol: 'L',
      formula: 'L_0',
      given: [given('L_0', 'level', level, 'dB')],
      unit: 'dB',
    });
    expect(allowedTime(at).result).toMatchObject({ value: minutes, bound: 'at-most' });
  });
});
