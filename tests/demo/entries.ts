/** Reads the committed demo content for the tests, without the program's own reader. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { type EntryData, entrySchemas, type Kind } from '../../schemas/index.ts';

export const contentFolder = join(import.meta.dirname, '../../content');

/** Every entry of a kind: id, text, and data that has passed its schema. @throws ZodError where one does not. */
export function entriesOf<K extends Exclude<Kind, 'site'>>(
  kind: K,
): { id: string; text: string; body: string; data: EntryData<K> }[] {
  const folder = join(contentFolder, kind);
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(md|yaml)$/.test(path))
    .map((path) => {
      const text = readFileSync(join(folder, path), 'utf8');
      const [, frontMatter = '', ...body] = path.endsWith('.md') ? text.split(/^---$/m) : ['', text];
      return {
        id: path.replaceAll('\\', '/').replace(/(\/session)?\.(md|yaml)$/, ''),
        text,
        body: body.join('---'),
        data: entrySchemas[kind].parse(parse(frontMatter)) as EntryData<K>,
      };
    });
}
