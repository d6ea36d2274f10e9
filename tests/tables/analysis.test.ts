/** What analysis says of small tables, in words: each table is built to have one thing to say. */
import { describe, expect, test } from 'vitest';
import {
  analyseTable,
  gapBoxes,
  type HitPolicy,
  readTable,
  type Table,
  type TableInput,
  type Value,
  type WrittenTable,
} from '../../src/tables/index.ts';

const space = '\u00a0';

const volts: TableInput = {
  id: 'clean-volts',
  label: 'Clean volts',
  type: { kind: 'number', unit: 'V', least: 0 },
  mayBeMissing: false,
};
const rear: TableInput = {
  id: 'rear',
  label: 'Rear needed',
  type: { kind: 'yes-no' },
  mayBeMissing: false,
};
const treble: TableInput = {
  id: 'treble',
  label: 'Treble',
  type: { kind: 'choice', values: ['fixed', 'fading', 'rising'] },
  mayBeMissing: false,
};
const steps: TableInput = {
  id: 'onset',
  label: 'Limiter onset',
  type: { kind: 'number', unit: 'step', whole: true },
  mayBeMissing: true,
};
const made: TableInput = { id: 'made', label: 'Made', type: { kind: 'date' }, mayBeMissing: false };

type Row = readonly [...tests: string[], result: Value];

function table(inputs: readonly TableInput[], rows: readonly Row[], more: Partial<WrittenTable> = {}): Table {
  const read = readTable({
    name: 'Example',
    hitPolicy: 'unique',
    aggregation: undefined,
    inputs,
    outputs: [{ id: 'out', label: 'Out', type: { kind: 'number' }, priorities: [], otherwise: undefined }],
    rules: rows.map((row, index) => ({
      id: `r${index + 1}`,
      tests: row.slice(0, -1) as string[],
      results: row.slice(-1),
    })),
    ...more,
  });
  if (!read.table) throw new Error(read.faults.map(({ message }) => message).join('\n'));
  return read.table;
}

const policy = (hitPolicy: HitPolicy): Partial<WrittenTable> => ({ hitPolicy });

describe('gaps', () => {
  test('are few boxes in words, each with an example', () => {
    const { gaps } = analyseTable(
      table(
        [volts, rear],
        [
          ['<= 4.2', '-', 1],
          ['> 4.2', 'false', 2],
        ],
      ),
    );
    expect(gaps.map(({ box, notKnown }) => [box.words, box.example, notKnown])).toEqual([
      [`clean volts over 4.2${space}V, rear needed`, { 'clean-volts': 5, rear: true }, 'no'],
    ]);
  });

  test.each([
    ['[1..2)', '"fixed", "fading"', `clean volts under 1${space}V or at least 2${space}V`],
    ['(1..2]', '-', `clean volts at most 1${space}V or over 2${space}V`],
    ['not([1..2])', '-', `clean volts 1 to 2${space}V`],
    ['not((1..2])', '-', `clean volts over 1 to 2${space}V`],
    ['not([1..2))', '-', `clean volts from 1 to under 2${space}V`],
    ['not((1..2))', '-', `clean volts over 1 to under 2${space}V`],
    ['not(1.5)', '-', `clean volts 1.5${space}V`],
    ['-', '"fixed", "fading"', 'treble “rising”'],
    ['-', 'not("fixed", "fading")', 'treble “fixed” or “fading”'],
  ])('of %s and %s', (voltsTest, trebleTest, words) => {
    const { gaps } = analyseTable(table([volts, treble], [[voltsTest, trebleTest, 1]]));
    expect(gaps.map(({ box }) => box.words)).toContain(words);
  });

  test('say whole numbers and days as the last that belong, and what is not known', () => {
    const { gaps } = analyseTable(
      table([steps, made], [['[3..30)', '[date("2026-03-14")..date("2026-03-20")]', 1]]),
    );
    expect(gaps.map(({ box, notKnown }) => [box.words, notKnown])).toEqual([
      [`limiter onset at most 2${space}step, at least 30${space}step or not known`, 'too'],
      ['made until 2026-03-13 or from 2026-03-21', 'too'],
    ]);
  });

  test('hold to as few inputs as they can', () => {
    const rows: Row[] = [
      ['[1..2]', 'true', '"fixed"', 1],
      ['[1..2]', '-', '"fading"', 1],
    ];
    const { gaps } = analyseTable(table([volts, rear, treble], rows));
    expect(gaps.map(({ box }) => box.words)).toEqual([
      `clean volts under 1${space}V or over 2${space}V`,
      'treble “rising”',
      'rear needed: no, treble “fixed” or “rising”',
    ]);
  });

  test('where something is not known come last', () => {
    const { gaps } = analyseTable(table([steps, rear], [['not(null)', '-', 1]]));
    expect(gaps.map(({ box, notKnown }) => [box.words, box.example, notKnown])).toEqual([
      ['limiter onset not known', { onset: null, rear: true }, 'only'],
    ]);
  });

  test('there are none where every output has a default, and they are no fault of a list', () => {
    const output = {
      id: 'out',
      label: 'Out',
      type: { kind: 'number' },
      priorities: [],
      otherwise: 0,
    } as const;
    const rows: Row[] = [['< 1', 1]];
    expect(analyseTable(table([volts], rows, { outputs: [output] })).gaps).toEqual([]);
    const collected = analyseTable(table([volts], rows, policy('collect')));
    expect([collected.gaps.length, collected.gapsAreFaults]).toEqual([1, false]);
  });

  test('a table without rules answers nothing', () => {
    const { gaps, complete } = analyseTable(table([volts, rear], []));
    expect([gaps.map(({ box }) => box.words), complete]).toEqual([['any values'], true]);
  });

  test('that are left out are said', () => {
    const rows: Row[] = [
      ['[1..2]', 'true', 1],
      ['[3..4]', 'false', 1],
    ];
    const { gaps, cut, complete } = analyseTable(table([volts, rear], rows), { mostGaps: 1 });
    expect([gaps.length, cut, complete]).toEqual([1, ['gaps'], false]);
    const known = analyseTable(
      table(
        [steps, rear],
        [
          ['< 4', '-', 1],
          ['>= 4', 'true', 1],
        ],
      ),
      { mostGaps: 1 },
    );
    expect(known.gaps.map(({ notKnown }) => notKnown)).toEqual(['too']);
    const { cut: all } = analyseTable(table([volts, rear], rows), { steps: 1 });
    expect(all).toEqual(['gaps', 'idle']);
    expect(gapBoxes(table([volts, rear], rows), { steps: 1 })).toEqual({
      boxes: [],
      count: undefined,
      complete: false,
    });
  });
});

