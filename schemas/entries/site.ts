/** site.yaml: whose help section this is. */
import { z } from 'zod';
import { languageTag, line, paragraph } from '../common.ts';

const hexColour = z.string().regex(/^#[0-9a-f]{6}$/i, { error: 'write the colour as "#rrggbb", in quotes' });
const webAddress = z.url({ protocol: /^https$/, error: 'write a whole address that begins with https://' });

/** An address with places for a file and its line; the host stands before both. */
const fileAddress = z
  .string()
  .max(500)
  .regex(/^https:\/\/(?=.*\{file\})[^\s/{}\\]+\/(?:[^\s{}\\]|\{file\}|\{line\})*$/, {
    error:
      'begin with https://, and write {file} where the path of the entry’s file belongs and, if you like, {line} for its line; no other braces and no spaces',
  })
  .refine((text) => URL.canParse(text.replaceAll(/[{}]/g, '')), {
    error: 'write a whole address, such as https://git.example/help/edit/main/content/{file}#L{line}',
  });

export const siteSchema = z
  .strictObject({
    name: line.meta({ description: 'The shop’s name.' }),
    tagline: line.meta({ description: 'One line under the name.' }),
    about: paragraph.meta({ description: 'A few sentences for the start page.' }),
    notice: paragraph.optional().meta({ description: 'A line shown on every page, such as a warning.' }),
    contact: z
      .strictObject({
        phone: line.optional().meta({ description: 'As it is to be dialled.' }),
        email: z.email().optional().meta({ description: 'Where questions go.' }),
        hours: line.optional().meta({ description: 'When someone answers.' }),
      })
      .meta({ description: 'How to reach the shop.' }),
    address: webAddress.meta({
      description: 'The address the site is published at; the base path of a build may be left out of it.',
    }),
    repository: webAddress.optional().meta({ description: 'Where the entries are kept, for corrections.' }),
    correctAt: fileAddress.optional().meta({
      description:
        'Where the file of an entry is changed or viewed there: an address with {file} for its path below the content folder and {line} for the line, in quotes, such as "https://git.example/help/edit/main/content/{file}#L{line}". Absent: corrections lead to the repository, else to the e-mail address.',
    }),
    licence: z
      .strictObject({
        name: z
          .string()
          .regex(/^[A-Za-z0-9.+-]+$/, { error: 'write the short name of the licence, such as CC-BY-4.0' })
          .meta({ description: 'Its short name (SPDX), such as CC-BY-4.0.' }),
        title: line.meta({ description: 'Its whole name.' }),
        address: webAddress.meta({ description: 'Where it can be read.' }),
      })
      .optional()
      .meta({ description: 'What others may do with the readings and values of this site.' }),
    languages: z
      .array(languageTag)
      .min(1)
      .refine((tags) => new Set(tags).size === tags.length, { error: 'name each language once' })
      .optional()
      .meta({
        description:
          'The languages the site speaks to riders in, such as [en, es]. The first is that of the entries, at the address of the site; each further one has a whole site of its own below its tag (/es/). English and Spanish are there; texts of others, or other texts, stand in words/. Default: [en].',
      }),
    colours: z
      .strictObject({
        accent: hexColour.meta({ description: 'Links and the code field, on light ground.' }),
        accentDark: hexColour.meta({ description: 'The same on dark ground.' }),
      })
      .meta({ description: 'The shop’s colours, as "#rrggbb".' }),
  })
  .meta({ title: 'Site', description: 'site.yaml in the content folder.' });

export type Site = z.infer<typeof siteSchema>;
