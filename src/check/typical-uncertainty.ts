/** How well the values that decision tables ask for are known: the uncertainty of a middling profile. */
import type { TableEntryInput } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import type { Entry } from '../base/index.ts';
import { numberBehind } from '../decide/index.ts';
import type { RuleInput } from './rule.ts';
import { familyOutputsDigest } from './scopes.ts';

/** The expanded uncertainties of the profiles of a base, by what is measured. */
type Uncertainties = Map<string, number[]>;

const ofAnswers = new WeakMap<Answers, Uncertainties>();

/** Gathers what is needed of one family; of a base without tables nothing is. */
export function lookAtUncertainties({ answers, remember }: RuleInput, family: string): void {
  const { base } = answers;
  if (base.tables.size === 0) return;
  const asked = askedFor(answers);
  const inputs = ['table-uncertainty', family, familyOutputsDigest(base, family), ...asked.keys()];
  const found = remember(inputs, () =>
    [...asked].map(([key, input]) => [key, uncertaintiesIn(answers, family, input)] as const),
  );
  const all = ofAnswers.get(answers) ?? new Map<string, number[]>();
  ofAnswers.set(answers, all);
  for (const [key, values] of found) {
    const known = all.get(key) ?? [];
    all.set(key, known);
    for (const value of values) known.push(value);
  }
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

function uncertaintiesIn({ base, outputs }: Answers, family: string, input: TableEntryInput): number[] {
  return (base.profilesOfFamily.get(family) ?? []).flatMap(({ id }) => {
    const output = outputs.get(id);
    const value = output && numberBehind(input, output);
    return value?.bound === 'exact' && value.expandedUncertainty > 0 ? [value.expandedUncertainty] : [];
  });
}

export interface TypicalUncertainty {
  /** The median over profiles, in the unit of the quantity. */
  readonly value: number;
  /** Of how many profiles it is known. */
  readonly profiles: number;
}

/** The typical uncertainty of each measured column of a table, by column id. */
export function typicalUncertainties(
  answers: Answers,
  { data }: Entry<'tables'>,
): ReadonlyMap<string, TypicalUncertainty> {
  const all = ofAnswers.get(answers);
  return new Map(
    data.inputs.flatMap((input) => {
      const values = all?.get(keyOf(input) ?? '') ?? [];
      return values.length === 0
        ? []
        : [[input.id, { value: median(values), profiles: values.length }] as const];
    }),
  );
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? 0) + upper) / 2;
}
