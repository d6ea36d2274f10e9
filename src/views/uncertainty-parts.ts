/** What an uncertainty is made of, in words. */
import { formatNumber } from '../measure/format.ts';
import type { Quantity } from '../measure/quantity.ts';
import { phrase } from '../words/index.ts';

/** Parts below this share of the variance are left out. */
const leastShare = 0.005;

/**
 * “signal level 63 %, voltmeter gain 33 %, repeats 3 %; k = 1.83”: parts of one name together, by their share
 * of the variance, largest first. Empty where there is no budget.
 */
export function uncertaintyParts({ budget, standardUncertainty, coverageFactor }: Quantity): string {
  if (budget.length === 0 || !(standardUncertainty > 0)) return '';
  const shares = new Map<string, number>();
  for (const { name, standardUncertainty: part } of budget) {
    shares.set(name, (shares.get(name) ?? 0) + (part / standardUncertainty) ** 2);
  }
  const parts = [...shares]
    .sort(([, a], [, b]) => b - a)
    .filter(([, share]) => share >= leastShare)
    .map(([name, share]) => `${influenceLabels[name]?.() ?? name} ${formatNumber(share * 100, 0)}\u00a0%`);
  return `${parts.join(', ')}; k\u00a0=\u00a0${formatNumber(coverageFactor, 2)}`;
}

/** The influences that budgets name, in the language of the site. */
const influenceLabels: Readonly<Record<string, () => string>> = {
  'signal level': () => phrase('signal level'),
  'voltmeter gain': () => phrase('voltmeter gain'),
  load: () => phrase('load'),
  counts: () => phrase('counts'),
  resolution: () => phrase('resolution'),
  repeats: () => phrase('repeats'),
  interpolation: () => phrase('interpolation'),
  ripple: () => phrase('ripple'),
  'between benches': () => phrase('between benches'),
  'level of the pass band': () => phrase('level of the pass band'),
  'spacing of the frequencies played': () => phrase('spacing of the frequencies played'),
  'departure from a straight slope': () => phrase('departure from a straight slope'),
};
