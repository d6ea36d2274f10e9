/** The example base of the rules, in memory, with a mistake or an addition made in it. */
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { MemoryFiles } from '../../src/base/index.ts';

const folder = new URL('../../src/check/example-base/', import.meta.url).pathname;

/** Every file of a folder by its path below it. */
export async function filesOf(root: string): Promise<Map<string, string>> {
  const entries = await readdir(root, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  return new Map(
    await Promise.all(
      files.map(
        async (file): Promise<[string, string]> => [
          relative(root, file).split(sep).join('/'),
          await readFile(file, 'utf8'),
        ],
      ),
    ),
  );
}

export const exampleFiles: ReadonlyMap<string, string> = await filesOf(folder);

export interface TextEdit {
  readonly file: string;
  /** Text that stands in the file once; empty to make the file. */
  readonly good: string;
  readonly bad: string;
}

/** The example base with edits made; fails where an edit does not find its text exactly once. */
export function editedExample(edits: readonly TextEdit[]): MemoryFiles {
  const files = new Map(exampleFiles);
  for (const { file, good, bad } of edits) {
    const before = files.get(file);
    if (good === '') {
      if (before !== undefined) throw new Error(`${file} is there already`);
      files.set(file, bad);
      continue;
    }
    const parts = (before ?? '').split(good);
    if (parts.length !== 2)
      throw new Error(`“${good}” occurs ${parts.length - 1} times in ${file}, not once`);
    files.set(file, parts.join(bad));
  }
  return new MemoryFiles('example', files);
}

/** The text of a file after edits. */
export function textOf(files: MemoryFiles, file: string): string {
  return files.read(file).source.text;
}
