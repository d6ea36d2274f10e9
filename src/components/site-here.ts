/** The site of the page being made. */

import { siteAddress } from '../views/address.ts';
import type { SiteView } from '../views/site.ts';
import { partsOfPages } from '../views/store.ts';
import { phrase } from '../words/index.ts';

/** With its whole address, base path and language included. */
export function siteHere(): SiteView {
  const { site } = partsOfPages();
  return { ...site, address: siteAddress(site.address, import.meta.env.BASE_URL, site.folder) };
}

/** The language tag of the entries, for `lang` around their prose; undefined where the page is in that language. */
export function entryLanguage({ spoken }: SiteView): string | undefined {
  const tag = spoken[0]?.tag;
  return tag === phrase('en') ? undefined : tag;
}
