import type { Finding, Severity } from '../base/index.ts';

export type FindingCounts = Readonly<Record<Severity, number>>;

/** How many findings there are of each severity. */
export function countFindings(findings: readonly Finding[]): FindingCounts {
  const count = (severity: Severity): number => findings.filter((one) => one.severity === severity).length;
  return { error: count('error'), warning: count('warning'), note: count('note') };
}

/** Whether findings fail a check: errors and warnings do, notes are news. */
export function isFailing(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.severity !== 'note');
}
