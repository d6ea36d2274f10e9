/** Where a new entry belongs: its name, its file, and the way from there to the schema that editors read. */
import { existsSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { entrySchemaFiles } from '../../../schemas/json-schemas.ts';
import type { Kind } from '../../../schemas/kinds.ts';
import { CannotRun, fileOfEntry, isEntryId } from '../../base/index.ts';
import { idFor } from '../../tables/dmn/index.ts';
import type { EntryAnswers } from './answers.ts';

/** Words are begun with `readback words`, which lists the texts there are. */
export type NewKind = Exclude<Kind, 'site' | 'words'>;

/** The fields an entry is named by where no name is given. */
const namedBy: Readonly<Record<NewKind, readonly string[]>> = {
  families: ['name'],
  sequences: ['family', 'name'],
  profiles: ['code'],
  outputs: ['date', 'bench'],
  sources: ['title'],
  statements: ['source'],
  guides: ['title'],
  plans: ['name'],
  tables: ['name'],
  equipment: ['name'],
  exceptions: ['rule', 'file'],
};

/** A longer name is cut at a word. */
const longestName = 60;

/** The name of an entry, as it follows from its fields; undefined while they are not known. */
export function usualName(kind: NewKind, answers: EntryAnswers): string | undefined {
  const parts = namedBy[kind].map((name) => answers[name]);
  if (parts.includes(undefined)) return undefined;
  const name = idFor(parts.join(' ').toLowerCase());
  if (name.length <= longestName) return name;
  return name.slice(0, name.lastIndexOf('-', longestName) + 1 || longestName).replace(/-$/, '');
}

/**
 * The file of an entry by this name, below the content folder. A profile lies with its family.
 * @throws CannotRun where the name cannot stand in an address.
 */
export function fileFor(kind: NewKind, name: string, answers: EntryAnswers): string {
  if (!isEntryId(name)) {
    throw new CannotRun(
      `“${name}” cannot name an entry: it stands in an address.`,
      'Use lower-case letters, digits and single hyphens, such as front-left.',
    );
  }
  return fileOfEntry(kind, kind === 'profiles' ? `${String(answers.family)}/${name}` : name);
}

/** Where copies of the schemas lie, seen from the folder that holds the content: a shop’s repository, and this one. */
const schemaFolders = ['.vscode/schemas', 'schemas/json'];

/** The schema of a kind as a file below the content folder names it; the program’s own where no copy lies near. */
export function schemaAddress(content: string, kind: NewKind, file: string): string {
  const above = dirname(resolve(content));
  const near = schemaFolders
    .map((folder) => join(above, folder, entrySchemaFiles[kind]))
    .find((path) => existsSync(path));
  const own = fileURLToPath(new URL(`../../../schemas/json/${entrySchemaFiles[kind]}`, import.meta.url));
  return relative(dirname(join(resolve(content), file)), near ?? own)
    .split(sep)
    .join('/');
}
