/** An exception: a finding of the check that is known, has a reason, and is set aside until a day. */
import { z } from 'zod';
import { date, line, paragraph, reference, slug } from '../common.ts';

export const exceptionSchema = z
  .strictObject({
    rule: slug.meta({
      description: 'The id of the rule it is an exception to, as the finding names it: “same-output”.',
    }),
    file: line.meta({
      description:
        'The file whose finding is set aside: its path below the content folder, with forward slashes.',
    }),
    about: line.optional().meta({
      description:
        'A text of the line the finding points at, such as a row of a sheet or the value found fault with; absent: every finding of the rule in that file.',
    }),
    reason: paragraph.meta({ description: 'Why it is right as it is, or cannot be put right yet.' }),
    by: line.meta({ description: 'Who decided, by role, never by name.' }),
    until: date.meta({
      description: 'The last day it holds. From the next day on the finding is shown again.',
    }),
    sources: z.array(reference('sources/')).optional().meta({
      description: 'What the reason rests on, where there is something: ids of entries in sources/.',
    }),
  })
  .meta({
    title: 'Exception',
    description: 'A finding set aside with a reason until a day: one file in exceptions/.',
  });

export type Exception = z.infer<typeof exceptionSchema>;
