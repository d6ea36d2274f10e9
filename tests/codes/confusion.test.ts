import { describe, expect, test } from 'vitest';
import { confusionModel } from '../../src/codes/confusion.ts';
import { dotsApart } from '../../src/codes/displays/dot-matrix.ts';
import { strokesApart } from '../../src/codes/displays/seven-segment.ts';
import { anyDisplay, type Display, modelOf } from '../../src/codes/index.ts';

const displays: Display[] = ['dot-matrix', 'seven-segment', 'anti-aliased'];
const seen = (display: Display | undefined, shown: string, typed: string): number =>
  modelOf(display).seen[shown.charCodeAt(0) * 128 + typed.charCodeAt(0)] ?? 0;

describe.each(displays)('%s', (display) => {
  // UTS #39 (0/O, 1/I) and OCR tables: these hold on every display.
  test.each(['0O', '0D', '0Q', '1I', '5S', '8B', '2Z', '6G'])('%s are taken for each other', (pair) => {
    const [a, b] = [pair.charAt(0), pair.charAt(1)];
    // A stroke drawn as 0, 1, 5, 8, 2: all but Q, whose small form seven strokes draw like a 9.
    if (display === 'seven-segment' && pair === '0Q')
      return expect(seen(display, '9', 'Q')).toBeGreaterThan(0);
    expect(seen(display, a, b)).toBeGreaterThan(0.009);
    expect(seen(display, b, a)).toBeGreaterThan(0.009);
  });
  test('a 1 is taken for a small l, and a small l for a 1', () => {
    expect(seen(display, '1', 'L')).toBeGreaterThan(0.009);
    expect(seen(display, 'l', '1')).toBeGreaterThan(0.009);
  });
  test('no character is taken for others more often than read right', () => {
    for (const any of modelOf(display).anySeen) expect(any).toBeLessThan(0.4);
  });
  test('what is taken for anything else is the sum of what it is taken for', () => {
    const { anySeen, seen: table } = modelOf(display);
    for (const shown of '08BbIl7') {
      const at = shown.charCodeAt(0);
      let sum = 0;
      for (let typed = 0; typed < 128; typed += 1) sum += table[at * 128 + typed] ?? 0;
      expect(anySeen[at]).toBeCloseTo(sum, 12);
    }
  });
});

describe('seven strokes', () => {
  // Unicode's segmented digits, U+1FBF0 to U+1FBF9: 8 lights all seven strokes, 0 all but the middle one.
  test.each([
    ['8', '0', 1],
    ['8', '1', 5],
    ['8', '6', 1],
    ['5', '6', 1],
    ['3', '9', 1],
    ['1', '7', 1],
    ['2', '5', 4],
    ['0', 'O', 0],
    ['8', 'B', 0],
    ['8', 'b', 2],
    ['6', 'b', 0], // where the 6 has no tail
    ['0', 'd', 3],
  ])('%s and %s: %i strokes', (one, other, apart) => {
    expect(strokesApart(one, other)).toBe(apart);
    expect(strokesApart(other, one)).toBe(apart);
  });
  test('the more strokes differ the rarer', () => {
    const order = ['B', '0', '3', '2', '1'].map((typed) => seen('seven-segment', '8', typed));
    expect(order[0]).toBeGreaterThan(order[1] ?? 1);
    expect(order[1]).toBeGreaterThan(order[4] ?? 1);
  });
  test('case decides what is shown', () => {
    expect(seen('seven-segment', 'B', '8')).toBeGreaterThan(0.1);
    expect(seen('seven-segment', 'b', '8')).toBeLessThan(0.002);
    expect(seen('seven-segment', 'b', '6')).toBeGreaterThan(0.05);
  });
});

describe('dots', () => {
  test('a character is nearest to itself, and apart both ways alike', () => {
    expect(dotsApart('8', '8')).toBe(0);
    expect(dotsApart('8', 'B')).toBeCloseTo(dotsApart('B', '8'), 12);
  });
  test('look-alikes of OCR tables are nearer than most', () => {
    const plain = dotsApart('A', 'T');
    for (const pair of ['0O', 'OQ', '1I', '5S', '8B', '2Z', '6G']) {
      expect(dotsApart(pair.charAt(0), pair.charAt(1)), pair).toBeLessThan(plain / 2);
    }
  });
  test('characters in cells of their own make no digraph', () => {
    expect(modelOf('dot-matrix').digraphs).toEqual([]);
    expect(modelOf('anti-aliased').digraphs.map(({ pair, single }) => pair + single)).toEqual(['RNM']);
  });
});

test('where no display is told, the mean of all', () => {
  const mean = displays.reduce((sum, display) => sum + seen(display, '8', 'B') / 3, 0);
  expect(seen(undefined, '8', 'B')).toBeCloseTo(mean, 12);
  expect(modelOf(undefined)).toBe(anyDisplay);
});

test('pairs chain into one class, in whatever order they come; rare ones do not', () => {
  const { representative, digraphs } = confusionModel(
    'own',
    [
      ['8', 'B', 0.3],
      ['6', 'G', 0.1],
      ['B', '6', 0.05],
      ['6', '5', 0.001],
    ],
    [['VV', 'W', 0.02]],
  );
  expect(new Set(['8', 'B', '6', 'G', 'b'].map((c) => representative.get(c))).size).toBe(1);
  expect(representative.get('5')).toBeUndefined();
  expect(digraphs).toEqual([
    { pair: 'VV', single: 'W', probability: 0.02, codes: { first: 86, second: 86, single: 87 } },
  ]);
});
