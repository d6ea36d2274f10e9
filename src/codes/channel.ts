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

/**
 * Chance that a character of a code is read right: what the other events leave. Its UTF-16 code, the symbol it is
 * shown as, and the code of the next character, 0 at the end.
 */
export function chanceReadRight(how: Channel, character: number, shown: number, next: number): number {
  const { rates, anySubstituted, digraphs } = how;
  let slips = rates.dropped + rates.doubled + (anySubstituted[shown] as number);
  if (next !== 0 && next !== character) slips += rates.swapped;
  for (const { codes, probability } of digraphs) {
    if (character === codes.single || (character === codes.first && next === codes.second)) {
      slips += probability;
    }
  }
  return 1 - slips;
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

const relatives = new WeakMap<ConfusionModel, Channel[]>();

/** How a known code of this length becomes an unknown relative of it, which is then misread in its turn. */
export function relativeChannel(model: ConfusionModel, length: number): Channel {
  const ofModel = relatives.get(model) ?? [];
  relatives.set(model, ofModel);
  ofModel[length] ??= newRelativeChannel(channelOf(model), relativeRates(length));
  return ofModel[length];
}

/** Chance that a character of a code stays as it is in a relative. */
const keptChance = ({ other, dropped, doubled, swapped }: SlipRates): number =>
  1 - other - dropped - doubled - swapped;

/** Each character is either changed, or kept and then misread or read right. */
function newRelativeChannel(misread: Channel, rates: SlipRates): Channel {
  const kept = keptChance(rates);
  const either = (of: 'other' | 'dropped' | 'doubled' | 'swapped'): number =>
    kept * misread.rates[of] + rates[of];
  return {
    rates: {
      lookAlike: kept * misread.rates.lookAlike,
      other: either('other'),
      dropped: either('dropped'),
      doubled: either('doubled'),
      swapped: either('swapped'),
      added: 1 - (1 - misread.rates.added) * (1 - rates.added),
      leadingZeros: misread.rates.leadingZeros,
    },
    substituted: misread.substituted.map(
      (chance, at) => kept * chance + rates.other * (relativeSubstitution[at] ?? 0),
    ),
    anySubstituted: misread.anySubstituted.map((chance) => kept * chance + rates.other),
    digraphs: misread.digraphs.map((one) => ({ ...one, probability: kept * one.probability })),
  };
}

/** Chance that nothing at all is changed: no relative, but the code itself. */
export function unchangedChance(length: number): number {
  const rates = relativeRates(length);
  return keptChance(rates) ** length * (1 - rates.added) ** (length + 1);
}
