/** Currents, fuses and wires chosen together. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adviceTexts } from '../../../src/decide/plan/advice.ts';
import { bladeAmperes, type Feed, fuseAndWire } from '../../../src/decide/plan/fuse.ts';
import { type ArithmeticLine, given, workedOut } from '../../../src/decide/plan/line.ts';
import { charging, supplyCurrents, usualEfficiency } from '../../../src/decide/plan/supply.ts';
import { limits, quantity } from '../../../src/measure/index.ts';
import { expectWellTold, line, linesOf, refusalOf } from './told.ts';

function amperes(value: number, halfWidth = 0): ArithmeticLine {
  const stated = quantity(value, 'A', halfWidth === 0 ? [] : [limits('stated', halfWidth)]);
  return workedOut({
    id: 'current',
    symbol: 'I',
    formula: 'I_0',
    given: [given('I_0', 'current', stated, 'A', ['sheet'])],
    unit: 'A',
  });
}

const feed = (current: ArithmeticLine, over: Partial<Feed> = {}): Feed => ({
  current,
  lengthM: 2,
  supplyVolts: 14.4,
  mostDropPercent: 3,
  conductorCelsius: 20,
  aroundCelsius: 30,
  advice: adviceTexts(),
  ...over,
});

describe('currents', () => {
  test('400 W of class D at 14.4 V: 32.68 A at a full tone, 4.63 A at music', () => {
    const [full, music] = supplyCurrents({
      amplifierClass: 'D',
      ratedWatts: 400,
      supplyVolts: 14.4,
      sources: ['sheet'],
    });
    expectWellTold([full, music]);
    expect(full.result.value).toBeCloseTo(400 / 0.85 / 14.4, 9);
    // 16 CFR 432.3(c): one-eighth of the rated power.
    expect(music.result.value).toBeCloseTo(50 / 0.75 / 14.4, 9);
    expect(full).toMatchObject({ commonPractice: true, sources: ['sheet'] });
  });
  test('what is carried on from common practice says so', () => {
    const [full] = supplyCurrents({ amplifierClass: 'D', ratedWatts: 200, supplyVolts: 14.4, sources: [] });
    const fromPractice = linesOf(fuseAndWire(feed(full)));
    expect(line(fromPractice, 'wire-drop').commonPractice).toBe(true);
    expect(line(fromPractice, 'wire-resistance').commonPractice).toBe(false);
    expect(line(linesOf(fuseAndWire(feed(amperes(16)))), 'wire-drop').commonPractice).toBe(false);
  });
  test('class AB takes no more than an ideal class B stage gives: π/4, and π/4·√(1/8) at one-eighth', () => {
    expect(usualEfficiency.AB.full).toBeLessThan(Math.PI / 4);
    expect(usualEfficiency.AB.music).toBeLessThan((Math.PI / 4) * Math.sqrt(1 / 8));
  });
  test('the uncertainty of the supply goes into the current', () => {
    const supplyVolts = quantity(14, 'V', [limits('supply', 0.5)]);
    const [full] = supplyCurrents({ amplifierClass: 'AB', ratedWatts: 200, supplyVolts, sources: [] });
    const relative = full.result.expandedUncertainty / full.result.value;
    expect(relative).toBeCloseTo(supplyVolts.expandedUncertainty / 14, 6);
  });
  test('38 A of generator, 25 A of machine, 5 A of music: 8 A left; half of 20 A·h last a third of an hour', () => {
    const lines = charging(
      { generatorAmperes: 38, machineAmperes: 25, batteryAmpereHours: 20, sources: ['sheet'] },
      amperes(5),
    );
    expectWellTold(lines);
    expect(line(lines, 'charging-surplus').result.value).toBe(8);
    expect(line(lines, 'battery-time').result.value).toBeCloseTo(1 / 3, 12);
    for (const one of lines) expect(one.cautions).toContain('battery-drain');
  });
});

describe('fuse and wire', () => {
  test('16 A over 2 m: 20 A fuse, AWG 12', () => {
    const lines = linesOf(fuseAndWire(feed(amperes(16))));
    expectWellTold(lines);
    expect(line(lines, 'fuse').result.value).toBe(20);
    expect(line(lines, 'wire-gauge').result.value).toBe(12);
    expect(line(lines, 'fuse').cautions).toEqual(expect.arrayContaining(['fuse', 'disconnect-battery']));
  });
  test('in the heat, or far away, the wire is thicker', () => {
    const gauge = (over: Partial<Feed>): number =>
      line(linesOf(fuseAndWire(feed(amperes(16), over))), 'wire-gauge').result.value;
    // √((60 − 50)/30) of 30 A is 17.3 A, of 40 A 23.1 A.
    expect(gauge({ aroundCelsius: 50 })).toBe(8);
    expect(gauge({ lengthM: 6 })).toBe(8);
  });
  test('a current whose uncertainty reaches over a size takes the next fuse', () => {
    const fuse = (halfWidth: number): number =>
      line(linesOf(fuseAndWire(feed(amperes(16, halfWidth)))), 'fuse').result.value;
    expect(fuse(0)).toBe(20);
    expect(fuse(0.5)).toBe(25);
  });
  test('what a blade fuse, the table or the insulation does not cover is refused, with what to do', () => {
    expect(refusalOf(fuseAndWire(feed(amperes(33))))).toContain('licensed workshop');
    expect(refusalOf(fuseAndWire(feed(amperes(30), { lengthM: 60 })))).toContain('shorten it');
    expect(refusalOf(fuseAndWire(feed(amperes(5), { aroundCelsius: 60 })))).toContain('another way');
  });

  const hundredths = (least: number, most: number) =>
    fc.integer({ min: least * 100, max: most * 100 }).map((one) => one / 100);
  const anyFeed = fc.record({
    lengthM: hundredths(0.3, 8),
    supplyVolts: hundredths(11, 15),
    mostDropPercent: hundredths(1, 8),
    conductorCelsius: hundredths(0, 75),
    aroundCelsius: hundredths(0, 59),
  });
  test('the fuse is at least 125 % of the current and never above what the wire carries', () => {
    let chosen = 0;
    fc.assert(
      fc.property(hundredths(0.1, 35), hundredths(0, 2), anyFeed, (current, halfWidth, over) => {
        const lines = fuseAndWire(feed(amperes(current, halfWidth), over));
        if ('refused' in lines) return;
        chosen += 1;
        const fuse = line(lines, 'fuse').result.value;
        expect(bladeAmperes).toContain(fuse);
        expect(fuse).toBeGreaterThanOrEqual(1.25 * current * (1 - 1e-9));
        expect(fuse).toBeLessThanOrEqual(line(lines, 'wire-carries').result.value);
        expect(line(lines, 'wire-drop-share').result.value).toBeLessThanOrEqual(over.mostDropPercent);
      }),
      { numRuns: 500, seed: 20260314 },
    );
    expect(chosen).toBeGreaterThan(200);
  });
  test('a longer wire, a hotter place or more current never gets a thinner wire', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        hundredths(0.1, 30),
        hundredths(0, 5),
        hundredths(0, 20),
        anyFeed,
        (current, more, hotter, over) => {
          const gauge = (by: Partial<Feed>, extra = 0): number | undefined => {
            const lines = fuseAndWire(feed(amperes(current + extra), { ...over, ...by }));
            return 'refused' in lines ? undefined : line(lines, 'wire-gauge').result.value;
          };
          const before = gauge({});
          const harder = [
            gauge({ lengthM: over.lengthM + more }),
            gauge({ aroundCelsius: over.aroundCelsius + hotter }),
            gauge({ conductorCelsius: over.conductorCelsius + hotter }),
            gauge({}, more),
          ];
          for (const after of harder) {
            if (before === undefined) expect(after).toBeUndefined();
            else if (after !== undefined) {
              compared += 1;
              expect(after).toBeLessThanOrEqual(before);
            }
          }
        },
      ),
      { numRuns: 300, seed: 20260314 },
    );
    expect(compared).toBeGreaterThan(300);
  });
});
