/** Whether a newer version of the site is there than the page that is open. */

export interface Versions {
  /** Of the page that is open. */
  readonly page: string;
  /** Of the worker that waits to take over, where one does. */
  readonly waiting: string | undefined;
  /** Of the worker at work. */
  readonly active: string | undefined;
  /** The page comes from what is kept. */
  readonly isKept: boolean;
  /** The worker at work took over while the page was open. */
  readonly hasChanged: boolean;
}

/**
 * A page from the network may be newer than the worker at work, which has yet to hear of its version; so the
 * worker's counts only for a page it kept itself, and where it came after the page.
 */
export function isNewerThere({ page, waiting, active, isKept, hasChanged }: Versions): boolean {
  if (waiting !== undefined) return waiting !== page;
  return active !== undefined && active !== page && (isKept || hasChanged);
}
