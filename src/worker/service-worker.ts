/** The service worker: the lookup, and what was visited, without a network. Pages register it; see client/offline.ts. */

import { CacheableResponsePlugin } from 'workbox-cacheable-response';
import { cacheNames } from 'workbox-core';
import { ExpirationPlugin } from 'workbox-expiration';
import { addPlugins, getCacheKeyForURL, matchPrecache, precache } from 'workbox-precaching';
import { registerRoute } from 'workbox-routing';
import { CacheFirst, NetworkFirst } from 'workbox-strategies';
import { dropRemoved, keepFamily, renewFamilies } from './families.ts';
import { answerDataFile, answerPage, keepPage } from './kept-pages.ts';
import { familyOf, isFamilyFile, isLookupFile, type PageMessage, pagePath } from './plan.ts';
import { plan, scope } from './scope.ts';

declare const self: ServiceWorkerGlobalScope;

// A site that is being published at this moment can answer with pages of the next version: then nothing is
// installed, and the next visit tries again.
addPlugins([
  {
    fetchDidSucceed: async ({ response }) => {
      if (!response.headers.get('content-type')?.startsWith('text/html')) return response;
      const html = await response.clone().text();
      if (!html.includes(`data-version="${plan.version}"`)) throw new Error('This is another version.');
      return response;
    },
  },
]);
precache([...plan.precache]);

self.addEventListener('activate', (event) => {
  event.waitUntil(Promise.all([dropRemoved(), self.clients.claim()]));
});

registerRoute(
  ({ request, url }) => request.mode === 'navigate' && pagePath(url.href, scope) !== undefined,
  ({ request, event }) => answerPage(request, event),
);

const revisions = new Map(plan.precache.map(({ url, revision }) => [url, revision]));
const namedOnly = new NetworkFirst({
  cacheName: cacheNames.precache,
  networkTimeoutSeconds: 3,
  plugins: [
    {
      cacheKeyWillBeUsed: async ({ request }) => getCacheKeyForURL(request.url) ?? request,
      cacheWillUpdate: async () => null,
    },
  ],
});

// Precached files. An address with `?v=` names the content wanted: only that, or the network, may answer, so
// that a page never gets data of another version. Without it the network is asked first.
registerRoute(
  ({ request, url, sameOrigin }) => request.mode !== 'navigate' && sameOrigin && revisions.has(url.pathname),
  async ({ request, url, event }) => {
    const revision = revisions.get(url.pathname);
    const wanted = url.searchParams.get('v');
    if (revision === null || wanted === revision) {
      return (await matchPrecache(url.pathname)) ?? fetch(request);
    }
    return wanted === null ? namedOnly.handle({ request, event }) : fetch(request);
  },
);

registerRoute(
  ({ url }) => {
    const path = url.href.startsWith(scope) ? url.href.slice(scope.length) : '';
    return isFamilyFile(path) || isLookupFile(path);
  },
  ({ request, event }) => answerDataFile(request, event),
);

// Files of another version's pages, named by their content.
registerRoute(
  ({ url }) => url.href.startsWith(`${scope}assets/`),
  new CacheFirst({
    cacheName: `readback-assets ${scope}`,
    plugins: [
      new CacheableResponsePlugin({ statuses: [200] }),
      new ExpirationPlugin({ maxEntries: 30, maxAgeSeconds: 60 * 24 * 60 * 60 }),
    ],
  }),
);

self.addEventListener('message', (event) => {
  const message = event.data as PageMessage;
  if (message.kind === 'version') event.ports[0]?.postMessage(plan.version);
  else if (message.kind === 'take-over') event.waitUntil(self.skipWaiting());
  else event.waitUntil(visited(message.address, event));
});

async function visited(address: string, event: ExtendableEvent): Promise<void> {
  const path = pagePath(address, scope);
  if (path === undefined) return;
  await keepPage(address, event).catch(() => undefined);
  // A code looked up leads to a profile: the way in of its unit is wanted with it.
  const family = familyOf(path);
  if (family !== undefined) await keepFamily(family);
  await renewFamilies();
}
