/**
 * Sets of values a unary test lets through: intervals of numbers (dates as days since 1970-01-01), or the values of
 * a choice; and whether “not known” is among them. Immutable.
 */

/** An interval of numbers. An end at infinity is open. */
export interface Interval {
  readonly low: number;
  readonly lowClosed: boolean;
  readonly high: number;
  readonly highClosed: boolean;
}

export interface ValueSet {
  /** Apart from each other and rising; empty for choices. */
  readonly intervals: readonly Interval[];
  /** Texts, `true` or `false`; empty for numbers. */
  readonly values: readonly (string | boolean)[];
  /** True where `values` are those left out: everything else is let through. */
  readonly allBut: boolean;
  /** Whether a value that is not known is let through. */
  readonly missing: boolean;
}

export const everything: ValueSet = { intervals: [], values: [], allBut: true, missing: true };
export const nothing: ValueSet = { intervals: [], values: [], allBut: false, missing: false };
export const onlyMissing: ValueSet = { ...nothing, missing: true };

const allNumbers: Interval = {
  low: Number.NEGATIVE_INFINITY,
  lowClosed: false,
  high: Number.POSITIVE_INFINITY,
  highClosed: false,
};

export function interval(low: number, lowClosed: boolean, high: number, highClosed: boolean): ValueSet {
  const one = { low, lowClosed, high, highClosed };
  return isEmpty(one) ? nothing : { ...nothing, intervals: [one] };
}

export function oneValue(value: number | string | boolean): ValueSet {
  return typeof value === 'number' ? interval(value, true, value, true) : { ...nothing, values: [value] };
}

export function isEmpty({ low, lowClosed, high, highClosed }: Interval): boolean {
  return low > high || (low === high && !(lowClosed && highClosed));
}

/** Whether the value is in the set; `null` is the value that is not known. */
export function holds(set: ValueSet, value: number | string | boolean | null): boolean {
  if (value === null) return set.missing;
  if (set.values.includes(value as string | boolean)) return !set.allBut;
  if (set.allBut) return true;
  return (
    typeof value === 'number' &&
    set.intervals.some(
      ({ low, lowClosed, high, highClosed }) =>
        (lowClosed ? value >= low : value > low) && (highClosed ? value <= high : value < high),
    )
  );
}

export function union(a: ValueSet, b: ValueSet): ValueSet {
  const missing = a.missing || b.missing;
  if (a.allBut && b.allBut) {
    return { ...a, values: a.values.filter((one) => b.values.includes(one)), missing };
  }
  if (a.allBut || b.allBut) {
    const [but, other] = a.allBut ? [a, b] : [b, a];
    return { ...but, values: but.values.filter((one) => !other.values.includes(one)), missing };
  }
  const values = [...a.values, ...b.values.filter((one) => !a.values.includes(one))];
  return { intervals: joined([...a.intervals, ...b.intervals]), values, allBut: false, missing };
}

/** What the set leaves out, `missing` turned too: FEEL’s `not(…)`, of tests on numbers where `ofNumbers`. */
export function complement(set: ValueSet, ofNumbers: boolean): ValueSet {
  const missing = !set.missing;
  if (!ofNumbers) return { ...set, allBut: !set.allBut, missing };
  if (set.allBut) return { ...nothing, missing };
  const intervals: Interval[] = [];
  let { low, lowClosed } = allNumbers;
  for (const one of set.intervals) {
    const before = { low, lowClosed, high: one.low, highClosed: !one.lowClosed };
    if (!isEmpty(before) && one.low !== Number.NEGATIVE_INFINITY) intervals.push(before);
    low = one.high;
    lowClosed = !one.highClosed;
  }
  if (low !== Number.POSITIVE_INFINITY) {
    intervals.push({ low, lowClosed, high: Number.POSITIVE_INFINITY, highClosed: false });
  }
  return { ...nothing, intervals, missing };
}

/** Sorts intervals and joins those that overlap or touch without a gap. */
function joined(intervals: readonly Interval[]): Interval[] {
  const sorted = [...intervals].sort((a, b) => a.low - b.low || Number(b.lowClosed) - Number(a.lowClosed));
  const result: Interval[] = [];
  for (const next of sorted) {
    const last = result.at(-1);
    const touches =
      last && (next.low < last.high || (next.low === last.high && (next.lowClosed || last.highClosed)));
    if (!last || !touches) {
      result.push(next);
      continue;
    }
    const further = next.high > last.high || (next.high === last.high && next.highClosed);
    if (further) result[result.length - 1] = { ...last, high: next.high, highClosed: next.highClosed };
  }
  return result;
}
