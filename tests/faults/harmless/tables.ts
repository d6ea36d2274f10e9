/** Decision tables written otherwise, or changed where it makes no difference. */
import type { Demo, Edit } from '../demo.ts';
import type { Dice } from '../dice.ts';
import type { HarmlessKind } from '../harmless.ts';
import { type CellLine, cellsHolding, type DemoTable, ruleText, tablesOf, withTest } from '../table-lines.ts';

/** A test of the kind, of those given, written otherwise. */
function testsWritten(
  name: string,
  candidates: (demo: Demo) => readonly CellLine[],
  written: (cell: CellLine, dice: Dice) => string,
): HarmlessKind {
  return {
    name,
    make: (dice, demo) => {
      const cell = dice.pick(candidates(demo));
      const text = withTest(demo, cell, written(cell, dice));
      return {
        what: `${cell.of.file}:${cell.line} “${text}”`,
        edits: [demo.withLine(cell.of.file, cell.line, text)],
      };
    },
  };
}

/** Changes the lines of a table that match. */
function lineChanged(
  name: string,
  pattern: RegExp,
  change: (match: RegExpExecArray, dice: Dice) => string,
): HarmlessKind {
  return {
    name,
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(demo.linesWhere(/^tables\//, pattern));
      const text = change(match, dice);
      return { what: `${file}:${line} “${text}”`, edits: [demo.withLine(file, line, text)] };
    },
  };
}

/** The table with its rules in another order. */
function reordered(demo: Demo, of: DemoTable, order: readonly number[]): Edit {
  const lines = demo.lines(of.file);
  const [first, last] = [of.rules[0], of.rules.at(-1)];
  const rules = order.flatMap((index) => {
    const rule = of.rules[index];
    return rule ? [ruleText(demo, of, rule)] : [];
  });
  const content = [...lines.slice(0, (first?.from ?? 1) - 1), ...rules, ...lines.slice(last?.to ?? 0)];
  return { file: of.file, content: content.join('\n') };
}

function pickTable(dice: Dice, demo: Demo, ...policies: readonly string[]): DemoTable {
  return dice.pick(tablesOf(demo).filter(({ data }) => policies.includes(data.hit)));
}

function valuesOf({ of, column }: CellLine): readonly string[] {
  const type = of.table.inputs.find(({ id }) => id === column)?.type;
  return type?.kind === 'choice' ? type.values : [];
}

const plainValue = /^[a-z0-9 -]+$/;

/** Tests that list values of a choice, all of them plain words. */
function listsOfValues(demo: Demo): CellLine[] {
  return cellsHolding(demo, 'choice').filter(
    (cell) => valuesOf(cell).every((value) => plainValue.test(value)) && /^[a-z0-9, -]+$/.test(cell.test),
  );
}

/** The rider’s own numbers with bounds, and quantities that are never negative. */
function boundsOf({ of, column }: CellLine): { least?: number; most?: number } {
  const type = of.table.inputs.find(({ id }) => id === column)?.type;
  if (type?.kind !== 'number') return {};
  const { least, most } = type;
  return { ...(least !== undefined && { least }), ...(most !== undefined && { most }) };
}

export const tableKinds: readonly HarmlessKind[] = [
  {
    name: 'rules that never hold together in another order',
    make: (dice, demo) => {
      const of = pickTable(dice, demo, 'unique', 'any');
      const order = dice.shuffled([...of.rules.keys()]);
      return { what: `${of.file}: rules in the order ${order.join()}`, edits: [reordered(demo, of, order)] };
    },
  },
  {
    name: 'rule renamed',
    make: (dice, demo) => {
      const of = dice.pick(tablesOf(demo));
      const { id, from } = dice.pick(of.rules);
      return {
        what: `${of.file}:${from} “${id}” renamed`,
        edits: [demo.withLine(of.file, from, `  - id: ${id}-by-another-name`)],
      };
    },
  },
  lineChanged('what a rule says in other words', /^ {4}say: [A-Z]/, (_, dice) =>
    dice.pick([
      '    say: Ask us first, with the code at hand.',
      '    say: "It depends on more than this: come by with the machine."',
    ]),
  ),
  lineChanged(
    'question in other words',
    /^question: /,
    () => 'question: What would the shop do in my place?',
  ),
  {
    name: 'guides of a rule left out',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^tables\//, /^ {4}guides: /));
      return { what: `${file}:${line} without “${text}”`, edits: [demo.withLine(file, line, undefined)] };
    },
  },
  {
    name: 'first for unique, where one rule holds anyway',
    make: (dice, demo) => {
      const of = pickTable(dice, demo, 'unique');
      const line = demo.lineOf(of.file, /^hit: unique$/);
      return {
        what: `${of.file}: hit: first`,
        edits: [demo.withLine(of.file, line, `hit: ${dice.pick(['first', 'any'])}`)],
      };
    },
  },
  testsWritten(
    'test in other quotes',
    (demo) => [...cellsHolding(demo, 'number'), ...cellsHolding(demo, 'choice')],
    ({ test }) => `'${test}'`,
  ),
  testsWritten(
    'yes and no written otherwise',
    (demo) => cellsHolding(demo, 'yes-no'),
    ({ test }, dice) =>
      dice.pick(
        test === 'yes' ? ['yes', 'true', '"true"', '"Yes"', "'yes'"] : ['no', 'false', '"false"', 'No'],
      ),
  ),
  testsWritten(
    'yes and no as what they are not',
    (demo) => cellsHolding(demo, 'yes-no'),
    ({ test }) => `not(${test === 'yes' ? 'no' : 'yes'})`,
  ),
  testsWritten(
    'values of a test in another order',
    (demo) => listsOfValues(demo).filter(({ test }) => test.includes(', ')),
    ({ test }, dice) => `"${dice.shuffled(test.split(', ')).join(dice.pick([', ', ',']))}"`,
  ),
  testsWritten(
    'values of a test as those it leaves out',
    (demo) => listsOfValues(demo),
    (cell) => {
      const named = cell.test.split(', ');
      return `"not(${valuesOf(cell)
        .filter((value) => !named.includes(value))
        .join(', ')})"`;
    },
  ),
  testsWritten(
    'values of a test in FEEL’s own quotes',
    (demo) => listsOfValues(demo),
    ({ test }) =>
      `'${test
        .split(', ')
        .map((value) => `"${value}"`)
        .join(', ')}'`,
  ),
  testsWritten(
    'threshold with more decimals',
    (demo) => cellsHolding(demo, 'number').filter(({ test }) => /^[<>]=? \d+$/.test(test)),
    ({ test }, dice) => `"${test}${dice.pick(['.0', '.00'])}"`,
  ),
  testsWritten(
    'spaces within a test',
    (demo) => cellsHolding(demo, 'number').filter(({ test }) => /^[<>]=? \d+$/.test(test)),
    ({ test }, dice) => `"${dice.pick([test.replace(' ', ''), test.replace(' ', '  '), ` ${test} `])}"`,
  ),
  testsWritten(
    'comparison as the range it is within the bounds of its column',
    (demo) =>
      cellsHolding(demo, 'number').filter((cell) => {
        const { least, most } = boundsOf(cell);
        return /^</.test(cell.test) ? least !== undefined : /^> ?=?/.test(cell.test) && most !== undefined;
      }),
    (cell) => {
      const { least = 0, most = 0 } = boundsOf(cell);
      const [, sign = '', number] = /^([<>]=?) ?(.*)$/.exec(cell.test) ?? [];
      const isClosed = sign.endsWith('=');
      return sign.startsWith('<')
        ? `"[${least}..${number}${isClosed ? ']' : ')'}"`
        : `"${isClosed ? '[' : '('}${number}..${most}]"`;
    },
  ),
  testsWritten(
    'range reaching beyond what the column can be',
    (demo) =>
      cellsHolding(demo, 'number').filter((cell) => {
        const { least } = boundsOf(cell);
        return /^<=? ?\d/.test(cell.test) && least !== undefined;
      }),
    (cell) => {
      const [, sign = '', number] = /^([<>]=?) ?(.*)$/.exec(cell.test) ?? [];
      return `"(${-1 - (boundsOf(cell).least ?? 0)}..${number}${sign.endsWith('=') ? ']' : ')'}"`;
    },
  ),
  {
    name: 'a test of any value written out',
    make: (dice, demo) => {
      const found = demo
        .linesWhere(/^tables\//, /^ {4}when: \{ (.*) \}$/)
        .flatMap(({ file, line, text, match }) => {
          const of = tablesOf(demo).find((one) => one.file === file);
          const left = (of?.data.inputs ?? []).filter(({ id }) => !match[1]?.includes(`${id}: `));
          return left.map(({ id }) => ({ file, line, text: text.replace(' }', `, ${id}: "-" }`) }));
        });
      const { file, line, text } = dice.pick(found);
      return { what: `${file}:${line} “${text}”`, edits: [demo.withLine(file, line, text)] };
    },
  },
  {
    name: 'columns in another order',
    make: (dice, demo) => {
      const of = dice.pick(tablesOf(demo));
      const lines = demo.lines(of.file);
      const [from, to] = [demo.lineOf(of.file, /^inputs:$/), demo.lineOf(of.file, /^outputs:$/) - 1];
      const items = lines
        .slice(from, to)
        .join('\n')
        .split(/\n(?= {2}- )/);
      const content = [...lines.slice(0, from), ...dice.shuffled(items), ...lines.slice(to)].join('\n');
      return { what: `${of.file}: inputs in another order`, edits: [{ file: of.file, content }] };
    },
  },
  {
    name: 'one more decision table',
    make: (dice, demo) => {
      const of = dice.pick(tablesOf(demo));
      const file = `tables/another-${dice.below(100)}.yaml`;
      const content = demo.text(of.file).replace(/^name: .*$/m, 'name: The same for the other workshop');
      return { what: file, edits: [{ file, content }] };
    },
  },
  {
    name: 'a threshold the rider’s number is held against, moved',
    make: (dice, demo) => {
      // Rules of one answer each: where the line between them lies is the shop’s to say.
      const of = dice.pick(tablesOf(demo).filter(({ data }) => data.hit === 'first'));
      const cell = dice.pick(
        cellsHolding(demo, 'number').filter(
          (one) =>
            one.of.file === of.file &&
            // The only rule that tests it.
            cellsHolding(demo, 'number').filter(
              (other) => other.of.file === of.file && other.column === one.column,
            ).length === 1,
        ),
      );
      const number = Number(/[\d.]+$/.exec(cell.test)?.[0]);
      const text = withTest(demo, cell, `"${cell.test.replace(/[\d.]+$/, String(number * 1.25))}"`);
      return { what: `${of.file}:${cell.line} “${text}”`, edits: [demo.withLine(of.file, cell.line, text)] };
    },
  },
];
