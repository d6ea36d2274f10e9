/** Where the site's own files are: pages, layouts, styles, and the configuration of Astro. */
import { fileURLToPath } from 'node:url';

/** The root of the Astro project, whatever folder the command was started in. */
export const projectRoot = fileURLToPath(new URL('../../', import.meta.url));

/** A base path with a slash at both ends: `help` → `/help/`. */
export function withSlashes(basePath: string): string {
  const inner = basePath.replace(/^\/+|\/+$/g, '');
  return inner === '' ? '/' : `/${inner}/`;
}

const astroSettings = [
  ['ASTRO_TELEMETRY_DISABLED', '1'],
  ['ASTRO_DISABLE_UPDATE_CHECK', 'true'],
] as const;

/** Astro reports usage to its makers and looks for newer versions unless told not to; a build of pages does neither. */
export function keepAstroQuiet(): void {
  for (const [name, value] of astroSettings) process.env[name] ??= value;
}

/** What Vite tells the pages itself, and would take from variables of the same names where there are any. */
const toldByVite = { NODE_ENV: 'production', MODE: '', BASE_URL: '', PROD: '', DEV: '', SSR: '' } as const;

/** Runs a build that comes out the same whatever variables are set where it runs; they are put back after it. */
export async function inProduction<Result>(run: () => Promise<Result>): Promise<Result> {
  const names = Object.keys(toldByVite) as (keyof typeof toldByVite)[];
  const before = names.map((name) => [name, process.env[name]] as const);
  for (const name of names) {
    if (toldByVite[name] === '') delete process.env[name];
    else process.env[name] = toldByVite[name];
  }
  try {
    return await run();
  } finally {
    for (const [name, value] of before) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
}
