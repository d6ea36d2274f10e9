/** The pages of the built site, found in its files. */
import { readdirSync } from 'node:fs';
import { inject } from 'vitest';

/** The pages of one language: of the first, or of that in a folder (`es/`), as paths below it. */
export function pagesOfLanguage(folder = ''): string[] {
  if (folder === '') return allPages().filter((path) => !path.startsWith('es/'));
  return allPages().flatMap((path) => (path.startsWith(folder) ? [path.slice(folder.length)] : []));
}

/** Every page of every language as a path below the base path: `units/brasslight/`, `` for the start page, `404.html`. */
export function allPages(): string[] {
  return pagesIn(inject('siteFolder'));
}

/** Every page of a site that was built into a folder. */
export function pagesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.html'))
    .map((file) => file.replace(/(^|\/)index\.html$/, '$1'))
    .sort();
}

const kinds: readonly (readonly [kind: string, pattern: RegExp])[] = [
  ['start', /^$/],
  ['codes', /^codes\/$/],
  ['units', /^units\/$/],
  ['which unit', /^which-unit\/$/],
  ['unit', /^units\/[^/]+\/$/],
  ['sheet', /^units\/[^/]+\/sheet\/$/],
  ['way in', /^units\/.+\/way-in\/.+\/$/],
  ['profile', /^profiles\/(?:(?!readings\/).)+\/$/],
  ['readings', /^profiles\/.+\/readings\/$/],
  ['planner', /^planner\/$/],
  ['plans', /^plans\/$/],
  ['plan', /^plans\/.+\/$/],
  ['tables', /^tables\/$/],
  ['table', /^tables\/.+\/$/],
  ['guides', /^guides\/$/],
  ['guide', /^guides\/.+\/$/],
  ['sources', /^sources\/$/],
  ['bench session', /^sources\/bench-.+\/$/],
  ['source', /^sources\/(?!bench-).+\/$/],
  ['data', /^data\/$/],
  ['rules', /^check\/$/],
  ['embed', /^embed\/$/],
  ['coverage', /^coverage\/$/],
  ['bench sheet', /^coverage\/bench-sheet\/$/],
  ['not found', /^404\.html$/],
];

/** One page of each kind; the last of its kind where there are several, as good as any other. */
export function onePageOfEachKind(): { kind: string; path: string }[] {
  const pages = allPages();
  return kinds.map(([kind, pattern]) => {
    const path = pages.findLast((page) => pattern.test(page));
    if (path === undefined) throw new Error(`The built site has no page of the kind “${kind}”.`);
    return { kind, path };
  });
}
