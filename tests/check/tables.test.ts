/** What is told of decision tables, in the words of those who write them; the rules have their own examples besides. */
import { describe, expect, test } from 'vitest';
import { MapMemory, MemoryFiles } from '../../src/base/index.ts';
import { checkContent } from '../../src/check/index.ts';
import { editedExample, exampleFiles } from './example-base.ts';
import { add, edit, told } from './told.ts';

const amplifier = 'tables/behind-an-amplifier.yaml';
const rear = 'tables/rear-speakers.yaml';

describe('a test that cannot be read says what to write instead', () => {
  test.each([
    // [as written, the rule, what the help offers]
    ['> 4', 'syntax', '"> 4"'],
    ['>= 4', 'syntax', '">= 4"'],
    ['(1..4]', 'syntax', '"(1..4]"'],
    ['[1..4]', 'schema', '"[1..4]"'],
    ['-', 'syntax', '"-"'],
    ['"1 V"', 'table-fault', '"1"'],
    ['"< 1 V"', 'table-fault', '"< 1"'],
    ['"[1 V..3 V]"', 'table-fault', '"[1..3]"'],
    ['"< 900 mV"', 'table-fault', 'convert it first'],
    ['"< 4,2"', 'table-fault', '"< 4.2"'],
    ['"=< 4"', 'table-fault', '"<= 4"'],
    ['"=> 4"', 'table-fault', '">= 4"'],
    ['"≤ 4"', 'table-fault', '"<= 4"'],
    ['"under 4"', 'table-fault', '"< 4"'],
    ['"at least 4"', 'table-fault', '">= 4"'],
    ['"< 1 or > 3"', 'table-fault', '"< 1, > 3"'],
    ['"1-3"', 'table-fault', '"[1..3]"'],
    ['"1 to 3"', 'table-fault', '"[1..3]"'],
    ['"1 – 3"', 'table-fault', '"[1..3]"'],
    ['"[3..1]"', 'table-fault', 'lower end first'],
    ['"(1..1]"', 'table-fault', 'closed ends'],
    ['"1e3"', 'table-fault', '1000'],
    ['"clean-volts + 1"', 'table-fault', 'A test is'],
    [`"${'1, '.repeat(400)}2"`, 'table-fault', 'several rules'],
  ])('%s', async (written, rule, offered) => {
    const { findings } = await checkContent(editedExample([edit(amplifier, '"< 1"', written)]));
    expect(findings.map((one) => `${one.rule} ${one.place.line}`)).toEqual([`${rule} 26`]);
    expect(findings[0]?.help).toContain(offered);
    expect(findings[0]?.message.length).toBeLessThan(200);
  });

  test('a test on a line of its own, which YAML takes for the beginning of a long text', async () => {
    const onLine = (test: string) =>
      checkContent(
        editedExample([edit(amplifier, '{ clean-volts: "< 1" }', `\n      clean-volts: ${test}`)]),
      );
    for (const written of ['> 4', '>= 4', '>4']) {
      const { findings } = await onLine(written);
      expect(findings.map(({ place }) => `${place.line}:${place.column}`)).toEqual(['27:20']);
      expect(findings[0]?.help).toBe(`Put the test in quotes: "${written}".`);
    }
  });

  test('several values, of which YAML makes fields or a list', async () => {
    const [bare] = await told(edit(rear, '"silent, none"', 'silent, none'));
    expect(bare).toBe(`schema ${rear}: “rules”, item 4, “when”, “none” is empty.`);
    const { findings } = await checkContent(editedExample([edit(rear, '"silent, none"', '[silent, none]')]));
    expect(findings.map(({ help }) => help)).toEqual([
      'Put the values in quotes, with commas between them: rear: "silent, none"',
    ]);
  });
});

