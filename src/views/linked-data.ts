/**
 * What search engines are told of a page in their own words (schema.org, as JSON-LD): only what the page says too.
 * `site.address` is the whole address of the start page.
 */
import type { Site } from '../../schemas/index.ts';
import { phrase } from '../words/index.ts';
import type { DataPageView } from './data-page.ts';
import type { GuidePageView } from './guide-page.ts';
import { apiProfilePath, dataPackagePath, dataPath } from './paths.ts';
import type { ProfilePageView } from './profile-page.ts';

export interface LinkedSite extends Pick<Site, 'name' | 'about' | 'notice' | 'licence'> {
  readonly address: string;
}

/** A thing of schema.org. */
export type LinkedThing = { readonly '@type': string } & Readonly<Record<string, unknown>>;

interface Crumb {
  readonly text: string;
  readonly path: string;
}

/** The way to a page from the start page, itself included. */
export function breadcrumbs(address: string, crumbs: readonly Crumb[], here: Crumb): LinkedThing {
  const all = [{ text: phrase('Look up a code'), path: '' }, ...crumbs, here];
  return {
    '@type': 'BreadcrumbList',
    itemListElement: all.map(({ text, path }, index) => ({
      '@type': 'ListItem',
      position: index + 1,
      name: text,
      item: `${address}${path}`,
    })),
  };
}

/** The start page: the site, and that codes can be looked up by address. */
export function linkedSite(site: LinkedSite): LinkedThing {
  return {
    '@type': 'WebSite',
    name: site.name,
    url: site.address,
    description: told(site.about, site),
    publisher: publisher(site),
    potentialAction: {
      '@type': 'SearchAction',
      target: { '@type': 'EntryPoint', urlTemplate: `${site.address}?code={code}` },
      'query-input': 'required name=code',
    },
  };
}

/** A profile as a set of measured values; undefined where nothing was measured. */
export function linkedProfile(site: LinkedSite, profile: ProfilePageView): LinkedThing | undefined {
  if (profile.headline.length === 0) return undefined;
  const [first, last] = [profile.measuredOn[0], profile.measuredOn.at(-1)];
  return {
    ...dataset(site, profile.title, profile.description, profile.path),
    identifier: profile.id,
    ...(first !== undefined && last !== undefined
      ? { temporalCoverage: first === last ? first : `${first}/${last}` }
      : {}),
    variableMeasured: profile.headline.map(({ label, text, at, value, unit, bound }) => ({
      '@type': 'PropertyValue',
      name: label,
      description: at === '' ? text : `${text} (${at})`,
      // A bound is no value.
      [{ exact: 'value', 'at-least': 'minValue', 'at-most': 'maxValue' }[bound]]: value,
      unitText: unit,
    })),
    isBasedOn: profile.sources.map(({ path }) => `${site.address}${path}`),
    distribution: [download(`${site.address}${apiProfilePath(profile.id)}`, 'application/json')],
  };
}

/** The data package as one set of data. */
export function linkedData(site: LinkedSite, { tables, readings }: DataPageView, about: string): LinkedThing {
  return {
    ...dataset(
      site,
      phrase('{shop}: readings and what follows from them', { shop: site.name }),
      about,
      dataPath,
    ),
    distribution: [
      download(`${site.address}${dataPackagePath}`, 'application/json'),
      ...[...tables, ...readings].map(({ path }) => download(`${site.address}${path}`, 'text/csv')),
    ],
  };
}

/** A guide, with the sources it names. */
export function linkedGuide(site: LinkedSite, guide: GuidePageView): LinkedThing {
  return {
    '@type': 'TechArticle',
    headline: guide.title,
    description: guide.description,
    url: `${site.address}${guide.path}`,
    inLanguage: phrase('en'),
    publisher: publisher(site),
    citation: guide.sources.map(({ title, path }) => ({
      '@type': 'CreativeWork',
      name: title,
      url: `${site.address}${path}`,
    })),
  };
}

/** The text of a script element: no mark in it can end the element. */
export function linkedDataText(things: readonly LinkedThing[]): string {
  return JSON.stringify({ '@context': 'https://schema.org', '@graph': things }).replaceAll('<', '\\u003c');
}

function dataset(site: LinkedSite, name: string, description: string, path: string): LinkedThing {
  return {
    '@type': 'Dataset',
    name,
    description: told(description, site),
    url: `${site.address}${path}`,
    inLanguage: phrase('en'),
    isAccessibleForFree: true,
    creator: publisher(site),
    ...(site.licence ? { license: site.licence.address } : {}),
  };
}

/** What every reader has to be told goes wherever the values go. */
function told(text: string, { notice }: LinkedSite): string {
  return notice === undefined ? text : `${text} ${notice}`;
}

function publisher({ name, address }: LinkedSite): object {
  return { '@type': 'Organization', name, url: address };
}

function download(contentUrl: string, encodingFormat: string): object {
  return { '@type': 'DataDownload', contentUrl, encodingFormat };
}
