/** What makes two findings of different days the same finding. */
import type { Finding } from '../base/index.ts';
import { type SourceLookup, textAt } from './source-texts.ts';

/**
 * A text that is the same for a finding before and after lines were moved, and differs where it says something
 * else, points at something else, or contradicts something else: rule, file, message, the text it points at,
 * and the file and text of each related place.
 */
export function fingerprintOf(finding: Finding, sourceOf: SourceLookup): string {
  const { rule, place, message, related } = finding;
  return JSON.stringify([
    rule,
    place.file,
    message,
    textAt(sourceOf, place),
    ...related.map((one) => [one.place.file, textAt(sourceOf, one.place)]),
  ]);
}
