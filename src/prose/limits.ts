/** The limits the characteristics are computed with, for prose that tells of them. */
import { cleanThdPercent, formatNumber, halfPowerDb, leastBoostDb, mutedBelowDb } from '../measure/index.ts';

const limits = {
  'clean-distortion': `${formatNumber(cleanThdPercent, 0)}\u00a0%`,
  corner: `${formatNumber(halfPowerDb, 0)}\u00a0dB`,
  'least-boost': `${formatNumber(leastBoostDb, 1)}\u00a0dB`,
  silent: `${formatNumber(mutedBelowDb, 0)}\u00a0dB`,
} as const;

/** What `:limit[…]` may name. */
export const limitNames: readonly string[] = Object.keys(limits);

/** A limit as text, `1 %`; undefined where there is none of that name. */
export function limitText(name: string): string | undefined {
  return Object.entries(limits).find(([known]) => known === name)?.[1];
}
