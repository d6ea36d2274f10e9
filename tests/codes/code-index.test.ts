import { expect, test } from 'vitest';
import { buildCodeIndex } from '../../src/codes/code-index.ts';
import { lengthChance, Positions, strangerRatio } from '../../src/codes/strangers.ts';
import { entry } from './sample.ts';

test('each way of writing a code is indexed once', () => {
  const index = buildCodeIndex([entry('AB-12', 'one', ['ab12', 'AB12X', '-']), entry('--'), entry('C34')]);
  const spellings = index.groups
    .flatMap((group) => group.spellings)
    .map(({ canonical, displayed, entryIndex }) => [canonical, displayed, entryIndex]);
  expect(spellings).toHaveLength(3);
  expect(spellings).toEqual(
    expect.arrayContaining([
      ['AB12', true, 0],
      ['AB12X', false, 0],
      ['C34', true, 2],
    ]),
  );
});

test('an unknown code is as long as known ones, and its length has a probability', () => {
  const chances = Array.from({ length: 60 }, (_, typed) => lengthChance(typed, 6));
  expect(chances.indexOf(Math.max(...chances))).toBe(6);
  const sum = chances.reduce((total, chance) => total + chance, 0);
  expect(sum).toBeLessThanOrEqual(1);
  expect(sum).toBeGreaterThan(0.97);
});

test('what stands at each position has a probability', () => {
  const positions = Positions.of(['A1', 'A2', 'B7']);
  const symbols = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789|';
  const sum = Array.from(symbols, (symbol) => positions.ratio(symbol) / 37).reduce((a, b) => a + b, 0);
  expect(sum).toBeCloseTo(1, 12);
  const order = ['A', 'B', 'Q', '7'].map((symbol) => positions.ratio(symbol));
  expect(order).toEqual([...order].sort((a, b) => b - a));
});

test('an unknown code made as those of a family is likelier than one that is not', () => {
  const codes = Array.from({ length: 50 }, (_, i) => entry(`KX${1000 + 37 * i}`));
  const { familyLengths } = buildCodeIndex(codes);
  const ratio = (text: string) => strangerRatio(familyLengths, text, undefined);
  expect(ratio('KX4455')).toBeGreaterThan(100 * ratio('QW4455'));
  expect(ratio('KX4455')).toBeGreaterThan(100 * ratio('KXABCD'));
});
