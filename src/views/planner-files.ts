/** The files that the planner fetches: one for every plan, one for each unit, one for each profile. */
import type { Answers } from '../answers.ts';
import { plannerDataPath, plannerProfilePath, plannerUnitPath } from './paths.ts';
import { plannerData, plannerProfile, plannerUnit } from './planner-data.ts';
import type { PublishedFile } from './published-file.ts';

/** Each file, made when its text is asked for. */
export function plannerFiles(answers: Answers): PublishedFile[] {
  return [
    { path: plannerDataPath, text: () => JSON.stringify(plannerData(answers)) },
    ...[...answers.base.families.keys()].map((family) => ({
      path: plannerUnitPath(family),
      text: () => JSON.stringify(plannerUnit(answers, family)),
    })),
    ...[...answers.outputs.keys()].map((profile) => ({
      path: plannerProfilePath(profile),
      text: () => JSON.stringify(plannerProfile(answers, profile)),
      profile,
    })),
  ];
}
