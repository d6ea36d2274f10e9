/** The files a content repository begins with, as texts by their path in it. */
import { readFile } from 'node:fs/promises';
import { jsonSchemaFiles } from '../../../schemas/json-schemas.ts';
import { editorSchemas, editorSettings } from './editor-settings.ts';
import { siteFile } from './site-file.ts';

/** The folder of a content repository that holds site.yaml and the entries, as the workflow has it. */
export const contentFolder = 'content';

/**
 * What is taken of the example base of the check: one family and all that belongs to it. It is without fault, and
 * stays so, because the rules show their examples on it.
 */
const entries = [
  'families/moorlight.md',
  'sequences/moorlight-menu.yaml',
  'profiles/moorlight/km-4417.yaml',
  'profiles/moorlight/kn-2093.yaml',
  'outputs/2025-05-shed/session.yaml',
  'outputs/2025-05-shed/readings.csv',
  'sources/maker-bulletin.yaml',
  'sources/shed-session.yaml',
  'plans/two-channel.yaml',
  'tables/behind-an-amplifier.yaml',
  'equipment/four-channels.yaml',
  'guides/reading-a-code.md',
] as const;

/** Every file, in the order of their paths. */
export async function starterFiles(): Promise<ReadonlyMap<string, string>> {
  const schemas = jsonSchemaFiles();
  const files: [path: string, text: string][] = [
    ['.github/workflows/check.yml', await textOf('../../check/workflow/check.yml')],
    ['.gitignore', await textOf('gitignore')],
    ['.vscode/settings.json', editorSettings()],
    ['CONTRIBUTING.md', await textOf('CONTRIBUTING.md')],
    [`${contentFolder}/site.yaml`, siteFile()],
  ];
  for (const { file, path } of editorSchemas) files.push([path, schemas.get(file) ?? '']);
  for (const entry of entries) {
    files.push([`${contentFolder}/${entry}`, await textOf(`../../check/example-base/${entry}`)]);
  }
  return new Map(files.sort(([a], [b]) => (a < b ? -1 : 1)));
}

async function textOf(path: string): Promise<string> {
  return await readFile(new URL(path, import.meta.url), 'utf8');
}
