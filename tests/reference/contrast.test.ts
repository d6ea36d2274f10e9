/**
 * Contrast of colours, held against WCAG 2.2: its definitions of “relative luminance” and “contrast ratio”
 * (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio), and greys at the limit of 4.5:1 that its readers know by heart.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contrast, luminance, nearestWithContrast } from '../../src/check/contrast.ts';
import { papers } from '../../src/check/papers.ts';

test('luminance is 0 for the darkest black and 1 for the lightest white; each channel has its weight', () => {
  expect(luminance('#000000')).toBe(0);
  expect(luminance('#ffffff')).toBeCloseTo(1, 12);
  expect(luminance('#ff0000')).toBeCloseTo(0.2126, 12);
  expect(luminance('#00FF00')).toBeCloseTo(0.7152, 12);
  expect(luminance('#0000ff')).toBeCloseTo(0.0722, 12);
});

test.each([
  // By the definition: (1 + 0.05)/(0 + 0.05).
  ['#000000', '#ffffff', 21],
  // Worked values, from memory: the lightest grey that is text on white, and the next one, which is not.
  ['#767676', '#ffffff', 4.54],
  ['#777777', '#ffffff', 4.48],
  ['#949494', '#ffffff', 3.03],
  ['#ff0000', '#ffffff', 4.0],
  ['#0000ff', '#ffffff', 8.59],
])('%s on %s: %s to 1, either way round', (one, other, ratio) => {
  expect(contrast(one, other)).toBeCloseTo(ratio, 2);
  expect(contrast(other, one)).toBe(contrast(one, other));
});

test('the colour proposed has the contrast, and one step less of black or white has not', () => {
  const channel = fc.integer({ min: 0, max: 255 });
  const colours = fc
    .tuple(channel, channel, channel)
    .map((all) => `#${all.map((one) => one.toString(16).padStart(2, '0')).join('')}`);
  let changed = 0;
  fc.assert(
    fc.property(colours, fc.constantFrom(...Object.values(papers)), (colour, paper) => {
      const proposed = nearestWithContrast(colour, paper, 3);
      expect(contrast(proposed, paper)).toBeGreaterThanOrEqual(3);
      if (proposed === colour) return;
      changed += 1;
      expect(contrast(colour, paper)).toBeLessThan(3);
      expect(contrast(proposed, paper)).toBeLessThan(3.25);
    }),
  );
  expect(changed).toBeGreaterThan(5);
});
