/** The aspects a plan is judged by, each held up alone: what would the policy say if all else fitted? */
import type { ReckonedName, TableEntryInput, TraitName } from '../../../schemas/index.ts';
import type { Known } from '../../tables/within.ts';
import { evaluateCut } from '../../tables/within.ts';
import type { Reason } from '../verdict.ts';
import type { PlanPolicy } from './policy.ts';
import type { PlanTerms } from './terms.ts';

type Topic = Reason['topic'];

/** Which columns belong to which topic, and what each would be if it fitted. */
const reckonedTopics: Readonly<Partial<Record<ReckonedName, readonly [Topic, Known]>>> = {
  'level-short': ['level', { value: -100 }],
  'level-over': ['level', { value: -100 }],
  'boost-over': ['bass', { value: -100 }],
  'low-end-short': ['low-end', { value: -10 }],
  'rear-below-front': ['rear', { value: 0 }],
};
const traitTopics: Readonly<Partial<Record<TraitName, readonly [Topic, Known]>>> = {
  'boost-behaviour': ['bass', { value: 'none' }],
  'greatest-bass-boost': ['bass', { value: 0 }],
  'rear-outputs': ['rear', { value: 'playing' }],
};

export interface TopicJudgement {
  readonly outcome: Reason['outcome'];
  /** What the rule that decides says, where it says something. */
  readonly advice: string | undefined;
}

/**
 * The policy’s answer to one topic: every column of the other topics is put to what fits the plan.
 */
export function judgeTopic(
  policy: PlanPolicy,
  known: Readonly<Record<string, Known>>,
  topic: Topic,
  feeds: PlanTerms['feeds'],
): TopicJudgement {
  const alone: Record<string, Known> = { ...known };
  let isOpen = false;
  for (const input of policy.inputs) {
    const [of, fitting] = topicOf(input, feeds) ?? [];
    if (of === undefined || fitting === undefined) continue;
    if (of === topic) isOpen ||= 'anything' in (known[input.id] ?? {});
    else alone[input.id] = fitting;
  }
  const { possible } = evaluateCut(policy.cut, alone);
  const verdicts = new Set(possible.map(({ answers }) => answers[0]?.verdict));
  const [rule] = possible[0]?.rules ?? [];
  const advice = policy.rules.find(({ id }) => id === rule)?.say;
  if (verdicts.size > 1) return { outcome: isOpen ? 'unknown' : 'borderline', advice: undefined };
  if (verdicts.has('keep')) return { outcome: 'fits', advice: undefined };
  return { outcome: verdicts.has('keep-and-correct') ? 'correct' : 'fails', advice };
}

function topicOf(input: TableEntryInput, feeds: PlanTerms['feeds']): readonly [Topic, Known] | undefined {
  if (input.holds === 'trait' && input.trait === 'system' && feeds !== 'aftermarket-amplifier') {
    return ['system', { value: feeds === 'factory-amplifier' ? 'amplified' : 'unamplified' }];
  }
  if (input.holds === 'reckoned') return reckonedTopics[input.reckoned];
  return input.holds === 'trait' ? traitTopics[input.trait] : undefined;
}
