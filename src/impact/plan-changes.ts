/** Which verdicts flipped, over the grid of plans. */
import type { Verdict } from '../decide/index.ts';
import type { Cause } from './causes.ts';
import { differsDecisively } from './decisive.ts';
import { type ComparedPlan, type PlanGrid, planGrid } from './plan-grid.ts';
import { PlanJudge } from './plan-judge.ts';
import type { States } from './states.ts';

export interface VerdictChange {
  readonly plan: ComparedPlan['plan'];
  readonly before: Verdict;
  readonly now: Verdict;
  readonly causes: readonly Cause[];
}

/** Compares verdicts; judges only where the policy, the plan, or a profile of the unit differs. */
export class PlanComparisons {
  readonly grid: PlanGrid;
  readonly #states: States;
  readonly #before: PlanJudge;
  readonly #now: PlanJudge;
  readonly #policyCauses: readonly Cause[];

  constructor(states: States) {
    this.#states = states;
    this.grid = planGrid(states);
    this.#before = new PlanJudge(states.before);
    this.#now = new PlanJudge(states.now);
    this.#policyCauses = [...states.pairs('tables')]
      .filter(([, { before, now }]) => [before, now].some((one) => one?.data.decides === 'plan'))
      .filter(([, pair]) => differsDecisively(pair))
      .map(([id]) => ({ kind: 'tables', id }));
  }

  /**
   * The plans whose verdict on a profile flipped, in the order of the grid.
   * @param own changed entries the profile follows from
   * @param others those that the other profiles of its unit follow from, which profiles are there included
   */
  changes(profile: string, own: readonly Cause[], others: readonly Cause[]): VerdictChange[] {
    const judged = [this.#policyCauses, own, others].some((causes) => causes.length > 0)
      ? this.grid.plans
      : this.grid.plans.filter(({ causes }) => causes.length > 0);
    const was = this.#states.idBefore('profiles', profile);
    return judged.flatMap((plan): VerdictChange[] => {
      const before = this.#before.verdict(plan.before, was);
      const now = this.#now.verdict(plan.now, profile);
      if (before === undefined || now === undefined || before === now) return [];
      const causes = this.#causesOf(plan, before, profile, own, others);
      return [{ plan: plan.plan, before, now, causes }];
    });
  }

  /** Each difference by itself: those that flip the verdict alone, or, where none does, all of them. */
  #causesOf(
    { before, now, causes }: ComparedPlan,
    verdict: Verdict,
    profile: string,
    own: readonly Cause[],
    others: readonly Cause[],
  ): Cause[] {
    const was = this.#states.idBefore('profiles', profile);
    const suitable = this.#before.suitable(before, was);
    const alone: readonly [readonly Cause[], () => Verdict | undefined][] = [
      [this.#policyCauses, () => this.#before.verdictWith(before, was, suitable, this.#now.policy)],
      [causes, () => this.#before.verdictWith(now, was, suitable)],
      [own, () => this.#now.verdictWith(before, profile, suitable, this.#before.policy)],
      [others, () => this.#before.verdictWith(before, was, this.#now.suitable(now, profile))],
    ];
    const differing = alone.filter(([some]) => some.length > 0);
    const enough = differing.filter(([, judged]) => judged() !== verdict);
    return unique((enough.length > 0 ? enough : differing).flatMap(([some]) => some));
  }
}

function unique(causes: readonly Cause[]): Cause[] {
  return [...new Map(causes.map((one) => [`${one.kind}/${one.id}`, one])).values()];
}
