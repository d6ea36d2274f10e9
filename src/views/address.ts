/** The whole address of a page: what other sites, programs and feeds call it by. */

/**
 * The address of the start page, with a slash at the end: that of site.yaml, and behind it the base path the site
 * is built for, unless the address ends in it already.
 * @param folder where in the site a further language is, such as `es/`; the base path ends in it.
 */
export function siteAddress(address: string, basePath: string, folder = ''): string {
  const { origin, pathname } = new URL(address);
  const path = pathname.endsWith('/') ? pathname : `${pathname}/`;
  const withSlash = basePath.endsWith('/') ? basePath : `${basePath}/`;
  const base = withSlash.slice(0, withSlash.length - folder.length);
  const site = path.endsWith(base) ? `${origin}${path}` : `${origin}${path.slice(0, -1)}${base}`;
  return `${site}${folder}`;
}
