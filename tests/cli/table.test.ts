import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { tableSchema } from '../../schemas/index.ts';
import { tableCheckResultSchema } from '../../schemas/results/table-check.ts';
import { tableDecideResultSchema } from '../../schemas/results/table-decide.ts';
import { tableExportResultSchema, tableImportResultSchema } from '../../schemas/results/table-files.ts';
import { evaluateTable, tableOfEntry } from '../../src/tables/index.ts';
import { ContentCopy } from '../content-copy.ts';
import { readback } from './run.ts';

const files = 'tests/tables/dmn-files';

/** Written here rather than taken from the demo, which may change its mind. */
const entry = `name: Gain
question: Is it loud enough?
about: For tests.
order: 900
hit: first
inputs:
  - { id: clean-volts, label: Clean volts, holds: number, question: "Volts?", unit: V, least: 0, most: 12 }
  - { id: boost-goes, label: Boost with volume, holds: choice, question: "Boost?", values: [none, fixed, fading] }
  - { id: rear-wanted, label: Rear wanted, holds: yes-no, question: "Rear?" }
  - { id: flashed, label: Flashed on, holds: date, question: "When?" }
outputs:
  - { id: answer, label: What to do, holds: choice, values: [reflash, keep], otherwise: keep }
  - { id: gain, label: Gain, holds: number, unit: dB, otherwise: 0 }
rules:
  - { id: quiet, when: { clean-volts: "< 4" }, give: { answer: reflash, gain: 3.5 }, say: "Too quiet." }
  - { id: moves, when: { boost-goes: fading, rear-wanted: "yes", flashed: "< 2026-01-01" }, give: { answer: reflash, gain: -1 } }
sources: [equipment-classes]
`;

let copy: ContentCopy;
let folder: string;
beforeAll(async () => {
  copy = await ContentCopy.make();
  await copy.write('tables/loud-enough.yaml', entry);
  await copy.write(
    'tables/broken.yaml',
    entry.replace('"< 4"', '"< four"').replace('order: 900', 'order: 901'),
  );
  folder = await mkdtemp(join(tmpdir(), 'tables-'));
});
afterAll(async () => {
  await copy.remove();
  await rm(folder, { recursive: true });
});

const table = (...argv: string[]) => readback('table', ...argv, '--content', copy.folder);
async function decide(...argv: string[]) {
  const { code, out, err } = await table('decide', ...argv, '--json');
  expect(err).toBe('');
  return { code, ...tableDecideResultSchema.parse(JSON.parse(out)) };
}
async function file(name: string, text: string): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}

