/** Pages: from the network while it answers, else from what is kept, marked as such. */
import { CacheableResponsePlugin } from 'workbox-cacheable-response';
import { cacheNames } from 'workbox-core';
import { ExpirationPlugin } from 'workbox-expiration';
import { getCacheKeyForURL, matchPrecache } from 'workbox-precaching';
import { NetworkFirst } from 'workbox-strategies';
import { familyOf, type KeptReason, markKept, pagePath } from './plan.ts';
import { pageStore, scope } from './scope.ts';

/** A rider with one bar would rather read than wait: after this the kept page is shown. */
const networkTimeoutSeconds = 3;

/** Bounds of each store of pages; a family's list is cut by the build to fewer pages than this. */
export const bounds = { maxEntries: 500, maxAgeSeconds: 60 * 24 * 60 * 60 };

type Plugin = NonNullable<NonNullable<ConstructorParameters<typeof NetworkFirst>[0]>['plugins']>[number];

/** The same page with its mark; built anew, so that it is also free of redirections. */
async function marked(response: Response, reason: KeptReason): Promise<Response> {
  const headers = new Headers(response.headers);
  // The body is text by now, whatever it was sent as.
  for (const name of ['content-encoding', 'content-length']) headers.delete(name);
  const status = reason === 'missing' ? 503 : 200;
  return new Response(markKept(await response.text(), reason), { status, headers });
}

/** What is remembered of one request while it is being answered. */
interface Attempt {
  readonly hasFailed?: boolean;
}

const marking: Plugin = {
  fetchDidFail: async ({ state }) => {
    if (state) Object.assign(state, { hasFailed: true } satisfies Attempt);
  },
  cachedResponseWillBeUsed: async ({ cachedResponse, state }) => {
    const { hasFailed }: Attempt = state ?? {};
    return cachedResponse ? marked(cachedResponse, hasFailed ? 'no-network' : 'slow') : null;
  },
};

/** One page, one key: `?code=` and a missing slash make no difference. */
const keyedByPage: Plugin = {
  cacheKeyWillBeUsed: async ({ request }) => pageAddress(request.url),
};

/** A page the site no longer has is not kept any longer. */
const droppingRemoved: Plugin = {
  fetchDidSucceed: async ({ request, response }) => {
    if (response.status === 404 || response.status === 410) await dropPage(request.url);
    return response;
  },
};

/** Kept pages of the start only change as a whole, with a new worker: nothing is written to them one by one. */
const precachedOnly: Plugin = {
  cacheKeyWillBeUsed: async ({ request }) => getCacheKeyForURL(pageAddress(request.url)) ?? request,
  cacheWillUpdate: async () => null,
};

const precachedPages = new NetworkFirst({
  cacheName: cacheNames.precache,
  networkTimeoutSeconds,
  plugins: [precachedOnly, marking],
});

const stores = new Map<string, NetworkFirst>();

function storedPages(cacheName: string): NetworkFirst {
  const known = stores.get(cacheName);
  if (known) return known;
  const strategy = new NetworkFirst({
    cacheName,
    networkTimeoutSeconds,
    plugins: [
      keyedByPage,
      droppingRemoved,
      new CacheableResponsePlugin({ statuses: [200] }),
      new ExpirationPlugin({ ...bounds, purgeOnQuotaError: true }),
      marking,
    ],
  });
  stores.set(cacheName, strategy);
  return strategy;
}

/** Answers a request for a page; with the offline page where there is neither network nor a kept one. */
export async function answerPage(request: Request, event: ExtendableEvent): Promise<Response> {
  const address = pageAddress(request.url);
  const strategy = isPrecached(address) ? precachedPages : storedPages(storeOf(address));
  try {
    return await strategy.handle({ request, event });
  } catch {
    const offline = await matchPrecache(`${scope}offline/`);
    return offline ? marked(offline, 'missing') : Response.error();
  }
}

const dataStores = new Map<string, NetworkFirst>();

/** Answers a request for what the planner or the lookup needs: as pages are answered, but unmarked. */
export async function answerDataFile(request: Request, event: ExtendableEvent): Promise<Response> {
  const cacheName = storeOf(request.url);
  const strategy =
    dataStores.get(cacheName) ??
    new NetworkFirst({
      cacheName,
      networkTimeoutSeconds,
      plugins: [
        new CacheableResponsePlugin({ statuses: [200] }),
        new ExpirationPlugin({ ...bounds, purgeOnQuotaError: true }),
      ],
    });
  dataStores.set(cacheName, strategy);
  return strategy.handle({ request, event });
}

/** Keeps a page that was opened before the worker was there to see it. */
export async function keepPage(address: string, event: ExtendableEvent): Promise<void> {
  const page = pageAddress(address);
  if (isPrecached(page)) return;
  const cacheName = storeOf(page);
  if (await caches.match(page, { cacheName })) return;
  const [, done] = storedPages(cacheName).handleAll({ request: new Request(page), event });
  await done;
}

function isPrecached(address: string): boolean {
  return getCacheKeyForURL(address) !== undefined;
}

function pageAddress(address: string): string {
  return `${scope}${pagePath(address, scope) ?? ''}`;
}

function storeOf(address: string): string {
  return pageStore(familyOf(address.slice(scope.length)));
}

async function dropPage(address: string): Promise<void> {
  const page = pageAddress(address);
  await (await caches.open(storeOf(page))).delete(page);
}
