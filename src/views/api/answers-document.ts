/** Of every profile the verdicts and headline values: what is compared to tell what has changed. */
import type { AnswersDocument, ProfileAnswers } from '../../../schemas/api/answers.ts';
import { characteristicUnits } from '../../../schemas/index.ts';
import type { Answers } from '../../answers.ts';

export function answersDocument(answers: Answers): AnswersDocument {
  const profiles: Record<string, ProfileAnswers> = {};
  for (const [id, { data }] of answers.base.profiles) {
    const output = answers.outputs.get(id);
    if (!output) continue;
    profiles[id] = {
      code: data.code,
      verdicts: Object.fromEntries(
        (answers.planAnswers.get(id) ?? []).map(({ plan, verdict }) => [plan, verdict]),
      ),
      values: Object.fromEntries(
        output.characteristics.map(({ name, value, expandedUncertainty, bound }) => [
          name,
          [value, expandedUncertainty, bound],
        ]),
      ),
    };
  }
  return { units: { ...characteristicUnits }, profiles };
}
