/** Mistakes in decision tables: names, tests, answers, and rules that no longer fit together. */
import { numberBehind } from '../../../src/decide/index.ts';
import type { Demo } from '../demo.ts';
import type { Dice } from '../dice.ts';
import { type FaultKind, type Mistake, onLine } from '../kind.ts';
import {
  type CellLine,
  cellsHolding,
  cellsOf,
  type DemoTable,
  inTable,
  type RuleLines,
  ruleText,
  tablesOf,
  withoutTest,
  withTest,
} from '../table-lines.ts';
import { misspelt } from './shape.ts';

const comparison = /^([<>]=?) ?(-?[0-9.]+)$/;

function slip(dice: Dice, word: string): string {
  return misspelt(word, (n) => dice.below(n));
}

function onCell(demo: Demo, cell: CellLine, test: string): Mistake {
  return onLine(demo, cell.of.file, cell.line, withTest(demo, cell, test));
}

/** Tests that compare a number with a threshold. */
function comparisons(demo: Demo): (CellLine & { sign: string; threshold: number })[] {
  return cellsHolding(demo, 'number').flatMap((cell) => {
    const [, sign, number] = comparison.exec(cell.test) ?? [];
    return sign === undefined ? [] : [{ ...cell, sign, threshold: Number(number) }];
  });
}

/** What was measured of all profiles in a column: values and their expanded uncertainties. */
function measured(demo: Demo, { of, column }: CellLine): { value: number; expandedUncertainty: number }[] {
  const input = of.data.inputs.find(({ id }) => id === column);
  if (!input) return [];
  return [...demo.answers.outputs.values()].flatMap((output) => {
    const value = numberBehind(input, output);
    return value?.bound === 'exact' ? [value] : [];
  });
}

function tablesOfPolicy(demo: Demo, ...policies: readonly string[]): DemoTable[] {
  return tablesOf(demo).filter(({ data }) => policies.includes(data.hit));
}

/** Cells of tables where one rule holds in every case, so that any change of a test is one too many or too few. */
function cellsOfUnique(demo: Demo): CellLine[] {
  return cellsOf(demo).filter(({ of }) => of.data.hit === 'unique');
}

/** A copy of a rule right below it, under another id and with another answer. */
function doubled(dice: Dice, demo: Demo, of: DemoTable, rule: RuleLines): string | undefined {
  const output = of.data.outputs[0];
  const given = output && of.data.rules.find(({ id }) => id === rule.id)?.give[output.id];
  const others =
    output?.holds === 'choice'
      ? output.values.filter((value) => value !== given)
      : output?.holds === 'yes-no'
        ? [given === 'yes' || given === true ? 'no' : 'yes']
        : [];
  if (!output || others.length === 0) return undefined;
  return ruleText(demo, of, rule)
    .replace(`- id: ${rule.id}`, `- id: ${rule.id}-again`)
    .replace(
      new RegExp(`(give: \\{[^}]*\\b${output.id}: )("[^"]*"|[^,}]*[^,} ])`),
      (_, before: string) => `${before}"${dice.pick(others)}"`,
    );
}

/** The rule without tests at the end of a table, which answers what is left. */
function forTheRest({ data, rules }: DemoTable): RuleLines | undefined {
  const last = data.rules.at(-1);
  return last && Object.keys(last.when).length === 0 ? rules.at(-1) : undefined;
}

function without(demo: Demo, of: DemoTable, { from, to }: RuleLines) {
  const gone = Array.from({ length: to - from + 1 }, (_, at) => [from + at, undefined] as const);
  return demo.withLines(of.file, new Map(gone));
}

/** Pairs of rules of `first` tables, the later of which holds wherever the earlier does. */
function widerBelow(demo: Demo): { of: DemoTable; narrow: RuleLines; wide: RuleLines }[] {
  return tablesOfPolicy(demo, 'first').flatMap((of) =>
    of.data.rules.flatMap((narrow, at) =>
      of.data.rules.slice(at + 1).flatMap((wide) => {
        const tests = Object.entries(wide.when);
        if (!tests.every(([column, test]) => narrow.when[column] === test)) return [];
        const [a, b] = [narrow, wide].map(({ id }) => of.rules.find((one) => one.id === id));
        return a && b ? [{ of, narrow: a, wide: b }] : [];
      }),
    ),
  );
}

