import { readFileSync } from 'node:fs';
import { date } from 'feelin';
import { describe, expect, test } from 'vitest';
import {
  type DmnDecision,
  type DmnFile,
  decideDmn,
  readDmn,
  tableOfDecision,
} from '../../src/tables/dmn/index.ts';
import { UnusableFile } from '../../src/tables/file-fault.ts';
import { evaluateTable } from '../../src/tables/index.ts';

const textOf = (name: string): string => readFileSync(new URL(`dmn-files/${name}`, import.meta.url), 'utf8');

function decisionOf(file: DmnFile, name: string): DmnDecision {
  const found = file.decisions.find((one) => one.name === name);
  if (!found) throw new Error(`no decision ${name}`);
  return found;
}

/** What is said where something is refused. */
function refusal(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (!(error instanceof UnusableFile)) throw error;
    return error.message;
  }
  throw new Error('it was not refused');
}

const at = (text: string, offset: number): string => {
  const before = text.slice(0, offset).split('\n');
  return `${before.length}:${(before.at(-1)?.length ?? 0) + 1}`;
};

function refusedAt(text: string): string {
  try {
    readDmn(text);
  } catch (error) {
    if (!(error instanceof UnusableFile)) throw error;
    return `${at(text, error.span.start)} ${error.message}`;
  }
  throw new Error('it was not refused');
}

// Expected answers worked out by hand from DMN 1.2, 8.2.10: with 3.5 V all three rules fit, with 2.5 V the first two,
// with 1.5 V the first, with 1 V none.
describe('each hit policy and aggregation, DMN 1.2', () => {
  const file = readDmn(textOf('policies-1.2.dmn'));
  const all = (name: string, volts: number) => {
    const { answers, broken, rules } = decideDmn(file, decisionOf(file, name), { volts });
    return {
      values: answers.map((one) => Object.values(one)[0]),
      broken: broken !== undefined,
      rules: rules.length,
    };
  };

  test('is read as 1.2', () => {
    expect(file.version).toBe('1.2');
    expect(file.decisions).toHaveLength(12);
  });

  test.each([
    ['unsaid', 1, ['low'], 1],
    ['unsaid', 2, ['high'], 1],
    ['unique', 1.5, ['low'], 1],
    ['unique', 1, [], 0],
    ['any', 2.5, ['fits'], 2],
    ['priority', 3.5, ['high'], 1],
    ['priority', 1.5, ['low'], 1],
    ['first', 3.5, ['low'], 1],
    ['output order', 3.5, ['high', 'middle', 'low'], 3],
    ['rule order', 3.5, ['low', 'high', 'middle'], 3],
    ['collect', 2.5, ['low', 'high'], 2],
    ['collect', 1, [], 0],
    ['collect sum', 3.5, [35], 3],
    ['collect min', 3.5, [5], 3],
    ['collect max', 3.5, [20], 3],
    ['collect count', 3.5, [3], 3],
    ['collect count', 1, [0], 0],
    ['collect sum', 1, [], 0],
  ])('%s at %d V', (name, volts, values, rules) => {
    expect(all(name, volts)).toEqual({ values, broken: false, rules });
  });

  test.each([
    ['unsaid', 'unique'],
    ['unique', 'unique'],
    ['any', 'any'],
    ['priority', 'priority'],
    ['collect sum', 'collect'],
  ])('%s is read as %s', (name, policy) => {
    expect(decisionOf(file, name).logic).toMatchObject({ kind: 'table', hitPolicy: policy });
  });

  test.each(['unique', 'any'])('%s with rules that contradict each other is broken', (name) => {
    expect(all(name, 3.5)).toEqual({ values: [], broken: true, rules: 3 });
  });

  test('every table of the file is a simple one, and its table gives the same answers', () => {
    for (const decision of file.decisions) {
      const { table, faults, beyond } = tableOfDecision(file, decision);
      expect({ faults, beyond }).toEqual({ faults: [], beyond: undefined });
      if (!table) throw new Error('no table');
      for (const volts of [0.5, 1, 1.5, 2, 2.5, 3, 3.5]) {
        const { answers, rules } = decideDmn(file, decision, { volts });
        expect(evaluateTable(table, { volts })).toMatchObject({ answers, rules });
      }
    }
  });
});

