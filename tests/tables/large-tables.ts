/** Large seeded tables of twelve inputs, for measuring: nearly complete ones as people keep them, and random ones. */
import type { HitPolicy, TableInput, WrittenRule, WrittenTable } from '../../src/tables/index.ts';
import { randomNumbers } from '../codes/sample.ts';

type Random = () => number;

const volts = { kind: 'number', unit: 'V', least: 0 } as const;
const decibels = { kind: 'number', unit: 'dBV' } as const;
const steps = { kind: 'number', whole: true, least: 0 } as const;
const choice = (...values: string[]) => ({ kind: 'choice', values }) as const;
const yesNo = { kind: 'yes-no' } as const;

const columns: readonly (readonly [label: string, type: TableInput['type'], mayBeMissing?: boolean])[] = [
  ['Clean volts', volts],
  ['Treble', choice('fixed', 'fading', 'rising')],
  ['Rear needed', yesNo],
  ['Limiter onset', steps],
  ['Balance', choice('even', 'left', 'right', 'none')],
  ['Boosted', yesNo],
  ['Low corner', { kind: 'number', unit: 'Hz' }],
  ['Made', { kind: 'date' }, true],
  ['Load', choice('2', '4', '8', 'line', 'none')],
  ['Remote wire', yesNo],
  ['Noise', decibels, true],
  ['Summing', yesNo],
];

const inputs = columns.map(
  ([label, type, mayBeMissing = false]): TableInput => ({
    id: label.toLowerCase().replaceAll(' ', '-'),
    label,
    type,
    mayBeMissing,
  }),
);

/** What one test lets through: a range between marks, the lowest and the highest left out; values; or not known. */
type Part =
  | { readonly from: number; readonly to: number }
  | { readonly values: readonly string[] }
  | 'any'
  | 'null';

const marks = 64;

function isOrdered({ kind }: TableInput['type']): boolean {
  return kind === 'number' || kind === 'date';
}

/** Splits a part in two that together are the same; undefined where it is too small. */
function split(part: Part, { type, mayBeMissing }: TableInput, random: Random): [Part, Part] | undefined {
  if (part === 'null') return undefined;
  const whole: Part = isOrdered(type)
    ? { from: 0, to: marks }
    : { values: type.kind === 'choice' ? type.values : ['true', 'false'] };
  if (part === 'any' && mayBeMissing) return ['null', whole];
  const some = part === 'any' ? whole : part;
  if (typeof some === 'string') return undefined;
  const size = 'values' in some ? some.values.length : some.to - some.from;
  if (size < 2) return undefined;
  const at = 1 + Math.floor(random() * (size - 1));
  return 'values' in some
    ? [{ values: some.values.slice(0, at) }, { values: some.values.slice(at) }]
    : [
        { from: some.from, to: some.from + at },
        { from: some.from + at, to: some.to },
      ];
}

function textOf(part: Part, { type, mayBeMissing }: TableInput): string {
  if (part === 'any') return '-';
  if (part === 'null') return 'null';
  if ('values' in part) {
    return part.values.map((one) => (type.kind === 'choice' ? `"${one}"` : one)).join(', ');
  }
  const { from, to } = part;
  const end = (mark: number): string => {
    if (type.kind !== 'date') return String(mark / (type.kind === 'number' && type.whole ? 1 : 8));
    return `date("${new Date(Date.UTC(2020, 0, 1 + 30 * mark)).toISOString().slice(0, 10)}")`;
  };
  if (from === 0 && to === marks) return mayBeMissing ? 'not(null)' : '-';
  if (from === 0) return `< ${end(to)}`;
  return to === marks ? `>= ${end(from)}` : `[${end(from)}..${end(to)})`;
}

function written(rules: readonly (readonly Part[])[], hitPolicy: HitPolicy, random: Random): WrittenTable {
  return {
    name: 'Large',
    hitPolicy,
    aggregation: undefined,
    inputs,
    outputs: [{ id: 'out', label: 'Out', type: { kind: 'number' }, priorities: [], otherwise: undefined }],
    rules: rules.map(
      (parts, index): WrittenRule => ({
        id: `r${index + 1}`,
        tests: parts.map((part, input) => textOf(part, inputs[input] as TableInput)),
        results: [Math.floor(random() * 6)],
      }),
    ),
  };
}

/** All values split again and again, so that the rules meet every value once; in random order. */
function partition(count: number, random: Random): Part[][] {
  const leaves: Part[][] = [inputs.map((): Part => 'any')];
  while (leaves.length < count) {
    const at = Math.floor(random() * leaves.length);
    const leaf = leaves[at] as Part[];
    const input = Math.floor(random() * inputs.length);
    const parts = split(leaf[input] as Part, inputs[input] as TableInput, random);
    if (parts) leaves.splice(at, 1, ...parts.map((part) => leaf.with(input, part)));
  }
  for (let last = leaves.length - 1; last > 0; last -= 1) {
    const other = Math.floor(random() * (last + 1));
    [leaves[last], leaves[other]] = [leaves[other] as Part[], leaves[last] as Part[]];
  }
  return leaves;
}

/** A `unique` table that meets every value once but for a few: one rule in a hundred is missing, one too wide. */
export function nearlyComplete(count: number, seed: number): WrittenTable {
  const random = randomNumbers(seed);
  const few = Math.max(1, Math.round(count / 100));
  const rules = partition(count + few, random).slice(few);
  return written(
    rules.map((parts, index) => (index < few ? widened(parts, random) : parts)),
    'unique',
    random,
  );
}

/** A `first` table of the same make, half of its rules wider than they need be: as tables are that grew. */
export function nearlyCompleteFirst(count: number, seed: number): WrittenTable {
  const random = randomNumbers(seed);
  const rules = partition(count, random);
  return written(
    rules.map((parts) => (random() < 0.5 ? widened(parts, random) : parts)),
    'first',
    random,
  );
}

/** One of the tests that ask for something asks for nothing. */
function widened(parts: readonly Part[], random: Random): Part[] {
  const asked = [...parts.keys()].filter((input) => parts[input] !== 'any');
  return parts.with(asked[Math.floor(random() * asked.length)] ?? 0, 'any');
}

/** An `any` table whose every test is drawn, half of them asking for nothing: full of gaps and overlaps. */
export function randomLarge(count: number, seed: number): WrittenTable {
  const random = randomNumbers(seed);
  const rules = Array.from({ length: count }, () =>
    inputs.map((input): Part => {
      let part: Part = 'any';
      for (let depth = random() < 0.5 ? 0 : 2; depth > 0; depth -= 1) {
        part = split(part, input, random)?.[random() < 0.5 ? 0 : 1] ?? part;
      }
      return part;
    }),
  );
  return written(rules, 'any', random);
}

/** A `first` table whose rules ask for four things at most, almost all overlapping: what is covered is hard to see. */
export function denseFirst(count: number, seed: number): WrittenTable {
  const random = randomNumbers(seed);
  const rules = Array.from({ length: count }, () => {
    let parts = inputs.map((): Part => 'any');
    for (let asked = 0; asked < 4; asked += 1) {
      const input = Math.floor(random() * inputs.length);
      const halves = split(parts[input] as Part, inputs[input] as TableInput, random);
      if (halves) parts = parts.with(input, halves[random() < 0.5 ? 0 : 1]);
    }
    return parts;
  });
  return written(rules, 'first', random);
}
