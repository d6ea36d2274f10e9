/** Tables on values that are not known exactly: worked cases, and agreement with drawing values at random. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerKey, evaluateTable, evaluateWithin, type Known, type Value } from '../../src/tables/index.ts';
import { input, table } from './written.ts';

const amplifier = table(
  'first',
  [
    input('volts'),
    input('rear', { kind: 'choice', values: ['playing', 'silent'] }),
    input('wanted', { kind: 'yes-no' }),
  ],
  [
    ['< 1', '-', '-', 'reflash'],
    ['-', '"silent"', 'true', 'correct'],
    ['> 8', '-', '-', 'attenuate'],
    ['-', '-', '-', 'keep'],
  ],
);
const answers = (known: Record<string, Known>): Value[] =>
  evaluateWithin(amplifier, known).possible.map((one) => one.answers[0]?.answer ?? null);
const playing = { rear: { value: 'playing' }, wanted: { value: false } } as const;

describe('worked cases', () => {
  test('a value clear of every threshold has one answer', () => {
    const { best, borderline, settledBy } = evaluateWithin(amplifier, {
      ...playing,
      volts: { value: 4, low: 3.8, high: 4.2 },
    });
    expect(best?.answers).toEqual([{ answer: 'keep' }]);
    expect(best?.rules).toEqual(['r4']);
    expect([borderline, settledBy]).toEqual([false, []]);
  });

  test('a threshold within U makes it borderline, the answer at the value first', () => {
    const known = { ...playing, volts: { value: 1.05, low: 0.95, high: 1.15 } };
    expect(answers(known)).toEqual(['keep', 'reflash']);
    expect(evaluateWithin(amplifier, known)).toMatchObject({
      borderline: true,
      settledBy: ['volts'],
      dependsOn: ['volts'],
    });
  });

  test('the ends count: an interval that ends at the threshold holds it', () => {
    expect(answers({ ...playing, volts: { value: 0.9, low: 0.8, high: 1 } })).toEqual(['reflash', 'keep']);
    expect(answers({ ...playing, volts: { value: 1.1, low: 1, high: 1.2 } })).toEqual(['keep']);
  });

  test('a bound reaches to infinity', () => {
    const low = Number.NEGATIVE_INFINITY;
    expect(answers({ ...playing, volts: { value: 0.5, low, high: 0.5 } })).toEqual(['reflash']);
  });

  test('what was not measured or said may be anything', () => {
    expect(answers({ volts: { value: 4 } })).toEqual(['keep', 'correct']);
    const { best, settledBy, dependsOn } = evaluateWithin(amplifier, { volts: { value: 4 } });
    expect(best).toBeUndefined();
    // Either alone may leave it open: silent and wanted together decide.
    expect(settledBy).toEqual([]);
    expect(dependsOn).toEqual(['rear', 'wanted']);
  });

  test('rules that break the policy only within U are told', () => {
    const unique = table(
      'unique',
      [input('x')],
      [
        ['[0..4]', 'a'],
        ['[4..8]', 'b'],
      ],
    );
    const { possible } = evaluateWithin(unique, { x: { value: 3.9, low: 3.8, high: 4.1 } });
    expect(possible.map(({ broken }) => broken !== undefined)).toEqual([false, true, false]);
  });

  test('whole numbers lie between no two neighbours', () => {
    const steps = table(
      'unique',
      [input('step', { kind: 'number', whole: true })],
      [
        ['<= 3', 'a'],
        ['>= 4', 'b'],
      ],
    );
    const { possible } = evaluateWithin(steps, { step: { value: 3, low: 2, high: 5 } });
    expect(possible.map((one) => one.answers[0]?.answer)).toEqual(['a', 'b']);
  });
});

/** Random tables of two numbers and a choice, of every policy without aggregation. */
const end = fc.integer({ min: 0, max: 6 });
const numberTest = fc.oneof(
  { weight: 1, arbitrary: fc.constant('-') },
  {
    weight: 2,
    arbitrary: fc.tuple(fc.constantFrom('<', '<=', '>', '>='), end).map(([op, at]) => `${op} ${at}`),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.constantFrom('[', '('), end, fc.integer({ min: 1, max: 4 }), fc.constantFrom(']', ')'))
      .map(([open, low, length, close]) => `${open}${low}..${low + length}${close}`),
  },
);
const choiceTest = fc.constantFrom('-', '"a"', '"b"', '"a","b"', 'not("a")');
const randomTable = fc
  .tuple(
    fc.constantFrom('unique', 'any', 'first', 'priority', 'output order', 'rule order', 'collect' as const),
    fc.array(fc.tuple(numberTest, numberTest, choiceTest, fc.constantFrom('p', 'q', 'r')), {
      minLength: 1,
      maxLength: 6,
    }),
  )
  .map(([policy, rows]) =>
    table(
      policy as 'unique',
      [input('x'), input('y'), input('z', { kind: 'choice', values: ['a', 'b', 'c'] })],
      rows,
      { priorities: ['p', 'q', 'r'] },
    ),
  );

test('every answer drawn at random is possible, and every possible answer can be drawn', () => {
  const uncertain = fc.tuple(fc.integer({ min: -2, max: 14 }), fc.integer({ min: 0, max: 4 }));
  fc.assert(
    fc.property(randomTable, uncertain, uncertain, fc.boolean(), (one, [x, ux], [y, uy], anyChoice) => {
      const known: Record<string, Known> = {
        x: { value: x / 2, low: (x - ux) / 2, high: (x + ux) / 2 },
        y: { value: y / 2, low: (y - uy) / 2, high: (y + uy) / 2 },
        ...(anyChoice ? {} : { z: { value: 'b' } }),
      };
      // Ends of tests and intervals are multiples of a half: quarters fall on each of them and between all of them.
      const drawn = (value: number, u: number): number[] =>
        Array.from({ length: 2 * u + 1 }, (_, index) => (value - u) / 2 + index / 2).flatMap(
          (at, index, all) => (index + 1 < all.length ? [at, at + 0.25] : [at]),
        );
      const found = new Set<string>();
      for (const xs of drawn(x, ux)) {
        for (const ys of drawn(y, uy)) {
          for (const z of anyChoice ? ['a', 'b', 'c'] : ['b']) {
            found.add(answerKey(evaluateTable(one, { x: xs, y: ys, z })));
          }
        }
      }
      const { possible } = evaluateWithin(one, known);
      expect(possible.map(answerKey).sort()).toEqual([...found].sort());
    }),
    { seed: 5, numRuns: 60 },
  );
}, 60_000);

test('drawn from the whole interval, Monte Carlo finds no other answers, and the likeliest agree', () => {
  const volts = { value: 1.02, low: 0.9, high: 1.14 };
  const { possible } = evaluateWithin(amplifier, { ...playing, volts });
  const seen = new Map<string, number>();
  for (let draw = 0; draw < 2000; draw += 1) {
    // A low-discrepancy sequence (Weyl's, by the golden ratio) in place of a random one: the test is the same each time.
    const at = volts.low + ((draw * 0.6180339887498949) % 1) * (volts.high - volts.low);
    const key = answerKey(evaluateTable(amplifier, { volts: at, rear: 'playing', wanted: false }));
    seen.set(key, (seen.get(key) ?? 0) + 1);
  }
  expect([...seen.keys()].sort()).toEqual(possible.map(answerKey).sort());
  // Below 1 V lie 0.1 V of 0.24 V.
  const reflash = seen.get(JSON.stringify([[{ answer: 'reflash' }], false])) ?? 0;
  expect(reflash / 2000).toBeCloseTo(0.1 / 0.24, 2);
});
