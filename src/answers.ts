/** Everything a content folder comes to, computed once: entries, outputs, answers to plans. */
import type { EntryData } from '../schemas/index.ts';
import {
  type Base,
  type BaseReading,
  byOrder,
  type ContentFiles,
  LazyMap,
  type Memory,
  readBase,
  readingsOfProfile,
} from './base/index.ts';
import {
  answerPlan,
  type Catalogue,
  type JudgedProfile,
  judge,
  keeps,
  knownOfProfile,
  type PlanAnswer,
  type PlanQuery,
  type PlanReport,
  planReport,
  policyOf,
  type ReadPolicy,
  termsOfPlan,
} from './decide/index.ts';
import type { KeptOutputs } from './kept-outputs.ts';
import {
  type ComparableOutput,
  characterise,
  comparableOutput,
  groupOutputs,
  type OutputGroups,
  type ProfileOutput,
  valuesOfOutput,
} from './measure/index.ts';
import { type EntryTable, evaluateWithin, type Known, tableOfEntry, type Within } from './tables/index.ts';

export interface Answers {
  readonly base: Base;
  /** The computed output of each profile, by profile id. */
  readonly outputs: ReadonlyMap<string, ProfileOutput>;
  /** The part of each output that profiles are compared by, by profile id. */
  readonly comparable: ReadonlyMap<string, ComparableOutput>;
  /** For each profile id, one answer a plan, in the order of the plans. */
  readonly planAnswers: ReadonlyMap<string, readonly PlanAnswer[]>;
  /** The table plans are decided by. */
  readonly policy: ReadPolicy;
  /** Each decision table as read from its entry, by id; those with faults have no table. */
  readonly tables: ReadonlyMap<string, EntryTable>;
  /** For each family id, which of its profiles put out the same. */
  readonly outputGroups: ReadonlyMap<string, OutputGroups>;
}

/** What a decision table says of a profile. */
export interface TableAnswer {
  /** What was known of each column. */
  readonly known: Readonly<Record<string, Known>>;
  readonly within: Within;
}

export interface AnswersReading {
  readonly answers: Answers;
  readonly findings: BaseReading['findings'];
}

/**
 * Reads a content folder and computes all that follows from it. The findings are those of the reader;
 * the rules of the check add theirs. Outputs that are kept are not computed again.
 * @throws CannotRun where the folder cannot be read.
 */
export async function readAnswers(
  content: string | ContentFiles,
  memory?: Memory,
  outputsAtOnce?: number,
  kept?: KeptOutputs,
): Promise<AnswersReading> {
  const { base, findings } = await readBase(content, memory);
  return { answers: answersOf(base, outputsAtOnce, kept && keptIn(base, kept)), findings };
}

/** Profiles are compared unit by unit: no more of what they are compared by, 70 kB each, need be at hand at once. */
const comparedAtOnce = 2000;

/**
 * The outputs, plan answers and groups of a Base, each computed when it is first asked for. All outputs are kept
 * whole, or the last `outputsAtOnce` and of the others the values: ten thousand whole ones fill gigabytes. What was
 * computed before is taken as it is.
 */
export function answersOf(
  base: Base,
  outputsAtOnce = Number.POSITIVE_INFINITY,
  computed?: Pick<Answers, 'outputs' | 'comparable'>,
): Answers {
  const plans = [...base.plans.values()].sort(byOrder);
  const ids = withFamily(base);
  const familyOf = (id: string): EntryData<'families'> => familyOfProfile(base, id);
  const outputs =
    computed?.outputs ??
    outputsHeld(
      new LazyMap(ids, (id) => characterise(...measured(base, id)), outputsAtOnce),
      outputsAtOnce < ids.length,
    );
  const comparable =
    computed?.comparable ??
    new LazyMap(
      ids,
      (id) => comparableOutput(...measured(base, id)),
      Math.min(outputsAtOnce, comparedAtOnce),
    );
  const tables = new Map(
    [...base.tables.values()].sort(byOrder).map(({ id, data }) => [id, tableOfEntry(data)] as const),
  );
  let policyMade: ReadPolicy | undefined;
  // Made when it is first asked for: its texts are in the language of that time.
  const policyOfShop = (): ReadPolicy => {
    policyMade ??= policyOf([...base.tables.values()].sort(byOrder).map(({ data }) => data));
    return policyMade;
  };
  const terms = plans.map(({ id, data }) => ({ id, terms: termsOfPlan(data) }));
  const answerAll = (id: string, suitable: (plan: string) => number): readonly PlanAnswer[] => {
    const profile = judged(id);
    return profile ? terms.map((plan) => answerPlan(policyOfShop(), plan, profile, suitable(plan.id))) : [];
  };
  const judged = (id: string): JudgedProfile | undefined => {
    const data = base.profiles.get(id)?.data;
    const output = outputs.get(id);
    return data && output && { data, channels: familyOf(id).output.channels, output };
  };
  // Whether another profile of the unit suits decides between reflash and replace: each is judged alone first.
  const keeping = new LazyMap(base.profilesOfFamily.keys(), (family): ReadonlyMap<string, Set<string>> => {
    const byPlan = new Map(terms.map((plan) => [plan.id, new Set<string>()]));
    for (const { id } of base.profilesOfFamily.get(family) ?? []) {
      const profile = judged(id);
      if (!profile) continue;
      for (const { id: plan, terms: asked } of terms) {
        if (keeps(judge(policyOfShop(), asked, profile, undefined).verdict)) byPlan.get(plan)?.add(id);
      }
    }
    return byPlan;
  });
  const planAnswers = new LazyMap(ids, (id): readonly PlanAnswer[] => {
    const suitable = keeping.get(base.profiles.get(id)?.data.family ?? '');
    return answerAll(id, (plan) => {
      const keepers = suitable?.get(plan);
      return keepers ? keepers.size - (keepers.has(id) ? 1 : 0) : 0;
    });
  });
  const outputGroups = new LazyMap(
    base.profilesOfFamily.keys(),
    (family): OutputGroups =>
      groupOutputs((base.profilesOfFamily.get(family) ?? []).flatMap(({ id }) => comparable.get(id) ?? [])),
  );
  return Object.freeze({
    base,
    outputs,
    comparable,
    planAnswers,
    get policy() {
      return policyOfShop();
    },
    tables,
    outputGroups,
  });
}

