/** Findings set aside by exceptions: entries that give a reason, a role and a last day. */
import type { Base, Entry, Finding } from '../base/index.ts';
import { linesAt, type SourceLookup } from './source-texts.ts';

/** What the exceptions of a base did to the findings of a run. */
export interface ExceptionUse {
  /** The findings that remain. */
  readonly kept: readonly Finding[];
  /** The findings set aside. */
  readonly setAside: readonly Finding[];
  /** Exceptions whose last day has passed; they set nothing aside any more. */
  readonly expired: readonly Entry<'exceptions'>[];
  /** Exceptions in force that set nothing aside; those of rules that compare states are meant for one change alone. */
  readonly unused: readonly Entry<'exceptions'>[];
}

/** The rules about exceptions themselves. No exception can be made to them. */
export const rulesOfExceptions = ['expired-exception', 'unused-exception'] as const;

/**
 * Sets aside the findings that exceptions are about. Findings in exceptions/ and those of the rules about
 * exceptions stay, whatever an exception says.
 * @param comparing the rules that compare states: what they found in one change is not there in the next.
 * @param today the day of the run, ISO 8601; undefined: no exception is taken as expired.
 */
export function applyExceptions(
  base: Base,
  findings: readonly Finding[],
  sourceOf: SourceLookup,
  today: string | undefined,
  comparing: readonly string[],
): ExceptionUse {
  const exceptions = [...base.exceptions.values()];
  const expired = exceptions.filter((one) => today !== undefined && one.data.until < today);
  const inForce = exceptions.filter((one) => !expired.includes(one));
  const byKey = Map.groupBy(inForce, ({ data }) => keyOf(data.rule, data.file));
  const used = new Set<Entry<'exceptions'>>();
  const kept: Finding[] = [];
  const setAside: Finding[] = [];
  for (const finding of findings) {
    const matching = canBeSetAside(finding)
      ? (byKey.get(keyOf(finding.rule, finding.place.file)) ?? []).filter(
          ({ data: { about } }) => about === undefined || linesAt(sourceOf, finding.place).includes(about),
        )
      : [];
    for (const one of matching) used.add(one);
    (matching.length > 0 ? setAside : kept).push(finding);
  }
  return {
    kept,
    setAside,
    expired,
    unused: inForce.filter((one) => !used.has(one) && !comparing.includes(one.data.rule)),
  };
}

function canBeSetAside({ rule, place }: Finding): boolean {
  return !place.file.startsWith('exceptions/') && !rulesOfExceptions.some((one) => one === rule);
}

function keyOf(rule: string, file: string): string {
  return `${rule} ${file}`;
}
