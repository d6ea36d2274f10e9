/** The chances of every slip, worked out per pair of characters: how a code on a screen becomes typed text. */
import type { ConfusionModel, Digraph } from './confusion.ts';
import { alphabetSize, misreadRates, relativeRates, type SlipRates } from './constants.ts';

export interface Channel {
  readonly rates: SlipRates;
  /** P(typed | shown), at `shown * 128 + typed`, for two characters that differ; 0 stands for all beyond ASCII. */
  readonly substituted: Float64Array;
  /** Chance that a shown character is taken for any other, at its code. */
  readonly anySubstituted: Float64Array;
  /** With `lookAlike` times their probability. */
  readonly digraphs: readonly Digraph[];
}

const known = new WeakMap<ConfusionModel, Map<SlipRates, Channel>>();

/** The channel of a display for these rates; made once. */
export function channelOf(model: ConfusionModel, rates: SlipRates = misreadRates): Channel {
  const made = known.get(model)?.get(rates) ?? newChannel(model, rates);
  known.set(model, (known.get(model) ?? new Map<SlipRates, Channel>()).set(rates, made));
  return made;
}

function newChannel(model: ConfusionModel, rates: SlipRates): Channel {
  const { lookAlike, other } = rates;
  return {
    rates,
    substituted: model.seen.map((chance) => lookAlike * chance + other / (alphabetSize - 1)),
    anySubstituted: model.anySeen.map((chance) => lookAlike * chance + other),
    digraphs: model.digraphs.map((one) => ({ ...one, probability: lookAlike * one.probability })),
  };
}

const kinds = ['0123456789', 'ABCDEFGHIJKLMNOPQRSTUVWXYZ', '|'];
const kindOf = (code: number): number =>
  kinds.findIndex((kind) => kind.includes(String.fromCharCode(code).toUpperCase()));

/** Of an unknown relative's new characters, so many are of the old one's kind: a digit follows a digit. */
const sameKind = 0.9;

/** P(new | old character of a code, a different one): the same for codes of any length. */
const relativeSubstitution = Float64Array.from({ length: 128 * 128 }, (_, at) => {
  const [from, to] = [kindOf(at >> 7), kindOf(at & 127)];
  if (from < 0 || to < 0) return 1 / (alphabetSize - 1);
  const size = kinds[to]?.length ?? 1;
  if (from === to) return sameKind / Math.max(1, size - 1);
  return ((1 - sameKind) * size) / (alphabetSize - (kinds[from]?.length ?? 0)) / size;
});

const relatives: Channel[] = [];

/** How a known code of this length becomes an unknown relative of it. */
export function relativeChannel(length: number): Channel {
  const rates = relativeRates(length);
  relatives[length] ??= {
    rates,
    substituted: relativeSubstitution.map((chance) => rates.other * chance),
    anySubstituted: new Float64Array(128).fill(rates.other),
    digraphs: [],
  };
  return relatives[length];
}