describe('a chain of decisions, DMN 1.3', () => {
  const file = readDmn(textOf('chain-1.3.dmn'));
  const price = decisionOf(file, 'Price');

  // 3 V wanted of 2 V clean: ratio 1.5, so a line driver; below 5 V the small one, 1 + 0.5 hours.
  test('an expression, a table on it, a table on that', () => {
    expect(decideDmn(file, price, { 'Clean volts': 2, 'Wanted volts': 3 })).toEqual({
      answers: [{ hours: 1.5, parts: 'small driver' }],
      isList: false,
      rules: ['p1'],
      broken: undefined,
      required: [
        { decision: 'Ratio', value: 1.5, rules: [] },
        { decision: 'Help', value: 'line driver', rules: ['some'] },
      ],
      notes: [],
    });
  });

  test('an answer that is an expression; a test left empty is any value', () => {
    const { answers, rules } = decideDmn(file, price, { 'Clean volts': 5, 'Wanted volts': 8 });
    expect({ answers, rules }).toEqual({ answers: [{ hours: 2, parts: 'large driver' }], rules: ['p2'] });
  });

  test('no rule fits: the default outputs', () => {
    const { answers, rules } = decideDmn(file, price, { 'Clean volts': 5, 'Wanted volts': 4 });
    expect({ answers, rules }).toEqual({ answers: [{ hours: 0, parts: 'nothing' }], rules: [] });
  });

  test('what is missing is null: the division gives nothing, and that is said', () => {
    const { answers, required, notes } = decideDmn(file, price, { 'Wanted volts': 4 });
    expect(answers).toEqual([{ hours: 0, parts: 'nothing' }]);
    expect(required[0]).toEqual({ decision: 'Ratio', value: null, rules: [] });
    expect(notes.join()).toContain('Wanted volts / Clean volts');
  });

  test('a table with answers to be computed is evaluated only, and says so', () => {
    expect(tableOfDecision(file, price)).toMatchObject({
      table: undefined,
      beyond: { message: '“1 + 0.5” is an expression, not a value.' },
    });
    expect(tableOfDecision(file, decisionOf(file, 'Help')).table?.inputs[0]).toMatchObject({
      id: 'Ratio',
      type: { kind: 'number' },
    });
    expect(tableOfDecision(file, decisionOf(file, 'Ratio')).beyond?.message).toBe(
      'It is an expression, not a table.',
    );
  });
});

describe('types, DMN 1.4', () => {
  const file = readDmn(textOf('types-1.4.dmn'));
  const action = decisionOf(file, 'Action');
  const { table } = tableOfDecision(file, action);

  test('allowed values make choices and bounds; null among the tests, a value that may be missing', () => {
    expect(table?.inputs).toEqual([
      {
        id: 'fade',
        label: 'Fade',
        type: { kind: 'choice', values: ['fixed', 'fading'] },
        mayBeMissing: false,
      },
      { id: 'step', label: 'Step', type: { kind: 'number', least: 0, most: 40 }, mayBeMissing: false },
      { id: 'flashed on', label: 'Flashed on', type: { kind: 'date' }, mayBeMissing: true },
      { id: 'locked', label: 'Locked', type: { kind: 'yes-no' }, mayBeMissing: false },
    ]);
    expect(table?.outputs[0]?.type).toEqual({ kind: 'choice', values: ['measure', 'keep', 'ask'] });
  });

  test.each<[Readonly<Record<string, string | number | boolean>>, string, string | null, string]>([
    [{ fade: 'fading', step: 30, 'flashed on': '2025-12-31', locked: false }, 'measure', '2026-06-01', '2'],
    [{ fade: 'fading', step: 30, 'flashed on': '2026-01-01', locked: false }, 'keep', '2027-01-01', '3'],
    [{ fade: 'fading', step: 30, locked: false }, 'ask', null, '1'],
  ])('%o', (given, what, again, rule) => {
    const flashed = given['flashed on'];
    const dated = flashed === undefined ? {} : { 'flashed on': date(String(flashed)) };
    const { answers, rules } = decideDmn(file, action, { ...given, ...dated });
    // Rules without an id go by their number.
    expect({ answers, rules }).toEqual({ answers: [{ action: what, 'again on': again }], rules: [rule] });
    if (!table) throw new Error('no table');
    expect(evaluateTable(table, given)).toMatchObject({ answers, rules });
  });

  test('annotations are what rules say', () => {
    expect(action.logic.kind === 'table' && action.logic.rules.map(({ says }) => says)).toEqual([
      'The date is not known.',
      'Old and fading.',
      undefined,
    ]);
  });
});