describe('table decide', () => {
  test('an entry by id and by path: answer, rules, notes', async () => {
    const given = [
      '--input',
      'clean volts=3.9',
      '--input',
      'rear-wanted=no',
      '--input',
      'Flashed on=2026-03-14',
    ];
    const expected = {
      code: 0,
      table: 'loud-enough',
      outputs: { answer: 'reflash', gain: 3.5 },
      rules: ['quiet'],
      borderline: false,
      broken: null,
      settledBy: [],
      notes: ['Not given, and so taken for not known (null): “boost-goes”.'],
    };
    expect(await decide('loud-enough', ...given)).toMatchObject(expected);
    expect(await decide(join(copy.folder, 'tables/loud-enough.yaml'), ...given)).toMatchObject(expected);
  });

  test('as text: the answer, by which rule, what it says; notes on the error stream', async () => {
    const { code, out, err } = await table('decide', 'loud-enough', '--input', 'clean-volts=3');
    expect(code).toBe(0);
    expect(out).toBe('answer: reflash, gain: 3.5\nby rule “quiet”\nToo quiet.');
    expect(err).toBe('Not given, and so taken for not known (null): “boost-goes”, “rear-wanted”, “flashed”.');
  });

  test.each(['3.9±0.15', '3.9+-0.15', '3.9 +/- 0.15', '3.9±0.15 V'])(
    'a value with its uncertainty, %s: all that is possible, and what settles it',
    async (value) => {
      const rest = [
        '--input',
        'boost-goes=none',
        '--input',
        'rear-wanted=yes',
        '--input',
        'flashed=2026-03-14',
      ];
      expect(await decide('loud-enough', '--input', `clean volts=${value}`, ...rest)).toMatchObject({
        code: 0,
        outputs: { answer: 'reflash', gain: 3.5 },
        rules: ['quiet'],
        borderline: true,
        possible: [
          { outputs: { answer: 'reflash', gain: 3.5 }, rules: ['quiet'] },
          { outputs: { answer: 'keep', gain: 0 }, rules: [] },
        ],
        settledBy: ['clean-volts'],
      });
    },
  );

  test('an uncertainty that reaches no threshold leaves one answer', async () => {
    expect(await decide('loud-enough', '--input', 'clean volts=3.5±0.4')).toMatchObject({
      borderline: false,
      rules: ['quiet'],
      possible: [{ rules: ['quiet'] }],
    });
  });

  test('borderline, as text', async () => {
    const { out } = await table(
      'decide',
      'loud-enough',
      '--input',
      'clean volts=4±0.1',
      '--input',
      'boost-goes=none',
    );
    expect(out).toMatchInlineSnapshot(`
      "answer: keep, gain: 0
      No rule fits: this is what the table says otherwise.

      Borderline: within the uncertainty given it may also be
        answer: reflash, gain: 3.5
        by rule “quiet”
        Too quiet.
      Known exactly, “clean-volts” would settle it."
    `);
  });

  test('a list of answers where the policy gives one; none is exit code 1', async () => {
    const volts = (name: string, value: string) =>
      decide(`${files}/policies-1.2.dmn`, '--decision', name, '--input', `volts=${value}`);
    expect(await volts('output order', '2.5')).toMatchObject({
      code: 0,
      outputs: [{ band: 'high' }, { band: 'low' }],
      rules: ['output_order_1', 'output_order_2'].reverse(),
    });
    expect(await volts('collect', '1')).toMatchObject({ code: 1, outputs: [], rules: [] });
    expect(await volts('first', '1')).toMatchObject({ code: 1, outputs: null, rules: [], broken: null });
    expect(await volts('unique', '2.5')).toMatchObject({
      code: 1,
      outputs: null,
      rules: ['unique_1', 'unique_2'],
      broken: '2 rules fit, but only one may: the hit policy is “unique”.',
    });
    expect(await volts('collect sum', '3.5')).toMatchObject({ outputs: { amount: 35 } });
  });

  test('a chain of a DMN file, with what it rests on', async () => {
    const given = ['--input', 'clean volts=2', '--input', 'Wanted volts=3'];
    expect(await decide(`${files}/chain-1.3.dmn`, '--decision', 'price', ...given)).toMatchObject({
      outputs: { hours: 1.5, parts: 'small driver' },
      rules: ['p1'],
      required: [
        { decision: 'Ratio', value: 1.5, rules: [] },
        { decision: 'Help', value: 'line driver', rules: ['some'] },
      ],
    });
  });

  test('dates, choices and yes or no of a DMN file; rules without ids by number', async () => {
    const given = ['fade=fading', 'step=30', 'flashed on=2025-12-31', 'locked=no'].flatMap((one) => [
      '--input',
      one,
    ]);
    expect(await decide(`${files}/types-1.4.dmn`, ...given)).toMatchObject({
      outputs: { action: 'measure', 'again on': '2026-06-01' },
      rules: ['2'],
    });
  });

  test('an uncertain value in a DMN file of one plain table', async () => {
    expect(
      await decide(`${files}/policies-1.2.dmn`, '--decision', 'unsaid', '--input', 'volts=1±0.1'),
    ).toMatchObject({
      borderline: true,
      possible: [{ rules: ['unsaid_1'] }, { rules: ['unsaid_2'] }],
      settledBy: ['volts'],
    });
  });

  const chain = `${files}/chain-1.3.dmn`;
  const policies = `${files}/policies-1.2.dmn`;
  test.each<[string[], string]>([
    [
      ['loud-enough', '--input', 'clean vlts=3'],
      'There is no input “clean vlts”.\n→ Did you mean “clean-volts”? The inputs are: “clean-volts”, “boost-goes”, “rear-wanted”, “flashed”.',
    ],
    [
      ['loud-enough', '--input', 'clean volts=loud'],
      '“clean-volts” cannot be “loud”.\n→ It is a number in V: clean-volts=3.9, or clean-volts=3.9±0.15.',
    ],
    [
      ['loud-enough', '--input', 'clean volts=3,9'],
      '“clean-volts” cannot be “3,9”.\n→ Write the number with a point: 3.9.',
    ],
    [
      ['loud-enough', '--input', 'clean volts=3900 mV'],
      '“clean-volts” cannot be “3900 mV”.\n→ It is in V: convert it.',
    ],
    [['loud-enough', '--input', 'clean volts=13'], '“clean-volts” cannot be “13”.\n→ It is 0 to 12.'],
    [
      ['loud-enough', '--input', 'clean volts=3±-1'],
      '“clean-volts” cannot be “3±-1”.\n→ What follows ± is the half-width: it is not below zero.',
    ],
    [
      ['loud-enough', '--input', 'boost goes=fixd'],
      '“boost-goes” cannot be “fixd”.\n→ Did you mean “fixed”? It is one of “none”, “fixed”, “fading”.',
    ],
    [
      ['loud-enough', '--input', 'rear wanted=perhaps'],
      '“rear-wanted” cannot be “perhaps”.\n→ It is yes or no.',
    ],
    [
      ['loud-enough', '--input', 'flashed=14.03.2026'],
      '“flashed” cannot be “14.03.2026”.\n→ It is a date, written year-month-day: 2026-03-14.',
    ],
    [
      ['loud-enough', '--input', 'clean volts'],
      "--input “clean volts” does not say which input has which value.\n→ Write the name, “=” and the value: --input 'clean-volts=…'.",
    ],
    [
      ['loud-enough', '--input', 'clean volts='],
      '“clean-volts” cannot be nothing.\n→ Write a value after “=”, or null where it is not known.',
    ],
    [
      ['loud-enough', '--input', 'clean volts=1', '--input', 'Clean_Volts=2'],
      '“clean-volts” is given twice.\n→ Give each input one value.',
    ],
    [['loud-enogh'], 'There is no table “loud-enogh” in CONTENT.\n→ Did you mean loud-enough?'],
    [
      ['loud-enough', '--decision', 'x'],
      '--decision names a decision of a DMN file, but this file holds one table.\n→ Leave --decision out.',
    ],
    [
      [chain],
      `${chain} holds 3 decisions, and it is not said which one is meant.\n→ Add --decision with one of: “Ratio”, “Help”, “Price”.`,
    ],
    [
      [chain, '--decision', 'Prise'],
      `There is no decision “Prise” in ${chain}.\n→ Did you mean “Price”? It holds: “Ratio”, “Help”, “Price”.`,
    ],
    [
      [chain, '--decision', 'Price', '--input', 'clean volts=2±1'],
      '“Price” cannot be decided on uncertain values: it needs other decisions (“Ratio”, “Help”).\n→ Give exact values, once for each end of what is uncertain.',
    ],
    [
      [`${files}/plain-1.5.dmn`, '--decision', 'boxed'],
      `${files}/plain-1.5.dmn:28:3: “boxed” is decided by a boxed conditional, which is not carried out here.\n→ Decide it by a decision table or a literal expression in FEEL.`,
    ],
    [
      [policies.replace('1.2', '9')],
      `There is no file ${policies.replace('1.2', '9')}.\n→ Check the name and the folder.`,
    ],
    [
      ['README.md'],
      'README.md is no table: it ends in .md.\n→ Give an entry (tables/x.yaml), a .dmn file, a .csv file, or the id of an entry.',
    ],
  ])('%j is told in words, exit code 2', async (argv, message) => {
    const { code, out, err } = await table('decide', ...argv);
    expect({ code, out, err: err.replaceAll(copy.folder, 'CONTENT') }).toEqual({
      code: 2,
      out: '',
      err: message,
    });
  });

  test('an entry with a fault: where it is', async () => {
    const { code, err } = await table('decide', 'broken', '--input', 'clean volts=3');
    expect(code).toBe(2);
    expect(err.replaceAll(copy.folder, 'CONTENT')).toMatch(/^CONTENT\/tables\/broken\.yaml:15:\d+: “< four”/);
  });

  test('broken XML: line and column', async () => {
    const path = await file('broken.dmn', '<definitions>\n<a>&</definitions>');
    const { code, err } = await table('decide', path);
    expect(code).toBe(2);
    expect(err).toContain(`${path}:2:5: This is no well-formed XML`);
  });
});

