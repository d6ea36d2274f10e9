/** Small tables of every kind of column, test and policy, for holding analysis against point-by-point evaluation. */
import fc from 'fast-check';
import type {
  Aggregation,
  HitPolicy,
  TableInput,
  TableOutput,
  Value,
  ValueType,
  WrittenTable,
} from '../../src/tables/index.ts';

/** Thresholds are whole, so that values at wholes and halves meet every piece of every table. */
const ends = [0, 1, 2, 3];

const types: readonly ValueType[] = [
  { kind: 'number', unit: 'V' },
  { kind: 'number', whole: true },
  { kind: 'number', least: 0, most: 3 },
  { kind: 'number', least: -1 },
  { kind: 'number', whole: true, least: 1 },
  { kind: 'date' },
  { kind: 'choice', values: ['fixed', 'fading', 'none'] },
  { kind: 'text' },
  { kind: 'yes-no' },
];

/** Values of a type that between them lie in every piece. */
export function valuesOf({ type, mayBeMissing }: TableInput): Value[] {
  return [...knownValuesOf(type), ...(mayBeMissing ? [null] : [])];
}

function knownValuesOf(type: ValueType): Value[] {
  switch (type.kind) {
    case 'number': {
      const { whole = false, least = -9, most = 9 } = type;
      const all = [-1, 0, 0.5, 1, 1.5, 2, 2.5, 3, 4];
      return all.filter((one) => one >= least && one <= most && (!whole || Number.isInteger(one)));
    }
    case 'date':
      return ['2025-12-31', ...ends.map(dateText), '2026-01-05'];
    case 'choice':
      return [...type.values];
    case 'text':
      return ['left', 'right "inner"', 'neither'];
    case 'yes-no':
      return [true, false];
  }
}

const dateText = (day: number): string => `2026-01-0${day + 1}`;

function testOf(type: ValueType, mayBeMissing: boolean): fc.Arbitrary<string> {
  const positive = positiveOf(type);
  return fc.oneof(
    { weight: 3, arbitrary: fc.constant('-') },
    { weight: 8, arbitrary: positive },
    { weight: 2, arbitrary: fc.tuple(positive, positive).map((two) => two.join(', ')) },
    { weight: 2, arbitrary: positive.map((one) => `not(${one})`) },
    { weight: 1, arbitrary: fc.tuple(positive, positive).map((two) => `not(${two.join(', ')})`) },
    { weight: mayBeMissing ? 2 : 0, arbitrary: fc.constantFrom('null', 'not(null)') },
  );
}

function positiveOf(type: ValueType): fc.Arbitrary<string> {
  if (type.kind === 'choice') return fc.constantFrom(...type.values.map((one) => `"${one}"`));
  if (type.kind === 'text') return fc.constantFrom('"left"', '"right \\"inner\\""');
  if (type.kind === 'yes-no') return fc.constantFrom('true', 'false');
  const end = fc
    .constantFrom(...ends)
    .map((one) => (type.kind === 'date' ? `date("${dateText(one)}")` : String(one)));
  const range = fc
    .tuple(fc.constantFrom('[', '('), end, end, fc.constantFrom(']', ')'))
    .filter(([, low, high]) => low < high)
    .map(([open, low, high, close]) => `${open}${low}..${high}${close}`);
  const comparison = fc.tuple(fc.constantFrom('<', '<=', '>', '>='), end).map((two) => two.join(' '));
  return fc.oneof(end, comparison, range);
}

const policies: readonly { readonly hitPolicy: HitPolicy; readonly aggregation: Aggregation | undefined }[] =
  [
    ...(['unique', 'any', 'priority', 'first', 'output order', 'rule order', 'collect'] as const).map(
      (hitPolicy) => ({ hitPolicy, aggregation: undefined }),
    ),
    ...(['sum', 'min', 'max', 'count'] as const).map((aggregation) => ({
      hitPolicy: 'collect' as const,
      aggregation,
    })),
  ];

/** Up to three inputs and seven rules, some but one test like the one before them, few answers; of `priority` some answers are not in the list. */
export const randomTable: fc.Arbitrary<WrittenTable> = fc
  .tuple(
    fc.constantFrom(...policies),
    fc.array(fc.tuple(fc.constantFrom(...types), fc.boolean()), { minLength: 1, maxLength: 3 }),
    fc.constantFrom<Value | undefined>(undefined, undefined, 1, 2),
  )
  .chain(([policy, columns, otherwise]) => {
    const inputs = columns.map(
      ([type, mayBeMissing], index): TableInput => ({
        id: `in-${index}`,
        label: `Input ${index}`,
        type,
        mayBeMissing,
      }),
    );
    const output: TableOutput = {
      id: 'out',
      label: 'Out',
      type: { kind: 'number' },
      priorities: policy.hitPolicy === 'priority' || policy.hitPolicy === 'output order' ? [2, 1] : [],
      otherwise,
    };
    const rule = fc.record({
      tests: fc.tuple(...inputs.map(({ type, mayBeMissing }) => testOf(type, mayBeMissing))),
      results: fc.tuple(fc.constantFrom<Value>(1, 1, 2, 2, 3, 4, null)),
    });
    const kept = fc.option(fc.nat(inputs.length - 1), { freq: 2 });
    return fc.array(fc.tuple(rule, kept), { maxLength: 7 }).map((drawn) => {
      const rules: (typeof drawn)[number][0][] = [];
      for (const [one, changed] of drawn) {
        const before = rules.at(-1);
        const alike = before && changed !== null;
        const tests = alike ? before.tests.toSpliced(changed, 1, one.tests[changed] ?? '-') : one.tests;
        rules.push({ tests, results: alike ? before.results : one.results });
      }
      return {
        name: 'Random',
        ...policy,
        inputs,
        outputs: [output],
        rules: rules.map((one, index) => ({ id: `r${index + 1}`, ...one })),
      };
    });
  });
