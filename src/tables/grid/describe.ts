/** Sets of an input’s values in words: “clean volts over 4.2 V, rear needed”. */
import { formatNumber } from '../../measure/format.ts';
import { dateOf } from '../sets/days.ts';
import type { Interval, ValueSet } from '../sets/value-set.ts';
import type { TableInput } from '../table.ts';

/** A no-break space, so that a number and its unit stay on one line. */
const space = '\u00a0';

/** A box in words, inputs that may be anything left out; “any values” where that is all of them. */
export function describeBox(sets: readonly ValueSet[], inputs: readonly TableInput[]): string {
  const words = inputs.flatMap((input, index) => {
    const set = sets[index];
    return set === undefined || isAny(set, input) ? [] : [describeSet(set, input)];
  });
  return words.length === 0 ? 'any values' : words.join(', ');
}

/** Whether the set leaves the input free. */
function isAny(set: ValueSet, { mayBeMissing }: TableInput): boolean {
  return allKnown(set) && (set.missing || !mayBeMissing);
}

function allKnown({ intervals, values, allBut }: ValueSet): boolean {
  const [first] = intervals;
  return allBut
    ? values.length === 0
    : first?.low === Number.NEGATIVE_INFINITY && first.high === Number.POSITIVE_INFINITY;
}

/** What an input is within a set, with its name: “clean volts over 4.2 V”, “source not known”. */
export function describeSet(set: ValueSet, input: TableInput): string {
  const name = inSentence(input.label);
  const missing = set.missing && input.mayBeMissing;
  const { type } = input;
  if (isAny(set, input)) return `${name} anything`;
  if (allKnown(set)) return `${name} known`;
  if (type.kind === 'yes-no' && !set.allBut) {
    if (set.values.length === 2) return missing ? `${name} anything` : `${name} known`;
    const [value] = set.values;
    if (value === undefined) return `${name} not known`;
    return `${value ? name : `${name}: no`}${missing ? ' or not known' : ''}`;
  }
  const known =
    type.kind === 'choice' && !set.allBut && type.values.every((one) => set.values.includes(one))
      ? ['known']
      : knownWords(set, input);
  return `${name} ${listed([...known, ...(missing ? ['not known'] : [])])}`;
}

function knownWords(set: ValueSet, { type }: TableInput): string[] {
  if (set.intervals.length > 0) {
    return set.intervals.map((one) =>
      type.kind === 'date' ? dateWords(one) : numberWords(one, type.kind === 'number' ? type : {}),
    );
  }
  const names = set.values.map((one) => `“${one === true ? 'yes' : one === false ? 'no' : one}”`);
  if (set.allBut) return [`anything but ${listed(names, 'and')}`];
  return names;
}

function listed(words: readonly string[], and = 'or'): string {
  const last = words.at(-1);
  if (last === undefined) return 'nothing';
  return words.length === 1 ? last : `${words.slice(0, -1).join(', ')} ${and} ${last}`;
}

function numberWords(
  { low, lowClosed, high, highClosed }: Interval,
  { unit, whole }: { readonly unit?: string | undefined; readonly whole?: boolean | undefined },
): string {
  const of = (value: number): string =>
    unit === undefined ? plain(value) : `${plain(value)}${space}${unit}`;
  if (whole) {
    const [from, to] = [
      lowClosed ? Math.ceil(low) : Math.floor(low) + 1,
      highClosed ? Math.floor(high) : Math.ceil(high) - 1,
    ];
    return intervalWords(
      { low: from, lowClosed: true, high: to, highClosed: true },
      of,
      Number.isFinite(from) ? plain(from) : '',
    );
  }
  return intervalWords({ low, lowClosed, high, highClosed }, of, Number.isFinite(low) ? plain(low) : '');
}

/** @param lowShort the low end without its unit, where the high end has it. */
function intervalWords(
  { low, lowClosed, high, highClosed }: Interval,
  of: (value: number) => string,
  lowShort: string,
): string {
  if (low === high) return of(low);
  if (low === Number.NEGATIVE_INFINITY) return `${highClosed ? 'at most' : 'under'} ${of(high)}`;
  if (high === Number.POSITIVE_INFINITY) return `${lowClosed ? 'at least' : 'over'} ${of(low)}`;
  if (lowClosed && highClosed) return `${lowShort} to ${of(high)}`;
  if (lowClosed) return `from ${lowShort} to under ${of(high)}`;
  return `over ${lowShort} to ${highClosed ? '' : 'under '}${of(high)}`;
}

/** Days are whole: every bound is said as the first or the last day. */
function dateWords({ low, lowClosed, high, highClosed }: Interval): string {
  const from = lowClosed ? Math.ceil(low) : Math.floor(low) + 1;
  const to = highClosed ? Math.floor(high) : Math.ceil(high) - 1;
  if (from === to) return dateOf(from);
  if (low === Number.NEGATIVE_INFINITY) return `until ${dateOf(to)}`;
  if (high === Number.POSITIVE_INFINITY) return `from ${dateOf(from)}`;
  return `${dateOf(from)} to ${dateOf(to)}`;
}

/** A number with all its decimals. */
function plain(value: number): string {
  const [, decimals = ''] = inFull(value).split('.');
  return formatNumber(value, decimals.length);
}

/** A number in digits, without an exponent, as FEEL writes it. */
export function inFull(value: number): string {
  const text = String(value);
  return text.includes('e')
    ? value.toLocaleString('en', { useGrouping: false, maximumFractionDigits: 20 })
    : text;
}

/** A label within a sentence: “Clean volts” begins small, “RCA level” does not. */
function inSentence(label: string): string {
  return /^\p{Lu}\p{Ll}/u.test(label) ? `${label.charAt(0).toLowerCase()}${label.slice(1)}` : label;
}
