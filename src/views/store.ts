/** The hand-over from the command that publishes to the pages that Astro renders. */
import type { Answers } from '../answers.ts';
import type { PageViews, ViewOf } from './page-views.ts';

/**
 * Astro loads pages through its own module runner, or bundled, so a module variable set by the caller is not the one a
 * page sees. The global symbol registry is the one thing both share.
 */
const key = Symbol.for('readback.pages');

/** What is handed over; the views are made by the caller’s modules, so that pages are free of all that makes them. */
export interface Handed {
  readonly answers: Answers;
  readonly views: PageViews;
}

type Store = { [key]?: Handed };

/** What was last handed over; undefined where no command has done so. */
export function inStore(): Handed | undefined {
  return (globalThis as Store)[key];
}

/** Hands over; undefined takes back. */
export function putInStore(handed: Handed | undefined): void {
  if (handed) (globalThis as Store)[key] = handed;
  else delete (globalThis as Store)[key];
}

function views(): PageViews {
  const handed = inStore();
  if (!handed) throw new Error('Pages are made by `readback build`, `serve` and `dev`, not by Astro alone.');
  return handed.views;
}

/** The ids of the pages of a kind. */
export async function idsOf(kind: keyof PageViews): Promise<readonly string[]> {
  return views()[kind].ids();
}

/**
 * What a page shows.
 * @throws where there is no such page: the ids are those of `idsOf`.
 */
export async function viewOf<Kind extends keyof PageViews>(
  kind: Kind,
  id: string = kind,
): Promise<ViewOf<Kind>> {
  const view = await views()[kind].get(id);
  if (view === undefined) throw new Error(`There is no view “${id}” of the kind “${kind}”.`);
  return view as ViewOf<Kind>;
}
