/**
 * Marks that stand in finished pages for what is known only when all of them are written: the version of the
 * site and the date of its content. `src/publish/stamp-pages.ts` puts the words in their place.
 */
export const stamps = {
  version: '@@site-version@@',
  /** ISO 8601. */
  date: '@@content-date@@',
  dateInWords: '@@content-date-in-words@@',
} as const;

/** The mark for the digest of a file of the site, so that an address can say which content it wants. */
export function digestStamp(path: string): string {
  return `@@digest-of:${path}@@`;
}
