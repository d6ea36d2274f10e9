/** Writes what programs read: the planner’s data, the documents of the API, the data package, the feed of changes. */
import { createHash } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Answers } from '../answers.ts';
import { apiFiles } from '../views/api/files.ts';
import type { SinceRevision } from '../views/changes/compare.ts';
import { changesFeed } from '../views/changes/feed.ts';
import { dataPackage, dataResources, type WrittenFile } from '../views/data/package.ts';
import { apiPath, changesPath, dataPackagePath, dataPath } from '../views/paths.ts';
import { plannerFiles } from '../views/planner-files.ts';
import type { Published, PublishedFile } from '../views/published-file.ts';
import { tableFiles } from '../views/table-files.ts';
import { FileBytes } from './file-bytes.ts';

/** Writes them all into a folder, one at a time, and says how many; `since` is what the feed tells of. */
export async function writeProgramFiles(
  folder: string,
  answers: Answers,
  published: Published,
  since: SinceRevision | undefined,
): Promise<number> {
  const files = new FileBytes();
  const folders = new Set<string>();
  const write = ({ path, text }: PublishedFile): WrittenFile => {
    const within = dirname(join(folder, path));
    if (!folders.has(within)) mkdirSync(within, { recursive: true });
    folders.add(within);
    const content = files.write(join(folder, path), text());
    return { bytes: content.length, sha256: createHash('sha256').update(content).digest('hex') };
  };
  const documents = await documentsOf(answers, published);
  for (const about of Map.groupBy(documents, ({ profile }) => profile).values()) {
    for (const document of about) write(document);
    // What was made for one profile is garbage by now: a pause lets it be collected.
    await setImmediate();
  }
  const resources = dataResources(answers);
  const written = new Map<string, WrittenFile>();
  for (const resource of resources) written.set(resource.path, write(resource));
  write(dataPackage(answers, published, resources, written));
  write(changesFeed(answers, published, since));
  return documents.length + resources.length + 2;
}

/** The same files for a server that makes them when they are asked for, by path; without sizes and digests. */
export async function programFiles(
  answers: Answers,
  published: Published,
): Promise<ReadonlyMap<string, PublishedFile>> {
  const resources = dataResources(answers);
  const all = [
    ...(await documentsOf(answers, published)),
    ...resources,
    dataPackage(answers, published, resources, new Map()),
    changesFeed(answers, published, undefined),
  ];
  return new Map(all.map((file) => [file.path, file]));
}

async function documentsOf(answers: Answers, published: Published): Promise<PublishedFile[]> {
  return [...plannerFiles(answers), ...apiFiles(answers, published, await formsOfTables(answers))];
}

async function formsOfTables(answers: Answers): Promise<Map<string, ('dmn' | 'csv')[]>> {
  return new Map((await tableFiles(answers)).map(([id, { files }]) => [id, files.map(({ form }) => form)]));
}

const plannerFile = /^(?:(?:units|profiles)\/.+\/)?planner\.json$/;

/** What a file at this path is served as; undefined where none of these files can be there. */
export function contentTypeOf(path: string): string | undefined {
  if (path.startsWith(apiPath) && path.endsWith('.json')) return 'application/json';
  if (plannerFile.test(path)) return 'application/json';
  if (path === changesPath) return 'application/atom+xml;charset=utf-8';
  if (path === dataPackagePath) return 'application/json';
  return path.startsWith(dataPath) && path.endsWith('.csv') ? 'text/csv;charset=utf-8' : undefined;
}