describe('one slip is told once', () => {
  test('a column misspelt where it is defined', async () => {
    expect(await told(edit(rear, '- id: feet', '- id: foot'))).toEqual([
      `table-fault ${rear}: No rule names “foot”, and 4 rules name “feet”, which is no column of this table.`,
    ]);
  });

  test('an answer misspelt in the list', async () => {
    const { findings } = await checkContent(editedExample([edit(rear, '[front, rear]', '[frnt, rear]')]));
    expect(findings).toHaveLength(1);
    expect(findings[0]?.related).toHaveLength(1);
    expect(findings[0]?.help).toMatch(/^Did you mean “frnt”\?/);
  });

  test('a rule that overlaps with several names them all', async () => {
    const { findings } = await checkContent(
      editedExample([edit(rear, 'when: { rear: "playing", feet: "<= 10" }', 'when: {}')]),
    );
    expect(findings.map(({ rule, place }) => `${rule} ${place.line}`)).toEqual(['table-overlap 26']);
    expect(findings[0]?.related.map(({ place }) => place.line)).toEqual([29, 32, 35]);
  });

  test('the other half of a comparison turned round comes with the overlap', async () => {
    const { findings } = await checkContent(
      editedExample([edit(rear, 'rear: "playing", feet: "<= 10"', 'rear: "playing", feet: ">= 10"')]),
    );
    expect(findings.map(({ rule }) => rule)).toEqual(['table-overlap']);
    expect(findings[0]?.related.at(-1)?.message).toMatch(/^And no rule holds for this: .*under 10/);
  });

  test('several cases left open are one finding with an example each can be tried on', async () => {
    const { findings } = await checkContent(
      editedExample([
        edit(amplifier, '  - id: plain\n    when: {}', '  - id: plain\n    when: { clean-volts: "[2..3]" }'),
      ]),
    );
    expect(findings.map(({ rule, place }) => `${rule} ${place.line}`)).toEqual(['table-gap 24']);
    expect(findings[0]?.message).toMatch(/For example: clean volts [\d.]+\sV, /);
  });
});

describe('no answer is no fault', () => {
  const open = edit(amplifier, '  - id: plain\n    when: {}', '  - id: plain\n    when: { equaliser: "no" }');

  test.each(['collect', 'rule order', 'output order'])('under “%s”', async (policy) => {
    expect(await told(open, edit(amplifier, 'hit: first', `hit: ${policy}`))).toEqual([]);
  });

  test('where the rest has an answer', async () => {
    const rest = edit(
      amplifier,
      'values: [reflash, correct, keep]',
      'values: [reflash, correct, keep]\n    otherwise: keep',
    );
    expect(await told(open, rest)).toEqual([]);
  });
});

test('what is not known has to be answered where it may be missing', async () => {
  const missing = edit(
    amplifier,
    'characteristic: clean-volts',
    'characteristic: clean-volts\n    mayBeMissing: true',
  );
  expect(await told(missing)).toEqual([]);
  const known = edit(
    amplifier,
    '  - id: plain\n    when: {}',
    '  - id: plain\n    when: { clean-volts: "not(null)" }',
  );
  const { findings } = await checkContent(editedExample([missing, known]));
  expect(findings.map(({ rule }) => rule)).toEqual(['table-gap']);
  expect(findings[0]?.message).toMatch(/clean volts not known/);
  expect(findings[0]?.help).toMatch(/mayBeMissing/);
});

describe('what makes an input matter', () => {
  test('is also what a rule says', async () => {
    // Both rules answer alike; only their words depend on the equaliser.
    const alike = edit(amplifier, 'give: { answer: correct }', 'give: { answer: reflash }');
    const idle = (findings: readonly string[]) => findings.filter((one) => one.startsWith('table-idle'));
    expect(idle(await told(alike))).toEqual([]);
    const silent = edit(
      amplifier,
      '\n    say: Take the boost out with the equaliser.\n    guides: [reading-a-code]\n',
      '\n',
    );
    expect(idle(await told(alike, silent))).toEqual([
      `table-idle-input ${amplifier}: Whatever “equaliser” is, the answer is the same.`,
    ]);
  });
});

