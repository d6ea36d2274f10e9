/**
 * What a table may answer where values are not known exactly: every answer that is possible, and which value would
 * settle it. Exact: it goes over pieces (grid/), never over samples.
 */
import { type CutTable, cutAt, type GridInput, pieceOf, sample } from './grid/grid.ts';
import { type Leaf, possibleHits } from './grid/possible.ts';
import { type Decided, listed } from './hit-policy.ts';
import { daysOf } from './sets/days.ts';
import type { Value } from './table.ts';

/** What is known of one input. */
export type Known =
  | { readonly value: Value }
  /** A number that lies between two ends, both counted in; `value` is the best estimate. */
  | { readonly value: number; readonly low: number; readonly high: number }
  /** One of several. */
  | { readonly oneOf: readonly Value[] }
  /** Anything the input can be, except “not known”. */
  | { readonly anything: true };

export interface Within {
  /** The answer at the best estimates; undefined where an input has none. */
  readonly best: Decided | undefined;
  /** Every answer that is possible, that of the best estimates first. */
  readonly possible: readonly Decided[];
  /** Whether more than one answer is possible. */
  readonly borderline: boolean;
  /** Ids of the inputs each of which would settle the answer, once known exactly, whatever it turned out to be. */
  readonly settledBy: readonly string[];
  /** Ids of all inputs that still have a say in the answer. */
  readonly dependsOn: readonly string[];
}

/**
 * Evaluates a table that has been cut on what is known. An input left out may be anything.
 * @param decide what the rules that fit come to; unless told otherwise nothing is aggregated.
 */
export function evaluateCut(
  table: CutTable,
  known: Readonly<Record<string, Known | undefined>>,
  decide: typeof listed = listed,
): Within {
  const decided = (rules: readonly number[]): Decided =>
    decide(
      table,
      rules.flatMap((index) => table.rules[index] ?? []),
    );
  const of = (id: string): Known => known[id] ?? { anything: true };
  const grid = cutAt(
    table.grid,
    Object.fromEntries(table.inputs.map(({ id, type }) => [id, endsOf(of(id), type.kind)])),
  );
  const open = grid.map((input) => possiblePieces(input, of(input.input.id)));
  const answers = distinctAnswers(decided, possibleHits(grid, open));
  const best = bestOf(decided, grid, known);
  const bestKey = best && answerKey(best);
  const possible = [...answers.values()].sort(
    (a, b) => Number(answerKey(b) === bestKey) - Number(answerKey(a) === bestKey),
  );
  const borderline = possible.length > 1;
  const deciding = borderline ? decidingInputs(decided, grid, open) : { settledBy: [], dependsOn: [] };
  return { best, possible, borderline, ...deciding };
}

/** What the rules with these indexes come to. */
type Decides = (rules: Leaf) => Decided;

/** Two answers are one where they give the same, whichever rules they come from. */
export function answerKey({ answers, broken }: Decided): string {
  return JSON.stringify([answers, broken !== undefined]);
}

function distinctAnswers(decided: Decides, leaves: readonly Leaf[]): Map<string, Decided> {
  const answers = new Map<string, Decided>();
  for (const leaf of leaves) {
    const one = decided(leaf);
    const key = answerKey(one);
    const known = answers.get(key);
    const rules = known ? [...new Set([...known.rules, ...one.rules])] : one.rules;
    answers.set(key, { ...one, rules });
  }
  return answers;
}

function endsOf(known: Known, kind: string): number[] {
  if ('low' in known) return [known.low, known.high].filter(Number.isFinite);
  const values = 'oneOf' in known ? known.oneOf : 'value' in known ? [known.value] : [];
  return values.flatMap((value) => {
    if (typeof value === 'number') return [value];
    const days = kind === 'date' && typeof value === 'string' ? daysOf(value) : undefined;
    return days === undefined ? [] : [days];
  });
}

function possiblePieces(input: GridInput, known: Known): number[] {
  const all = [...input.pieces.keys()];
  if ('low' in known) {
    return all.filter((index) => {
      const piece = input.pieces[index];
      if (!piece || !('low' in piece)) return false;
      return piece.low === piece.high
        ? piece.low >= known.low && piece.low <= known.high
        : piece.low >= known.low && piece.high <= known.high;
    });
  }
  if ('anything' in known) {
    return all.filter((index) => !('missing' in (input.pieces[index] ?? {})));
  }
  const values = 'oneOf' in known ? known.oneOf : [known.value];
  return values.flatMap((value) => pieceOf(input, value) ?? []);
}

function bestOf(
  decided: Decides,
  grid: readonly GridInput[],
  known: Readonly<Record<string, Known | undefined>>,
): Decided | undefined {
  const pieces = grid.map((input) => {
    const one = known[input.input.id];
    if (!one || !('value' in one)) return input.pieces.length === 1 ? 0 : undefined;
    return pieceOf(input, one.value) ?? nearestPiece(input, one.value);
  });
  if (pieces.some((one) => one === undefined)) return undefined;
  const [first] = grid;
  const rules = [...(first?.passes.keys() ?? [])];
  return decided(
    rules.filter((rule) => grid.every(({ passes }, index) => passes[rule]?.[pieces[index] ?? -1] === 1)),
  );
}

/** A best estimate may lie between two of the whole numbers an input can be: the nearest one stands for it. */
function nearestPiece({ pieces }: GridInput, value: Value): number | undefined {
  if (typeof value !== 'number') return undefined;
  const distance = (index: number): number => {
    const piece = pieces[index];
    const at = piece ? sample(piece) : null;
    return typeof at === 'number' ? Math.abs(at - value) : Number.POSITIVE_INFINITY;
  };
  const [nearest] = [...pieces.keys()].sort((a, b) => distance(a) - distance(b));
  return nearest;
}

/**
 * An input settles the answer if one answer is left for each piece it may turn out to lie in. It has a say if its
 * pieces do not all leave the same answers.
 */
function decidingInputs(
  decided: Decides,
  grid: readonly GridInput[],
  open: readonly (readonly number[])[],
): Pick<Within, 'settledBy' | 'dependsOn'> {
  const settledBy: string[] = [];
  const dependsOn: string[] = [];
  for (const [index, input] of grid.entries()) {
    const pieces = open[index] ?? [];
    if (pieces.length < 2) continue;
    const left = pieces.map((piece) => {
      const fixed = open.map((one, at) => (at === index ? [piece] : one));
      return [...distinctAnswers(decided, possibleHits(grid, fixed)).keys()].sort();
    });
    if (left.every((answers) => answers.length === 1)) settledBy.push(input.input.id);
    if (new Set(left.map((answers) => answers.join('\n'))).size > 1) dependsOn.push(input.input.id);
  }
  return { settledBy, dependsOn };
}
