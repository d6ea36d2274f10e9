/** Has Astro write the pages of a site. */
import type { Handed } from '../views/page-views.ts';
import { putInStore } from '../views/store.ts';
import type { Language } from '../words/index.ts';
import { speaking } from './interface-language.ts';
import { inProduction, projectRoot } from './project.ts';
import { fromOwnFolder } from './working-folder.ts';

export interface PageFolder {
  readonly folder: string;
  /** For what Astro keeps while it builds. */
  readonly scratch: string;
  /** Where the site is mounted, with a slash at both ends. */
  readonly base: string;
  readonly language: Language;
  /** Told of each profile when its page begins: those before it are written by then. */
  readonly profileBegins: (profile: string) => void;
}

/**
 * Writes all pages, one after another, into a folder that Astro empties first.
 * @throws the error of Astro.
 */
export async function renderPages(
  contents: Handed,
  { folder, scratch, base, language, profileBegins }: PageFolder,
): Promise<void> {
  const { build } = await import('astro');
  putInStore(telling(contents, profileBegins));
  try {
    await fromOwnFolder(() =>
      inProduction(() =>
        build({
          root: projectRoot,
          outDir: folder,
          cacheDir: scratch,
          base,
          logLevel: 'error',
          build: { concurrency: 1 },
          vite: speaking(language),
        }),
      ),
    );
  } finally {
    putInStore(undefined);
  }
}

/** The same contents, telling of each profile whose view is asked for. */
function telling(contents: Handed, tell: (profile: string) => void): Handed {
  const { profilePages } = contents.views;
  const get: typeof profilePages.get = (id) => {
    tell(id);
    return profilePages.get(id);
  };
  return { ...contents, views: { ...contents.views, profilePages: { ...profilePages, get } } };
}
