/** Verdicts of one state of the content, each judged once; profiles by their ids there. */
import { type Answers, judgedProfile } from '../answers.ts';
import {
  type JudgedProfile,
  keeps,
  knownByPolicy,
  type PlanTerms,
  planFacts,
  type ReadPolicy,
  type Verdict,
  verdictWithin,
} from '../decide/index.ts';
import { DecidedTable } from './decided-table.ts';

/** A policy cut into pieces: the verdicts of `judge`, thousands of times over. */
export class DecidedPolicy {
  readonly #policy: ReadPolicy;
  readonly #table: DecidedTable;

  constructor(policy: ReadPolicy) {
    this.#policy = policy;
    this.#table = new DecidedTable(policy.table);
  }

  verdict(terms: PlanTerms, profile: JudgedProfile, suitable: number | undefined): Verdict {
    const facts = planFacts(terms, profile, suitable);
    const open = this.#table.openOf(knownByPolicy(this.#policy.inputs, facts, profile));
    return verdictWithin(this.#table.outcome(open).answers, suitable).verdict;
  }
}

export class PlanJudge {
  readonly policy: DecidedPolicy;
  readonly #answers: Answers;
  readonly #keeping = new Map<string, ReadonlySet<string>>();

  constructor(answers: Answers) {
    this.#answers = answers;
    this.policy = new DecidedPolicy(answers.policy);
  }

  /** The verdict on a profile, with how many other profiles of its unit suit; undefined where it is not there. */
  verdict(terms: PlanTerms, id: string): Verdict | undefined {
    return this.verdictWith(terms, id, this.suitable(terms, id));
  }

  /** The verdict where so many other profiles suit, by the state’s own policy or another. */
  verdictWith(
    terms: PlanTerms,
    id: string,
    suitable: number,
    policy: DecidedPolicy = this.policy,
  ): Verdict | undefined {
    const profile = judgedProfile(this.#answers, id);
    return profile && policy.verdict(terms, profile, suitable);
  }

  /** How many other profiles of its unit suit, each judged by itself. */
  suitable(terms: PlanTerms, id: string): number {
    const family = this.#answers.base.profiles.get(id)?.data.family ?? '';
    const keeping = this.#keepingOf(terms, family);
    return keeping.size - (keeping.has(id) ? 1 : 0);
  }

  #keepingOf(terms: PlanTerms, family: string): ReadonlySet<string> {
    const key = `${family} ${JSON.stringify(terms)}`;
    const known = this.#keeping.get(key);
    if (known) return known;
    const members = this.#answers.base.profilesOfFamily.get(family) ?? [];
    const keeping = new Set(
      members.flatMap(({ id }) => {
        const profile = judgedProfile(this.#answers, id);
        return profile && keeps(this.policy.verdict(terms, profile, undefined)) ? [id] : [];
      }),
    );
    this.#keeping.set(key, keeping);
    return keeping;
  }
}
