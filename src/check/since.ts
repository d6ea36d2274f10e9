/** What a change brings in: the findings of now that were not there at an earlier revision. */
import type { Finding } from '../base/index.ts';
import type { Rename } from '../impact/index.ts';
import { fingerprintOf } from './fingerprint.ts';
import type { SourceLookup } from './source-texts.ts';

interface Findings {
  readonly findings: readonly Finding[];
  readonly sourceOf: SourceLookup;
}

/**
 * The findings of `now` that `before` did not have, whichever file they stand in: compared by what they say and
 * point at, never by line number. Of several alike, as many are old as there were before.
 */
export function newSince(now: Findings, before: Findings, renames: readonly Rename[]): Finding[] {
  const known = new Map<string, number>();
  const newPath = new Map(renames.map(({ from, to }) => [from, to]));
  // What a message says of a renamed entry it says by its id.
  const newIds = renames.map(({ from, to }) => [idOf(from), idOf(to)] as const);
  const oldPath = new Map(renames.map(({ from, to }) => [to, from]));
  const sourceBefore: SourceLookup = (file) => before.sourceOf(oldPath.get(file) ?? file);
  for (const finding of before.findings) {
    const moved = renames.length === 0 ? finding : movedFinding(finding, newPath, newIds);
    const key = fingerprintOf(moved, sourceBefore);
    known.set(key, (known.get(key) ?? 0) + 1);
  }
  return now.findings.filter((finding) => {
    const key = fingerprintOf(finding, now.sourceOf);
    const left = known.get(key) ?? 0;
    if (left > 0) known.set(key, left - 1);
    return left === 0;
  });
}

function movedFinding(
  finding: Finding,
  newPath: ReadonlyMap<string, string>,
  newIds: readonly (readonly [from: string, to: string])[],
): Finding {
  const moved = <T extends { readonly file: string }>(place: T): T => ({
    ...place,
    file: newPath.get(place.file) ?? place.file,
  });
  return {
    ...finding,
    place: moved(finding.place),
    message: newIds.reduce((text, [from, to]) => text.replaceAll(from, to), finding.message),
    related: finding.related.map((one) => ({ ...one, place: moved(one.place) })),
  };
}

/** The id an entry's file gives it: its path inside the kind's folder without ending. */
function idOf(file: string): string {
  return file
    .slice(file.indexOf('/') + 1)
    .replace(/\/(session\.yaml|readings\.csv)$/, '')
    .replace(/\.(yaml|md)$/, '');
}
