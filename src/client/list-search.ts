/** What a search of the list of codes is given, and what comes of it. */
import type { CodeSearch } from '../codes/index.ts';

/** Characters of the list that one search may load, where it is not sent whole: about 40 kB compressed. */
export const mostLoaded = 80_000;

/** What a search has to go by besides what was typed. */
export interface Asking {
  /** false once something else has been typed: nothing more is loaded then. */
  readonly isCurrent: () => boolean;
  /** Characters of files that may still be loaded for it. */
  left: number;
  /** Whether the pause before loading more has been made. */
  hasWaited: boolean;
}

/** A search, and what of the list it left out. */
export interface ListSearch extends CodeSearch {
  /** So many codes begin like what was typed, too many to be looked at yet. */
  readonly longer?: number;
  /** Only codes that begin or end like what was typed were looked at. */
  readonly isPart?: boolean;
}
