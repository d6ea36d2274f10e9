/** Findings as the object that `readback check --json` prints; its schema is schemas/results/check.ts. */
import type { CheckResult } from '../../../schemas/results/check.ts';
import type { Finding, Place } from '../../base/index.ts';
import { countFindings } from '../counts.ts';

export function jsonReport(findings: readonly Finding[]): CheckResult {
  return {
    findings: findings.map(({ rule, severity, place, message, help, related }) => ({
      rule,
      severity,
      ...flat(place),
      message,
      help,
      related: related.map((one) => ({ ...flat(one.place), message: one.message })),
    })),
    counts: countFindings(findings),
  };
}

function flat(place: Place): Place {
  const { file, line, column, endLine, endColumn } = place;
  return { file, line, column, endLine, endColumn };
}
