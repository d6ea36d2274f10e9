/** Speakers on an amplifier, and how loud and how long. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hearing } from '../../../src/decide/plan/hearing.ts';
import { networkOf, type Wiring } from '../../../src/decide/plan/speaker-wiring.ts';
import { speakerLoad } from '../../../src/decide/plan/speakers.ts';
import { expectWellTold, line } from './told.ts';

const amplifier = { ratedWatts: 100, ratedOhms: 4, leastOhms: 2, sources: ['amplifier-sheet'] };
const four = (id: string): Wiring => ({ id, ohms: 4 });

describe('impedances', () => {
  // Ohm's law and Kirchhoff's.
  test.each([
    ['one of 4 Ω', four('front left'), 4, 3.2],
    ['two in series', { series: [four('a'), four('b')] }, 8, 6.4],
    ['two in parallel', { parallel: [four('a'), four('b')] }, 2, 1.6],
    [
      'two pairs',
      { parallel: [{ series: [four('a'), four('b')] }, { series: [four('c'), four('d')] }] },
      4,
      3.2,
    ],
    ['4 Ω and 8 Ω in parallel', { parallel: [four('a'), { id: 'b', ohms: 8 }] }, 8 / 3, 6.4 / 3],
  ] as const)('%s', (_, wiring, ohms, lowest) => {
    const { lines } = speakerLoad(networkOf(wiring), amplifier, ['speaker-sheet']);
    expectWellTold(lines);
    expect(line(lines, 'load-impedance').result.value).toBeCloseTo(ohms, 12);
    expect(line(lines, 'lowest-impedance').result.value).toBeCloseTo(lowest, 12);
    expect(line(lines, 'power-into-load').result.value).toBeCloseTo(400 / ohms, 9);
    expect(line(lines, 'power-into-load').sources).toEqual(['amplifier-sheet', 'speaker-sheet']);
  });
  test('three of 4 Ω in parallel are less than an amplifier for 2 Ω may drive; two are not', () => {
    const [a, b, c] = [four('a'), four('b'), four('c')];
    expect(speakerLoad(networkOf({ parallel: [a, b, c] }), amplifier, []).drives).toBe(false);
    expect(speakerLoad(networkOf({ parallel: [a, b] }), amplifier, []).drives).toBe(true);
    const six = {
      parallel: [
        { id: 'a', ohms: 6 },
        { id: 'b', ohms: 6 },
        { id: 'c', ohms: 6 },
      ],
    };
    expect(speakerLoad(networkOf(six), amplifier, []).drives).toBe(true);
  });

  const { wiring } = fc.letrec<{ wiring: Wiring; group: Wiring[] }>((tie) => ({
    wiring: fc.oneof(
      { depthSize: 'small', withCrossShrink: true },
      fc.integer({ min: 2, max: 16 }).map((ohms) => ({ id: `speaker of ${ohms} Ω`, ohms })),
      tie('group').map((series) => ({ series })),
      tie('group').map((parallel) => ({ parallel })),
    ),
    group: fc.array(tie('wiring'), { minLength: 1, maxLength: 3 }),
  }));
  test('any wiring: the powers add up, and the formula shown is the impedance', () => {
    const ohmsOf = (one: Wiring): number => {
      if ('ohms' in one) return one.ohms;
      if ('series' in one) return one.series.reduce((sum, part) => sum + ohmsOf(part), 0);
      return 1 / one.parallel.reduce((sum, part) => sum + 1 / ohmsOf(part), 0);
    };
    fc.assert(
      fc.property(wiring, (one) => {
        const { lines } = speakerLoad(networkOf(one), amplifier, []);
        expect(line(lines, 'load-impedance').result.value).toBeCloseTo(ohmsOf(one), 9);
        const each = lines.filter(({ id }) => id.startsWith('power-of-speaker'));
        const sum = each.reduce((watts, { result }) => watts + result.value, 0);
        expect(sum).toBeCloseTo(line(lines, 'power-into-load').result.value, 9);
      }),
      { seed: 20260314 },
    );
  });
});

describe('at the ear', () => {
  const one = {
    sensitivityDb: 90,
    at: '1 W',
    ratedOhms: 4,
    watts: 1,
    distanceM: 1,
    speakers: 1,
    sources: ['speaker-sheet'],
  } as const;
  test('1 W at 1 m is the sensitivity; ten times the power 10 dB more; twice the distance 6.02 dB less', () => {
    const level = (over: object) => line(hearing({ ...one, ...over }), 'level-of-one').result.value;
    expect(level({})).toBe(90);
    expect(level({ watts: 10 })).toBeCloseTo(100, 12);
    expect(level({ distanceM: 2 })).toBeCloseTo(90 - 6.0206, 4);
    // 2.83 V into 4 Ω is 2 W.
    expect(level({ at: '2.83 V' })).toBeCloseTo(90 - 3.0103, 4);
    expect(level({ at: '2.83 V', ratedOhms: 8 })).toBeCloseTo(90, 12);
  });
  test('two speakers: 3.01 dB more each with its own signal, 6.02 dB in step', () => {
    const lines = hearing({ ...one, speakers: 2 });
    expectWellTold(lines);
    expect(line(lines, 'level-incoherent').result.value).toBeCloseTo(93.0103, 4);
    expect(line(lines, 'level-coherent').result.value).toBeCloseTo(96.0206, 4);
    for (const each of lines) expect(each.cautions).toContain('hearing');
  });
  test('louder never lasts longer, and never more than a day', () => {
    const timeOf = (watts: number): number =>
      line(hearing({ ...one, watts: watts / 1000 }), 'allowed-time').result.value;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 1e6 }), (watts, more) => {
        expect(timeOf(watts + more)).toBeLessThanOrEqual(timeOf(watts));
        expect(timeOf(watts)).toBeLessThanOrEqual(1440);
      }),
      { seed: 20260314 },
    );
  });
});
