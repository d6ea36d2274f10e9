/** The families a rider has visited: their pages are fetched in the background and kept up with the site. */
import { CacheExpiration } from 'workbox-expiration';
import { bounds } from './kept-pages.ts';
import { type FamilyList, familyListPath, familyOf, isFamilyFile, pagePath } from './plan.ts';
import { keptFamilies, pageStore, plan, scope } from './scope.ts';

/** A rider has one machine, a workshop a few; beyond this the family kept longest goes. */
const mostFamilies = 6;

/** Pages fetched at a time, so that what the rider opens meanwhile is not held up. */
const atATime = 2;

/** Which content a kept page was, or for which plan a list was worked through. */
const revisionHeader = 'x-readback-revision';

const underWay = new Map<string, Promise<void>>();

/** Keeps all listed pages of a family; does nothing for those already kept in the same revision. */
export function keepFamily(family: string): Promise<void> {
  const running = underWay.get(family);
  if (running) return running;
  // Without network the rest is fetched at the next visit.
  const work = fetchFamily(family)
    .catch(() => undefined)
    .finally(() => underWay.delete(family));
  underWay.set(family, work);
  return work;
}

/** Brings the kept families up to this version of the site where that has not been done yet. */
export async function renewFamilies(): Promise<void> {
  for (const family of await keptFamilies()) {
    if (family === '') continue;
    const list = await caches.match(listAddress(family), { cacheName: pageStore(family) });
    if (list?.headers.get(revisionHeader) !== plan.families[family]) await keepFamily(family);
  }
}

/** Drops what this version of the site no longer has; needs no network. */
export async function dropRemoved(): Promise<void> {
  for (const family of await keptFamilies()) {
    if (family === '') await keepOnly(family, new Set(plan.otherPages));
    else if (!(family in plan.families)) await dropFamily(family);
  }
}

async function fetchFamily(family: string): Promise<void> {
  const response = await fetch(listAddress(family), { cache: 'no-cache', priority: 'low' });
  if (response.status === 404 || response.status === 410) return dropFamily(family);
  if (!response.ok) return;
  const text = await response.text();
  const { pages, others } = JSON.parse(text) as FamilyList;
  await makeRoomFor(family);
  await keepOnly(family, new Set([...pages.map(([path]) => path), ...others]));

  const own = await keptStore(family);
  // Decision tables belong to no family: they are looked for among the other pages.
  const shared = await keptStore(undefined);
  const queue = [...pages];
  const fetchNext = async (): Promise<void> => {
    for (let page = queue.shift(); page; page = queue.shift()) {
      const [path, revision] = page;
      const { store, expiration } = familyOf(path) === family ? own : shared;
      const address = `${scope}${path}`;
      if (isGood(await store.match(address), revision)) continue;
      const got = await fetch(address, { cache: 'no-cache', priority: 'low' });
      if (!got.ok) continue;
      await store.put(address, await withRevision(got, revision));
      await expiration.updateTimestamp(address);
    }
  };
  await Promise.all(Array.from({ length: atATime }, fetchNext));
  await Promise.all([own.expiration.expireEntries(), shared.expiration.expireEntries()]);
  // Last, as a sign that the whole family is kept.
  const done = new Response(text, { headers: { [revisionHeader]: plan.families[family] ?? '' } });
  await own.store.put(listAddress(family), done);
}

async function keptStore(family: string | undefined): Promise<{ store: Cache; expiration: CacheExpiration }> {
  const name = pageStore(family);
  return { store: await caches.open(name), expiration: new CacheExpiration(name, bounds) };
}

/** Whether a kept page has the content wanted, and half its time still before it. */
function isGood(kept: Response | undefined, revision: string): boolean {
  if (kept?.headers.get(revisionHeader) !== revision) return false;
  const date = Date.parse(kept.headers.get('date') ?? '');
  return Number.isNaN(date) || Date.now() - date < (bounds.maxAgeSeconds * 1000) / 2;
}

async function withRevision(response: Response, revision: string): Promise<Response> {
  const headers = new Headers(response.headers);
  for (const name of ['content-encoding', 'content-length']) headers.delete(name);
  headers.set(revisionHeader, revision);
  return new Response(await response.blob(), { headers });
}

async function keepOnly(family: string, paths: ReadonlySet<string>): Promise<void> {
  const store = await caches.open(pageStore(family));
  for (const request of await store.keys()) {
    const path = keptPath(request.url);
    if (path !== undefined && !paths.has(path)) await store.delete(request);
  }
}

/** The path of a kept page, or of what the planner or the lookup needs; undefined for the list itself. */
function keptPath(address: string): string | undefined {
  const path = address.slice(scope.length);
  return isFamilyFile(path) ? path : pagePath(address, scope);
}

async function makeRoomFor(family: string): Promise<void> {
  const others = (await keptFamilies()).filter((kept) => kept !== '' && kept !== family);
  for (const oldest of others.slice(0, Math.max(0, others.length - mostFamilies + 1))) {
    await dropFamily(oldest);
  }
}

async function dropFamily(family: string): Promise<void> {
  await caches.delete(pageStore(family));
  await new CacheExpiration(pageStore(family), bounds).delete();
}

function listAddress(family: string): string {
  return `${scope}${familyListPath(family)}`;
}
