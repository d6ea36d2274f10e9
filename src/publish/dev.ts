/** The site while entries are being written: an edited entry reloads the page. */
import { resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { AstroIntegration } from 'astro';
import { CannotRun, MapMemory, RereadFiles } from '../base/index.ts';
import { type CheckedAnswers, type CheckSettings, checkContent, textReport } from '../check/index.ts';
import { KeptOutputs } from '../kept-outputs.ts';
import { siteAddress } from '../views/address.ts';
import { languagesOf } from '../views/languages.ts';
import { pageContents } from '../views/page-views.ts';
import { embedScriptPath, refreshedPath } from '../views/paths.ts';
import { siteView } from '../views/site.ts';
import { inStore, putInStore } from '../views/store.ts';
import { type Language, speak } from '../words/index.ts';
import { contentDate } from './content-date.ts';
import { embedScript } from './embed.ts';
import { forgetfulWorker, workerPath } from './forget-worker.ts';
import { speaking } from './interface-language.ts';
import { contentTypeOf, programFiles } from './program-files.ts';
import { keepAstroQuiet, projectRoot } from './project.ts';
import { openFiles } from './site-headers.ts';
import { stateOfFolder, watchFolder } from './watch-folder.ts';

export interface DevOptions {
  readonly contentFolder: string;
  readonly host: string;
  readonly port: number;
  /** Told of each reading of the content folder. */
  readonly report?: (news: DevNews) => void;
}

/** How long the rules wait for the open page to be asked for anew; then until it is rendered, but no longer than that. */
const pageFirstMs = 400;
const longestRenderingMs = 5000;

/** What a check of the content folder came to; `shown` is false where the last good pages stay. */
export interface DevNews extends Pick<CheckedAnswers, 'findings' | 'setAside' | 'sourceOf'> {
  /** As it is to be put before the paths of files. */
  readonly folder: string;
  readonly shown: boolean;
}

export interface DevSite {
  readonly address: string;
  close(): Promise<void>;
}

/**
 * Runs Astro's development server on a content folder. At each change the folder is read again and pages are
 * rendered anew, in the first language of site.yaml; where an entry cannot be read the last good answers are kept. All that the check finds is
 * reported. Only one development site can run in one checkout at a time: Astro keeps files in `.astro/`.
 * @throws CannotRun where the content folder cannot be read.
 */
export async function devSite({ contentFolder, host, port, report = print }: DevOptions): Promise<DevSite> {
  keepAstroQuiet();
  const folder = resolve(contentFolder);
  const state = await stateOfFolder(folder).catch(() => '');
  // After the state, so that an edit during the reading counts as one after it.
  const files = new RereadFiles(folder);
  const memory = new MapMemory();
  const kept = new KeptOutputs();
  const checked = (whenRead?: CheckSettings['whenRead']): Promise<CheckedAnswers> =>
    checkContent(files, {
      memory,
      kept,
      today: new Date().toISOString().slice(0, 10),
      ...(whenRead && { whenRead }),
    });
  const first = await checked();
  putInStore(pageContents(first.answers, '/'));
  report({ ...first, folder: contentFolder, shown: true });

  const [language] = languagesOf(first.answers);
  const silence = speak(language);
  let refresh: (() => void) | undefined;
  const requests = { open: 0 };
  const { dev } = await import('astro');
  const server = await dev({
    root: projectRoot,
    server: { host, port },
    logLevel: 'warn',
    vite: speaking(language),
    integrations: [
      counting(requests),
      refreshHook((given) => (refresh = given)),
      workerRemoval(),
      programFilesHere(),
      embedding(language),
    ],
  });

  const stopping = new AbortController();
  const watching = watchFolder(
    folder,
    state,
    async () => {
      const again = await checked(async ({ answers, readable }) => {
        if (!readable) return;
        putInStore(pageContents(answers, '/'));
        refresh?.();
        // The open page first: the rules of a large base take a while.
        await wait(pageFirstMs);
        for (let ms = 0; requests.open > 0 && ms < longestRenderingMs; ms += 20) await wait(20);
      }).catch((error: unknown) => {
        // The folder may be moved or written anew at this moment.
        if (!(error instanceof CannotRun)) throw error;
        console.error(error.message);
      });
      if (again) report({ ...again, folder: contentFolder, shown: again.readable });
    },
    stopping.signal,
  );
  return {
    address: server.resolvedUrls.local[0] ?? `http://${host}:${server.address.port}/`,
    close: async () => {
      stopping.abort();
      await watching;
      await server.stop();
      putInStore(undefined);
      silence();
    },
  };
}

/** Counts the requests that wait for their answer. */
function counting(requests: { open: number }): AstroIntegration {
  return {
    name: 'requests',
    hooks: {
      'astro:server:setup': ({ server }) => {
        server.middlewares.use((_request, response, next) => {
          requests.open += 1;
          response.on('close', () => (requests.open -= 1));
          next();
        });
      },
    },
  };
}

/** Gets hold of what makes Astro render pages anew and the open ones show it. */
function refreshHook(give: (refresh: () => void) => void): AstroIntegration {
  return {
    name: 'content-folder',
    hooks: {
      'astro:config:setup': ({ injectScript }) => {
        injectScript('page', "import '/src/client/content-refreshed.ts';");
      },
      'astro:server:setup': ({ server }) => {
        let refreshedAt = 0;
        server.middlewares.use(`/${refreshedPath}`, (_request, response) => {
          response.writeHead(200, { 'content-type': 'application/json', 'cache-control': 'no-store' });
          response.end(JSON.stringify({ refreshedAt }));
        });
        give(() => {
          // Astro keeps which pages a module has for as long as it keeps the module: run again, it asks for them again.
          for (const environment of Object.values(server.environments)) {
            if (isRunnable(environment)) environment.runner.evaluatedModules.clear();
          }
          refreshedAt = Date.now();
          server.environments.client.hot.send({ type: 'full-reload', path: '*' });
        });
      },
    },
  };
}

/** Answers for the worker of a site that was once served at this address, so that it does not answer instead. */
function workerRemoval(): AstroIntegration {
  return {
    name: 'worker-removal',
    hooks: {
      'astro:server:setup': ({ server }) => {
        server.middlewares.use(workerPath, (_request, response) => {
          response.writeHead(200, { 'content-type': 'text/javascript', 'cache-control': 'no-store' });
          response.end(forgetfulWorker);
        });
      },
    },
  };
}

/** Gives the code field for other sites, made at each request, and lets their pages have its data. */
function embedding(language: Language): AstroIntegration {
  return {
    name: 'embedding',
    hooks: {
      'astro:server:setup': ({ server }) => {
        for (const path of openFiles.paths) {
          server.middlewares.use(`/${path}`, (_request, response, next) => {
            response.setHeader(...openFiles.header);
            next();
          });
        }
        server.middlewares.use(`/${embedScriptPath}`, (_request, response, next) => {
          embedScript(language).then((script) => {
            response.writeHead(200, { 'content-type': 'text/javascript', 'cache-control': 'no-store' });
            response.end(script);
          }, next);
        });
      },
    },
  };
}

/** Makes what programs read, the planner’s data among it, when it is asked for, from the entries as they are now. */
function programFilesHere(): AstroIntegration {
  return {
    name: 'program-files',
    hooks: {
      'astro:server:setup': ({ server }) => {
        server.middlewares.use((request, response, next) => {
          const path = (request.url ?? '').replace(/\?.*$/, '').slice(1);
          const answers = inStore()?.answers;
          const contentType = contentTypeOf(path);
          if (!answers || !contentType) return next();
          const published = {
            address: siteAddress(siteView(answers).address, '/'),
            date: contentDate(process.env, new Date()),
          };
          programFiles(answers, published).then((files) => {
            const file = files.get(path);
            if (!file) return next();
            response.writeHead(200, { 'content-type': contentType, 'cache-control': 'no-store' });
            response.end(file.text());
          }, next);
        });
      },
    },
  };
}

/** Whether an environment of Vite runs modules in this process, and so keeps what they came to. */
function isRunnable(
  environment: object,
): environment is { readonly runner: { readonly evaluatedModules: { clear(): void } } } {
  return 'runner' in environment;
}

function print({ findings, setAside, sourceOf, folder, shown }: DevNews): void {
  const report = { findings, folder, sourceOf, setAside: setAside.length };
  console.error(textReport(report, process.stderr.isTTY));
  if (!shown) console.error('The pages keep the last good entries until this is put right.');
}
