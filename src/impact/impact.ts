/** What a change of the content does to its answers: two states in, what differs out. */
import { isDeepStrictEqual } from 'node:util';
import { type Answers, judgedProfile } from '../answers.ts';
import type { Entry } from '../base/index.ts';
import type { JudgedProfile } from '../decide/index.ts';
import { type Cause, causesOfOutput, causesOfProfile } from './causes.ts';
import { type EntryChange, entryChanges } from './entry-changes.ts';
import { PlanComparisons } from './plan-changes.ts';
import type { PlanGrid } from './plan-grid.ts';
import {
  appearance,
  causeKey,
  type FactChange,
  type ProfileImpact,
  saysSomething,
  type TwinChange,
} from './profile-impact.ts';
import { SheetChanges } from './sheet-changes.ts';
import { type Rename, States } from './states.ts';
import { type RuleEdits, ruleEdits, TableComparisons } from './table-changes.ts';
import { valueChanges } from './value-changes.ts';

export interface Impact {
  /** The profiles something is different of, in the order of the entries, those that are gone last. */
  readonly profiles: readonly ProfileImpact[];
  /** The plans verdicts were compared on. */
  readonly grid: PlanGrid;
  /** Tables whose rules were edited. */
  readonly rules: readonly RuleEdits[];
  /** Entries and sheets that were touched. */
  readonly entries: readonly EntryChange[];
  /** The rows of sheets that were touched. */
  readonly sheets: SheetChanges;
}

/** Two states of the content, and what is different between their answers. */
export interface Change {
  readonly states: States;
  readonly impact: Impact;
}

/** The change from one state to another; `renames` are those of files. */
export function changeOf(before: Answers, now: Answers, renames: readonly Rename[] = []): Change {
  const states = new States(before, now, renames);
  return { states, impact: impactOf(states) };
}

/**
 * Compares the answers of two states. Outputs are computed only of profiles whose readings, conditions or unit differ
 * by digest, and verdicts and tables decided only where such a profile, the plan or the table differs.
 */
function impactOf(states: States): Impact {
  const sheets = new SheetChanges(states);
  const plans = new PlanComparisons(states);
  const tables = new TableComparisons(states);
  const profiles = [...states.pairs('profiles')];
  const families = Map.groupBy(profiles, ([, { before, now }]) => (now ?? before)?.data.family ?? '');
  const found = new Map<string, ProfileImpact>();
  for (const members of families.values()) {
    const causes = new Map(members.map(([id]) => [id, causesOfProfile(states, sheets, id)]));
    for (const [id, { before, now }] of members) {
      const own = causes.get(id) ?? [];
      const others = members.flatMap(([other]) => (other === id ? [] : (causes.get(other) ?? [])));
      const one =
        before && now
          ? profileImpact(states, { plans, tables, sheets }, id, before, now, own, distinct(others))
          : appearance(now ? 'new' : 'gone', id, (now ?? before)?.data.code ?? '');
      if (saysSomething(one)) found.set(id, one);
    }
  }
  return {
    profiles: profiles.flatMap(([id]) => found.get(id) ?? []),
    grid: plans.grid,
    rules: ruleEdits(states),
    entries: entryChanges(states),
    sheets,
  };
}

interface Comparisons {
  readonly plans: PlanComparisons;
  readonly tables: TableComparisons;
  readonly sheets: SheetChanges;
}

function profileImpact(
  states: States,
  { plans, tables, sheets }: Comparisons,
  profile: string,
  before: Entry<'profiles'>,
  now: Entry<'profiles'>,
  own: readonly Cause[],
  others: readonly Cause[],
): ProfileImpact {
  const ofOutput = causesOfOutput(states, sheets, profile);
  const [was, is] = [
    () => known(judgedProfile(states.before, before.id)),
    () => known(judgedProfile(states.now, now.id)),
  ];
  const isJudged = states.before.outputs.has(before.id) && states.now.outputs.has(now.id);
  return {
    profile,
    formerly: before.id === now.id ? undefined : before.id,
    code: now.data.code,
    formerCode: before.data.code === now.data.code ? undefined : before.data.code,
    kind: 'changed',
    verdicts: isJudged ? plans.changes(profile, own, others) : [],
    tables: isJudged ? tables.changes(was, is, own) : [],
    values: isJudged && ofOutput.length > 0 ? valueChanges(was().output, is().output, ofOutput) : [],
    facts: isJudged && own.length > 0 ? factChanges(was(), is()) : [],
    twins: [...own, ...others].length > 0 ? twinChange(states, before, now) : undefined,
  };
}

function known(profile: JudgedProfile | undefined): JudgedProfile {
  if (!profile) throw new Error('a profile of a known family has no output');
  return profile;
}

function distinct(causes: readonly Cause[]): Cause[] {
  return [...new Map(causes.map((one) => [causeKey(one), one])).values()];
}

function factChanges(before: JudgedProfile, now: JudgedProfile): FactChange[] {
  const [was, is] = [factsOf(before), factsOf(now)];
  return (Object.keys(is) as FactChange['fact'][]).flatMap((fact) =>
    was[fact] === is[fact] ? [] : [{ fact, before: was[fact], now: is[fact] }],
  );
}

function factsOf({ data, output }: JudgedProfile): Record<FactChange['fact'], string> {
  return {
    system: data.system,
    origin: data.origin,
    'boost-behaviour': output.boostBehaviour,
    'silent-outputs': [...output.mutedChannels].sort().join(', '),
  };
}

/** Twins before and now, both by their ids now, where they differ. */
function twinChange(
  states: States,
  before: Entry<'profiles'>,
  now: Entry<'profiles'>,
): TwinChange | undefined {
  const twins = (state: 'before' | 'now', { id, data }: Entry<'profiles'>): string[] =>
    (states[state].outputGroups.get(data.family)?.groups ?? [])
      .filter(({ profiles }) => profiles.includes(id))
      .flatMap(({ profiles }) => profiles.filter((one) => one !== id));
  const was = twins('before', before).map((id) => states.idNow('profiles', id));
  const is = twins('now', now);
  return isDeepStrictEqual(was.sort(), is.sort()) ? undefined : { before: was, now: is };
}
