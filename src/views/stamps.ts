/**
 * Marks that stand in finished pages for what is known only when all of them are written: the version of the
 * site, the date of its content, what the page may load. `src/publish/stamp-pages.ts` puts the words in their place.
 */

/**
 * A word that no entry can hold, because it is another in each run: what an entry says is never taken for a
 * mark. Through the global symbol registry, which is all that pages and publisher share (see store.ts).
 */
const key = Symbol.for('readback.stamp-word');
const shared = globalThis as { [key]?: string };
shared[key] ??= crypto.randomUUID();
const word = shared[key];

export const stamps = {
  version: `@@${word}:site-version@@`,
  /** ISO 8601. */
  date: `@@${word}:content-date@@`,
  dateInWords: `@@${word}:content-date-in-words@@`,
  /** The Content-Security-Policy of the page. */
  contentPolicy: `@@${word}:content-policy@@`,
} as const;

/** The mark for the digest of a file of the site, so that an address can say which content it wants. */
export function digestStamp(path: string): string {
  return `@@${word}:digest-of:${path}@@`;
}

/** Finds every mark; all of it is the first group. */
export const anyMark = new RegExp(`(@@${word}:[^@]+@@)`);

/** Reads the mark of a digest: the path is the first group. */
export const digestMark = new RegExp(`^@@${word}:digest-of:([^@]+)@@$`);
