/** Where this worker is at home, what it was built with, and the names of its stores. */
import type { OfflinePlan } from './plan.ts';

declare const self: ServiceWorkerGlobalScope;
declare const __OFFLINE_PLAN__: OfflinePlan;

/** Put in by the build. */
export const plan: OfflinePlan = __OFFLINE_PLAN__;

/** The address of the start page: the base path, and all the worker answers for. */
export const { scope } = self.registration;

const prefix = `readback-pages ${scope} `;

/** The store of a family's pages, or of all pages without one. Other sites of the same origin have others. */
export function pageStore(family = ''): string {
  return `${prefix}${family}`;
}

/** The families with a store; the empty name stands for the pages without one. Oldest first. */
export async function keptFamilies(): Promise<string[]> {
  return (await caches.keys())
    .filter((name) => name.startsWith(prefix))
    .map((name) => name.slice(prefix.length));
}