describe('overlaps', () => {
  const rows: Row[] = [
    ['<= 4', 1],
    ['>= 4', 2],
    ['>= 5', 2],
  ];
  test.each([
    ['unique', ['r1 r2 contradicts', 'r2 r3 breaks']],
    ['any', ['r1 r2 contradicts', 'r2 r3']],
    ['first', ['r1 r2', 'r2 r3']],
    ['rule order', ['r1 r2', 'r2 r3']],
    ['collect', ['r1 r2', 'r2 r3']],
  ] as const)('under %s', (hitPolicy, expected) => {
    const { overlaps } = analyseTable(table([volts], rows, policy(hitPolicy)));
    expect(
      overlaps.map(({ rules, breaks, contradicts }) =>
        [...rules, ...(contradicts ? ['contradicts'] : breaks ? ['breaks'] : [])].join(' '),
      ),
    ).toEqual(expected);
    expect(overlaps[0]?.box).toMatchObject({
      words: `clean volts 4${space}V`,
      example: { 'clean-volts': 4 },
    });
  });

  test('of answers without a priority contradict, unless another rule goes before both', () => {
    const priorities = [1, 2];
    const outputs = [
      { id: 'out', label: 'Out', type: { kind: 'number' }, priorities, otherwise: undefined } as const,
    ];
    const of = (more: readonly Row[]) =>
      analyseTable(
        table([volts], [['<= 4', 7], ['>= 3', 8], ...more], { hitPolicy: 'priority', outputs }),
      ).overlaps.filter(({ contradicts }) => contradicts);
    expect(of([]).map(({ rules }) => rules)).toEqual([['r1', 'r2']]);
    expect(of([['[3..3.5]', 1]])).toHaveLength(1);
    expect(
      of([
        ['[3..3.5]', 1],
        ['> 3.5', 2],
      ]),
    ).toHaveLength(0);
  });
});

describe('rules that never answer', () => {
  test('under first: covered by several earlier ones together', () => {
    const { dead } = analyseTable(
      table(
        [volts, rear],
        [
          ['< 3', '-', 1],
          ['[1..5]', 'true', 2],
          ['>= 2', 'false', 3],
          ['[2..4]', '-', 4],
          ['-', '-', 5],
        ],
        policy('first'),
      ),
    );
    expect(dead).toEqual([{ rule: 'r4', why: 'covered', by: ['r2', 'r3'] }]);
  });

  test('where their tests let nothing through', () => {
    const { dead } = analyseTable(
      table(
        [volts],
        [
          ['< 0', 1],
          ['-', 2],
        ],
      ),
    );
    expect(dead).toEqual([{ rule: 'r1', why: 'empty', by: [] }]);
  });
});

