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
