/** The sites that are built once for all browser tests: the demo, and two editions of it in English. */
import type { BuiltSite } from '../../src/publish/build.ts';
import { ContentCopy } from '../content-copy.ts';

/** A base path other than `/`, so that a link that forgets it is broken. */
export const basePath = '/help/';

/** A site, with the folder it lies in. */
export interface SiteInFolder extends BuiltSite {
  readonly folder: string;
}

/** What differs between the two editions, as pages and words. */
export const editions = {
  removed: 'profiles/brasslight/i1l0-s5g/',
  edited: 'profiles/brasslight/g60d-2zs/',
  newWords: 'Words of the second edition.',
  dates: { first: '2026-03-01', second: '2026-04-02' },
} as const;

/** What the first edition is built from: the demo in English alone, with a profile that was renamed. */
export async function firstEditionContent(): Promise<ContentCopy> {
  const content = await ContentCopy.inEnglish();
  const renamed = 'code: "8B0S-I5Z"\nformerly: [brasslight/8bos-i5z]';
  await content.edit('profiles/brasslight/8b0s-i5z.yaml', 'code: "8B0S-I5Z"', renamed);
  return content;
}
