/** What each plan makes of a profile, and the page of a plan with what it makes of all. */
import type { Plan } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { byOrder } from '../base/index.ts';
import { type PlanAnswer, type Reason, type Verdict, verdicts } from '../decide/verdict.ts';
import { formatNumber } from '../measure/format.ts';
import { phrase } from '../words/index.ts';
import { planPath, profilePath, unitPath } from './paths.ts';
import { type ReadingRows, readingRows, type SourceLink, sourceLinks } from './reading-links.ts';
import type { Fact } from './session-conditions.ts';
import { outcomeLabel, plainNumber, topicLabel, verdictLabel } from './wording.ts';

export interface ReasonView {
  readonly topic: string;
  readonly outcome: Reason['outcome'];
  readonly outcomeLabel: string;
  readonly text: string;
  readonly readings: ReadingRows;
}

export interface PlanAnswerView {
  readonly plan: { readonly name: string; readonly path: string };
  readonly verdict: Verdict;
  readonly verdictLabel: string;
  readonly sentence: string;
  readonly reasons: readonly ReasonView[];
}

/** The answers for one profile, in plan order. */
export function planAnswerViews(answers: Answers, profile: string): PlanAnswerView[] {
  return (answers.planAnswers.get(profile) ?? []).flatMap((answer) => {
    const plan = answers.base.plans.get(answer.plan);
    if (!plan) return [];
    return [
      {
        plan: { name: plan.data.name, path: planPath(plan.id) },
        verdict: answer.verdict,
        verdictLabel: verdictLabel(answer.verdict),
        sentence: answer.sentence,
        reasons: answer.reasons.map((reason) => ({
          topic: topicLabel(reason.topic),
          outcome: reason.outcome,
          outcomeLabel: outcomeLabel(reason.outcome),
          text: reason.text,
          readings: readingRows(reason.readings),
        })),
      },
    ];
  });
}

export interface VerdictCount {
  readonly verdict: Verdict;
  readonly label: string;
  readonly count: number;
}

/** How many answers come to each verdict, best first; verdicts that none comes to are left out. */
export function verdictCounts(given: Iterable<{ readonly verdict: Verdict }>): VerdictCount[] {
  const all = [...given].map((answer) => answer.verdict);
  return verdicts
    .map((verdict) => ({
      verdict,
      label: verdictLabel(verdict),
      count: all.filter((one) => one === verdict).length,
    }))
    .filter(({ count }) => count > 0);
}

export interface PlanPageView {
  readonly id: string;
  readonly path: string;
  readonly title: string;
  readonly description: string;
  /** What the plan asks of a head unit, as labelled facts. */
  readonly asks: readonly Fact[];
  readonly tally: readonly VerdictCount[];
  readonly families: readonly {
    readonly name: string;
    readonly path: string;
    /** The best first; where there are too many for the page, no more than its share. */
    readonly rows: readonly {
      readonly code: string;
      readonly path: string;
      readonly verdict: Verdict;
      readonly verdictLabel: string;
      readonly sentence: string;
    }[];
    /** How many are left out. */
    readonly more: number;
  }[];
  readonly sources: readonly SourceLink[];
}

/** Profiles a plan’s page lists: of a larger base each unit’s best, as each profile’s own page says the rest. */
const mostRowsOfPage = 200;

/** One view for each plan, in the order plans are listed in. */
export function planPages(answers: Answers, mostRows = mostRowsOfPage): PlanPageView[] {
  const { base } = answers;
  const answersOfPlan = new Map<string, Map<string, PlanAnswer>>();
  for (const [profile, given] of answers.planAnswers) {
    for (const answer of given) {
      const known = answersOfPlan.get(answer.plan) ?? new Map<string, PlanAnswer>();
      answersOfPlan.set(answer.plan, known.set(profile, answer));
    }
  }
  const inOrder = [...base.plans.values()].sort(byOrder);
  const most =
    base.profiles.size > mostRows
      ? Math.max(3, Math.floor(mostRows / Math.max(1, base.families.size)))
      : mostRows;
  return inOrder.map((plan) => {
    const given = answersOfPlan.get(plan.id) ?? new Map<string, PlanAnswer>();
    return {
      id: plan.id,
      path: planPath(plan.id),
      title: plan.data.name,
      description: plan.data.summary,
      asks: asksOf(plan.data),
      tally: verdictCounts(given.values()),
      families: [...base.families.values()].flatMap((family) => {
        const rows = (base.profilesOfFamily.get(family.id) ?? []).flatMap((profile) => {
          const answer = given.get(profile.id);
          if (!answer) return [];
          return [
            {
              code: profile.data.code,
              path: profilePath(profile.id),
              verdict: answer.verdict,
              verdictLabel: verdictLabel(answer.verdict),
              sentence: answer.sentence,
            },
          ];
        });
        rows.sort((a, b) => verdicts.indexOf(a.verdict) - verdicts.indexOf(b.verdict));
        const { name } = family.data;
        const shown = rows.slice(0, most);
        const more = rows.length - shown.length;
        return rows.length === 0 ? [] : [{ name, path: unitPath(family.id), rows: shown, more }];
      }),
      sources: sourceLinks(answers, plan.data.sources),
    };
  });
}

function feedsText(feeds: Plan['feeds']): string {
  const words: Readonly<Record<Plan['feeds'], string>> = {
    'factory-amplifier': phrase('The factory amplifier'),
    'aftermarket-amplifier': phrase('An aftermarket amplifier'),
    speakers: phrase('The speakers themselves'),
  };
  return words[feeds];
}

function asksOf(plan: Plan): Fact[] {
  const asks: Fact[] = [{ label: phrase('The unit drives'), text: feedsText(plan.feeds) }];
  if (plan.input) {
    const { leastVolts, mostVolts } = plan.input;
    asks.push({
      label: phrase('Input it takes'),
      text: phrase('{least}\u00a0V to {most}\u00a0V rms', {
        least: plainNumber(leastVolts),
        most: plainNumber(mostVolts),
      }),
    });
  }
  asks.push(
    { label: phrase('Rear outputs'), text: plan.rear === 'needed' ? phrase('Needed') : phrase('Not needed') },
    { label: phrase('Bass boost at most'), text: `${formatNumber(plan.mostBassBoostDb, 1)}\u00a0dB` },
  );
  if (plan.highestLowCornerHz !== undefined) {
    asks.push({ label: phrase('Bass down to'), text: `${plainNumber(plan.highestLowCornerHz)}\u00a0Hz` });
  }
  asks.push({
    label: phrase('Equaliser in the plan'),
    text: plan.canCorrect ? phrase('Yes: it can take a fixed boost back out') : phrase('No'),
  });
  return asks;
}