export const tableKinds: readonly FaultKind[] = [
  {
    name: 'column of a test misspelt',
    rule: 'table-fault',
    shownBy: 'the table has no such input',
    make: (dice, demo) => {
      const { of, line, column, at } = dice.pick(cellsOf(demo).filter((one) => one.column.length > 3));
      const text = demo.lines(of.file)[line - 1] ?? '';
      const from = at - column.length - 2;
      return onLine(demo, of.file, line, text.slice(0, from) + slip(dice, column) + text.slice(at - 2));
    },
  },
  {
    name: 'column misspelt where it is defined',
    rule: 'table-fault',
    shownBy: 'the rules test it by its right name',
    make: (dice, demo) => {
      const { of, column } = dice.pick(cellsOf(demo).filter((one) => one.column.length > 3));
      const line = demo.lineOf(of.file, new RegExp(`^ {2}- id: ${column}$`));
      const lines = cellsOf(demo).filter((cell) => cell.of.file === of.file && cell.column === column);
      return {
        ...onLine(demo, of.file, line, `  - id: ${slip(dice, column)}`),
        places: [{ file: of.file, lines: [line, ...lines.map((cell) => cell.line)] }],
      };
    },
  },
  {
    name: 'value of a choice misspelt in a test',
    rule: 'table-fault',
    shownBy: 'the column has no such value',
    make: (dice, demo) => {
      const cell = dice.pick(cellsHolding(demo, 'choice'));
      const word = dice.pick(cell.test.match(/[a-z]{4,}/g) ?? []);
      return onCell(demo, cell, cell.written.replace(word, slip(dice, word)));
    },
  },
  {
    name: 'yes or no misspelt in a test',
    rule: 'table-fault',
    shownBy: 'the column is yes or no',
    make: (dice, demo) => {
      const cell = dice.pick(cellsHolding(demo, 'yes-no'));
      return onCell(demo, cell, dice.pick(['"yse"', '"noo"', 'ye', '"yes please"', '"y"']));
    },
  },
  {
    name: 'answer misspelt',
    rule: 'table-fault',
    shownBy: 'the list of answers has no such one',
    make: (dice, demo) => {
      const found = dice.pick(
        demo.linesWhere(
          /^tables\//,
          /^ {4}give: \{ ([a-z-]+: (?:yes|no|"yes"|"no"), )?[a-z-]+: ([a-z -]+) \}$/,
        ),
      );
      const answer = found.match[2] ?? '';
      const word = dice.pick(answer.match(/[a-z]{4,}/g) ?? []);
      const at = found.text.lastIndexOf(answer);
      const text = found.text.slice(0, at) + found.text.slice(at).replace(word, slip(dice, word));
      return onLine(demo, found.file, found.line, text);
    },
  },
  {
    name: 'output of an answer misspelt',
    rule: 'table-fault',
    shownBy: 'the table has no such output',
    make: (dice, demo) => {
      const { file, line, text, match } = dice.pick(
        demo.linesWhere(/^tables\//, /^ {4}give: \{ ([a-z-]{4,}): /),
      );
      const id = match[1] ?? '';
      return onLine(demo, file, line, text.replace(id, slip(dice, id)));
    },
  },
  {
    name: 'answer left out',
    rule: 'table-fault',
    shownBy: 'the table has another output',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^tables\//, /^ {4}give: \{ [^,}"]+: [^,}]+, [a-z-]+: /),
      );
      return onLine(demo, file, line, text.replace(/, [a-z-]+: [^,}]+ \}/, ' }'));
    },
  },
  {
    name: 'unit typed into a test',
    rule: 'table-fault',
    shownBy: 'tests hold numbers, the column has the unit',
    make: (dice, demo) => {
      const cell = dice.pick(comparisons(demo));
      const type = cell.of.table.inputs.find(({ id }) => id === cell.column)?.type;
      const unit = type?.kind === 'number' ? (type.unit ?? 'm') : '';
      return onCell(demo, cell, `"${cell.test}${dice.pick([' ', ''])}${unit}"`);
    },
  },
  {
    name: 'decimal comma in a test',
    rule: 'table-fault',
    shownBy: 'a comma parts two tests',
    make: (dice, demo) => {
      const cell = dice.pick(comparisons(demo));
      return onCell(demo, cell, `"${cell.test},${1 + dice.below(9)}"`);
    },
  },
  {
    name: 'ends of a range exchanged',
    rule: 'table-fault',
    shownBy: 'no number lies in it',
    make: (dice, demo) => {
      const cell = dice.pick(
        cellsHolding(demo, 'number').filter(({ test }) => /^[[(][0-9.]+\.\./.test(test)),
      );
      const swapped = cell.test.replace(/^(.)([0-9]+)\.\.([0-9]+)(.)$/, '$1$3..$2$4');
      return onCell(demo, cell, `"${swapped}"`);
    },
  },
  {
    name: 'comparison in other signs or in words',
    rule: 'table-fault',
    shownBy: 'tests know < <= > >= only',
    make: (dice, demo) => {
      const cell = dice.pick(comparisons(demo));
      const others: Readonly<Record<string, readonly string[]>> = {
        '<': ['under', 'less than', 'below'],
        '<=': ['=<', '≤', 'at most'],
        '>': ['over', 'more than', 'above'],
        '>=': ['=>', '≥', 'at least'],
      };
      return onCell(demo, cell, `"${dice.pick(others[cell.sign] ?? [])} ${cell.threshold}"`);
    },
  },
  {
    name: 'two comparisons joined by a word',
    rule: 'table-fault',
    shownBy: 'several tests stand with commas between them',
    make: (dice, demo) => {
      const cell = dice.pick(comparisons(demo));
      return onCell(
        demo,
        cell,
        `"${cell.test} ${dice.pick(['or', 'and', '&&', '||'])} < ${cell.threshold * 2}"`,
      );
    },
  },
  {
    name: 'test with a sign, without quotes',
    rule: 'syntax',
    shownBy: 'YAML takes the sign for its own',
    make: (dice, demo) => {
      const cell = dice.pick(comparisons(demo).filter(({ sign }) => sign.startsWith('>')));
      return onCell(demo, cell, cell.test);
    },
  },
  {
    name: 'range without quotes',
    rule: ['schema', 'syntax'],
    shownBy: 'YAML takes the bracket for a list',
    make: (dice, demo) => {
      const cell = dice.pick(cellsHolding(demo, 'number').filter(({ test }) => /^[[(]/.test(test)));
      return onCell(demo, cell, cell.test);
    },
  },
  {
    name: 'several values without quotes',
    rule: 'schema',
    shownBy: 'within braces a comma begins a new field',
    make: (dice, demo) => {
      const inBraces = cellsHolding(demo, 'choice').filter(
        ({ of, line, test }) => test.includes(', ') && demo.lines(of.file)[line - 1]?.includes('{'),
      );
      const cell = dice.pick(inBraces);
      return onCell(demo, cell, dice.chance() ? cell.test : `[${cell.test}]`);
    },
  },
  {
    name: 'tab before a rule’s tests',
    rule: 'syntax',
    shownBy: 'YAML allows no tab there',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^tables\//, /^ {4}(when|give|say): \S/));
      return onLine(demo, file, line, `\t${text.trimStart()}`);
    },
  },
  {
    name: 'threshold ten times too high',
    rule: ['table-far-threshold', 'table-gap', 'table-overlap', 'table-dead-rule'],
    shownBy: 'no profile comes near it',
    make: (dice, demo) => {
      const cell = dice.pick(
        comparisons(demo).filter((one) => {
          const values = measured(demo, one).map(({ value }) => Math.abs(value));
          return values.length > 2 && one.threshold * 10 > 4.5 * Math.max(...values);
        }),
      );
      const text = withTest(demo, cell, `"${cell.sign} ${cell.threshold * 10}"`);
      return inTable(cell.of, `${cell.line} “${text}”`, demo.withLine(cell.of.file, cell.line, text), [
        cell.line,
        cell.of.rulesLine,
        ...cell.of.rules.map(({ from }) => from),
      ]);
    },
  },
  {
    name: 'comparison turned round',
    rule: ['table-overlap', 'table-gap', 'table-dead-rule'],
    shownBy: 'other rules hold there already, and none does on the other side',
    make: (dice, demo) => {
      const cell = dice.pick(comparisons(demo).filter(({ of }) => of.data.hit === 'unique'));
      const turned = cell.sign.replace(/[<>]/, (sign) => (sign === '<' ? '>' : '<'));
      const text = withTest(demo, cell, `"${turned} ${cell.threshold}"`);
      return inTable(cell.of, `${cell.line} “${text}”`, demo.withLine(cell.of.file, cell.line, text));
    },
  },
  {
    name: 'test left out',
    rule: 'table-overlap',
    shownBy: 'the rule then holds where others do',
    make: (dice, demo) => {
      const cell = dice.pick(cellsOfUnique(demo));
      const text = withoutTest(demo, cell);
      // A test on a line of its own takes that line with it.
      const lines = cell.of.rules.map(({ from }) =>
        text === undefined && from > cell.line ? from - 1 : from,
      );
      const edit = demo.withLine(cell.of.file, cell.line, text);
      return inTable(cell.of, `“${cell.rule.id}” without ${cell.column}`, edit, lines);
    },
  },
  {
    name: 'value of a choice left out',
    rule: 'table-gap',
    shownBy: 'no other rule holds for it',
    make: (dice, demo) => {
      const cell = dice.pick(
        cellsOfUnique(demo).filter(({ test, written }) => written.startsWith('"') && test.includes(', ')),
      );
      const values = cell.test.split(', ');
      const gone = dice.below(values.length);
      const text = withTest(demo, cell, `"${values.filter((_, at) => at !== gone).join(', ')}"`);
      return inTable(cell.of, text, demo.withLine(cell.of.file, cell.line, text), [cell.of.rulesLine]);
    },
  },
  {
    name: 'rule deleted',
    rule: 'table-gap',
    shownBy: 'no other rule holds where it did',
    make: (dice, demo) => {
      const of = dice.pick(tablesOfPolicy(demo, 'unique'));
      const rule = dice.pick(of.rules);
      // The line of `rules:` stays where it is: it stands above.
      return inTable(of, `without “${rule.id}”`, without(demo, of, rule), [of.rulesLine]);
    },
  },
  {
    name: 'rule for the rest deleted',
    rule: 'table-gap',
    shownBy: 'no other rule holds for what is left',
    make: (dice, demo) => {
      const of = dice.pick(tablesOfPolicy(demo, 'first', 'priority').filter((one) => forTheRest(one)));
      const rule = forTheRest(of);
      if (!rule) throw new Error('no rule for the rest');
      return inTable(of, `without “${rule.id}”`, without(demo, of, rule), [of.rulesLine]);
    },
  },
  {
    name: 'rule doubled with another answer',
    rule: ['table-overlap', 'table-dead-rule'],
    shownBy: 'both hold in the same cases',
    make: (dice, demo) => {
      const of = dice.pick(tablesOfPolicy(demo, 'unique', 'first', 'any'));
      const rule = dice.pick(of.rules);
      const copy = doubled(dice, demo, of, rule);
      const text = ruleText(demo, of, rule);
      const moved = { ...of, rules: [...of.rules, { id: '', from: rule.to + 1, to: 0 }] };
      return inTable(
        moved,
        `“${rule.id}” doubled`,
        {
          file: of.file,
          content: demo.text(of.file).replace(text, () => `${text}\n${copy}`),
        },
        [rule.from, rule.to + 1],
      );
    },
  },
  {
    name: 'rule copied and its id kept',
    rule: 'table-fault',
    shownBy: 'two rules have one id',
    make: (dice, demo) => {
      const of = dice.pick(tablesOf(demo));
      const rule = dice.pick(of.rules);
      const text = ruleText(demo, of, rule);
      const content = demo.text(of.file).replace(text, () => `${text}\n${text}`);
      return inTable(of, `“${rule.id}” twice`, { file: of.file, content }, [rule.from, rule.to + 1]);
    },
  },
  {
    name: 'hit policy “unique” for “first”',
    rule: 'table-overlap',
    shownBy: 'rules hold together',
    make: (dice, demo) => {
      const of = dice.pick(tablesOfPolicy(demo, 'first'));
      const line = demo.lineOf(of.file, /^hit: first$/);
      return onLine(demo, of.file, line, 'hit: unique');
    },
  },
  {
    name: 'hit policy misspelt',
    rule: 'schema',
    shownBy: 'there is no such policy',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(demo.linesWhere(/^tables\//, /^hit: (.*)$/));
      return onLine(demo, file, line, `hit: ${slip(dice, match[1] ?? '')}`);
    },
  },
  {
    name: 'a sum of what is not collected',
    rule: 'table-fault',
    shownBy: 'only “collect” collects, and only numbers have a sum',
    make: (dice, demo) => {
      const of = dice.pick(tablesOf(demo).filter(({ data }) => data.hit !== 'collect'));
      const line = demo.lineOf(of.file, /^hit: /);
      const text = `${demo.lines(of.file)[line - 1]}\naggregate: ${dice.pick(['sum', 'min', 'max', 'count'])}`;
      return { ...onLine(demo, of.file, line, text), places: [{ file: of.file, lines: [line, line + 1] }] };
    },
  },
  {
    name: 'rule for the rest moved to the top',
    rule: 'table-dead-rule',
    shownBy: 'it holds in every case before the others are looked at',
    make: (dice, demo) => {
      const of = dice.pick(tablesOfPolicy(demo, 'first').filter((one) => forTheRest(one)));
      const rule = forTheRest(of);
      if (!rule) throw new Error('no rule for the rest');
      const text = ruleText(demo, of, rule);
      const { content } = without(demo, of, rule);
      const above = String(content).replace(/^rules:\n/m, () => `rules:\n${text}\n`);
      return inTable(of, `“${rule.id}” at the top`, { file: of.file, content: above }, [of.rulesLine + 1]);
    },
  },
  {
    name: 'wide rule moved above a narrow one',
    rule: 'table-dead-rule',
    shownBy: 'it holds wherever the narrow one does',
    make: (dice, demo) => {
      const { of, narrow, wide } = dice.pick(widerBelow(demo));
      const text = ruleText(demo, of, wide);
      const { content } = without(demo, of, wide);
      const above = String(content).replace(
        `  - id: ${narrow.id}\n`,
        () => `${text}\n  - id: ${narrow.id}\n`,
      );
      const length = wide.to - wide.from + 1;
      return inTable(of, `“${wide.id}” above “${narrow.id}”`, { file: of.file, content: above }, [
        ...of.rules.map(({ from }) => from),
        ...of.rules.map(({ from }) => from + length),
      ]);
    },
  },
  {
    name: 'thresholds closer together than the value is known',
    rule: ['table-fine-threshold', 'table-gap', 'table-overlap'],
    shownBy: 'the uncertainty of the values is greater',
    make: (dice, demo) => {
      const all = comparisons(demo).filter((cell) => cell.of.data.hit !== 'rule order');
      const cell = dice.pick(
        all.filter(
          (one) =>
            measured(demo, one).length > 2 &&
            all.some(
              (other) =>
                other.of.file === one.of.file &&
                other.rule.id !== one.rule.id &&
                other.column === one.column &&
                other.threshold === one.threshold,
            ),
        ),
      );
      const known = measured(demo, cell)
        .map(({ expandedUncertainty }) => expandedUncertainty)
        .sort((a, b) => a - b);
      const step = (known[Math.floor((known.length - 1) / 2)] ?? 0) * 0.7;
      const threshold = Number((cell.threshold + step * dice.pick([-1, 1])).toFixed(4));
      const text = withTest(demo, cell, `"${cell.sign} ${threshold}"`);
      const alike = all.filter((other) => other.of.file === cell.of.file && other.column === cell.column);
      return inTable(cell.of, text, demo.withLine(cell.of.file, cell.line, text), [
        ...alike.map(({ line }) => line),
        cell.of.rulesLine,
        ...cell.of.rules.map(({ from }) => from),
      ]);
    },
  },
  {
    name: 'sign of a comparison lost',
    rule: ['table-fine-threshold', 'table-gap', 'table-dead-rule', 'table-overlap'],
    shownBy: 'a measured value is never exactly this',
    make: (dice, demo) => {
      const cell = dice.pick(
        comparisons(demo).filter((one) => one.of.data.hit !== 'rule order' && measured(demo, one).length > 2),
      );
      const text = withTest(demo, cell, `"${cell.threshold}"`);
      return inTable(cell.of, text, demo.withLine(cell.of.file, cell.line, text), [
        cell.line,
        cell.of.rulesLine,
        ...cell.of.rules.map(({ from }) => from),
      ]);
    },
  },
  {
    name: 'least of a column above its tests',
    rule: ['table-dead-rule', 'table-gap'],
    shownBy: 'no value of the column passes a test any more',
    make: (dice, demo) => {
      const found = dice.pick(
        tablesOf(demo).flatMap((of) =>
          of.data.inputs.flatMap((input) =>
            input.holds === 'number' && input.most !== undefined ? [{ of, most: input.most }] : [],
          ),
        ),
      );
      const line = demo.lineOf(found.of.file, new RegExp(`^ {4}most: ${found.most}$`));
      const lines = cellsHolding(demo, 'number').filter((cell) => cell.of.file === found.of.file);
      return {
        ...onLine(demo, found.of.file, line, `    most: ${found.most / 10}`),
        places: [{ file: found.of.file, lines: lines.map((cell) => cell.line) }],
      };
    },
  },
  {
    name: 'question of a column left out',
    rule: 'schema',
    shownBy: 'the rider has to be asked something',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^tables\//, /^ {4}question: /));
      const item = demo.lines(file).findLastIndex((one, at) => at < line && /^ {2}- id: /.test(one)) + 1;
      return {
        what: `${file}:${line} without “${text}”`,
        edits: [demo.withLine(file, line, undefined)],
        places: [{ file, lines: [item] }],
      };
    },
  },
  {
    name: 'decision table without a source',
    rule: 'unsourced',
    shownBy: 'every table names what it rests on',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^tables\//, /^sources: /));
      const first = demo.lines(file).findIndex((one) => /^[a-z]/.test(one)) + 1;
      return {
        what: `${file}:${line} without “${text}”`,
        edits: [demo.withLine(file, line, undefined)],
        places: [{ file, lines: [first, 1] }],
      };
    },
  },
  {
    name: 'guide of a rule misspelt',
    rule: 'dangling-link',
    shownBy: 'there is no such guide',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^tables\//, /^ {4}guides: \[([a-z-]+)/));
      return onLine(
        demo,
        file,
        line,
        text.replace(/\[([a-z-]+)/, (_, id: string) => `[${slip(dice, id)}`),
      );
    },
  },
  {
    name: 'number with its unit in what a rule says',
    rule: 'bare-value',
    shownBy: 'it stays as it is when the threshold changes',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^tables\//, /^ {4}say: [A-Z][^"]*\.$/));
      const number = dice.pick(['4.2 V', '80 Hz', '4 dB', '2.5 volts']);
      return onLine(demo, file, line, `${text.slice(0, -1)}, from ${number} on.`);
    },
  },
];
