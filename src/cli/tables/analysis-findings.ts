/** What the analysis of a table in a file finds, at its places. The rules of the check speak of entries likewise. */
import type { Finding, Severity, TextFile } from '../../base/index.ts';
import type { Span } from '../../tables/file-fault.ts';
import {
  analyseTable,
  describeGiven,
  type Part,
  type Table,
  type TableAnalysis,
  type TableFault,
} from '../../tables/index.ts';

type SpanOf = (fault: Pick<TableFault, 'rule' | 'column' | 'in'>) => Span;

export interface Analysed {
  /** False where a test is more than a simple one: the table can be evaluated only. */
  readonly analysed: boolean;
  readonly findings: Finding[];
}

/** Gaps and overlaps to tell of one table; who has mended these is told the next. */
const mostGaps = 5;
const mostOverlaps = 10;

export function analysisFindings(source: TextFile, table: Table, spanOf: SpanOf): Analysed {
  const found = analyseTable(table, { mostGaps, mostOverlaps });
  const teller = new Teller(source, table, spanOf);
  const [beyond] = found.beyond;
  if (beyond) {
    const column = table.inputs.findIndex(({ id }) => id === beyond.input);
    const span = teller.at(beyond.rule, column);
    const message = `“${beyond.test}” is more than a simple test: this table can be evaluated, but not analysed.`;
    const help = 'Nothing needs to be done; gaps and contradictions in the table are not looked for.';
    return { analysed: false, findings: [findingAt(source, 'table-fault', 'note', span, message, help)] };
  }
  const faults = [...teller.overlaps(found), ...teller.gaps(found), ...teller.dead(found)];
  // Smaller troubles may come from these, and are told once they are mended.
  const smaller = faults.length > 0 ? [] : [...teller.superfluous(found), ...teller.idle(found)];
  return { analysed: true, findings: [...faults, ...smaller, ...teller.unproved(found)] };
}

class Teller {
  readonly #source: TextFile;
  readonly #table: Table;
  readonly #spanOf: SpanOf;
  readonly #head: Span;

  constructor(source: TextFile, table: Table, spanOf: SpanOf) {
    this.#source = source;
    this.#table = table;
    this.#spanOf = spanOf;
    this.#head = spanOf({ rule: undefined, column: undefined, in: 'hit policy' });
  }

  /** Where a rule stands, or its test of a column. */
  at(rule: string, column?: number): Span {
    const index = this.#table.rules.findIndex(({ id }) => id === rule);
    return this.#spanOf({ rule: index, column, in: 'inputs' });
  }

  #related(ids: readonly string[], message: (id: string) => string): Finding['related'] {
    return ids.map((id) => {
      const { start, end } = this.at(id);
      return { place: this.#source.place(start, end), message: message(id) };
    });
  }

