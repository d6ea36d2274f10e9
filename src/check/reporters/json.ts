/** Findings as the object that `readback check --json` prints; its schema is schemas/results/check.ts. */
import type { CheckResult } from '../../../schemas/results/check.ts';
import type { Finding, Place } from '../../base/index.ts';
import { countFindings } from '../counts.ts';
import type { Report } from './report.ts';

export function jsonReport({ findings, setAside, since }: Report): CheckResult {
  return {
    findings: findings.map(jsonFinding),
    counts: countFindings(findings),
    setAside,
    ...(since ? { since } : {}),
  };
}

/** One finding as data. */
export function jsonFinding({
  rule,
  severity,
  place,
  message,
  help,
  related,
}: Finding): CheckResult['findings'][number] {
  return {
    rule,
    severity,
    ...flat(place),
    message,
    help,
    related: related.map((one) => ({ ...flat(one.place), message: one.message })),
  };
}

function flat(place: Place): Place {
  const { file, line, column, endLine, endColumn } = place;
  return { file, line, column, endLine, endColumn };
}
