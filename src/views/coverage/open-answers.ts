/** Which answers are open because something of a profile was not measured, or not finely enough. */
import { type Answers, judgedProfile } from '../../answers.ts';
import { byOrder } from '../../base/index.ts';
import { behindInput, keeps, knownByPolicy, planFacts, termsOfPlan } from '../../decide/index.ts';
import { type CharacteristicName, characteristicNames } from '../../measure/index.ts';
import { openPieces } from '../../tables/grid/open-pieces.ts';
import { openOf, tableData, tablesOfProfiles } from '../judged-tables.ts';
import { planPath, tablePath } from '../paths.ts';
import { decider, type Open, type Outcome } from '../table-outcomes.ts';

/** An answer that is not settled, and what of the profile it waits for. */
export interface OpenAnswer {
  readonly profile: string;
  readonly of: 'plan' | 'table';
  /** Name and page of the plan or the table. */
  readonly name: string;
  readonly path: string;
  /** Characteristics that have a say in it, in the order of their names. */
  readonly waitsFor: readonly Awaited[];
}

export interface Awaited {
  readonly characteristic: CharacteristicName;
  /** Whether knowing it alone leaves one answer, whatever it turns out to be. */
  readonly settles: boolean;
}

/** All open answers, profile by profile: plans by the shop’s policy, then the tables a profile is held against. */
export function openAnswers(answers: Answers): OpenAnswer[] {
  const { base, policy } = answers;
  const plans = [...base.plans.values()].sort(byOrder);
  const grid = policy.cut.grid;
  const decidePlan = decider(tableData(policy.table, grid));
  const tables = tablesOfProfiles(answers);
  const behindPolicy = policy.inputs.map(behindInput);
  const keeping = keepersOf(answers);
  return [...base.profiles.values()].flatMap(({ id, data }) => {
    const profile = judgedProfile(answers, id);
    if (!profile) return [];
    const ofPlans = plans.flatMap((plan): OpenAnswer[] => {
      const facts = planFacts(
        termsOfPlan(plan.data),
        profile,
        keeping(data.family, plan.id) - (isKept(answers, id, plan.id) ? 1 : 0),
      );
      const known = knownByPolicy(policy.inputs, facts, profile);
      const open = grid.map((input) => openPieces(input, known[input.input.id] ?? { anything: true }));
      const waitsFor = awaited(behindPolicy, open, decidePlan);
      return waitsFor.length === 0
        ? []
        : [{ profile: id, of: 'plan', name: plan.data.name, path: planPath(plan.id), waitsFor }];
    });
    const ofTables = tables.flatMap((judged): OpenAnswer[] => {
      const behind = judged.entry.data.inputs.map(behindInput);
      const waitsFor = awaited(behind, openOf(judged, profile), judged.decide);
      const { name } = judged.entry.data;
      return waitsFor.length === 0
        ? []
        : [{ profile: id, of: 'table', name, path: tablePath(judged.entry.id), waitsFor }];
    });
    return [...ofPlans, ...ofTables];
  });
}

/** Whether a plan leaves a profile in place. */
function isKept(answers: Answers, profile: string, plan: string): boolean {
  const answer = answers.planAnswers.get(profile)?.find((one) => one.plan === plan);
  return answer !== undefined && keeps(answer.verdict);
}

/** Counts the profiles of a unit that a plan leaves in place, each unit and plan once. */
function keepersOf(answers: Answers): (family: string, plan: string) => number {
  const counted = new Map<string, number>();
  return (family, plan) => {
    const key = `${family} ${plan}`;
    const known = counted.get(key);
    if (known !== undefined) return known;
    const profiles = answers.base.profilesOfFamily.get(family) ?? [];
    const count = profiles.filter(({ id }) => isKept(answers, id, plan)).length;
    counted.set(key, count);
    return count;
  };
}

/**
 * The characteristics an outcome still waits for.
 * @param behind for each input, the characteristic it rests on; undefined where it rests on none.
 */
export function awaited(
  behind: readonly (CharacteristicName | undefined)[],
  open: Open,
  decide: (open: Open) => Outcome,
): Awaited[] {
  const measuredIn = ({ dependsOn }: Outcome): CharacteristicName[] =>
    dependsOn.flatMap((input) => behind[input] ?? []);
  const waiting = new Set(measuredIn(decide(open)));
  return characteristicNames
    .filter((name) => waiting.has(name))
    .map((characteristic) => {
      const inputs = [...open.keys()].filter((input) => behind[input] === characteristic);
      const settles = fixed(open, inputs).every((one) => measuredIn(decide(one)).length === 0);
      return { characteristic, settles };
    });
}

/**
 * Every way these inputs may turn out. Two inputs that rest on one characteristic are taken to be free of each other:
 * that counts cases which cannot be, so that “settles” is said too rarely rather than too often.
 */
function fixed(open: Open, inputs: readonly number[]): Open[] {
  return inputs.reduce<Open[]>(
    (all, input) =>
      all.flatMap((one) =>
        (open[input] ?? []).map((piece) => one.map((pieces, at) => (at === input ? [piece] : pieces))),
      ),
    [open],
  );
}
