/** Everything a content folder comes to, computed once: entries, outputs, answers to plans. */
import {
  type Base,
  type BaseReading,
  byOrder,
  type ContentFiles,
  readBase,
  readingsOfProfile,
} from './base/index.ts';
import { answerPlan, type PlanAnswer } from './decide/index.ts';
import { characterise, groupOutputs, type OutputGroups, type ProfileOutput } from './measure/index.ts';

export interface Answers {
  readonly base: Base;
  /** The computed output of each profile, by profile id. */
  readonly outputs: ReadonlyMap<string, ProfileOutput>;
  /** For each profile id, one answer a plan, in the order of the plans. */
  readonly planAnswers: ReadonlyMap<string, readonly PlanAnswer[]>;
  /** For each family id, which of its profiles put out the same. */
  readonly outputGroups: ReadonlyMap<string, OutputGroups>;
}

export interface AnswersReading {
  readonly answers: Answers;
  readonly findings: BaseReading['findings'];
}

/**
 * Reads a content folder and computes all that follows from it. The findings are those of the reader;
 * the rules of the check add theirs.
 * @throws CannotRun where the folder cannot be read.
 */
export async function readAnswers(content: string | ContentFiles): Promise<AnswersReading> {
  const { base, findings } = await readBase(content);
  return { answers: answersOf(base), findings };
}

/**
 * Computes outputs and plan answers of a Base. Of a Base that differs from a known one in the readings of
 * some profiles only, the rest is taken over.
 */
export function answersOf(
  base: Base,
  known?: { readonly answers: Answers; readonly touched: ReadonlySet<string> },
): Answers {
  const outputs = new Map<string, ProfileOutput>();
  const planAnswers = new Map<string, readonly PlanAnswer[]>();
  const plans = [...base.plans.values()].sort(byOrder);
  for (const profile of base.profiles.values()) {
    const family = base.families.get(profile.data.family);
    if (!family) continue;
    const unchanged = known?.touched.has(profile.id) === false ? known.answers : undefined;
    const same = unchanged?.outputs.get(profile.id);
    if (unchanged && same) {
      outputs.set(profile.id, same);
      planAnswers.set(profile.id, unchanged.planAnswers.get(profile.id) ?? []);
      continue;
    }
    const runs = readingsOfProfile(base, profile.id).map(({ session, readings }) => ({
      session: session.id,
      conditions: session.data,
      readings,
    }));
    const output = characterise(profile.id, runs, {
      ratedLoadOhms: family.data.output.ratedLoadOhms,
      highestStep: family.data.volume.highestStep,
    });
    outputs.set(profile.id, output);
    planAnswers.set(
      profile.id,
      plans.map((plan) =>
        answerPlan({ id: plan.id, data: plan.data }, profile.data, family.data.output.channels, output),
      ),
    );
  }
  const outputGroups = new Map<string, OutputGroups>();
  for (const [family, profiles] of base.profilesOfFamily) {
    const groups = profiles.some((one) => known?.touched.has(one.id) ?? true)
      ? undefined
      : known?.answers.outputGroups.get(family);
    outputGroups.set(family, groups ?? groupOutputs(profiles.flatMap((one) => outputs.get(one.id) ?? [])));
  }
  return Object.freeze({ base, outputs, planAnswers, outputGroups });
}