/** Outputs as they are, or of all their values, where not all can be held whole. */
function outputsHeld(whole: LazyMap<ProfileOutput>, valuesOnly: boolean): ReadonlyMap<string, ProfileOutput> {
  if (!valuesOnly) return whole;
  return new LazyMap(whole.keys(), (id) => {
    const again = (): ProfileOutput => whole.get(id) as ProfileOutput;
    return valuesOfOutput(again(), again);
  });
}

/** The outputs of a base, those taken that are kept. */
function keptIn(base: Base, kept: KeptOutputs): Pick<Answers, 'outputs' | 'comparable'> {
  const ids = withFamily(base);
  return {
    outputs: new LazyMap(ids, (id) => kept.outputs.of(base, id, () => characterise(...measured(base, id)))),
    comparable: new LazyMap(
      ids,
      (id) => kept.comparable.of(base, id, () => comparableOutput(...measured(base, id))),
      comparedAtOnce,
    ),
  };
}

/** The profiles whose family is there. */
function withFamily(base: Base): string[] {
  return [...base.profiles.values()].flatMap(({ id, data }) => (base.families.has(data.family) ? [id] : []));
}

function familyOfProfile(base: Base, id: string): EntryData<'families'> {
  const family = base.families.get(base.profiles.get(id)?.data.family ?? '');
  if (!family) throw new Error(`no family of ${id}`);
  return family.data;
}

/** What was measured of a profile, and what its unit can do. */
function measured(base: Base, id: string): Parameters<typeof characterise> {
  const runs = readingsOfProfile(base, id).map(({ session, readings }) => ({
    session: session.id,
    conditions: session.data,
    readings,
  }));
  const { output, volume } = familyOfProfile(base, id);
  return [id, runs, { ratedLoadOhms: output.ratedLoadOhms, highestStep: volume.highestStep }];
}

/** The same answers, said anew: their sentences are in the language at the time they are asked for. */
export function answersSaidAnew(answers: Answers): Answers {
  return answersOf(answers.base, undefined, answers);
}

/** A profile as decision tables see it; undefined where its family is not there. */
export function judgedProfile({ base, outputs }: Answers, id: string): JudgedProfile | undefined {
  const data = base.profiles.get(id)?.data;
  const family = data && base.families.get(data.family);
  const output = outputs.get(id);
  return data && family && output && { data, channels: family.data.output.channels, output };
}

/**
 * What a decision table says of a profile, with what the rider plans; what he has not said may be anything.
 * Undefined where the table has faults or there is no such profile.
 */
export function answerTable(
  answers: Answers,
  tableId: string,
  profileId: string,
  planned: Readonly<Record<string, Known>> = {},
): TableAnswer | undefined {
  const entry = answers.base.tables.get(tableId);
  const table = answers.tables.get(tableId)?.table;
  const profile = judgedProfile(answers, profileId);
  if (!entry || !table || !profile) return undefined;
  const known = { ...planned, ...knownOfProfile(entry.data.inputs, profile) };
  return { known, within: evaluateWithin(table, known) };
}

/** The classes of equipment plans are made of, in the order they are listed in. */
export function catalogueOf({ base }: Answers): Catalogue {
  const all = [...base.equipment.values()].sort(byOrder).map(({ id, data }) => ({ id, ...data }));
  return {
    amplifiers: all.filter((one) => one.is === 'amplifier'),
    speakers: all.filter((one) => one.is === 'speaker'),
  };
}

/** What a plan comes to on a profile; undefined where there is no such profile. */
export function reportPlan(answers: Answers, profileId: string, query: PlanQuery): PlanReport | undefined {
  const profile = judgedProfile(answers, profileId);
  const family = answers.base.profiles.get(profileId)?.data.family;
  if (!profile || family === undefined) return undefined;
  const others = (answers.base.profilesOfFamily.get(family) ?? []).flatMap(({ id }) => {
    const other = id === profileId ? undefined : judgedProfile(answers, id);
    return other ? [{ id, profile: other }] : [];
  });
  const choices = { catalogue: catalogueOf(answers), others };
  return planReport(answers.policy, query, { id: profileId, profile }, choices);
}
