/** The hand-over from the command that publishes to the pages that Astro renders. */
import type { Handed, PageParts, PageViews, ViewOf } from './page-views.ts';

/**
 * Astro loads pages through its own module runner, or bundled, so a module variable set by the caller is not the one a
 * page sees. The global symbol registry is the one thing both share.
 */
const key = Symbol.for('readback.pages');

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

function handed(): Handed {
  const found = inStore();
  if (!found) throw new Error('Pages are made by `readback build`, `serve` and `dev`, not by Astro alone.');
  return found;
}

/** What components ask for in the midst of a page. */
export function partsOfPages(): PageParts {
  return handed().parts;
}

/** The ids of the pages of a kind. */
export async function idsOf(kind: keyof PageViews): Promise<readonly string[]> {
  return handed().views[kind].ids();
}

/**
 * What a page shows.
 * @throws where there is no such page: the ids are those of `idsOf`.
 */
export async function viewOf<Kind extends keyof PageViews>(
  kind: Kind,
  id: string = kind,
): Promise<ViewOf<Kind>> {
  const view = await handed().views[kind].get(id);
  if (view === undefined) throw new Error(`There is no view “${id}” of the kind “${kind}”.`);
  return view as ViewOf<Kind>;
}
