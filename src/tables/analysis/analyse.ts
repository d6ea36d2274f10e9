/** Everything that can be said about a table without values: what is missing, contradictory, superfluous or too fine. */
import { isAnalysable } from '../grid/cut-table.ts';
import type { Table } from '../table.ts';
import { Budget, withinBudget } from './budget.ts';
import { type DeadRule, deadRulesIn } from './dead-rules.ts';
import { type FineThresholds, fineThresholdsIn } from './fine-thresholds.ts';
import { type GapBoxes, gapBoxesIn } from './gap-boxes.ts';
import { type Gap, gapsIn } from './gaps.ts';
import { type IdleInput, idleInputsIn } from './idle-inputs.ts';
import { type Mergeable, mergeableIn } from './mergeable.ts';
import { type Overlap, overlapsIn } from './overlaps.ts';
import { spaceOf } from './space.ts';
import { type Subsumed, subsumedIn } from './subsumed.ts';

export interface AnalysisSettings {
  /** Expanded uncertainty of an input’s values by its id, each in the unit of its input; none: not looked at. */
  readonly uncertainty?: Readonly<Record<string, number>>;
  /** Gaps to give at most. */
  readonly mostGaps?: number;
  /** Overlaps to give at most. */
  readonly mostOverlaps?: number;
  /** Steps each kind of finding may take, a step being one rule looked at; ten million take a second or so. */
  readonly steps?: number;
}

/** A kind of finding that was cut short; harmless overlaps are those that do not break the policy. */
export type Part = 'gaps' | 'overlaps' | 'harmless overlaps' | 'dead' | 'idle';

export interface TableAnalysis {
  /**
   * Where no rule holds and not every output has a default (DMN 1.3, 8.2.10): boxes that may overlap and together are all
   * that is missing.
   */
  readonly gaps: readonly Gap[];
  /** Whether a gap is a fault: not for rule order, output order and collect, where no answer is an answer. */
  readonly gapsAreFaults: boolean;
  /** Pairs of rules that hold together, those that break the hit policy first. */
  readonly overlaps: readonly Overlap[];
  /** How many overlaps there are, and how many of them break the hit policy, given or not. */
  readonly overlapCount: number;
  readonly breakingCount: number;
  readonly dead: readonly DeadRule[];
  readonly subsumed: readonly Subsumed[];
  readonly mergeable: readonly Mergeable[];
  readonly idle: readonly IdleInput[];
  readonly fineThresholds: readonly FineThresholds[];
  /** Tests that are more than simple ones: a table that has any is not analysed at all. */
  readonly beyond: readonly { readonly rule: string; readonly input: string; readonly test: string }[];
  /** False where something was cut short: `cut` says what, `beyond` why nothing was found. What is given is right. */
  readonly complete: boolean;
  readonly cut: readonly Part[];
}

const usualSteps = 20_000_000;

/** Analyses a table on its grid, exactly; see the parts for what each finding means. */
export function analyseTable(table: Table, settings: AnalysisSettings = {}): TableAnalysis {
  const gapsAreFaults = !['collect', 'rule order', 'output order'].includes(table.hitPolicy);
  if (!isAnalysable(table)) return notAnalysed(table, gapsAreFaults);
  const { uncertainty = {}, mostGaps = 12, mostOverlaps = 100, steps = usualSteps } = settings;
  const space = spaceOf(table);
  const cut = new Set<Part>();
  const missing = hasDefaults(table) ? undefined : gapsIn(space, mostGaps, new Budget(steps));
  if (missing && !missing.complete) cut.add('gaps');
  const found = overlapsIn(space, mostOverlaps, new Budget(steps));
  if (found.undecided || found.breaking > mostOverlaps) cut.add('overlaps');
  else if (found.count > mostOverlaps) cut.add('harmless overlaps');
  const dead: DeadRule[] = [];
  if (!gather(deadRulesIn(space, new Budget(steps)), dead)) cut.add('dead');
  const idle: IdleInput[] = [];
  if (!gather(idleInputsIn(space, new Budget(steps)), idle)) cut.add('idle');
  return {
    gaps: missing?.gaps ?? [],
    gapsAreFaults,
    overlaps: found.overlaps,
    overlapCount: found.count,
    breakingCount: found.breaking,
    dead,
    subsumed: [...subsumedIn(space)],
    mergeable: [...mergeableIn(space)],
    idle,
    fineThresholds: [...fineThresholdsIn(space, uncertainty)],
    beyond: [],
    complete: cut.size === 0,
    cut: [...cut],
  };
}

/**
 * Neighbouring thresholds closer than the values are known, alone; none where a test is no simple one.
 * @param uncertainty expanded uncertainty by input id, each in the unit of its input.
 */
export function fineThresholds(
  table: Table,
  uncertainty: Readonly<Record<string, number>>,
): readonly FineThresholds[] {
  return isAnalysable(table) ? [...fineThresholdsIn(spaceOf(table), uncertainty)] : [];
}

/** Puts what `found` finds into `list`. @returns whether that was all. */
function gather<Finding>(found: Iterable<Finding>, list: Finding[]): boolean {
  return (
    withinBudget(() => {
      for (const one of found) list.push(one);
    }) !== undefined
  );
}

/** With a default for every output there always is an answer. */
function hasDefaults({ outputs }: Table): boolean {
  return outputs.length > 0 && outputs.every(({ otherwise }) => otherwise !== undefined);
}

function notAnalysed(table: Table, gapsAreFaults: boolean): TableAnalysis {
  return {
    gaps: [],
    gapsAreFaults,
    overlaps: [],
    overlapCount: 0,
    breakingCount: 0,
    dead: [],
    subsumed: [],
    mergeable: [],
    idle: [],
    fineThresholds: [],
    beyond: table.rules.flatMap(({ id, cells }) =>
      cells.flatMap(({ set, text }, index) =>
        set ? [] : [{ rule: id, input: table.inputs[index]?.id ?? '', test: text }],
      ),
    ),
    complete: false,
    cut: [],
  };
}

/**
 * Where no rule of a table holds, defaults or not, as boxes apart from each other.
 * @throws where a test is no simple one: see `isAnalysable`.
 */
export function gapBoxes(
  table: Table,
  { most = 1000, steps = usualSteps }: { readonly most?: number; readonly steps?: number } = {},
): GapBoxes {
  return gapBoxesIn(spaceOf(table), most, steps);
}