  *overlaps(found: TableAnalysis): Generator<Finding> {
    const { hitPolicy, inputs } = this.#table;
    const breaking = breakingIn(found);
    for (const { rules, box, contradicts } of breaking) {
      const [one, other] = rules;
      const verb = contradicts ? 'give different answers' : 'both hold';
      const message = `The rules “${one}” and “${other}” ${verb} for ${box.words}; for example: ${describeGiven(box.example, inputs)}. The hit policy is “${hitPolicy}”.`;
      const help =
        'Narrow a test of one of them, or choose a hit policy under which rules may hold together.';
      yield {
        ...findingAt(this.#source, 'table-overlap', 'error', this.at(other), message, help),
        related: this.#related([one], (id) => `“${id}” holds there too.`),
      };
    }
    const more = found.breakingCount - breaking.length;
    if (more > 0) {
      const message = `${more} more ${more === 1 ? 'pair' : 'pairs'} of rules hold together against the hit policy “${hitPolicy}”.`;
      const help = 'Mend those that are named first.';
      yield findingAt(this.#source, 'table-overlap', 'error', this.#head, message, help);
    }
  }

  *gaps({ gaps, gapsAreFaults }: TableAnalysis): Generator<Finding> {
    for (const { box } of gapsAreFaults ? gaps : []) {
      const message = `No rule holds for ${box.words}; for example: ${describeGiven(box.example, this.#table.inputs)}.`;
      const help =
        'Add a rule for it, widen a test of a rule beside it, or say what the answer is where no rule fits.';
      yield findingAt(this.#source, 'table-gap', 'error', this.#head, message, help);
    }
  }

  *dead(found: TableAnalysis): Generator<Finding> {
    // What an overlap speaks for already is not told twice.
    const overlapping = new Set(breakingIn(found).flatMap(({ rules }) => rules));
    for (const { rule, why, by } of found.dead.filter((one) => !overlapping.has(one.rule))) {
      const others = by.map((one) => `“${one}”`).join(', ');
      const message =
        why === 'empty'
          ? `The rule “${rule}” never holds: nothing its inputs can be passes its tests.`
          : `The rule “${rule}” never gives its answer: ${others} ${by.length === 1 ? 'goes' : 'go'} before it in every case it holds for.`;
      const help = 'Correct its tests, move it, or take it out.';
      yield {
        ...findingAt(this.#source, 'table-dead-rule', 'error', this.at(rule), message, help),
        related: this.#related(by, (id) => `“${id}” goes before it.`),
      };
    }
  }

  *superfluous({ subsumed, mergeable }: TableAnalysis): Generator<Finding> {
    for (const { rule, by } of subsumed) {
      const message = `The rule “${rule}” says nothing that “${by}” does not say.`;
      yield {
        ...findingAt(this.#source, 'table-mergeable', 'note', this.at(rule), message, 'Take it out.'),
        related: this.#related([by], (id) => `“${id}” says as much.`),
      };
    }
    for (const { rules, at, input, test } of mergeable) {
      const others = rules.filter((one) => one !== at);
      const message = `The rules “${rules.join('”, “')}” give the same answer and differ in “${input}” only.`;
      const help = `One rule can do: in “${at}” write ${test} under “${input}”, and take out “${others.join('”, “')}”.`;
      yield {
        ...findingAt(this.#source, 'table-mergeable', 'note', this.at(others[0] ?? at), message, help),
        related: this.#related([at], () => 'Where it can stand.'),
      };
    }
  }

  *idle({ idle }: TableAnalysis): Generator<Finding> {
    for (const { input, tested } of idle) {
      const column = this.#table.inputs.findIndex(({ id }) => id === input);
      const span = this.#spanOf({ rule: undefined, column, in: 'inputs' });
      const message = tested
        ? `Whatever “${input}” is, the answer is the same.`
        : `No rule tests “${input}”, so it makes no difference.`;
      const help = 'Add the test that is missing, or take the column out.';
      yield findingAt(this.#source, 'table-idle-input', 'warning', span, message, help);
    }
  }

  *unproved({ cut, gaps, overlaps }: TableAnalysis): Generator<Finding> {
    // That there are more than are asked for is no lack of proof.
    const isShort: Readonly<Record<Part, boolean>> = {
      gaps: gaps.length < mostGaps,
      overlaps: overlaps.length === 0,
      'harmless overlaps': false,
      dead: true,
      idle: true,
    };
    if (!cut.some((part) => isShort[part])) return;
    const message =
      'This table has more combinations of tests than can be looked at; there may be more to find than is told.';
    const help = 'Make two tables of it, or test fewer columns.';
    yield findingAt(this.#source, 'table-gap', 'note', this.#head, message, help);
  }
}

function breakingIn({ overlaps }: TableAnalysis): TableAnalysis['overlaps'] {
  return overlaps.filter(({ breaks }) => breaks);
}

/** A finding of a rule of the check, in a file that is no entry. */
export function findingAt(
  source: TextFile,
  rule: string,
  severity: Severity,
  span: Span,
  message: string,
  help: string,
): Finding {
  return { rule, severity, place: source.place(span.start, span.end), message, help, related: [] };
}
