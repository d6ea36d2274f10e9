/** Verdicts of one state of the content, each judged once; profiles by their ids there. */
import { type Answers, judgedProfile } from '../answers.ts';
import {
  type JudgedProfile,
  judge,
  keeps,
  type PlanPolicy,
  type PlanTerms,
  type Verdict,
} from '../decide/index.ts';

/** What a profile comes to by itself; of many, no more is kept. */
interface Alone {
  readonly verdict: Verdict;
  readonly possible: readonly Verdict[];
}

export class PlanJudge {
  readonly policy: PlanPolicy;
  readonly #answers: Answers;
  readonly #alone = new Map<string, Map<string, Alone>>();

  constructor(answers: Answers) {
    this.#answers = answers;
    this.policy = answers.policy;
  }

  profile(id: string): JudgedProfile | undefined {
    return judgedProfile(this.#answers, id);
  }

  /** The verdict on a profile, with how many other profiles of its unit suit; undefined where it is not there. */
  verdict(terms: PlanTerms, id: string): Verdict | undefined {
    const family = this.#answers.base.profiles.get(id)?.data.family;
    if (family === undefined) return undefined;
    const judged = this.#ofFamily(terms, family);
    const own = judged.get(id);
    return own && this.verdictWith(terms, id, this.suitable(terms, id), own);
  }

  /** The verdict where so many other profiles suit. */
  verdictWith(
    terms: PlanTerms,
    id: string,
    suitable: number,
    alone?: Alone,
    policy = this.policy,
  ): Verdict | undefined {
    // The number has a say in a column that asks for it, and in what becomes of a reflash.
    const asks = policy.inputs.some(
      (one) => one.holds === 'reckoned' && one.reckoned === 'suitable-profiles',
    );
    if (alone && !asks && (suitable > 0 || !alone.possible.includes('reflash'))) return alone.verdict;
    const profile = this.profile(id);
    return profile && judge(policy, terms, profile, suitable).verdict;
  }

  /** How many other profiles of its unit suit. */
  suitable(terms: PlanTerms, id: string): number {
    const family = this.#answers.base.profiles.get(id)?.data.family ?? '';
    return [...this.#ofFamily(terms, family)].filter(([one, { verdict }]) => one !== id && keeps(verdict))
      .length;
  }

  #ofFamily(terms: PlanTerms, family: string): Map<string, Alone> {
    const key = `${family} ${JSON.stringify(terms)}`;
    const known = this.#alone.get(key);
    if (known) return known;
    const judged = new Map(
      (this.#answers.base.profilesOfFamily.get(family) ?? []).flatMap(({ id }) => {
        const profile = this.profile(id);
        if (!profile) return [];
        const { verdict, possible } = judge(this.policy, terms, profile, undefined);
        return [[id, { verdict, possible }] as const];
      }),
    );
    this.#alone.set(key, judged);
    return judged;
  }
}