describe('rules that are one', () => {
  test('are not merged where they say different things', async () => {
    const two = (say: string) =>
      edit(
        amplifier,
        '  - id: boost-left\n    when: { boost-goes: "fixed, fading, switched, changing" }\n',
        `  - id: boost-moves\n    when: { boost-goes: "fading, switched, changing" }\n    give: { answer: reflash }\n${say}  - id: boost-left\n    when: { boost-goes: "fixed" }\n`,
      );
    expect(await told(two(''))).toEqual([
      `table-mergeable ${amplifier}: The rules “boost-moves”, “boost-left” give the same answer and differ in “boost-goes” only.`,
    ]);
    expect(await told(two('    say: It comes and goes.\n'))).toEqual([]);
  });

  test('the merged test is written as entries are', async () => {
    const { findings } = await checkContent(
      editedExample([
        edit(
          rear,
          'when: { rear: "silent, none", feet: "(10..20]" }',
          'when: { rear: silent, feet: "(10..20]" }',
        ),
        edit(
          rear,
          'sources: [maker-bulletin]',
          '  - id: none-far\n    when: { rear: none, feet: "> 10" }\n    give: { from: front, gauge: 16 }\nsources: [maker-bulletin]',
        ),
      ]),
    );
    expect(findings.map(({ rule }) => rule)).toEqual(['table-mergeable']);
    expect(findings[0]?.help).toContain('rear: "silent, none"');
  });
});

describe('thresholds and what is measured', () => {
  test('the uncertainty is named with its unit and the number of profiles, each counted once', async () => {
    const [fine] = await told(
      edit(
        amplifier,
        '  - id: boost-fixed\n',
        '  - id: hardly-quiet\n    when: { clean-volts: "[1..1.01)" }\n    give: { answer: correct }\n  - id: boost-fixed\n',
      ),
    );
    expect(fine).toMatch(
      /1\u00a0V and 1.01\u00a0V .* ±\u00a0[\d.]+\u00a0V \(U, the median of 3 profiles\)\.$/,
    );
  });

  test('columns the rider answers have no uncertainty', async () => {
    const finer = edit(rear, '"(10..20]"', '"(10..10.001], (10.001..20]"');
    expect(await told(finer)).toEqual([]);
  });

  test('a threshold within what is measured, or at the end of its column, is not far', async () => {
    for (const test of ['"< 2"', '"[0..1)"', '"(-5..1)"', '"< 20"']) {
      expect(await told(edit(amplifier, '"< 1"', test))).toEqual([]);
    }
    for (const test of ['"< 42"', '"< 0.1"', '"[0..63)"']) {
      expect(await told(edit(amplifier, '"< 1"', test))).toEqual([
        expect.stringMatching(/^table-far-threshold /),
      ]);
    }
  });
});

describe('tables are entries like others', () => {
  test('a source only a table cites is of use', async () => {
    const uncited = edit('statements/letter-rear.yaml', 'source: rider-letter', 'source: maker-bulletin');
    expect(await told(uncited)).toEqual([expect.stringMatching(/^orphaned-entry sources\/rider-letter/)]);
    const cited = edit(rear, '\nsources: [maker-bulletin]', '\nsources: [rider-letter]');
    expect(await told(uncited, cited)).toEqual([]);
    const byRule = edit(rear, 'gauge: 16 }\nsources', 'gauge: 16 }\n    sources: [rider-letter]\nsources');
    expect(await told(uncited, byRule)).toEqual([]);
  });

  test('a bench session a table cites has its readings', async () => {
    const session = add(
      'sources/attic-session.yaml',
      'kind: bench-session\ntitle: Bench session of 2024-03-01, attic\ndate: 2024-03-01\nkeptAt: The bench book\ntrust: medium\ntrustReason: Taken on our own bench.\n',
    );
    const cited = edit(rear, '\nsources: [maker-bulletin]', '\nsources: [attic-session]');
    expect(await told(session, cited)).toEqual([
      expect.stringMatching(/^source-chain sources\/attic-session.yaml/),
    ]);
  });

  test('its texts do without numbers; its columns and questions may have them', async () => {
    for (const [good, bad] of [
      ['name: An amplifier as it is', 'name: An amplifier of 50 W'],
      ['question: Can I put', 'question: With 4 V, can I put'],
      ['about: Whether a profile', 'about: Whether at 63 Hz a profile'],
    ] as const) {
      expect(await told(edit(amplifier, good, bad))).toEqual([expect.stringMatching(/^bare-value /)]);
    }
    expect(await told(edit(amplifier, 'label: Equaliser there', 'label: Equaliser at 63 Hz'))).toEqual([]);
    expect(
      await told(edit(amplifier, 'question: Has your amplifier', 'question: Has your amplifier of 50 W')),
    ).toEqual([]);
  });
});

