/** What the profiles of a base put out in the measured columns of decision tables, and how well it is known. */
import { characteristicUnits, type TableEntryInput, type Unit } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { type Entry, familyOutputsDigest } from '../base/index.ts';
import { numberBehind } from '../decide/index.ts';
import { formatNumber } from '../measure/index.ts';
import type { RuleInput } from './rule.ts';

/** A value of a profile and its expanded uncertainty. */
type Measured = readonly [value: number, expandedUncertainty: number];

type OfFamily = readonly (readonly [quantity: string, measured: readonly Measured[]])[];

/** What was measured of the profiles of each family. */
const ofAnswers = new WeakMap<Answers, Map<string, OfFamily>>();

/** Gathers what is needed of one family; of a base without tables nothing is. */
export function lookAtMeasured({ answers, remember }: RuleInput, family: string): void {
  const { base } = answers;
  if (base.tables.size === 0) return;
  const families = ofAnswers.get(answers) ?? new Map<string, OfFamily>();
  ofAnswers.set(answers, families);
  if (families.has(family)) return;
  const asked = askedFor(answers);
  const inputs = ['table-columns', family, familyOutputsDigest(base, family), ...asked.keys()];
  const found = remember(inputs, () =>
    [...asked].map(([key, input]) => [key, measuredIn(answers, family, input)] as const),
  );
  families.set(family, found);
}

/** The measured columns of all tables, each quantity once. */
function askedFor({ base }: Answers): ReadonlyMap<string, TableEntryInput> {
  const inputs = [...base.tables.values()].flatMap(({ data }) => data.inputs);
  return new Map(
    inputs
      .flatMap((input) => {
        const key = keyOf(input);
        return key === undefined ? [] : [[key, input] as const];
      })
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

function keyOf(input: TableEntryInput): string | undefined {
  if (input.holds === 'characteristic') return input.characteristic;
  return input.holds === 'trait' ? input.trait : undefined;
}

function measuredIn({ base, outputs }: Answers, family: string, input: TableEntryInput): Measured[] {
  return (base.profilesOfFamily.get(family) ?? []).flatMap(({ id }) => {
    const output = outputs.get(id);
    const value = output && numberBehind(input, output);
    return value?.bound === 'exact' ? [[value.value, value.expandedUncertainty] as const] : [];
  });
}

export interface MeasuredColumn {
  /** Expanded uncertainty, the median over the profiles, in the unit of the quantity. */
  readonly typicalUncertainty: number;
  /** Of how many profiles it was measured. */
  readonly profiles: number;
  /** The value nearest to nothing and the one furthest from it, without their signs. */
  readonly least: number;
  readonly most: number;
}

/** What is known of each measured column of a table, by column id. */
export function measuredColumns(
  answers: Answers,
  { data }: Entry<'tables'>,
): ReadonlyMap<string, MeasuredColumn> {
  const all = [...(ofAnswers.get(answers)?.values() ?? [])].flat();
  return new Map(
    data.inputs.flatMap((input) => {
      const key = keyOf(input);
      const measured = all.flatMap(([quantity, of]) => (quantity === key ? of : []));
      if (measured.length === 0) return [];
      const sizes = measured.map(([value]) => Math.abs(value));
      const column: MeasuredColumn = {
        typicalUncertainty: median(measured.map(([, uncertainty]) => uncertainty)),
        profiles: measured.length,
        least: sizes.reduce((a, b) => Math.min(a, b)),
        most: sizes.reduce((a, b) => Math.max(a, b)),
      };
      return [[input.id, column] as const];
    }),
  );
}

/** The unit of a measured column. */
export function unitOfColumn(input: TableEntryInput | undefined): Unit {
  return input?.holds === 'characteristic' ? characteristicUnits[input.characteristic] : 'dB';
}

/** A threshold with its unit and all its decimals: `4.25 V`. */
export function thresholdText(value: number, unit: Unit): string {
  const decimals = String(value).split('.')[1]?.length ?? 0;
  return `${formatNumber(value, decimals)}\u00a0${unit}`;
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? 0) + upper) / 2;
}
