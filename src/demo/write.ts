/**
 * Writes the machine-made part of the demo: `node src/demo/write.ts [--content DIR]`.
 * What is written by hand (families, sequences, guides, plans, other sources, site.yaml) is left alone.
 */

import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { benchSourceId } from '../base/bench-source-id.ts';
import { benchSourceText, profileText, readingsText, sessionText, statementText } from './entries.ts';
import { sheetOf } from './sheet.ts';
import { profiles, sessions } from './world/index.ts';
import { demoStatements } from './world/statements.ts';

/** Every machine-made file: path below the content folder, and its text. */
export function machineMadeFiles(): Map<string, string> {
  const files = new Map<string, string>();
  for (const placed of profiles) files.set(`profiles/${placed.id}.yaml`, profileText(placed));
  for (const session of sessions) {
    files.set(`outputs/${session.id}/session.yaml`, sessionText(session));
    files.set(`outputs/${session.id}/readings.csv`, readingsText(session, sheetOf(session)));
    files.set(`sources/${benchSourceId(session.id)}.yaml`, benchSourceText(session));
  }
  for (const statement of demoStatements())
    files.set(`statements/${statement.id}.yaml`, statementText(statement));
  return files;
}

/** Writes them all below `folder` and gives their number. */
export async function writeDemo(folder: string): Promise<number> {
  const files = machineMadeFiles();
  for (const [path, text] of files) {
    const file = join(folder, path);
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, text);
  }
  return files.size;
}

if (import.meta.main) {
  const { values } = parseArgs({ options: { content: { type: 'string', default: 'content' } } });
  const count = await writeDemo(values.content);
  console.log(`${count} files of the demo written to ${values.content}.`);
}
