/** What a change does to the answers, as data for other programs. */
import type { ImpactResult } from '../../../schemas/results/impact.ts';
import { jsonFinding } from '../../check/index.ts';
import type { ProfileImpact, TableAnswerChange, ValueChange } from '../../impact/index.ts';
import { pageChanges } from './pages.ts';
import type { ImpactInput } from './report.ts';

export function impactResult({ change, since, findings, setAside }: ImpactInput): ImpactResult {
  const { states, impact } = change;
  const { typical, combinations, leftOut } = impact.grid;
  const { added, removed } = pageChanges(states);
  return {
    since: { ...since },
    profiles: impact.profiles.map(profileResult),
    grid: { plans: typical, combinations, leftOut },
    rules: impact.rules.map((one) => ({
      ...one,
      added: [...one.added],
      removed: [...one.removed],
      edited: [...one.edited],
    })),
    pages: { added: [...added], removed: removed.map((one) => ({ ...one, now: one.now ?? null })) },
    entries: impact.entries.map((one) => ({ ...one })),
    findings: findings.map(jsonFinding),
    setAside,
  };
}

type ProfileResult = ImpactResult['profiles'][number];

function profileResult(one: ProfileImpact): ProfileResult {
  return {
    profile: one.profile,
    formerly: one.formerly ?? null,
    code: one.code,
    formerCode: one.formerCode ?? null,
    kind: one.kind,
    verdicts: one.verdicts.map(({ plan, causes, ...verdicts }) => ({
      plan:
        typeof plan === 'string'
          ? plan
          : { amplifier: plan.amplifier ?? null, front: plan.front, rear: plan.rear ?? null },
      ...verdicts,
      causes: causesResult(causes),
    })),
    tables: one.tables.map(tableResult),
    values: one.values.map(valueResult),
    facts: one.facts.map((fact) => ({ ...fact })),
    twins: one.twins ? { before: [...one.twins.before], now: [...one.twins.now] } : null,
  };
}

function causesResult(causes: ValueChange['causes']): ProfileResult['values'][number]['causes'] {
  return causes.map(({ rules, ...cause }) => ({ ...cause, ...(rules && { rules: [...rules] }) }));
}

function tableResult({ table, before, now, cases, differing, example, causes }: TableAnswerChange) {
  const answered = ({ answers, rules }: TableAnswerChange['now']) => ({
    answers: answers.map((one) => ({ answers: [...one.answers], broken: one.broken ?? null })),
    rules: [...rules],
  });
  return {
    table,
    before: answered(before),
    now: answered(now),
    cases,
    differing,
    example: { ...example },
    causes: causesResult(causes),
  };
}

function valueResult({ before, now, difference, inUnitsOfU, causes, ...rest }: ValueChange) {
  const ratio = inUnitsOfU !== undefined && Number.isFinite(inUnitsOfU) ? inUnitsOfU : null;
  return {
    ...rest,
    before: before ? { ...before } : null,
    now: now ? { ...now } : null,
    difference: difference ?? null,
    inUnitsOfU: ratio,
    causes: causesResult(causes),
  };
}
