/** Puts version, date and content policy into the finished pages, and gives every file a digest. */
import { createHash } from 'node:crypto';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { digestMark, stamps } from '../views/stamps.ts';
import { longDate } from '../views/wording.ts';
import { type PolicyDigests, pagePolicy, policyDigests } from './content-policy.ts';
import { inlineParts } from './inline-parts.ts';

/** A file of the site. */
export interface SiteFile {
  /** Below the base path, with forward slashes. */
  readonly path: string;
  readonly bytes: number;
  /** Of the file as it is published. */
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

/** Reads every file of a finished site, and rewrites its pages. `date` is ISO 8601. */
export async function stampPages(folder: string, date: string): Promise<StampedSite> {
  const names = (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .map((path) => path.replaceAll('\\', '/'))
    .sort();
  const files: SiteFile[] = [];
  for (const path of names.filter((name) => !name.endsWith('.html'))) {
    const content = await readFile(join(folder, path));
    const digest = digestOf(content);
    files.push({ path, bytes: content.length, digest, revision: digest });
  }
  const digests = new Map(files.map(({ path, digest }) => [path, digest]));
  const read = async (path: string): Promise<string> =>
    (await readFile(join(folder, path), 'utf8')).replace(digestMark, (_, file: string) => {
      const digest = digests.get(file);
      if (!digest) throw new Error(`${path} names the file ${file}, which the site does not have.`);
      return digest;
    });

  // Twice over the pages rather than once with all of them in memory: the first for what they say.
  const revisions = new Map<string, string>();
  for (const path of names.filter((name) => name.endsWith('.html'))) {
    // What a page may load follows from the rest of it, and is left out here.
    const text = worded(await read(path), 'version', '1970-01-01').replaceAll(stamps.contentPolicy, '');
    revisions.set(path, digestOf(text));
  }
  const version = digestOf(
    [date, ...[...digests, ...revisions].map(([path, digest]) => `${path} ${digest}`)].join('\n'),
  );
  const policies: PolicyDigests[] = [];
  for (const [path, revision] of revisions) {
    const { html, policy } = stamped(await read(path), version, date);
    policies.push(policy);
    await writeFile(join(folder, path), html);
    files.push({ path, bytes: Buffer.byteLength(html), digest: digestOf(html), revision });
  }
  return { version, files, policies };
}

/** A page with the words in place of its marks, and what its policy names. */
function stamped(html: string, version: string, date: string): { html: string; policy: PolicyDigests } {
  const text = worded(html, version, date);
  const policy = policyDigests(inlineParts(text));
  return { html: text.replaceAll(stamps.contentPolicy, pagePolicy(policy)), policy };
}

function worded(html: string, version: string, date: string): string {
  return html
    .replaceAll(stamps.version, version)
    .replaceAll(stamps.date, date)
    .replaceAll(stamps.dateInWords, longDate(date));
}

/** Short, as it is sent for every page of a family; long enough to tell the versions of one page apart. */
function digestOf(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex').slice(0, 12);
}
