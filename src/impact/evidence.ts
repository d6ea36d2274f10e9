/** Whether a changed entry rests on something new: a source, a session, further readings. */
import type { Kind } from '../../schemas/index.ts';
import { type Entry, isKind } from '../base/index.ts';
import type { Cause } from './causes.ts';
import { differsDecisively } from './decisive.ts';
import { rowsBehind, type SheetChanges } from './sheet-changes.ts';
import type { EntryPair, States } from './states.ts';

/**
 * Whether a changed entry brings evidence for what it changes of a profile: it is new, with the sources it cites; it
 * cites a source it did not cite, or one that was edited; or it is a session that further readings were added to,
 * with none of the old ones touched.
 */
export function evidenceFor(states: States, sheets: SheetChanges, cause: Cause, profile: string): boolean {
  const pair: EntryPair = states.pair(cause.kind, cause.id);
  const { before, now } = pair;
  if (!now) return false;
  if (!before) return true;
  if (citesSomethingNew(states, before, now, cause.rules)) return true;
  if (cause.kind !== 'outputs' || differsDecisively(pair)) return false;
  const { added, changed, removed } = rowsBehind(states, sheets, cause.id, profile);
  return added.length > 0 && changed.length + removed === 0;
}

function citesSomethingNew(
  states: States,
  before: Entry,
  now: Entry,
  rules: readonly string[] | undefined,
): boolean {
  const cited = new Set([...citedBy(before)].map((id) => states.idNow('sources', id)));
  return [...citedBy(now, rules)].some((id) => {
    const source = states.pair('sources', id);
    return !cited.has(id) || source.before?.digest !== source.now?.digest;
  });
}

/** The sources an entry cites; of a table, only those of the rules named, beside its own. */
function citedBy(entry: Entry<Kind>, rules?: readonly string[]): Set<string> {
  if (isKind(entry, 'outputs')) return new Set([entry.data.source]);
  if (isKind(entry, 'tables')) {
    const ofRules = entry.data.rules.filter(({ id }) => !rules || rules.includes(id));
    return new Set([...entry.data.sources, ...ofRules.flatMap(({ sources }) => sources)]);
  }
  return new Set(hasSources(entry.data) ? entry.data.sources : []);
}

function hasSources(data: object): data is { readonly sources: readonly string[] } {
  return 'sources' in data && Array.isArray(data.sources);
}
