/** Writes schemas/json/ afresh: `npm run schemas`. A test fails where the files have drifted. */
import { mkdir, rm, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { jsonSchemaFiles } from './json-schemas.ts';

const folder = new URL('json/', import.meta.url);
await rm(folder, { recursive: true, force: true });
await mkdir(folder, { recursive: true });
for (const [name, text] of jsonSchemaFiles()) await writeFile(new URL(name, folder), text);
console.log(`Wrote ${jsonSchemaFiles().size} JSON Schema files to ${fileURLToPath(folder)}`);
