/** Holds for every line: it says what it is, what it assumes, and what it rests on. */
import { expect } from 'vitest';
import { readFormula } from '../../../src/decide/plan/formula.ts';
import type { ArithmeticLine, Refusal } from '../../../src/decide/plan/line.ts';
import { written } from '../../../src/decide/plan/written.ts';
import type { Characteristic, CharacteristicName, Unit } from '../../../src/measure/index.ts';
import { limits, quantity } from '../../../src/measure/index.ts';
import { lineText, lineTexts } from '../../../src/views/line-texts.ts';

export function expectWellTold(lines: readonly ArithmeticLine[]): void {
  const texts = lineTexts();
  expect(new Set(lines.map((line) => line.id)).size).toBe(lines.length);
  for (const line of lines) {
    expect(line.id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(lineText(texts, line.id).note.length, line.id).toBeGreaterThan(20);
    expect(Number.isFinite(line.result.value), line.id).toBe(true);
    expect(line.result.expandedUncertainty, line.id).toBeGreaterThanOrEqual(0);
    const symbols = line.given.map((one) => one.symbol);
    expect(new Set(symbols).size, `${line.id}: symbols differ`).toBe(symbols.length);
    const { symbols: shown, values } = written(line);
    expect(shown.startsWith(`${line.symbol} = `), line.id).toBe(true);
    expect(values === undefined, line.id).toBe(line.isLookedUp);
    // A page sets a formula in print and leaves a rule in words as it stands: in any language it must know which it is.
    const read = (): unknown => readFormula(line.formula);
    if (line.isInWords) expect(read, line.id).toThrow();
    else expect(read, line.id).not.toThrow();
    // With its values put in no symbol of the formula is left: subscripts are in no unit.
    if (values !== undefined) expect(values, line.id).not.toContain('_');
    for (const one of line.given) {
      expect(line.readings).toEqual(expect.arrayContaining([...one.readings]));
      expect(line.sources).toEqual(expect.arrayContaining([...one.sources]));
    }
  }
}

/** The lines; fails where the arithmetic was refused. */
export function linesOf<T>(answer: T | Refusal): T {
  if (typeof answer === 'object' && answer !== null && 'refused' in answer) throw new Error(answer.refused);
  return answer as T;
}

export function refusalOf(answer: unknown): string {
  if (typeof answer === 'object' && answer !== null && 'refused' in answer) return String(answer.refused);
  throw new Error('not refused');
}

export function line(lines: readonly ArithmeticLine[], id: string): ArithmeticLine {
  const found = lines.find((one) => one.id === id);
  if (!found) throw new Error(`no line ${id}`);
  return found;
}

/** A characteristic as a bench would give it, within ± `halfWidth` of its value. */
export function characteristic(
  name: CharacteristicName,
  value: number,
  unit: Unit,
  halfWidth = 0,
  { step, signalDbfs = 0 }: { step?: number; signalDbfs?: number } = {},
): Characteristic {
  const known = quantity(value, unit, halfWidth === 0 ? [] : [limits('of the bench', halfWidth, 'bench')]);
  const { standardUncertainty, coverageFactor, expandedUncertainty, bound, budget } = known;
  return {
    ...{ value, unit, standardUncertainty, coverageFactor, expandedUncertainty, bound, budget },
    name,
    conditions: { loadOhms: 4, supplyVolts: 14.4, signalDbfs, ...(step === undefined ? {} : { step }) },
    readings: ['bench:12'],
    sources: ['bench'],
  };
}
