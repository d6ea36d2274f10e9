/** `readback init DIR`: begins a content repository. */
import { join, resolve } from 'node:path';
import type { InitResult } from '../../../schemas/results/init.ts';
import { exitCodes, type JsonOption, type Output, printJson } from '../command.ts';
import { contentFolder, starterFiles } from '../starter/files.ts';
import { fillFolder } from './whole-folder.ts';

/** 0 written, 2 could not run. */
export async function init(folder: string, options: JsonOption, output: Output): Promise<number> {
  const files = await starterFiles();
  await fillFolder(folder, files);
  if (options.json) {
    const root = resolve(folder);
    const result: InitResult = { folder: root, content: join(root, contentFolder), files: [...files.keys()] };
    printJson(output, result);
    return exitCodes.ok;
  }
  output.out(`Began a content repository in ${folder}: ${files.size} files, every one yours to change.
Its entries are invented; the check finds nothing wrong with them, so what it finds will be new.

  readback serve --content ${join(folder, contentFolder)}
  → look at the site, and read ${join(folder, 'CONTRIBUTING.md')} next.`);
  return exitCodes.ok;
}
