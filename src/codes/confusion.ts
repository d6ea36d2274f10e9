/** Which characters of a display are taken for which: the misread model. */

/** A pair of characters taken for each other, with the chance of it each time one of the two is shown. */
export type LookAlikePair = readonly [string, string, number];

/** Two characters that together look like one, with the chance of it: `RN` and `M`. */
export type DigraphPair = readonly [string, string, number];

/** A digraph, with the UTF-16 codes of its characters. */
export interface Digraph {
  readonly pair: string;
  readonly single: string;
  readonly probability: number;
  readonly codes: { readonly first: number; readonly second: number; readonly single: number };
}

/**
 * What a kind of display does to characters. One general model exists; a model per kind of display
 * (dot-matrix, seven-segment, anti-aliased) is made by `confusionModel` and passed in the same places.
 */
export interface ConfusionModel {
  readonly display: string;
  readonly digraphs: readonly Digraph[];
  /** P(seen | shown) for two different ASCII characters, at `shown * 128 + seen` of their codes. */
  readonly seen: Float64Array;
  /** Chance that a shown ASCII character is taken for any look-alike, at its code. */
  readonly anySeen: Float64Array;
  /** Each character of a look-alike class to the class's representative. */
  readonly representative: ReadonlyMap<string, string>;
}

/** Builds a model from pairs. Pairs that share a character join one class, named by the first of them. */
export function confusionModel(
  display: string,
  pairs: readonly LookAlikePair[],
  digraphPairs: readonly DigraphPair[],
): ConfusionModel {
  const seen = new Float64Array(128 * 128);
  const anySeen = new Float64Array(128);
  const representative = new Map<string, string>();
  for (const [a, b, probability] of pairs) {
    for (const [shown, taken] of [
      [a, b],
      [b, a],
    ] as const) {
      const code = shown.charCodeAt(0);
      seen[code * 128 + taken.charCodeAt(0)] = probability;
      anySeen[code] = (anySeen[code] ?? 0) + probability;
    }
    const from = representative.get(b) ?? b;
    const to = representative.get(a) ?? a;
    for (const [character, name] of representative) if (name === from) representative.set(character, to);
    representative.set(a, to).set(b, to);
  }
  const digraphs = digraphPairs.map(([pair, single, probability]) => {
    const codes = { first: pair.charCodeAt(0), second: pair.charCodeAt(1), single: single.charCodeAt(0) };
    return { pair, single, probability, codes };
  });
  return { display, digraphs, seen, anySeen, representative };
}

/**
 * The general model. 0/O, 1/I/l and m/rn are confusable in Unicode UTS #39 (so is the bar with 1 and I);
 * 5/S, 8/B, 2/Z, 6/G stand in every common OCR table; Q and D beside 0 and O are common practice, no
 * source. The chances are judgement, no source: a hundredth to a twelfth of the times a character is shown.
 * Codes are compared in upper case, so `RN` stands for rn as well.
 */
export const generalDisplay = confusionModel(
  'general',
  [
    ['0', 'O', 0.05],
    ['0', 'D', 0.015],
    ['0', 'Q', 0.015],
    ['O', 'D', 0.015],
    ['O', 'Q', 0.03],
    ['D', 'Q', 0.01],
    ['1', 'I', 0.04],
    ['1', 'L', 0.04],
    ['I', 'L', 0.04],
    ['1', '|', 0.01],
    ['I', '|', 0.01],
    ['L', '|', 0.01],
    ['5', 'S', 0.08],
    ['8', 'B', 0.08],
    ['2', 'Z', 0.08],
    ['6', 'G', 0.08],
  ],
  [['RN', 'M', 0.04]],
);