/** A table of 40 questions and rules of three tests each: whether any case is left is as hard a question as there is. */
function hardTable(hit: string): string {
  const inputs = Array.from(
    { length: 40 },
    (_, at) => `  - { id: x${at}, label: X${at}, holds: yes-no, question: Yes or no? }`,
  );
  let seed = 1;
  const below = (most: number): number => {
    // Park and Miller, CACM 31:1192, 1988.
    seed = (seed * 16807) % 2147483647;
    return seed % most;
  };
  const rules = Array.from({ length: 170 }, (_, at) => {
    const columns = new Set<number>();
    while (columns.size < 3) columns.add(below(40));
    const tests = [...columns].map((column) => `x${column}: ${below(2) === 0 ? 'yes' : 'no'}`);
    return `  - { id: r${at}, when: { ${tests.join(', ')} }, give: { y: ${at % 2 === 0 ? 'a' : 'b'} } }`;
  });
  return `name: Hard\nquestion: Which?\nabout: Nothing.\norder: 1\nhit: ${hit}\ninputs:\n${inputs.join('\n')}\noutputs:\n  - { id: y, label: Y, holds: choice, values: [a, b] }\nrules:\n${rules.join('\n')}\nsources: [maker-bulletin]\n`;
}

test('a table that cannot be looked at in full is answered in seconds, and it is said', async () => {
  const files = new Map(exampleFiles).set('tables/hard.yaml', hardTable('unique'));
  const start = process.cpuUsage();
  const { findings } = await checkContent(new MemoryFiles('example', files));
  const { user, system } = process.cpuUsage(start);
  // Of the processor: what else runs on the machine does not count.
  expect((user + system) / 1e6).toBeLessThan(10);
  const notes = findings.filter(({ severity }) => severity === 'note');
  expect(notes.map(({ rule, place }) => `${rule} ${place.file}`)).toEqual(['table-gap tables/hard.yaml']);
  expect(notes[0]?.message).toMatch(/more combinations of tests than can be looked at/);
});

test('what is remembered of tables is what a first run finds', async () => {
  const edits = [
    [edit(rear, '"<= 10"', '"< 10"')],
    [edit(rear, '"> 10"', '">= 10"')],
    [edit(amplifier, '"< 1"', '"< 42"')],
    [edit(amplifier, 'hit: first', 'hit: unique')],
  ];
  const memory = new MapMemory();
  await checkContent(editedExample([]), { memory });
  for (const each of edits) {
    const first = new MapMemory(memory.used);
    const anew = (await checkContent(editedExample(each))).findings;
    expect(anew.length).toBeGreaterThan(0);
    expect((await checkContent(editedExample(each), { memory: first })).findings).toEqual(anew);
    const kept = new MapMemory(JSON.parse(JSON.stringify([...first.used])) as [string, unknown][]);
    expect((await checkContent(editedExample(each), { memory: kept })).findings).toEqual(anew);
    expect(kept.hasChanged).toBe(false);
  }
});
