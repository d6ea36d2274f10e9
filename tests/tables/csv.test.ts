import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rowsFromCsv, rowsToCsv } from '../../src/tables/csv.ts';
import { csvCell, csvCells } from '../../src/tables/csv-cells.ts';
import { UnusableFile } from '../../src/tables/file-fault.ts';
import { evaluateTable, readTable, type Table } from '../../src/tables/index.ts';

const at = (text: string, offset: number): string => {
  const before = text.slice(0, offset).split('\n');
  return `${before.length}:${(before.at(-1)?.length ?? 0) + 1}`;
};

/** What is wrong with a text, each with line and column. */
function faultsOf(text: string): string[] {
  try {
    return rowsFromCsv(text, 't').faults.map(({ span, message }) => `${at(text, span.start)} ${message}`);
  } catch (error) {
    if (!(error instanceof UnusableFile)) throw error;
    return [`${at(text, error.span.start)} ${error.message}`];
  }
}

function read(text: string): Table {
  const { table, faults } = rowsFromCsv(text, 't');
  if (!table) throw new Error(JSON.stringify(faults));
  return table;
}

const { table: whole, faults: wholeFaults } = readTable({
  name: 't',
  hitPolicy: 'rule order',
  aggregation: undefined,
  inputs: [
    {
      id: 'clean-volts',
      label: 'Clean volts',
      type: { kind: 'number', unit: 'V', least: 0, most: 12.5 },
      mayBeMissing: true,
    },
    { id: 'step', label: 'Step', type: { kind: 'number', whole: true, least: 0 }, mayBeMissing: false },
    {
      id: 'boost',
      label: 'Boost',
      type: { kind: 'choice', values: ['fixed', 'a | b', 'x; "y"', 'in (two) parts'] },
      mayBeMissing: false,
    },
    { id: 'rear', label: 'Rear', type: { kind: 'yes-no' }, mayBeMissing: false },
    { id: 'flashed', label: 'Flashed', type: { kind: 'date', least: '2020-01-01' }, mayBeMissing: true },
    { id: 'only', label: 'Only', type: { kind: 'choice', values: ['one'] }, mayBeMissing: false },
  ],
  outputs: [
    {
      id: 'answer',
      label: 'Answer',
      type: { kind: 'choice', values: ['reflash', 'keep'] },
      priorities: ['reflash', 'keep'],
      otherwise: 'keep',
    },
    { id: 'gain', label: 'Gain', type: { kind: 'number', unit: 'dB' }, priorities: [], otherwise: undefined },
    { id: 'note', label: 'Note', type: { kind: 'text' }, priorities: [], otherwise: undefined },
    { id: 'ask', label: 'Ask', type: { kind: 'yes-no' }, priorities: [], otherwise: undefined },
    { id: 'again', label: 'Again', type: { kind: 'date' }, priorities: [], otherwise: undefined },
  ],
  rules: [
    {
      id: 'one',
      tests: ['< 3', '1,2,30', '"fixed"', 'true', '< date("2026-03-14")', '"one"'],
      results: ['reflash', -3.5, '=1+1', true, '2026-03-14'],
    },
    {
      id: 'two',
      tests: ['null', '-', 'not("a | b","x; \\"y\\"")', 'not(true)', 'null', '-'],
      results: ['keep', 1e-7, '', false, null],
    },
    {
      id: 'three',
      tests: ['[1..3)', '>= 5', '-', '-', '-', '-'],
      results: ['keep', null, "'-quoted\nline", null, null],
    },
  ],
});

