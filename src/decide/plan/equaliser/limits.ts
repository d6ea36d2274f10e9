/** What equalisers can be set to. */
import type { FilterKind } from '../../../measure/index.ts';

/** What an equaliser can be set to. */
export interface EqualiserLimits {
  readonly mostFilters: number;
  /** Kinds of filters it has; of shelves and high-passes one each is used at most. */
  readonly kinds: readonly FilterKind[];
  readonly hz: readonly [least: number, most: number];
  readonly gainDb: readonly [least: number, most: number];
  /** Of a peaking filter. */
  readonly q: readonly [least: number, most: number];
}

/** Filters a plain amplifier's equaliser has: common practice, no source. */
export const mostFilters = 4;

/** What an equaliser can usually be set to: common practice, no source. */
export const usualEqualiser: EqualiserLimits = {
  mostFilters,
  kinds: ['peaking', 'low-shelf'],
  hz: [20, 20_000],
  gainDb: [-12, 6],
  q: [0.5, 5],
};
