/** A tuning profile: one output behaviour a head unit can be set to, known by its code. */
import { z } from 'zod';
import { fieldNotes, line, paragraph, reference, sources } from '../common.ts';

/** A code as displayed. Must be a quoted string: unquoted, `0x7E8` is a number and `1.10` is 1.1. */
export const code = z.string().trim().min(2).max(40).register(fieldNotes, { inQuotes: true });

const formerId = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*\/[a-z0-9]+(-[a-z0-9]+)*$/, {
  error: 'write the id as family/profile, such as "brasslight/8b0s-i5z"',
});

export const profileSchema = z
  .strictObject({
    family: reference('families/'),
    code: code.meta({ description: 'The code exactly as the screen shows it, in quotes.' }),
    otherSpellings: z
      .array(code)
      .default([])
      .meta({ description: 'Other ways the same code is written, in quotes: on invoices, in file names.' }),
    origin: z.enum(['factory', 'dealer-update', 'third-party']).meta({ description: 'Who put it there.' }),
    system: z.enum(['amplified', 'unamplified']).meta({
      description:
        'What it is meant for: amplified where a factory amplifier follows the unit, unamplified where the unit drives the speakers.',
    }),
    soldAs: z.array(line).default([]).meta({ description: 'Names it is sold or spoken of under.' }),
    sameAs: reference('profiles/')
      .optional()
      .meta({ description: 'The profile it is said to be electrically the same as.' }),
    tellApart: z
      .array(
        z.strictObject({
          from: reference('profiles/'),
          hint: line.meta({ description: 'What to look at again, such as "third character: eight, not B".' }),
        }),
      )
      .default([])
      .meta({ description: 'Profiles whose code is easily taken for this one, and how to tell.' }),
    formerly: z
      .array(formerId)
      .default([])
      .meta({ description: 'Ids this profile had before it was renamed: their addresses lead here.' }),
    about: paragraph.meta({ description: 'What a rider should know of it, in a sentence or two.' }),
    sources,
  })
  .meta({ title: 'Profile', description: 'A tuning profile: one file in profiles/<family>/.' });

export type Profile = z.infer<typeof profileSchema>;
