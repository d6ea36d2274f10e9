/** What phones keep of a site: worked out from the list of its files. */
import { createHash } from 'node:crypto';
import { codesPath, lookupFolder, plannerPath, tablesPath, unitsPath } from '../views/paths.ts';
import {
  type FamilyList,
  familyOf,
  isFamilyFile,
  type OfflinePlan,
  type PrecacheFile,
} from '../worker/plan.ts';
import type { SiteFile, StampedSite } from './stamp-pages.ts';

/** The page shown where there is neither network nor a kept page. */
const offlinePath = 'offline/';

/** Kept from the first visit on; what these pages need lies at the top of the site and in its assets. */
const firstPages: readonly string[] = ['', unitsPath, codesPath, plannerPath, offlinePath];
const firstFiles = /^(?:assets\/)?[^/]+\.(?:js|css|json|svg|webmanifest)$/;

/** A page beyond this is left to the network. */
export const mostBytesOfAPage = 2_000_000;

/** Bounds of what one family may take on a phone. */
export const mostFamilyBytes = 12_000_000;
export const mostFamilyPages = 400;

export interface OfflineFiles {
  readonly plan: OfflinePlan;
  readonly lists: ReadonlyMap<string, FamilyList>;
  readonly sizes: OfflineSizes;
}

/** Bytes as they lie on the phone; over the network they are compressed. */
export interface OfflineSizes {
  readonly precache: number;
  /** Of the largest family. */
  readonly family: number;
  /** Pages too large to be kept, and pages beyond a family's bounds. */
  readonly leftOut: readonly string[];
}

/** The plan for the worker and the list of each family; the same files give the same, in the same order. */
export function offlineFiles(
  { version, files }: Pick<StampedSite, 'version' | 'files'>,
  base: string,
): OfflineFiles {
  const pages = new Map(
    [...files]
      .filter(({ path }) => path.endsWith('.html') && path !== '404.html')
      .sort((a, b) => (a.path < b.path ? -1 : 1))
      .map((file) => [file.path.replace(/(^|\/)index\.html$/, '$1'), file]),
  );
  const first = firstPages.flatMap((path) => {
    const file = pages.get(path);
    return file ? [{ path, file }] : [];
  });
  const kept = first.filter(({ file }) => file.bytes <= mostBytesOfAPage);
  const needed = files.filter(({ path }) => firstFiles.test(path));
  const precache: PrecacheFile[] = [
    ...kept.map(({ path, file }) => ({ url: `${base}${path}`, revision: file.digest })),
    ...needed.map(({ path, digest }) => ({
      url: `${base}${path}`,
      revision: path.startsWith('assets/') ? null : digest,
    })),
  ].sort((a, b) => (a.url < b.url ? -1 : 1));

  const leftOut = first.flatMap(({ path, file }) => (file.bytes > mostBytesOfAPage ? [path] : []));
  const lists = new Map<string, FamilyList>();
  let family = 0;
  const shared = [...pages].filter(([path]) => path.startsWith(tablesPath));
  const familyFiles = files
    .filter(({ path }) => isFamilyFile(path))
    .map((file) => [file.path, file] as const);
  for (const [id, own] of byFamily(new Map([...pages, ...familyFiles]))) {
    const { list, bytes, beyond } = familyList(own, shared);
    lists.set(id, list);
    leftOut.push(...beyond);
    family = Math.max(family, bytes);
  }
  return {
    plan: {
      version,
      precache,
      families: Object.fromEntries([...lists].map(([id, list]) => [id, digestOfList(list)])),
      otherPages: [...pages.keys()].filter(
        (path) => familyOf(path) === undefined && !kept.some((one) => one.path === path),
      ),
    },
    lists,
    sizes: {
      precache: [...kept.map(({ file }) => file), ...needed].reduce((sum, { bytes }) => sum + bytes, 0),
      family,
      leftOut,
    },
  };
}

/** Files by family: what the planner needs and the unit's pages first, then its profiles, then their readings. */
function byFamily(pages: ReadonlyMap<string, SiteFile>): Map<string, [path: string, file: SiteFile][]> {
  const families = new Map<string, [path: string, file: SiteFile][]>();
  for (const [path, file] of pages) {
    const family = familyOf(path);
    if (family !== undefined) families.set(family, [...(families.get(family) ?? []), [path, file]]);
  }
  for (const own of families.values()) own.sort(([a], [b]) => rank(a) - rank(b));
  // A family is one that has a page of its own.
  return new Map([...families].filter(([id]) => pages.has(`${unitsPath}${id}/`)));
}

function rank(path: string): number {
  if (path.startsWith(unitsPath) || path.startsWith(lookupFolder)) return 0;
  return isProfile(path) || isFamilyFile(path) ? 1 : 2;
}

/** A profile's own page, not the long tables below it. */
function isProfile(path: string): boolean {
  return /^profiles\/[^/]+\/[^/]+\/$/.test(path);
}

/** The pages of a family within its bounds, and those its profiles’ answers lead to. */
function familyList(
  own: readonly (readonly [path: string, file: SiteFile])[],
  shared: readonly (readonly [path: string, file: SiteFile])[],
): {
  list: FamilyList;
  bytes: number;
  beyond: string[];
} {
  const pages: [path: string, revision: string][] = [];
  const others: string[] = [];
  const beyond: string[] = [];
  let bytes = 0;
  const fits = (file: SiteFile): boolean =>
    pages.length < mostFamilyPages && bytes + file.bytes <= mostFamilyBytes;
  const keep = (path: string, file: SiteFile): void => {
    pages.push([path, file.revision]);
    bytes += file.bytes;
  };
  for (const [path, file] of own) {
    const wanted = rank(path) < 2;
    if (wanted && fits(file)) keep(path, file);
    else {
      others.push(path);
      if (wanted) beyond.push(path);
    }
  }
  for (const [path, file] of shared) if (fits(file)) keep(path, file);
  return { list: { pages, others }, bytes, beyond };
}

function digestOfList(list: FamilyList): string {
  return createHash('sha256').update(JSON.stringify(list)).digest('hex').slice(0, 12);
}
