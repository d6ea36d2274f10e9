/** Which profiles the tests of a table let through, column by column: what each cell with a test leads to. */
import type { ListingData } from './table-listing.ts';

/** A cell of a rule. */
export interface TableCellView {
  readonly label: string;
  readonly words: string;
  readonly any: boolean;
  /** Where the profiles stand that pass its test; empty where it speaks of no profile. */
  readonly anchor: string;
}

/** One test of a column, however many rules make it. */
export interface TestView {
  readonly anchor: string;
  /** “over 4 dB” */
  readonly words: string;
  /** Indexes of the profiles that pass it, and of those that may, within their uncertainty. */
  readonly sure: readonly number[];
  readonly perhaps: readonly number[];
}

export interface ColumnTestsView {
  readonly label: string;
  readonly tests: readonly TestView[];
}

/** The anchor of the test a rule makes of an input; the same for rules that make the same test. */
export function testAnchor({ inputs, passes }: ListingData, input: number, rule: number): string {
  const own = passes[input]?.[rule];
  return `test-${inputs[input]?.id}-${(passes[input] ?? []).indexOf(own ?? '') + 1}`;
}

/** The columns that speak of profiles, each with its tests in the order of the rules; “any” is no test. */
export function columnTests(
  data: ListingData,
  rules: readonly (readonly TableCellView[])[],
): ColumnTestsView[] {
  return data.inputs.flatMap(({ label, asked }, input) => {
    if (asked) return [];
    const tests = new Map<string, TestView>();
    for (const [rule, cells] of rules.entries()) {
      const cell = cells[input];
      const anchor = testAnchor(data, input, rule);
      if (!cell || cell.any || tests.has(anchor)) continue;
      tests.set(anchor, { anchor, words: cell.words, ...passing(data, input, rule) });
    }
    return tests.size === 0 ? [] : [{ label, tests: [...tests.values()] }];
  });
}

function passing(data: ListingData, input: number, rule: number): Pick<TestView, 'sure' | 'perhaps'> {
  const marks = data.passes[input]?.[rule] ?? '';
  const how = data.profiles.map(({ pattern }) => {
    const pieces = data.patterns[pattern]?.[input] ?? [];
    const through = pieces.filter((piece) => marks[piece] === '1').length;
    return through === 0 ? 'no' : through === pieces.length ? 'sure' : 'perhaps';
  });
  const those = (wanted: string): number[] => [...how.keys()].filter((index) => how[index] === wanted);
  return { sure: those('sure'), perhaps: those('perhaps') };
}
