/** What `readback table decide FILE --json` prints. */
import { z } from 'zod';

const value: z.ZodType = z.json().meta({
  description:
    'A number, text, true or false, or null; of DMN files also a list, or an object by name. Dates are texts, ISO 8601.',
});
const outputs = z.union([z.record(z.string(), value), z.array(z.record(z.string(), value)), z.null()]).meta({
  description:
    'The answer by output name; where the hit policy gives several (rule order, output order, collect), a list of such; null where no rule fits.',
});
const rules = z.array(z.string()).meta({
  description:
    'The rules the answer comes from, in the order of the table: their ids; of DMN files the annotation “rule id”, else the XML id, else the number counted from 1.',
});
const broken = z
  .string()
  .nullable()
  .meta({ description: 'Why there is no answer where the rules that fit break the hit policy; else null.' });

export const tableDecideResultSchema = z
  .strictObject({
    table: z.string().meta({ description: 'The entry, or the decision of a DMN file, that was decided.' }),
    outputs,
    rules,
    borderline: z.boolean().meta({
      description: 'Whether more than one answer is possible within the uncertainty of the values given.',
    }),
    broken,
    possible: z.array(z.strictObject({ outputs, rules, broken })).meta({
      description: 'Every answer that is possible within the uncertainty, that of the values as given first.',
    }),
    settledBy: z.array(z.string()).meta({
      description:
        'Inputs each of which, once known exactly, leaves one answer, whatever it turns out to be.',
    }),
    required: z
      .array(z.strictObject({ decision: z.string(), value, rules }))
      .meta({ description: 'Decisions it rests on, in the order they were decided.' }),
    notes: z.array(z.string()).meta({ description: 'What the answer rests on or leaves out.' }),
  })
  .meta({ title: 'Table decide result', description: 'Output of readback table decide FILE --json.' });

export type TableDecideResult = z.infer<typeof tableDecideResultSchema>;
export type TableOutputs = z.infer<typeof outputs>;
