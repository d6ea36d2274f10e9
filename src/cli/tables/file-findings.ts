/**
 * What is wrong with tables of DMN and CSV files, as findings of the rules the check has for entries: the same words
 * where they apply, with places in the file.
 */
import type { Finding, Place, Severity, TextFile } from '../../base/index.ts';
import { decisionFaults, tableOfDecision } from '../../tables/dmn/index.ts';
import type { FileFault, Span } from '../../tables/file-fault.ts';
import { analyseTable, describeGiven, type Part, type Table, type TableFault } from '../../tables/index.ts';
import type { TableFile, UnreadableTable } from './table-file.ts';

/** One table of a file, and what was found. */
export interface LookedAt {
  readonly table: string;
  readonly rules: number;
  readonly analysed: boolean;
  readonly findings: readonly Finding[];
}

type SpanOf = (fault: Pick<TableFault, 'rule' | 'column' | 'in'>) => Span;

/** A file that is none of its kind: one finding. */
export function unreadable({ source, fault }: UnreadableTable): Finding {
  return findingAt(source, 'syntax', 'error', fault.span, fault.message, fault.help);
}

export function lookAtCsv({ id, source, read }: TableFile & { kind: 'csv' }): LookedAt {
  const faults = read.faults.map((fault) => faultFinding(source, fault));
  const found = read.table ? analysis(source, read.table, read.spanOf) : { analysed: false, findings: [] };
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
      table && all.length === 0 ? analysis(source, table, spanOf) : { analysed: false, findings: [] };
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

/** Gaps and overlaps to tell of one table; who has mended these is told the next. */
const mostGaps = 5;
const mostOverlaps = 10;

function analysis(
  source: TextFile,
  table: Table,
  spanOf: SpanOf,
): { readonly analysed: boolean; readonly findings: Finding[] } {
  const found = analyseTable(table, { mostGaps, mostOverlaps });
  const head = spanOf({ rule: undefined, column: undefined, in: 'hit policy' });
  const at = (id: string, column?: number): Span => {
    const rule = table.rules.findIndex((one) => one.id === id);
    return spanOf({ rule, column, in: 'inputs' });
  };
  const place = (span: Span): Place => source.place(span.start, span.end);
  const related = (ids: readonly string[], message: (id: string) => string): Finding['related'] =>
    ids.map((id) => ({ place: place(at(id)), message: message(id) }));
  const [beyond] = found.beyond;
  if (beyond) {
    const column = table.inputs.findIndex(({ id }) => id === beyond.input);
    const message = `“${beyond.test}” is more than a simple test: this table can be evaluated, but not analysed.`;
    const help = 'Nothing needs to be done; gaps and contradictions in the table are not looked for.';
    const note = findingAt(source, 'table-fault', 'note', at(beyond.rule, column), message, help);
    return { analysed: false, findings: [note] };
  }
  const findings: Finding[] = [];
  const overlaps = found.overlaps.filter(({ breaks }) => breaks);
  for (const { rules, box, contradicts } of overlaps) {
    const [one, other] = rules;
    const example = describeGiven(box.example, table.inputs);
    const why = contradicts ? 'give different answers' : 'both hold';
    findings.push({
      ...findingAt(
        source,
        'table-overlap',
        'error',
        at(other),
        `The rules “${one}” and “${other}” ${why} for ${box.words}; for example: ${example}. The hit policy is “${table.hitPolicy}”.`,
        'Narrow a test of one of them, or choose a hit policy under which rules may hold together.',
      ),
      related: related([one], (id) => `“${id}” holds there too.`),
    });
  }
  if (found.breakingCount > overlaps.length) {
    const message = `${found.breakingCount - overlaps.length} more pairs of rules hold together against the hit policy “${table.hitPolicy}”.`;
    findings.push(
      findingAt(source, 'table-overlap', 'error', head, message, 'Mend those that are named first.'),
    );
  }
  for (const { box } of found.gapsAreFaults ? found.gaps : []) {
    findings.push(
      findingAt(
        source,
        'table-gap',
        'error',
        head,
        `No rule holds for ${box.words}; for example: ${describeGiven(box.example, table.inputs)}.`,
        'Add a rule for it, widen a test of a rule beside it, or say what the answer is where no rule fits.',
      ),
    );
  }
  // What an overlap speaks for already is not told twice.
  const overlapping = new Set(overlaps.flatMap(({ rules }) => rules));
  for (const { rule, why, by } of found.dead.filter((one) => !overlapping.has(one.rule))) {
    const others = by.map((one) => `“${one}”`).join(', ');
    const message =
      why === 'empty'
        ? `The rule “${rule}” never holds: nothing its inputs can be passes its tests.`
        : `The rule “${rule}” never gives its answer: ${others} ${by.length === 1 ? 'goes' : 'go'} before it in every case it holds for.`;
    findings.push({
      ...findingAt(
        source,
        'table-dead-rule',
        'error',
        at(rule),
        message,
        'Correct its tests, move it, or take it out.',
      ),
      related: related(by, (id) => `“${id}” goes before it.`),
    });
  }
  // Smaller troubles may come from those above, and are told once they are mended.
  if (findings.length === 0) {
    for (const { rule, by } of found.subsumed) {
      findings.push({
        ...findingAt(
          source,
          'table-mergeable',
          'note',
          at(rule),
          `The rule “${rule}” says nothing that “${by}” does not say.`,
          'Take it out.',
        ),
        related: related([by], (id) => `“${id}” says as much.`),
      });
    }
    for (const { rules, at: where, input, test } of found.mergeable) {
      const others = rules.filter((one) => one !== where);
      findings.push({
        ...findingAt(
          source,
          'table-mergeable',
          'note',
          at(others[0] ?? where),
          `The rules “${rules.join('”, “')}” give the same answer and differ in “${input}” only.`,
          `One rule can do: in “${where}” write ${test} under “${input}”, and take out “${others.join('”, “')}”.`,
        ),
        related: related([where], () => 'Where it can stand.'),
      });
    }
    for (const { input, tested } of found.idle) {
      const column = table.inputs.findIndex(({ id }) => id === input);
      const span = spanOf({ rule: undefined, column, in: 'inputs' });
      const message = tested
        ? `Whatever “${input}” is, the answer is the same.`
        : `No rule tests “${input}”, so it makes no difference.`;
      const help = 'Add the test that is missing, or take the column out.';
      findings.push(findingAt(source, 'table-idle-input', 'warning', span, message, help));
    }
  }
  const isShort: Readonly<Record<Part, boolean>> = {
    // That there are more than are asked for is no lack of proof.
    gaps: found.gaps.length < mostGaps,
    overlaps: found.overlaps.length === 0,
    dead: true,
    idle: true,
  };
  if (found.cut.some((part) => isShort[part])) {
    const message =
      'This table has more combinations of tests than can be looked at; there may be more to find than is told.';
    const help = 'Make two tables of it, or test fewer columns.';
    findings.push(findingAt(source, 'table-gap', 'note', head, message, help));
  }
  return { analysed: true, findings };
}

function findingAt(
  source: TextFile,
  rule: string,
  severity: Severity,
  span: Span,
  message: string,
  help: string,
): Finding {
  return { rule, severity, place: source.place(span.start, span.end), message, help, related: [] };
}
