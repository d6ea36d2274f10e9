/** What the build tells the worker and what pages and worker tell each other; shared by all three, and pure. */

/** What the worker is made with: everything it has to know without asking the network. */
export interface OfflinePlan {
  /** A digest of the whole site; every page carries the same in `data-version`. */
  readonly version: string;
  /** Kept from the first visit on. */
  readonly precache: readonly PrecacheFile[];
  /** Every family with a digest of its list, which changes with any page of the family. */
  readonly families: Readonly<Record<string, string>>;
  /** Pages that belong to no family and are not precached, as paths below the base path. */
  readonly otherPages: readonly string[];
}

export interface PrecacheFile {
  /** Absolute, base path included. */
  readonly url: string;
  /** A digest of the content; null where the name itself carries one. */
  readonly revision: string | null;
}

/** `units/<family>/offline.json`: what is kept of a family once its page has been visited. */
export interface FamilyList {
  /** Fetched in the background: pages, and what the planner needs of them. The revision does not change with the date of the build alone. */
  readonly pages: readonly (readonly [path: string, revision: string])[];
  /** Further pages of the family: kept where visited. */
  readonly others: readonly string[];
}

/** What a page tells the worker. */
export type PageMessage =
  | { readonly kind: 'visited'; readonly address: string }
  /** Asks for the version of the worker, to be sent through the port that comes along. */
  | { readonly kind: 'version' }
  | { readonly kind: 'take-over' };

/** Why a page comes from what is kept: nothing came, not in time, or (the offline page) it is not kept. */
export type KeptReason = 'no-network' | 'slow' | 'missing';

/** Where the list of a family is published, below the base path. */
export function familyListPath(family: string): string {
  return `units/${family}/offline.json`;
}

/** A file that the planner needs of a unit or a profile, or a unit’s codes: kept with the family, as its pages are. */
export function isFamilyFile(path: string): boolean {
  return /^(?:units|profiles)\/.+\/planner\.json$|^lookup\/unit-[^/]+\.json$/.test(path);
}

/** A part of a list of codes that is not sent whole, or some of its sentences. */
export function isLookupFile(path: string): boolean {
  return path.startsWith('lookup/');
}

/** The family a page belongs to: `brasslight` for `units/brasslight/` and `profiles/brasslight/g60d-2zs/`. */
export function familyOf(path: string): string | undefined {
  const [, folder, file] = /^(?:(?:units|profiles)\/([^/]+)\/|lookup\/unit-([^/]+)\.json$)/.exec(path) ?? [];
  return folder ?? file;
}

/**
 * The page an address leads to, as a path below `scope`: without what follows `?` or `#`, with the slash a
 * typed address may lack. Undefined for other sites and for files that are no pages.
 */
export function pagePath(address: string, scope: string): string | undefined {
  const { origin, pathname } = new URL(address);
  const whole = `${origin}${pathname}`;
  if (!whole.startsWith(scope)) return undefined;
  const path = whole.slice(scope.length).replace(/(^|\/)index\.html$/, '$1');
  if (path === '' || path.endsWith('/') || path.endsWith('.html')) return path;
  return /\.[^/]*$/.test(path) ? undefined : `${path}/`;
}

/** The page with the mark that its script makes the banner from. */
export function markKept(html: string, reason: KeptReason): string {
  return html.replace(/<html\b/, `<html data-kept="${reason}"`);
}
