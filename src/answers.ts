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

/** Computes outputs and plan answers of a Base. */
export function answersOf(base: Base): Answers {
  const outputs = new Map<string, ProfileOutput>();
  const planAnswers = new Map<string, readonly PlanAnswer[]>();
  const plans = [...base.plans.values()].sort(byOrder);
  for (const profile of base.profiles.values()) {
    const family = base.families.get(profile.data.family);
    if (!family) continue;
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
    outputGroups.set(family, groupOutputs(profiles.flatMap((one) => outputs.get(one.id) ?? [])));
  }
  return Object.freeze({ base, outputs, planAnswers, outputGroups });
}