describe('what files hold besides, DMN 1.5', () => {
  const file = readDmn(textOf('plain-1.5.dmn'));

  test('inputs that are not drawn are known from the table', () => {
    const simple = decisionOf(file, 'simple');
    expect(decideDmn(file, simple, { volts: 3 }).answers).toEqual([{ fits: true }]);
    expect(tableOfDecision(file, simple).table?.inputs[0]?.type).toEqual({ kind: 'number' });
  });

  test('a column that is an expression and tests that use another input are evaluated only', () => {
    const derived = decisionOf(file, 'derived');
    expect(decideDmn(file, derived, { a: 2, b: 3 })).toMatchObject({
      answers: [{ larger: 'twice a' }],
      rules: ['d4'],
    });
    expect(decideDmn(file, derived, { a: 1, b: 3 })).toMatchObject({
      answers: [{ larger: 'b' }],
      rules: ['d5'],
    });
    expect(tableOfDecision(file, derived).beyond?.message).toBe('“a * 2” is more than the name of an input.');
  });

  test.each([
    ['rounded', '“Rounding” is a business knowledge model, which is not read here.'],
    ['on boxed', '“boxed” is decided by a boxed conditional, which is not carried out here.'],
  ])('%s is refused for what it needs', (name, message) => {
    expect(refusal(() => decideDmn(file, decisionOf(file, name), {}))).toBe(message);
  });

  test('decisions of other kinds are named, not passed over', () => {
    expect(file.decisions.map(({ name }) => name)).not.toContain('boxed');
    expect(file.refused.map(({ name }) => name)).toEqual(['Rounding', 'boxed']);
  });
});

const small = (inside: string, namespace = 'https://www.omg.org/spec/DMN/20191111/MODEL/'): string =>
  `<definitions xmlns="${namespace}" name="n">\n${inside}\n</definitions>`;
const oneTable = (rules: string, head = ''): string =>
  small(
    `<decision id="d" name="d"><decisionTable ${head}><input><inputExpression><text>a</text></inputExpression></input><output name="o"/>\n${rules}\n</decisionTable></decision>`,
  );
const expression = (id: string, text: string, requires = ''): string =>
  `<decision id="${id}" name="${id}">${requires}<literalExpression><text>${text}</text></literalExpression></decision>`;
const requiring = (id: string): string =>
  `<informationRequirement><requiredDecision href="#${id}"/></informationRequirement>`;

// DMN 1.3, 8.2.10: priority is looked for from the left, and outputs that list no values do not count.
test('of two outputs only the first lists its values: it alone gives the order', () => {
  const row = (test: string, first: string, second: string): string =>
    `<rule><inputEntry><text>${test}</text></inputEntry><outputEntry><text>"${first}"</text></outputEntry><outputEntry><text>"${second}"</text></outputEntry></rule>`;
  const text = small(
    `<decision id="d" name="d"><decisionTable hitPolicy="OUTPUT ORDER"><input><inputExpression typeRef="number"><text>a</text></inputExpression></input><output name="o" typeRef="string"><outputValues><text>"high", "low"</text></outputValues></output><output name="p" typeRef="string"/>${row('> 1', 'low', 'z')}${row('> 2', 'high', 'y')}${row('> 0', 'low', 'a')}</decisionTable></decision>`.replaceAll(
      '<text>> ',
      '<text>&gt; ',
    ),
  );
  const file = readDmn(text);
  const decision = decisionOf(file, 'd');
  const expected = [
    { o: 'high', p: 'y' },
    { o: 'low', p: 'z' },
    { o: 'low', p: 'a' },
  ];
  expect(decideDmn(file, decision, { a: 3 }).answers).toEqual(expected);
  const { table } = tableOfDecision(file, decision);
  expect(table && evaluateTable(table, { a: 3 }).answers).toEqual(expected);
});

test('an input drawn with a name of other characters is a plain one', () => {
  const text = small(
    '<inputData id="i" name="Loss/step"><variable name="Loss/step" typeRef="number"/></inputData><decision id="d" name="d"><informationRequirement><requiredInput href="#i"/></informationRequirement><decisionTable><input><inputExpression><text>Loss/step</text></inputExpression></input><output name="o"/><rule><inputEntry><text>[1..2]</text></inputEntry><outputEntry><text>"fits"</text></outputEntry></rule></decisionTable></decision>',
  );
  const file = readDmn(text);
  const decision = decisionOf(file, 'd');
  expect(decideDmn(file, decision, { 'Loss/step': 1.5 }).answers).toEqual([{ o: 'fits' }]);
  expect(tableOfDecision(file, decision).table?.inputs[0]).toMatchObject({
    id: 'Loss/step',
    type: { kind: 'number' },
  });
});

