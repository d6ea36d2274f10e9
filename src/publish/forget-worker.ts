/**
 * What the development server gives in place of the worker: a browser that has one from a published site at the
 * same address asks for it again, and this one takes its place, empties its stores and goes.
 */
export const forgetfulWorker = `
self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil((async () => {
  const { scope } = self.registration;
  for (const name of await caches.keys()) if (name.includes(scope)) await caches.delete(name);
  await self.registration.unregister();
  for (const page of await self.clients.matchAll({ type: 'window' })) await page.navigate(page.url);
})()));
`;

/** The path the worker is asked for at. */
export const workerPath = '/service-worker.js';
