/** `/api/v1/answers.json`: of every profile the verdicts and headline values alone, to be compared over time. */
import { z } from 'zod';
import { characteristicNames } from '../characteristics.ts';

const verdict = z.enum(['keep', 'keep-and-correct', 'reflash', 'replace', 'measure-first']);

const headline = z
  .tuple([
    z.number().meta({ description: 'Value, in the unit of the characteristic.' }),
    z.number().min(0).meta({ description: 'U for 95 % coverage, in the same unit.' }),
    z.enum(['exact', 'at-most', 'at-least']),
  ])
  .meta({ description: 'Value, expanded uncertainty, and whether it is a bound.' });

export const answersDocumentSchema = z
  .strictObject({
    units: z
      .partialRecord(z.enum(characteristicNames), z.string())
      .meta({ description: 'The unit of each characteristic.' }),
    profiles: z
      .record(
        z.string(),
        z.strictObject({
          code: z.string(),
          verdicts: z.record(z.string(), verdict).meta({ description: 'By plan id.' }),
          values: z
            .partialRecord(z.enum(characteristicNames), headline)
            .meta({ description: 'By name of the characteristic.' }),
        }),
      )
      .meta({ description: 'By profile id.' }),
  })
  .meta({ title: 'Answers', description: 'Verdicts and headline values of every profile.' });

export type AnswersDocument = z.infer<typeof answersDocumentSchema>;
export type ProfileAnswers = AnswersDocument['profiles'][string];
