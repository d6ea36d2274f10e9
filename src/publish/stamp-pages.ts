/** Puts version, date and content policy into the finished pages, and gives every file a digest. */
import { createHash, randomBytes } from 'node:crypto';
import { closeSync, openSync, writeSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { anyMark, digestMark, stamps } from '../views/stamps.ts';
import { longDate } from '../views/wording.ts';
import { type PolicyDigests, pagePolicy, policyDigests } from './content-policy.ts';
import { byteCharacters, FileBytes } from './file-bytes.ts';
import { inlineParts } from './inline-parts.ts';
import { searchFolder } from './search-index.ts';

/** A file of the site. */
export interface SiteFile {
  /** Below the base path, with forward slashes. */
  readonly path: string;
  readonly bytes: number;
  /** Another where the file as it is published is another; that of a page follows from what it says and the version. */
  readonly digest: string;
  /** Of what it says, whatever the date and the version of the site: what tells that a page has changed. */
  readonly revision: string;
}

export interface StampedSite {
  /** Changes with any file and with the date. */
  readonly version: string;
  readonly files: readonly SiteFile[];
  /** What stands within each page and may run there. */
  readonly policies: readonly PolicyDigests[];
}

/**
 * Reads every file of a finished site but the index of words, which may be written meanwhile, and rewrites its pages.
 * `date` is ISO 8601. The version follows from all pages and stands in each: at first its place is kept free in all, then
 * filled, so that pages are made once and none is kept.
 * Pages go through as they lie, a character for each byte: marks and tags are ASCII, and nothing else is read.
 */
export async function stampPages(folder: string, date: string): Promise<StampedSite> {
  const names = (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => !path.startsWith(searchFolder))
    .sort();
  const bytes = new FileBytes();
  const files: SiteFile[] = [];
  for (const path of names.filter((name) => !name.endsWith('.html'))) {
    const content = bytes.read(join(folder, path));
    const digest = digestOf(content);
    files.push({ path, bytes: content.length, digest, revision: digest });
  }
  const digests = new Map(files.map(({ path, digest }) => [path, digest]));
  const dateInWords = byteCharacters(longDate(date));
  const undated = { day: '1970-01-01', words: byteCharacters(longDate('1970-01-01')) };
  const pages: StampedPage[] = [];
  for (const path of names.filter((name) => name.endsWith('.html'))) {
    const parts = bytes.readCharacters(join(folder, path)).split(anyMark);
    // What a page may load follows from the rest of it, and is left out of what it says.
    const undatedWords = { version: 'version', date: undated.day, dateInWords: undated.words };
    const revision = digestOf(...filled(path, parts, digests, undatedWords));
    const stretches = filled(path, parts, digests, { version: placeOfVersion, date, dateInWords });
    const page = stretches.join('');
    const { scripts, styles } = inlineParts(page);
    if ([...scripts, ...styles].some((part) => part.includes(placeOfVersion))) {
      throw new Error(`${path} has its version in a script or style, which its policy then cannot name.`);
    }
    const policy = policyDigests({ scripts, styles });
    const stated = withPolicy(page, parts, stretches, pagePolicy(policy));
    const size = bytes.writeCharacters(join(folder, path), stated);
    pages.push({
      path,
      size,
      revision,
      policy,
      versionAt: placesIn(stated, placeOfVersion),
    });
  }
  const version = digestOf(
    byteCharacters(
      [
        date,
        ...[...digests].map(([path, digest]) => `${path} ${digest}`),
        ...pages.map(({ path, revision }) => `${path} ${revision}`),
      ].join('\n'),
    ),
  );
  for (const { path, size, revision, versionAt } of pages) {
    fillIn(join(folder, path), versionAt, version);
    files.push({ path, bytes: size, digest: digestOf(`${revision} ${version}`), revision });
  }
  return { version, files, policies: pages.map(({ policy }) => policy) };
}

/** A page that waits for its version. */
interface StampedPage {
  readonly path: string;
  /** In bytes. */
  readonly size: number;
  readonly revision: string;
  readonly policy: PolicyDigests;
  /** Where the version stands, in bytes. */
  readonly versionAt: readonly number[];
}

const digestLength = 12;

/** Stands where the version will: as long, and made anew in each run, as the marks are. */
const placeOfVersion = randomBytes(digestLength / 2).toString('hex');

/** What stands for the marks, digests left out. */
interface Words {
  readonly version: string;
  readonly date: string;
  readonly dateInWords: string;
}

/** A page’s stretches, with the words in place of its marks, which are every second part; that of the policy is empty. */
function filled(
  page: string,
  parts: readonly string[],
  digests: ReadonlyMap<string, string>,
  { version, date, dateInWords }: Words,
): string[] {
  const words = new Map<string, string>([
    [stamps.version, version],
    [stamps.date, date],
    [stamps.dateInWords, dateInWords],
    [stamps.contentPolicy, ''],
  ]);
  const wordFor = (mark: string): string => {
    const word = words.get(mark);
    if (word !== undefined) return word;
    const [, file = ''] = digestMark.exec(mark) ?? [];
    const digest = digests.get(file);
    if (!digest) throw new Error(`${page} names the file ${file}, which the site does not have.`);
    return digest;
  };
  return parts.map((part, index) => (index % 2 === 0 ? part : wordFor(part)));
}

/** A page with its policy where the mark of it was. */
function withPolicy(
  page: string,
  parts: readonly string[],
  stretches: readonly string[],
  policy: string,
): string {
  let [stated, from, at] = ['', 0, 0];
  for (const [index, stretch] of stretches.entries()) {
    if (parts[index] === stamps.contentPolicy) {
      stated += page.slice(from, at) + policy;
      from = at;
    }
    at += stretch.length;
  }
  return stated + page.slice(from);
}

function placesIn(content: string, word: string): number[] {
  const places: number[] = [];
  for (let at = content.indexOf(word); at !== -1; at = content.indexOf(word, at + 1)) places.push(at);
  return places;
}

/** Puts the version where its place was kept free. */
function fillIn(path: string, places: readonly number[], version: string): void {
  const file = openSync(path, 'r+');
  try {
    for (const at of places) writeSync(file, version, at);
  } finally {
    closeSync(file);
  }
}

/**
 * Of bytes, or of texts with a character for each byte. Short, as it is sent for every page of a family; long enough to
 * tell the versions of one page apart.
 */
function digestOf(...contents: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256');
  for (const content of contents) {
    if (typeof content === 'string') hash.update(content, 'latin1');
    else hash.update(content);
  }
  return hash.digest('hex').slice(0, digestLength);
}
