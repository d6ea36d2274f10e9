/** A decision table in words: what a test lets through, what a value is called, how the rules are read. */
import type { TableEntry, TableEntryInput, Unit } from '../../schemas/index.ts';
import { formatHz } from '../measure/format.ts';
import type { GridInput } from '../tables/grid/grid.ts';
import type { TableInput, Value, ValueType } from '../tables/index.ts';
import { dateOf } from '../tables/sets/days.ts';
import {
  everything,
  type Interval,
  interval,
  nothing,
  oneValue,
  onlyMissing,
  union,
  type ValueSet,
} from '../tables/sets/value-set.ts';
import { orList, phrase } from '../words/index.ts';
import { notMeasured } from './table-listing.ts';
import { longDate, plainNumber } from './wording.ts';

/** What entries know by an id, as a reader knows it; undefined where it is none of those. */
export function traitWord(trait: string, value: string): string | undefined {
  const words: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    system: { amplified: phrase('a factory amplifier'), unamplified: phrase('speakers') },
    origin: {
      factory: phrase('the factory'),
      'dealer-update': phrase('a dealer update'),
      'third-party': phrase('a third party'),
    },
    'boost-behaviour': {
      none: phrase('no boost'),
      fixed: phrase('the same at every volume'),
      fading: phrase('fading'),
      switched: phrase('switched off'),
      changing: phrase('changing'),
    },
    'rear-outputs': { playing: phrase('playing'), silent: phrase('silent'), none: phrase('none there') },
  };
  return words[trait]?.[value];
}

/** A value of a column: “fading”, “yes”, “4 V”, “1 May 2026”. */
export function valueWords(value: Value, type: ValueType, entry?: TableEntryInput): string {
  if (value === null) return notMeasured();
  if (typeof value === 'boolean') return value ? phrase('yes') : phrase('no');
  if (typeof value === 'number') {
    return type.kind === 'date' ? longDate(dateOf(value)) : quantity(value, type);
  }
  if (type.kind === 'date') return longDate(value);
  return (entry?.holds === 'trait' ? traitWord(entry.trait, value) : undefined) ?? value;
}

function quantity(value: number, type: ValueType): string {
  const unit = type.kind === 'number' ? (type.unit as Unit | string | undefined) : undefined;
  if (unit === undefined) return plainNumber(value);
  if (unit === 'step') return phrase('step\u00a0{step}', { step: plainNumber(value) });
  if (unit === 'Hz' && value > 0) return formatHz(value);
  return `${plainNumber(value)}\u00a0${unit}`;
}

/** The word for a test that lets everything through. */
export function anyWords(): string {
  return phrase('any');
}

/** What a test lets through: “over 4.2 V”, “fading or switched off”, “any”. */
export function setWords(set: ValueSet, input: TableInput, entry?: TableEntryInput): string {
  const { type, mayBeMissing } = input;
  const isMissing = set.missing && mayBeMissing;
  const [only] = set.intervals;
  const all = set.allBut
    ? set.values.length === 0
    : only?.low === Number.NEGATIVE_INFINITY && only.high === Number.POSITIVE_INFINITY;
  if (all) return mayBeMissing && !set.missing ? phrase('any, if measured') : anyWords();
  const known = knownWords(set, type, entry);
  if (!isMissing) return known.length === 0 ? phrase('never') : orList(known);
  return orList([...known, notMeasured()]);
}

function knownWords(set: ValueSet, type: ValueType, entry: TableEntryInput | undefined): string[] {
  const word = (value: Value): string => valueWords(value, type, entry);
  if (!set.allBut) {
    return [...set.intervals.map((one) => intervalWords(one, type, word)), ...set.values.map(word)];
  }
  if (type.kind === 'yes-no') return [true, false].filter((one) => !set.values.includes(one)).map(word);
  const left = type.kind === 'choice' ? type.values.filter((one) => !set.values.includes(one)) : [];
  // What is left is named where it is no longer than what is left out.
  if (left.length > 0 && left.length <= set.values.length) return left.map(word);
  return [phrase('any but {values}', { values: orList(set.values.map(word)) })];
}

