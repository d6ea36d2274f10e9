import { describe, expect, test } from 'vitest';
import { likelihood } from '../../src/codes/likelihood.ts';
import { modelOf } from '../../src/codes/screens.ts';
import { lettersAndDigits } from './sample.ts';

const alphabet = `${lettersAndDigits}|`;

/** Sum over every text of up to so many characters of the alphabet. */
function sumOverTexts(code: string, longest: number, mode: 'complete' | 'prefix'): number {
  let sum = 0;
  let texts = [''];
  for (let length = 0; length <= longest; length += 1) {
    for (const text of texts) sum += likelihood(text, code, mode);
    if (length < longest) texts = texts.flatMap((text) => Array.from(alphabet, (next) => text + next));
  }
  return sum;
}

describe('it is a probability', () => {
  // Longer texts than these come of such codes less than once in 1000. What else is missing is zeros typed in
  // front of codes that have none (1 in 100) and early stops before the first character (3 in 100 at most).
  test.each([
    ['M', 'complete'],
    ['8', 'complete'],
    ['RN', 'complete'],
    ['A0', 'complete'],
    ['M', 'prefix'],
    ['A0', 'prefix'],
    ['0A', 'complete'],
  ] as const)('all texts typed for %s (%s) have it together', (code, mode) => {
    const sum = sumOverTexts(code, 3, mode);
    expect(sum).toBeLessThanOrEqual(1 + 1e-12);
    expect(sum).toBeGreaterThan(mode === 'complete' ? 0.98 : 0.95);
  });
});

describe('what is likelier', () => {
  test('reading right, then a common look-alike, then a drop or swap, then any other character', () => {
    const order = ['KX4812', 'KX4B12', 'KX412', 'KX8412', 'KX4712', 'KX4A71'].map((typed) =>
      likelihood(typed, 'KX4812'),
    );
    expect(order).toEqual([...order].sort((a, b) => b - a));
    expect(new Set(order).size).toBe(order.length);
  });
  test('look-alikes as likely as tabulated', () => {
    // One factor differs: 0.08 against reading 8 right, what its other events leave (last character: no swap).
    const smooth = modelOf('anti-aliased');
    const [read, misread] = ['A8', 'AB'].map((typed) => likelihood(typed, 'A8', 'complete', smooth));
    const right = 1 - (smooth.anySeen['8'.charCodeAt(0)] ?? 0) - 0.01 - 0.005 - 0.005;
    expect((misread ?? 0) / (read ?? 1)).toBeCloseTo((0.08 + 0.01 / 36) / right, 3);
  });
  test('a complete match wins over a beginning, a short rest over a long one', () => {
    const ofRest = (rest: string) => likelihood('KX48', `KX48${rest}`, 'prefix');
    const order = ['', '1', '12', '123', '1234'].map(ofRest);
    expect(order).toEqual([...order].sort((a, b) => b - a));
    expect(ofRest('1234') / ofRest('123')).toBeCloseTo(0.7, 2);
    expect(likelihood('KX48', 'KX481234')).toBeLessThan(1e-6);
  });
});
