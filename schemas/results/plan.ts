/** What `readback plan CODE --json` prints. */
import { z } from 'zod';

const verdict = z.enum(['keep', 'keep-and-correct', 'reflash', 'replace', 'measure-first']);

const valueSchema = z.strictObject({
  value: z.number(),
  unit: z.string().meta({ description: 'V, dB, Hz, A, W and so on; 1 for a number without a unit.' }),
  expandedUncertainty: z.number().min(0).meta({
    description: 'U for 95 % coverage, in the unit of the value; 0 where it is a choice or rating.',
  }),
  bound: z
    .enum(['exact', 'at-most', 'at-least'])
    .meta({ description: 'Whether the value is meant as it stands or as a limit.' }),
});

const lineSchema = z.strictObject({
  id: z.string().meta({ description: 'Stable name of the line, such as gain-target.' }),
  title: z.string(),
  symbol: z.string().meta({ description: 'The symbol of the result.' }),
  formula: z.string().meta({ description: 'What the result is equal to, in the symbols given.' }),
  given: z.array(valueSchema.extend({ symbol: z.string(), name: z.string() })),
  result: valueSchema,
  note: z.string(),
  commonPractice: z.boolean().meta({ description: 'Whether it rests on common practice, with no source.' }),
  cautions: z.array(z.string()).meta({ description: 'Cautions that apply, in words.' }),
  readings: z.array(z.string()),
  sources: z.array(z.string()),
});

export const planResultSchema = z
  .strictObject({
    profile: z.string().meta({ description: 'Profile id.' }),
    family: z.string().meta({ description: 'Family id.' }),
    code: z.string(),
    verdict,
    possible: z
      .array(verdict)
      .meta({ description: 'Verdicts that are possible within uncertainty, the likeliest first.' }),
    sentence: z.string().meta({ description: 'The answer in one sentence, or a few.' }),
    reasons: z.array(
      z.strictObject({
        topic: z.enum(['level', 'bass', 'low-end', 'rear', 'system']),
        outcome: z.enum(['fits', 'correct', 'fails', 'borderline', 'unknown']),
        text: z.string(),
        readings: z.array(z.string()),
      }),
    ),
    rules: z.array(z.string()).meta({ description: 'Rules of the deciding table that may fit.' }),
    settledBy: z
      .array(z.string())
      .meta({ description: 'Columns of that table each of which would settle the verdict, once known.' }),
    suits: z
      .array(z.strictObject({ profile: z.string(), code: z.string(), verdict }))
      .meta({ description: 'Other profiles of the unit that suit the plan, best first.' }),
    changes: z
      .array(
        z.strictObject({
          changes: z.array(z.strictObject({ change: z.string(), to: z.string().nullable() })),
          verdict,
        }),
      )
      .meta({ description: 'The smallest changes that make the plan work; empty where it does.' }),
    stages: z
      .array(z.strictObject({ buy: z.string(), verdict }))
      .meta({ description: 'In which order to buy, with the verdict at each stage.' }),
    sections: z.array(
      z.strictObject({
        id: z.string(),
        lines: z.array(lineSchema),
        remarks: z.array(z.string()),
        filters: z
          .array(
            z.strictObject({
              kind: z.enum(['peaking', 'low-shelf', 'high-shelf', 'high-pass']),
              hz: z.number(),
              gainDb: z.number(),
              q: z.number(),
            }),
          )
          .optional()
          .meta({ description: 'Settings of an equaliser that takes a fixed curve back out.' }),
      }),
    ),
  })
  .meta({ title: 'Plan result', description: 'Output of readback plan CODE --json.' });

export type PlanResult = z.infer<typeof planResultSchema>;
