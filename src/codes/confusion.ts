/** Which characters of a display are taken for which: the misread model. */

/** What is shown, what it is taken for, and the chance of it each time the first is shown. */
export type LookAlike = readonly [shown: string, seen: string, chance: number];

/** Two characters that together look like one, either way, with the chance of it: `RN` and `M`. */
export type DigraphPair = readonly [pair: string, single: string, chance: number];

/** A digraph, with the UTF-16 codes of its characters. */
export interface Digraph {
  readonly pair: string;
  readonly single: string;
  readonly probability: number;
  readonly codes: { readonly first: number; readonly second: number; readonly single: number };
}

/** What a kind of display does to characters. What is shown has a case, what is typed has none. */
export interface ConfusionModel {
  readonly display: string;
  readonly digraphs: readonly Digraph[];
  /** P(typed | shown) for two different ASCII characters, at `shown * 128 + typed`; typed in upper case. */
  readonly seen: Float64Array;
  /** Chance that a shown ASCII character is taken for any look-alike, at its code. */
  readonly anySeen: Float64Array;
  /** Each character that looks like another, as shown, to the representative of its class. */
  readonly representative: ReadonlyMap<string, string>;
}

/** The row or column of a character, by its UTF-16 code, in the tables: 0 for all beyond ASCII. */
export const symbolOf = (character: number): number => (character < 128 ? character : 0);

/** Pairs at least so likely join one class: a second look may not tell them apart. */
const alikeFrom = 0.03;

/**
 * Builds a model. Of several chances for a pair the largest counts. A small letter looks as its capital does,
 * and its own pairs come on top, unless it is `drawn` in a way of its own. Classes are named by a digit, if any.
 */
export function confusionModel(
  display: string,
  lookAlikes: readonly LookAlike[],
  digraphPairs: readonly DigraphPair[],
  drawn: readonly string[] = [],
): ConfusionModel {
  const seen = new Float64Array(128 * 128);
  const put = (shown: string, taken: string, chance: number): void => {
    if (shown.toUpperCase() === taken.toUpperCase()) return;
    const at = shown.charCodeAt(0) * 128 + taken.toUpperCase().charCodeAt(0);
    seen[at] = Math.max(seen[at] ?? 0, chance);
  };
  for (const [shown, taken, chance] of lookAlikes) put(shown, taken, chance);
  for (const [shown, taken, chance] of lookAlikes) {
    const small = shown.toLowerCase();
    if (small !== shown && !drawn.includes(small)) put(small, taken, chance);
  }
  const anySeen = Float64Array.from({ length: 128 }, (_, shown) =>
    seen.subarray(shown * 128, (shown + 1) * 128).reduce((sum, chance) => sum + chance, 0),
  );
  const digraphs = digraphPairs.map(([pair, single, probability]) => {
    const codes = { first: pair.charCodeAt(0), second: pair.charCodeAt(1), single: single.charCodeAt(0) };
    return { pair, single, probability, codes };
  });
  return { display, digraphs, seen, anySeen, representative: classes(lookAlikes, drawn) };
}

function classes(lookAlikes: readonly LookAlike[], drawn: readonly string[]): Map<string, string> {
  const representative = new Map<string, string>();
  for (const [a, b, chance] of lookAlikes) {
    if (chance < alikeFrom) continue;
    const [to, from] = [representative.get(a) ?? a, representative.get(b) ?? b].sort() as [string, string];
    for (const [character, name] of representative) if (name === from) representative.set(character, to);
    representative.set(a, to).set(b, to);
  }
  for (const small of 'abcdefghijklmnopqrstuvwxyz') {
    const capital = small.toUpperCase();
    const name = drawn.includes(small) ? small : (representative.get(capital) ?? capital);
    if (!representative.has(small)) representative.set(small, name);
  }
  return representative;
}

/** The mean of several models: a display of which nothing is told. Its classes are those of the first. */
export function meanModel(display: string, models: readonly ConfusionModel[]): ConfusionModel {
  const mean = (of: (model: ConfusionModel) => Float64Array): Float64Array =>
    Float64Array.from({ length: of(models[0] as ConfusionModel).length }, (_, at) =>
      models.reduce((sum, model) => sum + (of(model)[at] ?? 0) / models.length, 0),
    );
  const digraphs = models.flatMap((model) =>
    model.digraphs.map((one) => ({ ...one, probability: one.probability / models.length })),
  );
  return {
    display,
    digraphs,
    seen: mean(({ seen }) => seen),
    anySeen: mean(({ anySeen }) => anySeen),
    representative: models[0]?.representative ?? new Map(),
  };
}
