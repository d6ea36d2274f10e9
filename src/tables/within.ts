/**
 * What a table may answer where values are not known exactly: every answer that is possible, and which value would
 * settle it. Exact: it goes over pieces (grid/), never over samples.
 */
import { type CutTable, cutFurther, type GridInput, pieceOf, sample } from './grid/grid.ts';
import { openPieces } from './grid/open-pieces.ts';
import { type Leaf, possibleHits } from './grid/possible.ts';
import { type Decided, listed } from './hit-policy.ts';
import type { Known } from './known.ts';
import type { Value } from './table.ts';

export type { Known } from './known.ts';

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
  const cut = table.grid.map((input) => cutWhole(input, known[input.input.id]));
  const open = cut.map((input) => openPieces(input, known[input.input.id] ?? { anything: true }));
  const best = bestPieces(cut, known);
  const make = (): Within => withinPieces((rules) => decidedBy(table, decide, rules), cut, open, best);
  if (cut.some((input, index) => input !== table.grid[index])) return make();
  const evaluated = evaluatedOf(table, decide);
  const key = JSON.stringify([open, best]);
  const within = evaluated.get(key) ?? make();
  if (evaluated.size >= mostEvaluated) evaluated.clear();
  evaluated.set(key, within);
  return within;
}

/** What the pieces of a table came to, by how it is decided: many profiles are alike to it. */
const evaluatedTables = new WeakMap<CutTable, Map<typeof listed, Map<string, Within>>>();
const mostEvaluated = 10_000;

function evaluatedOf(table: CutTable, decide: typeof listed): Map<string, Within> {
  const byWay = evaluatedTables.get(table) ?? new Map<typeof listed, Map<string, Within>>();
  evaluatedTables.set(table, byWay);
  const evaluated = byWay.get(decide) ?? new Map<string, Within>();
  byWay.set(decide, evaluated);
  return evaluated;
}

function decidedBy(table: CutTable, decide: typeof listed, rules: Leaf): Decided {
  return decide(
    table,
    rules.flatMap((index) => table.rules[index] ?? []),
  );
}

/** What some pieces come to; `bestAt` are those of the best estimates, undefined where an input has none. */
function withinPieces(
  decided: Decides,
  grid: readonly GridInput[],
  open: readonly (readonly number[])[],
  bestAt: readonly number[] | undefined,
): Within {
  const answers = distinctAnswers(decided, possibleHits(grid, open));
  const best = bestAt && decided(fittingAt(grid, bestAt));
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

/** Where only whole numbers can be, the best estimate counts as the nearest that is open: the ends are cut out. */
function cutWhole(input: GridInput, known: Known | undefined): GridInput {
  const { type } = input.input;
  if (type.kind !== 'number' || !type.whole || !known) return input;
  const ends = 'low' in known ? [known.low, known.high] : 'oneOf' in known ? known.oneOf : [];
  const values = 'value' in known && !('low' in known) ? [known.value] : ends;
  return cutFurther(
    input,
    values.filter((value): value is number => typeof value === 'number' && Number.isFinite(value)),
  );
}

/** The pieces of the best estimates; undefined where an input has none. */
function bestPieces(
  grid: readonly GridInput[],
  known: Readonly<Record<string, Known | undefined>>,
): number[] | undefined {
  const pieces = grid.map((input) => {
    const one = known[input.input.id];
    if (!one || !('value' in one)) return input.pieces.length === 1 ? 0 : undefined;
    return pieceOf(input, one.value) ?? nearestPiece(input, one.value);
  });
  return pieces.every((one) => one !== undefined) ? pieces : undefined;
}

/** The rules that fit in one piece of each input. */
function fittingAt(grid: readonly GridInput[], pieces: readonly number[]): number[] {
  const rules = [...(grid[0]?.passes.keys() ?? [])];
  return rules.filter((rule) => grid.every(({ passes }, index) => passes[rule]?.[pieces[index] ?? -1] === 1));
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
