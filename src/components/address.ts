/** Whole addresses of pages, for paper and for other sites. */
import { href } from './href.ts';

/** The address of a path of the site where it is published: `site.yaml`’s address, the base path, the path. */
export function canonicalAddress(siteAddress: string, path: string): string {
  return new URL(href(path), siteAddress).href;
}
