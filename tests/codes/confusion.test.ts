import { describe, expect, test } from 'vitest';
import { confusionModel, generalDisplay } from '../../src/codes/confusion.ts';

const seen = (shown: string, taken: string) =>
  generalDisplay.seen[shown.charCodeAt(0) * 128 + taken.charCodeAt(0)];

describe('the general display', () => {
  test('a pair is mistaken both ways alike', () => {
    expect(seen('8', 'B')).toBe(0.08);
    expect(seen('B', '8')).toBe(0.08);
    expect(seen('8', '3')).toBe(0);
    expect(seen('8', '8')).toBe(0);
  });
  test('what is taken for anything else is the sum of what it is taken for', () => {
    let total = 0;
    for (const taken of 'ODQ') total += seen('0', taken) ?? 0;
    expect(generalDisplay.anySeen['0'.charCodeAt(0)]).toBeCloseTo(total, 12);
    expect(total).toBeCloseTo(0.08, 12);
    expect(generalDisplay.anySeen['7'.charCodeAt(0)]).toBe(0);
  });
  test('no character is misread more often than one time in eight', () => {
    expect(Math.max(...generalDisplay.anySeen)).toBeLessThan(0.125);
  });
  test('its classes are those of the pairs', () => {
    const classes: Record<string, string> = {};
    for (const [character, name] of generalDisplay.representative) {
      classes[name] = (classes[name] ?? '') + character;
    }
    expect(classes).toEqual({ 0: '0ODQ', 1: '1IL|', 5: '5S', 8: '8B', 2: '2Z', 6: '6G' });
  });
});

test('a display of its own: pairs chain into one class, in whatever order they come', () => {
  const sevenSegment = confusionModel(
    'seven-segment',
    [
      ['8', 'B', 0.3],
      ['6', 'G', 0.1],
      ['B', '6', 0.05],
    ],
    [['VV', 'W', 0.02]],
  );
  expect(new Set(['8', 'B', '6', 'G'].map((c) => sevenSegment.representative.get(c))).size).toBe(1);
  expect(sevenSegment.digraphs).toEqual([
    { pair: 'VV', single: 'W', probability: 0.02, codes: { first: 86, second: 86, single: 87 } },
  ]);
});
