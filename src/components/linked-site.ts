/** The site as linked data names it. */

import { siteAddress } from '../views/address.ts';
import type { LinkedSite } from '../views/linked-data.ts';
import { viewOf } from '../views/store.ts';

/** With its whole address, base path included. */
export async function linkedSiteHere(): Promise<LinkedSite> {
  const site = await viewOf('site');
  return { ...site, address: siteAddress(site.address, import.meta.env.BASE_URL) };
}