describe('table check', () => {
  test('clean files of all kinds', async () => {
    const csv = await file('clean.csv', 'rule,when: a (V),give: b\nlow,< 4,x\nhigh,>= 4,y\n');
    expect(await table('check', 'loud-enough', `${files}/types-1.4.dmn`, csv)).toMatchObject({
      code: 0,
      out: 'No gaps, no contradictions: 3 tables, 7 rules.',
    });
  });

  test('gaps, overlaps, dead rules and idle columns of a CSV file, each at its place', async () => {
    const csv = await file(
      'troubles.csv',
      'rule,when: a (V),give: b\nlow,< 3,x\nmiddle,[2..4],y\nhigh,> 5,z\n',
    );
    const dead = await file(
      'dead.csv',
      'rule: first,when: a (V),when: b (yes/no),give: c\nall,,,x\nnever,< 3,,y\n',
    );
    const idle = await file(
      'idle.csv',
      'rule: first,when: a (V),when: b (yes/no),give: c\nlow,< 3,,x\nhigh,>= 3,,y\n',
    );
    const { code, out } = await table('check', csv, dead, idle, '--json');
    expect(code).toBe(1);
    const { findings, tables, counts } = tableCheckResultSchema.parse(JSON.parse(out));
    const short = findings.map(
      (one) => `${one.file.slice(folder.length + 1)}:${one.line}:${one.column} ${one.rule}`,
    );
    expect(short).toEqual([
      'dead.csv:3:1 table-dead-rule',
      'idle.csv:1:25 table-idle-input',
      'troubles.csv:1:1 table-gap',
      'troubles.csv:3:1 table-overlap',
    ]);
    expect(findings[3]?.message).toContain('“low” and “middle” give different answers for');
    expect(tables.map(({ rules, analysed }) => ({ rules, analysed }))).toEqual([
      { rules: 3, analysed: true },
      { rules: 2, analysed: true },
      { rules: 2, analysed: true },
    ]);
    expect(counts).toEqual({ error: 3, warning: 1, note: 0 });
  });

  test('what a DMN file holds that is evaluated only is news; what is refused, a warning', async () => {
    const { code, out } = await table('check', `${files}/plain-1.5.dmn`, '--json');
    expect(code).toBe(1);
    const { findings } = tableCheckResultSchema.parse(JSON.parse(out));
    expect(findings.map(({ line, severity, message }) => ({ line, severity, message }))).toEqual([
      {
        line: 17,
        severity: 'note',
        message: '“derived” can be evaluated, but not analysed: “a * 2” is more than the name of an input.',
      },
      {
        line: 26,
        severity: 'warning',
        message: '“Rounding” is a business knowledge model, which is not read here.',
      },
      {
        line: 28,
        severity: 'warning',
        message: '“boxed” is decided by a boxed conditional, which is not carried out here.',
      },
    ]);
  });

  test('notes alone are no findings, and nothing is claimed of what was not analysed', async () => {
    const { code, out } = await table('check', `${files}/chain-1.3.dmn`);
    expect(code).toBe(0);
    expect(out.split('\n').at(-1)).toBe(
      'Nothing is wrong with 3 tables, 5 rules; “Ratio”, “Price” can be evaluated, but not analysed.',
    );
  });

  test('an entry: what the check says of it, and nothing else', async () => {
    const { code, out } = await table('check', 'broken', '--json');
    expect(code).toBe(1);
    const { findings } = tableCheckResultSchema.parse(JSON.parse(out));
    expect(findings.map(({ rule, file: of, line }) => ({ rule, of, line }))).toEqual([
      { rule: 'table-fault', of: join(copy.folder, 'tables/broken.yaml'), line: 15 },
    ]);
  });

  test('a faulty expression of a chain, a circle, and a file that is no XML', async () => {
    const text = await readFile(`${files}/chain-1.3.dmn`, 'utf8');
    const misspelt = await file(
      'misspelt.dmn',
      text.replace('Wanted volts / Clean volts', 'Wanted volts / Clean vlts'),
    );
    const circle = await file(
      'circle.dmn',
      text.replace('<dmn:requiredInput href="#in_clean"/>', '<dmn:requiredDecision href="#help"/>'),
    );
    const none = await file('none.dmn', 'PK\u0003\u0004');
    const { code, out } = await table('check', misspelt, circle, none, '--json');
    expect(code).toBe(1);
    const { findings } = tableCheckResultSchema.parse(JSON.parse(out));
    const errors = findings.filter(({ severity }) => severity === 'error');
    expect(errors.map(({ line, message }) => `${line} ${message}`)).toEqual(
      expect.arrayContaining([
        '10 “Wanted volts / Clean vlts” names “Clean vlts”, which is not known here.',
        expect.stringMatching(/“Ratio” needs “Help” needs “Ratio”/),
        expect.stringMatching(/^1 This is no well-formed XML/),
      ]),
    );
  });

  test('a text without its quotes in a DMN file is told, and not taken for null', async () => {
    const text = await readFile(`${files}/chain-1.3.dmn`, 'utf8');
    const path = await file(
      'bare.dmn',
      text.replace(
        '<dmn:text>"line driver"</dmn:text></dmn:inputEntry>',
        '<dmn:text>driver</dmn:text></dmn:inputEntry>',
      ),
    );
    const simple = await file(
      'bare-simple.dmn',
      (await readFile(`${files}/types-1.4.dmn`, 'utf8')).replace(
        '<inputEntry><text>"fading"</text>',
        '<inputEntry><text>fading</text>',
      ),
    );
    for (const [one, name] of [
      [path, 'driver'],
      [simple, 'fading'],
    ] as const) {
      const { code, out } = await table('check', one, '--json');
      expect(code).toBe(1);
      const errors = tableCheckResultSchema
        .parse(JSON.parse(out))
        .findings.filter(({ severity }) => severity === 'error');
      expect(errors.map(({ message }) => message)).toEqual([
        `“${name}” names “${name}”, which is not known here.`,
      ]);
    }
  });

  test('no such file: exit code 2', async () => {
    expect(await table('check', 'nowhere.csv')).toMatchObject({ code: 2, out: '' });
  });
});

