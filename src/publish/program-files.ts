/** Writes what programs read: the planner’s data, the documents of the API, the data package, the feed of changes. */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
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

/** These files of a site that is being built. */
export class ProgramFiles {
  readonly #folder: string;
  /** Those about one profile, by profile, and the others: not written yet. */
  readonly #waiting: Map<string | undefined, PublishedFile[]>;
  readonly #last: (write: (file: PublishedFile) => WrittenFile) => void;
  readonly #bytes = new FileBytes();
  #count = 0;

  private constructor(
    folder: string,
    documents: readonly PublishedFile[],
    last: (write: (file: PublishedFile) => WrittenFile) => void,
  ) {
    this.#folder = folder;
    this.#waiting = Map.groupBy(documents, ({ profile }) => profile);
    this.#last = last;
  }

  /** For a folder; `since` is what the feed tells of. */
  static async of(
    folder: string,
    answers: Answers,
    published: Published,
    since: SinceRevision | undefined,
  ): Promise<ProgramFiles> {
    return new ProgramFiles(folder, await documentsOf(answers, published), (write) => {
      const resources = dataResources(answers);
      const written = new Map(resources.map((resource) => [resource.path, write(resource)]));
      write(dataPackage(answers, published, resources, written));
      write(changesFeed(answers, published, since));
    });
  }

  /** Writes the files about a profile, once: best while its output is at hand. */
  writeAbout(profile: string): void {
    for (const document of this.#waiting.get(profile) ?? []) this.#write(document);
    this.#waiting.delete(profile);
  }

  /** Writes what is not written yet, one file at a time, and says how many there are in all. */
  async writeRest(): Promise<number> {
    for (const [about, documents] of this.#waiting) {
      for (const document of documents) this.#write(document);
      this.#waiting.delete(about);
      // What was made for one profile is garbage by now: a pause lets it be collected.
      await setImmediate();
    }
    this.#last((file) => {
      const content = this.#write(file);
      return { bytes: content.length, sha256: createHash('sha256').update(content).digest('hex') };
    });
    return this.#count;
  }

  /** Gives the bytes, good until the next file. */
  #write({ path, text }: PublishedFile): Buffer {
    this.#count += 1;
    return this.#bytes.write(join(this.#folder, path), text());
  }
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
