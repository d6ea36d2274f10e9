/** The configuration of nginx for a site: a template with what only the build knows filled in. */
import { readFile } from 'node:fs/promises';
import { CannotRun } from '../base/index.ts';
import { withSlashes } from './project.ts';
import { cacheControl, hashedFolders, openFiles } from './site-headers.ts';

export interface NginxOptions {
  /** The folder of the site, absolute. */
  readonly folder: string;
  readonly basePath: string;
  /** Where each language is below the base path, the first first: `['', 'es/']`. */
  readonly folders: readonly string[];
  readonly headers: Readonly<Record<string, string>>;
  /** Old address → new address. */
  readonly redirects: Readonly<Record<string, string>>;
  /** What it listens on, `80` where left out. */
  readonly listen?: string;
}

const template = new URL('server/nginx.conf', import.meta.url);

/**
 * A `server` block that serves the folder under its base path.
 * @throws CannotRun where a path holds a character that has a meaning of its own in such a file.
 */
export async function nginxConfiguration(options: NginxOptions): Promise<string> {
  const { folder, folders, headers, redirects, listen = '80' } = options;
  const base = withSlashes(options.basePath);
  assertNginxPaths(folder, base);
  const headerLines = Object.entries(headers).map(([name, value]) => `add_header ${name} "${value}" always;`);
  const moved = [
    ...(base === '/' ? [] : [[`${base.slice(0, -1)}`, base] as const]),
    ...Object.entries(redirects),
  ];
  const parts: Readonly<Record<string, string>> = {
    listen,
    base,
    folder,
    otherCache: cacheControl.other,
    redirects: moved
      .map(([from, to]) => `    location = ${from} {\n        return 301 ${to}$is_args$args;\n    }\n`)
      .join(''),
    headers: indented(headerLines, 8),
    ofLanguages: folders.map((one) => ofLanguage(base, one, headerLines)).join('\n'),
  };
  return (await readFile(template, 'utf8')).replace(/\{\{(\w+)\}\}/g, (_, name: string) => parts[name] ?? '');
}

/** What is served otherwise than pages: for the first language in the location of the site, else in one of its own. */
function ofLanguage(base: string, language: string, headers: readonly string[]): string {
  const at = `${base}${language}`;
  const lines = [
    '# A folder without a page is nowhere, too.',
    `error_page 403 404 =404 ${at}404.html;`,
    ...location(`= ${at}404.html`, ['internal;']),
    // A location with a header of its own has lost those around it.
    ...openFiles.paths.flatMap((path) =>
      location(`${path.endsWith('/') ? '^~' : '='} ${at}${path}`, [
        `add_header Cache-Control "${cacheControl.other}";`,
        `add_header ${openFiles.header.join(' "')}";`,
        ...headers,
      ]),
    ),
    ...hashedFolders.flatMap((hashed) =>
      location(`^~ ${at}${hashed}`, [`add_header Cache-Control "${cacheControl.hashed}";`, ...headers]),
    ),
  ];
  return indented(language === '' ? lines : location(`^~ ${at}`, lines), 8);
}

function location(match: string, lines: readonly string[]): string[] {
  return [`location ${match} {`, ...lines.map((line) => `    ${line}`), '}'];
}

/** @throws CannotRun where a path holds a character that has a meaning of its own in a configuration. */
export function assertNginxPaths(folder: string, basePath: string): void {
  for (const [path, allowed] of [
    [folder, /^[\p{L}\p{N}/._~ +@,=:-]+$/u],
    [basePath, /^[\w/.~-]+$/],
  ] as const) {
    if (allowed.test(path)) continue;
    throw new CannotRun(
      `The path ${path} has a character that a configuration of nginx cannot hold.`,
      'Name a folder and a base path of letters, digits, dots and hyphens.',
    );
  }
}

function indented(lines: readonly string[], spaces: number): string {
  return lines.map((line) => `${' '.repeat(spaces)}${line}`).join('\n');
}
