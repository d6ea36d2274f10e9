/** The kinds of entry, the folder each is kept in, and the schema each is held to. */
import type { z } from 'zod';
import { equipmentSchema } from './entries/equipment.ts';
import { exceptionSchema } from './entries/exception.ts';
import { familySchema } from './entries/family.ts';
import { guideSchema } from './entries/guide.ts';
import { planSchema } from './entries/plan.ts';
import { profileSchema } from './entries/profile.ts';
import { sequenceSchema } from './entries/sequence.ts';
import { sessionSchema } from './entries/session.ts';
import { siteSchema } from './entries/site.ts';
import { sourceSchema } from './entries/source.ts';
import { statementSchema } from './entries/statement.ts';
import { tableSchema } from './entries/table.ts';
import { wordsSchema } from './entries/words.ts';

export const entrySchemas = {
  site: siteSchema,
  families: familySchema,
  sequences: sequenceSchema,
  profiles: profileSchema,
  outputs: sessionSchema,
  sources: sourceSchema,
  statements: statementSchema,
  guides: guideSchema,
  plans: planSchema,
  tables: tableSchema,
  equipment: equipmentSchema,
  exceptions: exceptionSchema,
  words: wordsSchema,
} as const;

/** A kind of entry, named by the folder it is kept in (`site` is the single file site.yaml). */
export type Kind = keyof typeof entrySchemas;

/** The validated data of an entry of kind K. */
export type EntryData<K extends Kind> = z.output<(typeof entrySchemas)[K]>;

/** One noun for an entry of each kind, for messages. */
export const kindNouns: Readonly<Record<Kind, string>> = {
  site: 'site file',
  families: 'family',
  sequences: 'sequence',
  profiles: 'profile',
  outputs: 'bench session',
  sources: 'source',
  statements: 'statement',
  guides: 'guide',
  plans: 'plan',
  tables: 'decision table',
  equipment: 'class of equipment',
  exceptions: 'exception',
  words: 'list of words',
};

/** Kinds written as Markdown with front matter; the others are YAML. */
export const markdownKinds: readonly Kind[] = ['families', 'guides'];
