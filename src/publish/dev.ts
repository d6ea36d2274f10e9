/** The site while entries are being written: an edited entry reloads the page. */
import { readdir } from 'node:fs/promises';
import { resolve } from 'node:path';
import { setTimeout as setTimeoutPromise } from 'node:timers/promises';
import type { AstroIntegration } from 'astro';
import { readAnswers } from '../answers.ts';
import type { Finding } from '../base/index.ts';
import { putAnswersInStore } from '../views/store.ts';
import { keepAstroQuiet, projectRoot } from './project.ts';

export interface DevOptions {
  readonly contentFolder: string;
  readonly host: string;
  readonly port: number;
  /** Told of the findings of each reading, and of each reload. */
  readonly report?: (news: DevNews) => void;
}

/** What a reading of the content folder came to; `shown` is false where the last good one stays. */
export interface DevNews {
  readonly findings: readonly Finding[];
  readonly shown: boolean;
}

export interface DevSite {
  readonly address: string;
  close(): Promise<void>;
}

/** Editors write a file in several goes; they are taken together, milliseconds. */
const settleMs = 150;

/** A scan that takes longer than this is not waited for, milliseconds. */
const longestScanMs = 10_000;

/** Astro clears its cache of routes a moment after the new content is in, milliseconds. */
const routeCacheMs = 50;

/**
 * Runs Astro's development server on a content folder. At each change the folder is read again; where the
 * reading has errors the last good answers are kept and the findings reported.
 * @throws CannotRun where the content folder cannot be read.
 */
export async function devSite({ contentFolder, host, port, report = print }: DevOptions): Promise<DevSite> {
  keepAstroQuiet();
  const folder = resolve(contentFolder);
  const { answers, findings } = await readAnswers(folder);
  putAnswersInStore(answers);
  report({ findings, shown: true });

  const reread = async (refresh: () => Promise<void>): Promise<void> => {
    const reading = await readAnswers(folder);
    const shown = !reading.findings.some((finding) => finding.severity === 'error');
    report({ findings: reading.findings, shown });
    if (!shown) return;
    putAnswersInStore(reading.answers);
    await refresh();
  };

  const { dev } = await import('astro');
  const server = await dev({
    root: projectRoot,
    server: { host, port },
    logLevel: 'warn',
    integrations: [contentWatcher(folder, reread)],
  });
  const url = server.resolvedUrls.local[0] ?? server.resolvedUrls.network[0];
  return {
    address: url ?? `http://${host}:${server.address.port}/`,
    close: async () => {
      await server.stop();
      putAnswersInStore(undefined);
    },
  };
}

/** Watches the content folder with the server's own watcher and has every collection loaded anew. */
function contentWatcher(
  folder: string,
  reread: (refresh: () => Promise<void>) => Promise<void>,
): AstroIntegration {
  return {
    name: 'content-folder',
    hooks: {
      'astro:server:setup': async ({ server, refreshContent, logger }) => {
        let timer: NodeJS.Timeout | undefined;
        let running = Promise.resolve();
        server.watcher.on('all', (_event, path) => {
          if (!resolve(path).startsWith(folder)) return;
          clearTimeout(timer);
          timer = setTimeout(() => {
            running = running
              .then(() =>
                reread(async () => {
                  await refreshContent?.({});
                  // Astro's own reload comes before its cache of routes is cleared and can show the old entry.
                  await setTimeoutPromise(routeCacheMs);
                  server.environments.client.hot.send({ type: 'full-reload', path: '*' });
                }),
              )
              .catch((error: unknown) => logger.error(String(error)));
          }, settleMs);
        });
        server.watcher.add(folder);
        await allWatched(server.watcher, folder);
      },
    },
  };
}

/** Resolves when every file below the folder is watched: an edit before that would go unseen. */
async function allWatched(
  watcher: { getWatched(): Record<string, string[]> },
  folder: string,
): Promise<void> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile());
  for (let waitedMs = 0; waitedMs < longestScanMs; waitedMs += settleMs) {
    const watched = watcher.getWatched();
    if (files.every(({ parentPath, name }) => watched[parentPath]?.includes(name))) return;
    await setTimeoutPromise(settleMs);
  }
}

function print({ findings, shown }: DevNews): void {
  for (const { place, message, help } of findings) {
    console.error(`${place.file}:${place.line}:${place.column} ${message} ${help}`);
  }
  if (!shown) console.error('The pages keep the last good entries until this is put right.');
}