describe('files that are refused, with the place', () => {
  test.each([
    ['', '1:1 The file is empty.'],
    ['hello', '1:1 This is no well-formed XML: There is text outside of the elements.'],
    [
      '<a>\n<b>\n</a>',
      '3:4 This is no well-formed XML: An end tag closes something else than was opened last, inside <b>.',
    ],
    [
      '<a>\n<b></b>',
      '2:7 This is no well-formed XML: The file ends before everything that was opened is closed, inside <a>.',
    ],
    [
      '<a>\n  &nbsp;</a>',
      '2:8 This is no well-formed XML: There is a “&” that begins no entity XML knows, inside <a>.',
    ],
    ['<a x="1"\n x="2"/>', '1:1 The attribute “x” is given twice.'],
    ['<x:a/>', '1:6 This is no well-formed XML: A prefix before “:” is not declared.'],
    ['<html/>', '1:1 This is no DMN file: it begins with <html> in no namespace.'],
    [
      small('', 'http://www.omg.org/spec/DMN/20151101/dmn.xsd'),
      '1:1 This is a file of DMN 1.0 or 1.1, which is too old to be read.',
    ],
    [
      small('', 'https://www.omg.org/spec/DMN/20990101/MODEL/'),
      '1:1 This is a file of a version of DMN that is not known here (https://www.omg.org/spec/DMN/20990101/MODEL/).',
    ],
    [oneTable('', 'hitPolicy="BEST"'), '2:27 “BEST” is no hit policy.'],
    [oneTable('', 'aggregation="MEAN"'), '2:27 “MEAN” is no aggregation.'],
    [
      oneTable('<rule><inputEntry><text>-</text></inputEntry></rule>'),
      '3:1 This rule has 1 test and 0 results, but the table has 1 input and 1 output.',
    ],
    [
      small(
        '<decision id="d" name="d"><literalExpression expressionLanguage="http://www.w3.org/TR/xpath"><text>1</text></literalExpression></decision>',
      ),
      '2:27 This is written in “http://www.w3.org/TR/xpath”; only FEEL is read.',
    ],
    [
      small(`${expression('a', '1')}\n${expression('a', '2')}`),
      '3:1 Two inputs or decisions have the id “a”.',
    ],
  ])('%j', (text, message) => {
    expect(refusedAt(text)).toBe(message);
  });

  test('an entity bomb and an external entity are refused unread', () => {
    const bomb = `<?xml version="1.0"?>\n<!DOCTYPE d [\n<!ENTITY a "aaaaaaaaaa">\n<!ENTITY b "&a;&a;&a;&a;">\n]>\n${small('&b;')}`;
    const external = `<!DOCTYPE d [<!ENTITY x SYSTEM "file:///etc/hostname">]>\n${small('&x;')}`;
    const message =
      'The file declares a document type (DOCTYPE), which may load other files or swell without bounds.';
    expect(refusedAt(bomb)).toBe(`2:1 ${message}`);
    expect(refusedAt(external)).toBe(`1:1 ${message}`);
  });

  test('too large, too deep, a text without end', () => {
    expect(refusedAt(' '.repeat(9 * 1024 ** 2))).toBe(
      '1:1 The file is larger than 8 MB, which no file of decision tables is.',
    );
    expect(refusedAt('<a>'.repeat(100_000))).toMatch(/More than 60 elements lie in each other/);
    expect(refusedAt(`<a x="${'y'.repeat(300_000)}`)).toMatch(/longer than 64 KB/);
  });
});

describe('decisions that cannot be made', () => {
  const refusedFor = (text: string, name: string) =>
    refusal(() => {
      const file = readDmn(text);
      return decideDmn(file, decisionOf(file, name), {});
    });

  test('a circle of requirements', () => {
    const text = small(
      [
        expression('a', 'b', requiring('b')),
        expression('b', 'c', requiring('c')),
        expression('c', 'b', requiring('b')),
      ].join('\n'),
    );
    expect(refusedFor(text, 'a')).toBe('“b” needs “c” needs “b”: none of them can be decided first.');
  });

  test('a requirement that is not in the file', () => {
    const text = small(expression('a', '1', requiring('elsewhere')));
    expect(refusedFor(text, 'a')).toBe('“a” needs “elsewhere”, which is not in this file.');
  });

  test('a name that is not known is not taken for null', () => {
    expect(refusedFor(small(expression('a', 'voltz * 2')), 'a')).toBe(
      '“voltz * 2” names “voltz”, which is not known here.',
    );
    expect(refusedFor(small(expression('a', 'median of(1)')), 'a')).toContain('which is not known here.');
  });

  test.each(['1 +', 'if true then', '“low”', '('.repeat(20_000)])('%.20s is no FEEL', (text) => {
    expect(refusedFor(small(expression('a', text)), 'a')).toMatch(
      /is no FEEL that can be read|lies too deep/,
    );
  });

  test('a hit policy broken further up is told with the decision', () => {
    const rules =
      '<rule><inputEntry><text>-</text></inputEntry><outputEntry><text>1</text></outputEntry></rule>'.repeat(
        2,
      );
    const text = oneTable(rules).replace(
      '</definitions>',
      `${expression('top', 'd', requiring('d'))}</definitions>`,
    );
    const file = readDmn(text);
    expect(decideDmn(file, decisionOf(file, 'top'), {}).broken).toBe(
      '“d”, which it needs: 2 rules fit, but only one may: the hit policy is “unique”.',
    );
  });
});
