/**
 * In every page: registers the worker, tells it what was visited, and says when the page is an old copy or a
 * newer version is there. Part of the page itself, so that page and script are always of one version.
 */

import { phrase } from '../words/index.ts';
import type { KeptReason, PageMessage } from '../worker/plan.ts';
import { hideBanner, showBanner } from './banner.ts';
import { isNewerThere } from './freshness.ts';

const { version: page = '', kept: keptReason } = document.documentElement.dataset;
const kept = keptReason as KeptReason | undefined;
const base = import.meta.env.BASE_URL.replace(/\/*$/, '/');

/** How often a page that is looked at again asks for a newer version, milliseconds. */
const betweenLooks = 60_000;

let isReloading = false;
function reload(): void {
  if (isReloading) return;
  isReloading = true;
  location.reload();
}

/** With the date of what is shown in its place. */
function dated(text: string): string {
  return text.replace('{date}', published());
}

function published(): string {
  return document.querySelector('.content-date time')?.textContent ?? '';
}

function tell(worker: ServiceWorker | null, message: PageMessage, port?: MessagePort): void {
  worker?.postMessage(message, port ? [port] : []);
}

/** The version a worker was built with; undefined where it does not say so in time. */
function versionOf(worker: ServiceWorker | null): Promise<string | undefined> {
  return new Promise((told) => {
    if (!worker) return told(undefined);
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => told(String(data));
    setTimeout(() => told(undefined), 3000);
    tell(worker, { kind: 'version' }, port2);
  });
}

/** Waits until a worker is installed; false where it could not be. */
function isInstalled(worker: ServiceWorker): Promise<boolean> {
  return new Promise((told) => {
    const look = () => {
      if (worker.state === 'redundant') told(false);
      else if (worker.state !== 'installing') told(true);
    };
    worker.addEventListener('statechange', look);
    look();
  });
}

async function keepForOffline(): Promise<void> {
  const workers = navigator.serviceWorker;
  const hadWorker = workers.controller !== null;
  let hasChanged = false;
  let sayChange: (() => void) | undefined;
  // Before anything is waited for: another may take over meanwhile.
  workers.addEventListener('controllerchange', () => {
    hasChanged = hadWorker;
    sayChange?.();
  });
  const registration = await workers.register(`${base}service-worker.js`, {
    scope: base,
    updateViaCache: 'none',
  });

  const takeNewer = () => {
    const { waiting } = registration;
    if (!waiting) return reload();
    workers.addEventListener('controllerchange', reload);
    // A page loaded past the worker is not told when another takes over.
    setTimeout(reload, 4000);
    tell(waiting, { kind: 'take-over' });
  };

  /** Says what is to be said of this page; `isReached`: the site has just answered. */
  const judge = async (isReached: boolean) => {
    const { installing } = registration;
    if (installing && !(await isInstalled(installing))) return;
    const { waiting, active } = registration;
    const versions = { page, waiting: await versionOf(waiting), active: await versionOf(active) };
    if (kept === 'missing') {
      if (isReached)
        showBanner(phrase('There is a network again:'), { text: phrase('Load the page'), act: takeNewer });
    } else if (isNewerThere({ ...versions, isKept: kept !== undefined && isReached, hasChanged })) {
      const sentence = kept
        ? dated(phrase<string>('This is what was published on {date}. A newer version is there:'))
        : phrase('A newer version is there:');
      showBanner(sentence, { text: phrase('Load it'), act: takeNewer });
    } else {
      // The page is of the version that waits: it may take over without a reload.
      if (waiting && versions.waiting === page) tell(waiting, { kind: 'take-over' });
      if (isReached) hideBanner();
    }
  };

  let lastLook = Date.now();
  const look = async () => {
    lastLook = Date.now();
    if (!navigator.onLine) return;
    const isReached = await registration.update().then(
      () => true,
      () => false,
    );
    if (isReached) await judge(true);
  };

  registration.addEventListener('updatefound', () => void judge(false));
  sayChange = () => void judge(false);
  window.addEventListener('online', () => void look());
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden && Date.now() - lastLook > betweenLooks) void look();
  });

  const { active } = await workers.ready;
  if (!kept) tell(active, { kind: 'visited', address: location.href });
  if (kept === 'slow' || kept === 'missing') await look();
  else await judge(false);
}

/** A development site keeps nothing; see also src/publish/forget-worker.ts. */
async function forgetWorkers(): Promise<void> {
  for (const registration of await navigator.serviceWorker.getRegistrations()) {
    if (registration.scope === new URL(base, location.href).href) await registration.unregister();
  }
}

if (kept === 'no-network') {
  showBanner(dated(phrase<string>('No network: this is what was published on {date}.')));
} else if (kept === 'slow') {
  showBanner(dated(phrase<string>('The network does not answer: this is what was published on {date}.')));
}

if ('serviceWorker' in navigator) {
  if (import.meta.env.DEV) void forgetWorkers();
  else {
    // After the page itself: on a bad signal it comes first.
    const begin = () => void keepForOffline().catch(() => undefined);
    if (document.readyState === 'complete') begin();
    else window.addEventListener('load', begin);
  }
}
