/**
 * What is wrong with tables of DMN and CSV files, as findings of the rules the check has for entries: the same words
 * where they apply, with places in the file.
 */
import type { Finding, TextFile } from '../../base/index.ts';
import { decisionFaults, tableOfDecision } from '../../tables/dmn/index.ts';
import type { FileFault } from '../../tables/file-fault.ts';
import { analysisFindings, findingAt } from './analysis-findings.ts';
import type { TableFile, UnreadableTable } from './table-file.ts';

/** One table of a file, and what was found. */
export interface LookedAt {
  readonly table: string;
  readonly rules: number;
  readonly analysed: boolean;
  readonly findings: readonly Finding[];
}

/** A file that is none of its kind: one finding. */
export function unreadable({ source, fault }: UnreadableTable): Finding {
  return findingAt(source, 'syntax', 'error', fault.span, fault.message, fault.help);
}

export function lookAtCsv({ id, source, read }: TableFile & { kind: 'csv' }): LookedAt {
  const faults = read.faults.map((fault) => faultFinding(source, fault));
  const found = read.table
    ? analysisFindings(source, read.table, read.spanOf)
    : { analysed: false, findings: [] };
  return {
    table: id,
    rules: read.table?.rules.length ?? 0,
    analysed: found.analysed,
    findings: [...faults, ...found.findings],
  };
}

export function lookAtDmn({ source, file }: TableFile & { kind: 'dmn' }): LookedAt[] {
  const refused = file.refused.map(
    (one): LookedAt => ({
      table: one.name,
      rules: 0,
      analysed: false,
      findings: [findingAt(source, 'table-fault', 'warning', one.span, one.message, one.help)],
    }),
  );
  const decisions = file.decisions.map((decision): LookedAt => {
    const { name, logic } = decision;
    const { table, faults, beyond, spanOf } = tableOfDecision(file, decision);
    const all = [...decisionFaults(file, decision), ...faults].map((fault) => faultFinding(source, fault));
    // What cannot be read is no matter of analysis.
    const found =
      table && all.length === 0 ? analysisFindings(source, table, spanOf) : { analysed: false, findings: [] };
    const note =
      beyond && logic.kind === 'table'
        ? [
            findingAt(
              source,
              'table-fault',
              'note',
              beyond.span,
              `“${name}” can be evaluated, but not analysed: ${beyond.message}`,
              'Nothing needs to be done; gaps and contradictions in it are not looked for.',
            ),
          ]
        : [];
    return {
      table: name,
      rules: logic.kind === 'table' ? logic.rules.length : 0,
      analysed: found.analysed,
      findings: [...all, ...note, ...found.findings],
    };
  });
  return [...decisions, ...refused];
}

function faultFinding(source: TextFile, { span, message, help }: FileFault): Finding {
  return findingAt(source, 'table-fault', 'error', span, message, help);
}