describe('rules one can say', () => {
  test('are merged where they follow on each other', () => {
    const { mergeable } = analyseTable(
      table(
        [volts, treble],
        [
          ['[1..2)', '"fixed"', 1],
          ['[2..3]', '"fixed"', 1],
          ['(4..5]', '"fixed"', 1],
          ['> 9', '"fading"', 2],
          ['> 9', '"rising"', 2],
        ],
      ),
    );
    expect(mergeable).toEqual([
      { rules: ['r1', 'r2'], at: 'r1', input: 'clean-volts', test: '[1..3]' },
      { rules: ['r4', 'r5'], at: 'r4', input: 'treble', test: '"fading", "rising"' },
    ]);
  });

  test('to any value, where that is all', () => {
    const { mergeable } = analyseTable(
      table(
        [steps],
        [
          ['< 4', 1],
          ['>= 4', 1],
          ['null', 1],
        ],
      ),
    );
    expect(mergeable).toMatchObject([{ rules: ['r1', 'r2', 'r3'], test: '-' }]);
  });

  test('stand where no other rule is in the way, or not at all', () => {
    const of = (between: string, last: string) =>
      analyseTable(
        table(
          [volts],
          [
            ['[1..2]', 1],
            [between, 2],
            ['(2..3]', 1],
            [last, 3],
          ],
          policy('first'),
        ),
      ).mergeable.map(({ rules, at }) => [...rules, at]);
    expect(of('[5..6]', '-')).toEqual([['r1', 'r3', 'r1']]);
    expect(of('[2.5..6]', '-')).toEqual([['r1', 'r3', 'r3']]);
    expect(of('[1.5..6]', '-')).toEqual([]);
  });

  test('say nothing new', () => {
    const { subsumed } = analyseTable(
      table(
        [volts],
        [
          ['[1..2]', 1],
          ['[5..6]', 2],
          ['< 3', 1],
          ['-', 2],
        ],
        policy('first'),
      ),
    );
    expect(subsumed).toEqual([
      { rule: 'r1', by: 'r3' },
      { rule: 'r2', by: 'r4' },
    ]);
  });

  test('unless a rule between the two would come to answer instead', () => {
    const of = (between: string) =>
      analyseTable(
        table(
          [volts],
          [
            ['[1..2]', 1],
            [between, 2],
            ['< 3', 1],
          ],
          policy('first'),
        ),
      ).subsumed;
    expect(of('[2..5]')).toEqual([]);
    expect(of('(2..5]')).toEqual([{ rule: 'r1', by: 'r3' }]);
  });
});

test('an input may be tested and still change nothing', () => {
  const { idle } = analyseTable(
    table(
      [volts, rear, treble],
      [
        ['< 2', 'true', '-', 1],
        ['< 2', 'false', '-', 1],
        ['>= 2', '-', '-', 2],
      ],
    ),
  );
  expect(idle).toEqual([
    { input: 'rear', tested: true },
    { input: 'treble', tested: false },
  ]);
});

test('an input that decides only whether two rules clash is not idle', () => {
  const rows: Row[] = [
    ['-', '-', 1],
    ['< 2', 'true', 1],
  ];
  const of = (hitPolicy: HitPolicy) => analyseTable(table([volts, rear], rows, policy(hitPolicy))).idle;
  expect(of('unique')).toEqual([]);
  expect(of('any')).toHaveLength(2);
});

describe('thresholds too fine', () => {
  const rows: Row[] = [
    ['< 3.9', 1],
    ['[3.9..4)', 2],
    ['[4..6)', 3],
    ['>= 6', 4],
  ];
  test('are those closer together than U', () => {
    const of = (uncertainty: number) =>
      analyseTable(table([volts], rows), { uncertainty: { 'clean-volts': uncertainty } }).fineThresholds;
    expect(of(0.15)).toEqual([
      { input: 'clean-volts', low: 3.9, high: 4, uncertainty: 0.15, rules: ['r1', 'r2', 'r3'] },
    ]);
    expect(of(0.06)).toEqual([]);
    expect(analyseTable(table([volts], rows)).fineThresholds).toEqual([]);
  });

  test('but not as far apart as U', () => {
    // 4.1 − 4 < 0.1 in binary.
    const apart = table(
      [volts],
      [
        ['< 4', 1],
        ['[4..4.1)', 2],
        ['>= 4.1', 3],
      ],
    );
    expect(analyseTable(apart, { uncertainty: { 'clean-volts': 0.1 } }).fineThresholds).toEqual([]);
  });

  test('one value alone is; one threshold is not', () => {
    const uncertainty = { 'clean-volts': 0.15 };
    const single = table(
      [volts],
      [
        ['< 4', 1],
        ['>= 4', 2],
      ],
    );
    expect(analyseTable(single, { uncertainty }).fineThresholds).toEqual([]);
    const exactly = table(
      [volts],
      [
        ['4', 1],
        ['not(4)', 2],
      ],
    );
    expect(analyseTable(exactly, { uncertainty }).fineThresholds).toMatchObject([
      { low: 4, high: 4, rules: ['r1'] },
    ]);
  });
});

test('a test that is more than a simple one is said, and nothing else', () => {
  const analysis = analyseTable(
    table(
      [volts],
      [
        ['? * 2 > 4', 1],
        ['< 1', 2],
      ],
    ),
  );
  expect(analysis).toMatchObject({
    complete: false,
    beyond: [{ rule: 'r1', input: 'clean-volts', test: '? * 2 > 4' }],
    gaps: [],
    overlaps: [],
  });
});
