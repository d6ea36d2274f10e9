/** Where a link in a Markdown body leads: to an entry, a place on its own page, or out of the site. */

/** Kinds of entry with a page of their own. */
export type PageKind = 'families' | 'profiles' | 'plans' | 'tables' | 'guides' | 'sources';

export type Target =
  /** An entry’s page; `hash` is the anchor on it, without its sign, or empty. */
  | {
      readonly to: 'entry';
      readonly kind: PageKind;
      readonly id: string;
      readonly hash: string;
      readonly readings: boolean;
    }
  /** A page of the site that is no entry’s: the start page, or a list. */
  | { readonly to: 'page'; readonly path: string }
  | { readonly to: 'anchor'; readonly id: string }
  /** Out of the site; `scheme` in lower case, empty for an address that begins with two slashes. */
  | { readonly to: 'outside'; readonly scheme: string }
  | { readonly to: 'nothing' };

/** The folder of the site that the pages of each kind are in. */
const pageFolders: Readonly<Record<string, PageKind>> = {
  units: 'families',
  profiles: 'profiles',
  plans: 'plans',
  tables: 'tables',
  guides: 'guides',
  sources: 'sources',
};
const listPages: readonly string[] = ['', 'units/', 'plans/', 'tables/', 'guides/', 'sources/', 'codes/'];
const pageKinds: readonly PageKind[] = ['families', 'profiles', 'plans', 'tables', 'guides', 'sources'];

/**
 * What a link address in the body of the entry in `file` means. A leading slash counts from the top of the
 * site (`/units/brasslight/`); without one it is the path of another entry’s file (`../families/brasslight.md`).
 */
export function targetOf(address: string, file: string): Target {
  const url = address.trim();
  if (url.startsWith('#')) return { to: 'anchor', id: decoded(url.slice(1)) };
  if (url.startsWith('//')) return { to: 'outside', scheme: '' };
  const scheme = /^([a-z][a-z0-9+.-]*):/i.exec(url)?.[1];
  if (scheme !== undefined) return { to: 'outside', scheme: scheme.toLowerCase() };
  const [, path = '', hash = ''] = /^([^?#]*)(?:\?[^#]*)?(?:#(.*))?$/s.exec(url) ?? [];
  if (path === '') return { to: 'nothing' };
  return path.startsWith('/') ? fromTop(path.slice(1), decoded(hash)) : fromFile(path, decoded(hash), file);
}

function fromTop(path: string, hash: string): Target {
  if (listPages.includes(path) || listPages.includes(`${path}/`)) return { to: 'page', path };
  const [folder = '', ...rest] = path.replace(/\/$/, '').split('/');
  const kind = Object.entries(pageFolders).find(([name]) => name === folder)?.[1];
  if (!kind || rest.length === 0) return { to: 'nothing' };
  const readings = kind === 'profiles' && rest.length === 3 && rest[2] === 'readings';
  return { to: 'entry', kind, id: (readings ? rest.slice(0, 2) : rest).join('/'), hash, readings };
}

function fromFile(path: string, hash: string, file: string): Target {
  const parts = file.split('/').slice(0, -1);
  for (const part of path.split('/')) {
    if (part === '..') {
      if (parts.pop() === undefined) return { to: 'nothing' };
    } else if (part !== '.') parts.push(part);
  }
  const [folder, ...rest] = parts;
  const kind = pageKinds.find((known) => known === folder);
  const id = /^(.+)\.(?:md|yaml)$/.exec(rest.join('/'))?.[1];
  return kind && id !== undefined ? { to: 'entry', kind, id, hash, readings: false } : { to: 'nothing' };
}

function decoded(hash: string): string {
  try {
    return decodeURIComponent(hash);
  } catch {
    return hash;
  }
}