function intervalWords(one: Interval, { kind }: ValueType, word: (value: number) => string): string {
  const { low, lowClosed, high, highClosed } = one;
  const [from, to] = [Number.isFinite(low), Number.isFinite(high)];
  const isDate = kind === 'date';
  const ends = { low: from ? word(low) : '', high: to ? word(high) : '' };
  if (from && to) {
    if (low === high) return word(low);
    if (lowClosed && highClosed) return phrase('{low} to {high}', ends);
    if (isDate) {
      if (lowClosed) return phrase('from {low} to before {high}', ends);
      return highClosed
        ? phrase('after {low} to {high}', ends)
        : phrase('after {low} to before {high}', ends);
    }
    if (lowClosed) return phrase('from {low} to under {high}', ends);
    return highClosed ? phrase('over {low} to {high}', ends) : phrase('over {low} to under {high}', ends);
  }
  if (from) {
    if (isDate) return lowClosed ? phrase('from {low} on', ends) : phrase('after {low}', ends);
    return lowClosed ? phrase('{low} or more', ends) : phrase('over {low}', ends);
  }
  if (to) {
    if (isDate) return highClosed ? phrase('up to {high}', ends) : phrase('before {high}', ends);
    return highClosed ? phrase('{high} or less', ends) : phrase('under {high}', ends);
  }
  return anyWords();
}

/** Some of the pieces of an input, as the set they make up. */
export function setOfPieces({ input, pieces }: GridInput, indexes: readonly number[]): ValueSet {
  if (indexes.length === pieces.length) return everything;
  return indexes.reduce((set, index) => {
    const piece = pieces[index];
    if (!piece || 'other' in piece) return set;
    if ('missing' in piece) return union(set, onlyMissing);
    if ('value' in piece) return union(set, oneValue(piece.value));
    if (piece.low === piece.high) return union(set, oneValue(piece.low));
    return union(set, interval(fromEnd(piece.low, input), false, toEnd(piece.high, input), false));
  }, nothing);
}

/** The least and the most an input can be are no limits of a rule, and not worth a word. */
function fromEnd(low: number, { type }: TableInput): number {
  return type.kind === 'number' && low === type.least ? Number.NEGATIVE_INFINITY : low;
}

function toEnd(high: number, { type }: TableInput): number {
  return type.kind === 'number' && high === type.most ? Number.POSITIVE_INFINITY : high;
}

/** How the rules of a table are to be read, in a sentence. */
export function readingRule({ hit, aggregate, outputs }: TableEntry): string {
  const order = outputs
    .flatMap((one) => (one.holds === 'choice' ? one.values : []))
    .map((one) => `“${one}”`)
    .join(phrase(', then '));
  switch (hit) {
    case 'unique':
      return phrase('One rule fits each case, never two.');
    case 'any':
      return phrase('Where several rules fit, they give the same answer.');
    case 'priority':
      return phrase(
        'Where several rules fit, one answer is given: {order}, whichever comes first in this list.',
        { order },
      );
    case 'first':
      return phrase('Read from the top: the first rule that fits gives the answer.');
    case 'output order':
      return phrase('Every rule that fits counts; the answers are sorted: {order}.', { order });
    case 'rule order':
      return phrase('Every rule that fits counts, from the top down.');
    case 'collect':
      return collectRule(aggregate);
  }
}

function collectRule(aggregate: TableEntry['aggregate']): string {
  switch (aggregate) {
    case undefined:
      return phrase('Every rule that fits counts, in no order.');
    case 'sum':
      return phrase('Every rule that fits counts: their numbers are added up.');
    case 'min':
      return phrase('Every rule that fits counts: the least of their numbers counts.');
    case 'max':
      return phrase('Every rule that fits counts: the greatest of their numbers counts.');
    case 'count':
      return phrase('Every rule that fits counts: they are counted.');
  }
}