describe('table export and import', () => {
  test.each(['dmn', 'csv'] as const)('there and back by %s: the same answers', async (format) => {
    const out = join(folder, `loud-enough.${format}`);
    const exported = await table('export', 'loud-enough', '--format', format, '--out', out, '--json');
    expect(exported.code).toBe(0);
    expect(tableExportResultSchema.parse(JSON.parse(exported.out))).toMatchObject({ file: out, text: null });
    expect(await table('check', out)).toMatchObject({ code: 0 });
    const back = join(folder, `back-${format}.yaml`);
    const imported = await readback('table', 'import', out, '--out', back, '--json');
    const result = tableImportResultSchema.parse(JSON.parse(imported.out));
    expect(result).toMatchObject({ file: back, rules: 2 });
    expect(result.fillIn.join('\n')).toMatch(/sources: .*\n(.*\n)*inputs: .*“Clean volts”/);
    const before = tableOfEntry(tableSchema.parse(parse(entry))).table;
    const data = tableSchema.parse(parse(await readFile(back, 'utf8')));
    const { table: after, faults } = tableOfEntry(data);
    expect(faults).toEqual([]);
    if (!before || !after) throw new Error('no table');
    expect(data.rules.map(({ id, say }) => [id, say])).toEqual([
      ['quiet', 'Too quiet.'],
      ['moves', undefined],
    ]);
    for (const volts of [3.999, 4, 12, null]) {
      for (const goes of ['none', 'fading', null]) {
        for (const flashed of ['2025-12-31', '2026-01-01']) {
          const given = { 'clean-volts': volts, 'boost-goes': goes, 'rear-wanted': true, flashed };
          expect(evaluateTable(after, given)).toEqual(evaluateTable(before, given));
        }
      }
    }
  });

  test('nothing is written over, and nothing is left behind', async () => {
    const out = await file('there.csv', 'mine');
    const { code, err } = await table('export', 'loud-enough', '--format', 'csv', '--out', out);
    expect({ code, err }).toEqual({
      code: 2,
      err: `${out} is there already, and is left as it is.\n→ Give another name, or move it away first.`,
    });
    expect(await readFile(out, 'utf8')).toBe('mine');
    const csv = await file('new.csv', 'rule,when: a (V),give: b\nlow,< 4,x\n');
    const entryFile = await file('there.yaml', 'mine');
    expect(await readback('table', 'import', csv, '--out', entryFile)).toMatchObject({ code: 2, out: '' });
    expect(await readFile(entryFile, 'utf8')).toBe('mine');
    expect((await readdir(folder)).filter((one) => one.endsWith('.part'))).toEqual([]);
  });

  test('without --out the text is printed, and what to fill in on the error stream', async () => {
    const csv = await file('print.csv', 'rule,when: a (V),give: b (dB)\n1,< 4,-2\n');
    const { code, out, err } = await readback('table', 'import', csv);
    expect(code).toBe(0);
    expect(tableSchema.parse(parse(out))).toMatchObject({
      hit: 'unique',
      inputs: [{ id: 'a', holds: 'number', unit: 'V' }],
      rules: [{ id: 'rule-1', when: { a: '< 4' }, give: { b: -2 } }],
      sources: ['to-be-filled-in'],
    });
    expect(err).toContain('To be filled in by hand:\n  - sources:');
  });

  test('names of any DMN file become ids', async () => {
    const { code, out } = await readback('table', 'import', `${files}/chain-1.3.dmn`, '--decision', 'Help');
    expect(code).toBe(0);
    expect(tableSchema.parse(parse(out))).toMatchObject({
      inputs: [{ id: 'ratio', label: 'Ratio' }],
      outputs: [{ id: 'help', holds: 'text' }],
      rules: [{ id: 'none' }, { id: 'some', when: { ratio: '(1..2]' } }, { id: 'much' }],
    });
  });

  test.each<[string, string[], string]>([
    [
      'a.csv',
      ['rule,when: a (text),give: b\nx,"""on""",1\n'],
      '1:6: “A” can be any text, but an entry asks for one of several.',
    ],
    [
      'b.csv',
      ['rule,when: a (V),give: b,give: c\nx,-,1,\n'],
      '2:7: The rule “x” gives nothing for “C”, but the rules of an entry answer every output.',
    ],
    [
      'c.csv',
      ['rule,when: a (V),when: b (V),give: c\nx,> b,-,1\n'],
      '2:3: “> b” is more than a simple test, so nothing can be proved about it.',
    ],
    ['d.csv', ['rule,when: a (V),give: b\nx,<,1\n'], '2:3: “<” ends too early.'],
  ])('%s: what makes no entry is told with its place', async (name, [text = ''], message) => {
    const path = await file(name, text);
    const out = join(folder, 'never.yaml');
    const { code, err } = await readback('table', 'import', path, '--out', out);
    expect({ code, err: err.split('\n')[0] }).toEqual({ code: 2, err: `${path}:${message}` });
    expect(await readdir(folder)).not.toContain('never.yaml');
  });

  test.each([
    [['import', 'README', '--format', 'csv'], 'There is no file README.'],
    [
      ['import', `${files}/chain-1.3.dmn`, '--decision', 'Price'],
      '“Price” is no simple table, so it makes no entry',
    ],
    [['import', 'a.csv', '--out', 'tables/Big Table.yaml'], '“Big Table.yaml” cannot name an entry.'],
    [
      ['export', `${files}/chain-1.3.dmn`, '--format', 'csv', '--decision', 'Ratio'],
      '“Ratio” is no simple table: It is an expression, not a table.',
    ],
  ])('%j cannot run', async (argv, message) => {
    const { code, out, err } = await readback('table', ...argv);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(message);
  });
});
