/** Sets of values written as one S-FEEL unary test (DMN 1.3, 9.2): the reverse of reading a cell. */
import { dateOf } from '../sets/days.ts';
import type { Interval, ValueSet } from '../sets/value-set.ts';
import type { TableInput, ValueType } from '../table.ts';
import { inFull } from './describe.ts';

/** The text of a test that lets through what is in the set, of values the input can have. */
export function testText(set: ValueSet, { type, mayBeMissing }: TableInput): string {
  const missing = set.missing && mayBeMissing;
  const [first] = set.intervals;
  const unbounded = first?.low === Number.NEGATIVE_INFINITY && first.high === Number.POSITIVE_INFINITY;
  if (set.allBut || unbounded) {
    const left = [...set.values.map(literal), ...(mayBeMissing && !missing ? ['null'] : [])];
    return left.length === 0 ? '-' : `not(${left.join(', ')})`;
  }
  const tests = [
    ...set.values.map(literal),
    ...set.intervals.map((one) => intervalText(one, type)),
    ...(missing ? ['null'] : []),
  ];
  return tests.join(', ');
}

function literal(value: string | boolean): string {
  return typeof value === 'boolean' ? String(value) : JSON.stringify(value);
}

function intervalText({ low, lowClosed, high, highClosed }: Interval, type: ValueType): string {
  const of = (value: number): string => (type.kind === 'date' ? `date("${dateOf(value)}")` : inFull(value));
  if (low === high) return of(low);
  if (low === Number.NEGATIVE_INFINITY) return `${highClosed ? '<=' : '<'} ${of(high)}`;
  if (high === Number.POSITIVE_INFINITY) return `${lowClosed ? '>=' : '>'} ${of(low)}`;
  return `${lowClosed ? '[' : '('}${of(low)}..${of(high)}${highClosed ? ']' : ')'}`;
}
