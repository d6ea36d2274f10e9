import { expect, test } from 'vitest';
import {
  buildCodeIndex,
  characterCounts,
  fewestSlips,
  strangerLengthChance,
} from '../../src/codes/code-index.ts';
import { generalDisplay } from '../../src/codes/confusion.ts';
import { entry, fiveFamilies, lookAlikeMisreads } from './sample.ts';

test('each way of writing a code is indexed once', () => {
  const index = buildCodeIndex([entry('AB-12', 'one', ['ab12', 'AB12X', '-']), entry('--'), entry('C34')]);
  expect(
    index.spellings.map(({ canonical, displayed, entryIndex }) => [canonical, displayed, entryIndex]),
  ).toEqual([
    ['AB12', true, 0],
    ['AB12X', false, 0],
    ['C34', true, 2],
  ]);
});

test('counts of characters never claim a slip where there are only look-alikes', () => {
  for (const { code } of fiveFamilies()) {
    const canonical = code.replace('-', '');
    const known = characterCounts(canonical, generalDisplay);
    for (const typed of lookAlikeMisreads(canonical)) {
      expect(fewestSlips(characterCounts(typed, generalDisplay), known), `${typed} for ${code}`).toBe(0);
    }
  }
});

test('they count what the code lacks', () => {
  const counts = (text: string) => characterCounts(text, generalDisplay);
  expect(fewestSlips(counts('AAB7'), counts('A811'))).toBe(2);
  expect(fewestSlips(counts('🏍A'), counts('A'))).toBe(0);
});

test('an unknown code is as long as known ones, and its length has a probability', () => {
  const index = buildCodeIndex([entry('ABC123'), entry('DEF456'), entry('GHI7890')]);
  const chances = Array.from({ length: 60 }, (_, length) => strangerLengthChance(index, length));
  expect(chances.indexOf(Math.max(...chances))).toBe(6);
  const sum = chances.reduce((total, chance) => total + chance, 0);
  expect(sum).toBeLessThanOrEqual(1);
  expect(sum).toBeGreaterThan(0.98);
});
