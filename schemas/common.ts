/** Fields that several kinds of entry share, each defined once. */
import { z } from 'zod';

/** What is known of fields beside their schemas; a field described anew keeps it. */
export const fieldNotes = z.registry<{
  /** The folder of the entries it names, such as `sources`. */
  readonly entriesIn?: string;
  /** Whether it stands in quotes even where YAML would not need them. */
  readonly inQuotes?: boolean;
}>();

/** Lower-case words joined by hyphens: what file names and ids are made of. */
export const slug = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, {
  error: 'use lower-case letters, digits and single hyphens, such as "front-left"',
});

/** A line of plain text that is not empty. */
export const line = z.string().trim().min(1, { error: 'this text is empty' }).max(300);

/** A paragraph of plain text. */
export const paragraph = z.string().trim().min(1, { error: 'this text is empty' }).max(2000);

/** How a date is written, in words. */
export const dateForm = 'year-month-day, such as 2026-03-14';

/** A calendar date, ISO 8601: `2026-03-14`. */
export const date = z.iso.date({ error: `write ${dateForm}` });

/** A language, as IETF BCP 47 names it: `es`, `pt-BR`. */
export const languageTag = z.string().regex(/^[a-z]{2,3}(-[A-Z][a-z]{3})?(-[A-Z]{2})?$/, {
  error: 'write the short name of the language, such as es, or pt-BR',
});

/** A model year. */
export const year = z.int().min(1980).max(2100);

/** A frequency in hertz that an audio bench can produce. */
export const hz = z.number().min(1).max(200_000);

/** An entry of another kind, named by its id: its path inside that kind's folder, without ending. */
export function reference(kind: string): z.ZodString {
  return z
    .string()
    .min(1)
    .register(fieldNotes, { entriesIn: kind.replace('/', '') })
    .meta({ description: `The id of an entry in ${kind}: its path there without the file ending.` });
}

/** The sources that a whole entry rests on: at least one. */
export const sources = z
  .array(reference('sources/'))
  .min(1, { error: 'name at least one source' })
  .meta({ description: 'Where the facts of this entry come from: ids of entries in sources/.' });

/** The four speaker outputs of a head unit: front left, front right, rear left, rear right. */
export const channels = ['FL', 'FR', 'RL', 'RR'] as const;
export const channel = z.enum(channels);
export type Channel = z.infer<typeof channel>;

/** The cautions whose full wording the site prints; an entry picks those that apply. */
export const cautionIds = [
  'parked',
  'engine-off-indoors',
  'look-only',
  'battery-drain',
  'bridged-outputs',
  'disconnect-battery',
  'fuse',
  'hearing',
] as const;
export const caution = z.enum(cautionIds);
export type CautionId = z.infer<typeof caution>;
