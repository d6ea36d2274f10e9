import { expect, test } from 'vitest';
import { formatHz, formatNumber, formatQuantity, type Quantity } from '../../src/measure/index.ts';

function shown(
  value: number,
  unit: Quantity['unit'],
  expandedUncertainty: number,
  bound: Quantity['bound'] = 'exact',
): string {
  return formatQuantity({
    value,
    unit,
    expandedUncertainty,
    standardUncertainty: expandedUncertainty / 2,
    coverageFactor: 2,
    bound,
    budget: [],
  }).replaceAll('\u00a0', ' ');
}

// Rounding after GUM 7.2.6: at most two significant digits of the uncertainty, the value to the same place.
test.each([
  [3.6214, 'V', 0.052, 'exact', '3.62 V ± 0.06 V'],
  [3.6214, 'V', 0.0123, 'exact', '3.621 V ± 0.013 V'],
  [-6.012, 'dB', 0.04, 'exact', '−6.01 dB ± 0.04 dB'],
  [-0.001, 'dB', 0.04, 'exact', '0.00 dB ± 0.04 dB'],
  [14_618, 'Hz', 233, 'exact', '14.62 kHz ± 0.24 kHz'],
  [125.63, 'Hz', 0.18, 'exact', '125.6 Hz ± 0.2 Hz'],
  [19.9526, 'Hz', 0, 'at-most', 'at most 20 Hz'],
  [-40, 'dB', 0, 'at-most', 'at most −40.0 dB'],
  [24, 'step', 1, 'exact', 'step 24 ± 1'],
  [20, 'step', 0, 'at-least', 'at least step 20'],
] as const)('%s %s ± %s (%s) is shown as “%s”', (value, unit, uncertainty, bound, text) => {
  expect(shown(value, unit, uncertainty, bound)).toBe(text);
});

test('numbers have a true minus sign and no negative zero', () => {
  expect(formatNumber(-1.25, 1)).toBe('−1.3');
  expect(formatNumber(-0.04, 1)).toBe('0.0');
});

test('frequencies off the third-octave centres keep three digits', () => {
  expect(formatHz(12_345)).toBe('12.3\u00a0kHz');
});
