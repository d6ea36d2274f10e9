/** Fields that several documents of the published API share. */
import { z } from 'zod';

/** The page for people: an absolute address. */
export const page = z.url().meta({ description: 'Address of the page for people.' });

/** Another document of the API, relative to the one it stands in (RFC 3986, section 4.2). */
export const document = z
  .string()
  .min(1)
  .meta({ description: 'Address of another document, relative to the address of this one.' });

/** What others may do with the data. */
export const licence = z
  .strictObject({ name: z.string(), title: z.string(), address: z.url() })
  .nullable()
  .meta({ description: 'What others may do with the data; null where the shop does not say.' });