describe('a table as CSV', () => {
  test('looks like one', () => {
    expect(whole && rowsToCsv(whole, { one: '+ is said, "so"' }).replaceAll('\r', '')).toMatchInlineSnapshot(
      `
      "rule: rule order,"when: clean volts (V; 0 to 12.5; may be missing)","when: step (number; whole; from 0)","when: boost (fixed | ""a | b"" | ""x; \\""y\\"""" | ""in (two) parts"")",when: rear (yes/no),"when: flashed (date; from 2020-01-01; may be missing)",when: only (one |),give: answer (reflash | keep),give: gain (dB),give: note (text),give: ask (yes/no),give: again (date),say
      one,< 3,"1, 2, 30",fixed,yes,< 2026-03-14,one,reflash,-3.5,'=1+1,yes,2026-03-14,"'+ is said, ""so"""
      two,null,-,"not(a | b, ""x; \\""y\\"""")",not(yes),null,-,keep,0.0000001,"""""",no,,
      three,[1..3),>= 5,-,-,-,-,keep,,"""'-quoted\\nline""",,,
      if no rule fits,,,,,,,keep,,,,,
      "
    `,
    );
  });

  test('comes back as it was, but for labels', () => {
    if (!whole) throw new Error(JSON.stringify(wholeFaults));
    const says = { one: '+ is said, "so"', three: '"So" they say' };
    const again = rowsFromCsv(rowsToCsv(whole, says), 't');
    expect(again.faults).toEqual([]);
    expect(again.says).toEqual(says);
    const withoutSpaces = (table: Table) => ({
      ...table,
      outputs: table.outputs.map(({ priorities, ...rest }) => rest),
      rules: table.rules.map(({ cells, ...rest }) => ({ ...rest, sets: cells.map(({ set }) => set) })),
    });
    expect(again.table && withoutSpaces(again.table)).toEqual(withoutSpaces(whole));
  });

  test('answers are listed in the order of their priority; one that cannot be is refused', () => {
    const priority = (values: string[], priorities: string[]) =>
      read(`rule: priority,when: a (V),give: b (${values.join(' | ')})\nx,-,low\n`) && {
        ...read(`rule: priority,when: a (V),give: b (${values.join(' | ')})\nx,-,low\n`),
        outputs: [
          {
            id: 'b',
            label: 'B',
            type: { kind: 'choice' as const, values },
            priorities,
            otherwise: undefined,
          },
        ],
      };
    expect(rowsToCsv(priority(['low', 'high'], ['high', 'low']))).toContain('give: b (high | low)');
    expect(() => rowsToCsv(priority(['low', 'high', 'middle'], ['high']))).toThrow(
      /gives no priority to “low”, “middle”/,
    );
  });

  test('no column says what it holds: it goes by the cells', () => {
    const table = read(
      'rule: first,when: volts,when: goes,when: rear,give: gain,give: ask,give: answer\na,< 3,"fixed, fading",yes,3,no,keep\nb,,,,-1,yes,reflash it\n',
    );
    expect(table.inputs.map(({ type }) => type)).toEqual([
      { kind: 'number' },
      { kind: 'choice', values: ['fixed', 'fading'] },
      { kind: 'yes-no' },
    ]);
    expect(table.outputs.map(({ type }) => type.kind)).toEqual(['number', 'yes-no', 'text']);
    expect(evaluateTable(table, { volts: 2, goes: 'fading', rear: true }).rules).toEqual(['a']);
    expect(evaluateTable(table, { volts: 2, goes: 'fading', rear: false }).answers).toEqual([
      { gain: -1, ask: true, answer: 'reflash it' },
    ]);
  });

  test('rules without a name are numbered, empty rows and a byte that marks the order are passed over', () => {
    const table = read('when: a (V),give: b\r\n< 1,x\r\n,,\r\n\r\n>= 1,y\r\n');
    expect(table.rules.map(({ id }) => id)).toEqual(['rule-1', 'rule-2']);
    expect(table.hitPolicy).toBe('unique');
  });
});

describe('spreadsheets of all countries', () => {
  test('semicolons and tabs set cells apart; then a comma between digits of an answer is that of decimals', () => {
    for (const delimiter of [';', '\t']) {
      const table = read(
        ['rule;when: a (V);give: b (dB)', 'x;< 3;4', 'y;>= 3;5'].join('\n').replaceAll(';', delimiter),
      );
      expect(table.rules.map(({ results }) => results)).toEqual([[4], [5]]);
    }
    expect(read('rule;when: a (V);give: b (dB)\nx;-;-3,9\n').rules[0]?.results).toEqual([-3.9]);
  });

  test.each([
    ['when: a (V);give: b\n< 3,9;x\n', '2:1 “3,9” can be one number with a decimal comma, or two numbers.'],
    [
      'when: a (V);give: b\n[1,5..2,5];x\n',
      '2:1 “1,5” can be one number with a decimal comma, or two numbers.',
    ],
    [
      'when: a (V),give: b\n"1,200",x\n',
      '2:1 “1,200” can be one number with a decimal comma, or two numbers.',
    ],
    [
      'when: a (V);give: b\n< 1.234,5;x\n',
      '2:1 “1.234,5” can be one number with a decimal comma, or two numbers.',
    ],
    ['when: a,give: b (dB)\n-,"3,9"\n', '2:3 “3,9” can be one number with a decimal comma, or two numbers.'],
    [
      'when: a;give: b (dB)\n-;1.234\n',
      '2:3 “1.234” can be 1234 or 1.234: this file is one of a spreadsheet that writes commas for points.',
    ],
    [
      'when: a;give: b (dB)\n-;1.234,5\n',
      '2:3 “1.234,5” can be one number with a decimal comma, or two numbers.',
    ],
    [
      'when: a (V);give: b\n> 1.234;x\n',
      '2:1 “1.234” can be 1234 or 1.234: this file is one of a spreadsheet that writes commas for points.',
    ],
  ])('%j is not guessed at', (text, fault) => {
    expect(faultsOf(text)).toEqual([fault]);
  });

  test('a list with blanks, and points, are clear', () => {
    expect(faultsOf('when: a (V);give: b\n1, 2.5, 3;x\n')).toEqual([]);
    expect(faultsOf('when: a (V),give: b\n1.5,x\n"1.5, 2.5",y\n')).toEqual([]);
  });
});

