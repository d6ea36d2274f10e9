/** The whole address of a page: what other sites, programs and feeds call it by. */

/**
 * The address of the start page, with a slash at the end: that of site.yaml, and behind it the base path the site
 * is built for, unless the address ends in it already.
 */
export function siteAddress(address: string, basePath: string): string {
  const { origin, pathname } = new URL(address);
  const path = pathname.endsWith('/') ? pathname : `${pathname}/`;
  const base = basePath.endsWith('/') ? basePath : `${basePath}/`;
  return path.endsWith(base) ? `${origin}${path}` : `${origin}${path.slice(0, -1)}${base}`;
}
