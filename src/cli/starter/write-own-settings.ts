/** Writes .vscode/settings.json of this repository: `npm run schemas`. A test fails where it has drifted. */
import { mkdir, writeFile } from 'node:fs/promises';
import { editorSettings } from './editor-settings.ts';

const folder = new URL('../../../.vscode/', import.meta.url);
await mkdir(folder, { recursive: true });
await writeFile(new URL('settings.json', folder), editorSettings('schemas/json'));