describe('what is wrong, with line and column', () => {
  test.each([
    ['', ['1:1 The file is empty.']],
    ['volts,answer\n1,2\n', ['1:1 “volts” is no head of a column.', '1:7 “answer” is no head of a column.']],
    ['rule: best,when: a,give: b\nx,-,1\n', ['1:1 “rule: best” names no hit policy.']],
    ['rule,when: a\nx,-\n', ['1:1 No column begins with “give:”.']],
    ['rule,when: a,give: b\n', ['1:1 There is no rule.']],
    ['rule,when: a,when: a,give: b\nx,-,-,1\n', ['1:14 There are two columns “when: a”.']],
    ['rule,when: a (V),give: b\nx,< 3,1\nx,>= 3,2\n', ['3:1 Two rules are called “x”.']],
    ['rule,when: a (V),give: b\nx,<,1\n', ['2:3 “<” ends too early.']],
    ['rule,when: a (V),give: b (dB)\nx,-,"loud, very"\n', ['2:5 “loud, very” is no number.']],
    ['rule,when: a (V),give: b (yes/no)\nx,-,maybe\n', ['2:5 “maybe” is neither yes nor no.']],
    [
      'rule,when: a (V),give: b (date)\nx,-,14.03.2026\n',
      ['2:5 “14.03.2026” is no date as tables write them.'],
    ],
    [
      'rule,when: a (on | off),give: b\nx,of,1\n',
      ['2:3 “of” is neither a value of this column nor the name of another.'],
    ],
    ['rule,when: a (V),give: b (on | off)\nx,-,of\n', ['2:5 “of” is no answer of “B”.']],
    ['rule,when: a (V),give: b\nx,-,1,left over\n', ['2:7 This row has 4 cells, but the first row has 3.']],
    [
      'rule,when: a (V),give: b (dB)\nx,<,1\ny,-,loud\n',
      ['2:3 “<” ends too early.', '3:5 “loud” is no number.'],
    ],
    ['rule,when: a (V),give: b\nx,"<1,1\n', ['2:3 A quotation mark is opened and not closed.']],
    ['rule,when: a (V),give: b\nx,"-" 2,1\n', ['2:3 A quotation mark stands where none can be.']],
    ['rule,when: a (V; roughly),give: b\nx,-,1\n', ['1:6 “roughly” says nothing about “a”.']],
  ])('%j', (text, faults) => {
    expect(faultsOf(text)).toEqual(faults);
  });
});

describe('cells a spreadsheet would run', () => {
  test.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-A1', "'-A1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ["'=x", "''=x"],
    ['\uFF1D1', "'\uFF1D1"],
    ['-', '-'],
    ['-3.5', '-3.5'],
    ["'quoted'", "'quoted'"],
    ['= 3', "'= 3"],
    ['a,b', '"a,b"'],
  ])('%j becomes %j', (text, cell) => {
    expect(csvCell(text)).toBe(cell);
  });

  test('any text comes back, and no cell that is not a number begins like a formula', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (raw) => {
        const text = raw.trim();
        fc.pre(text !== '');
        const cell = csvCell(text);
        const [row] = csvCells(`${cell},end\r\n`).rows;
        expect(row?.[0]?.text).toBe(text);
        expect(cell.replace(/^"/, '')).not.toMatch(/^(?!-(\d+(\.\d+)?)?"?$)[=+\-@]/);
      }),
      { numRuns: 500 },
    );
  });
});
