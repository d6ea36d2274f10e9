/** Addresses below the base path the site is mounted at. */

/** The address of a path of the site (`units/brasslight/`), with the base path in front. */
export function href(path: string): string {
  const base = import.meta.env.BASE_URL;
  return `${base.endsWith('/') ? base : `${base}/`}${path}`;
}
