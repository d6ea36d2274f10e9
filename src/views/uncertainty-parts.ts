/** What an uncertainty is made of, in words. */
import { formatNumber } from '../measure/format.ts';
import type { Quantity } from '../measure/quantity.ts';

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
    .map(([name, share]) => `${name} ${formatNumber(share * 100, 0)}\u00a0%`);
  return `${parts.join(', ')}; k\u00a0=\u00a0${formatNumber(coverageFactor, 2)}`;
}
