/** The site as linked data names it. */
import { getEntry } from 'astro:content';
import { siteAddress } from '../views/address.ts';
import type { LinkedSite } from '../views/linked-data.ts';

/** With its whole address, base path included. */
export async function linkedSiteHere(): Promise<LinkedSite> {
  const site = (await getEntry('site', 'site'))?.data;
  if (!site) throw new Error('The collection “site” is empty: the loaders have not run.');
  return { ...site, address: siteAddress(site.address, import.meta.env.BASE_URL) };
}
