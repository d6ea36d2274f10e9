/** Where sources come from in the end: what `restsOn` leads to. */
import type { Base } from '../base/index.ts';
import type { Naming } from './circles.ts';

/** What each source says it was taken from. */
export function restingOn(base: Pick<Base, 'sources'>): Naming {
  return new Map([...base.sources].map(([id, { data }]) => [id, data.restsOn ?? []]));
}

/**
 * The sources at the ends of a source's chains: those that rest on nothing else, itself where it is
 * first-hand. An id without an entry is an end too. Of a circle without an end, everything in it is.
 */
export function rootsOf(base: Pick<Base, 'sources'>, source: string): ReadonlySet<string> {
  const seen = new Set([source]);
  const roots = new Set<string>();
  for (const id of seen) {
    const below = base.sources.get(id)?.data.restsOn ?? [];
    if (below.length === 0) roots.add(id);
    for (const next of below) seen.add(next);
  }
  return roots.size > 0 ? roots : seen;
}
