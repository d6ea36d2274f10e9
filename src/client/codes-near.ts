/** The codes one may be, from a list that is not sent whole: loaded where such a code is typed right. */
import { type CodeEntry, fileName, filesWanted } from '../codes/index.ts';
import { filesOf } from '../views/code-directory-format.ts';
import type { CodeDirectory } from '../views/code-list-format.ts';
import { codeFilePath } from '../views/paths.ts';
import type { CodeFiles } from './code-list.ts';

/** @throws where a file cannot be loaded. */
export async function codesNear(
  files: CodeFiles,
  directory: CodeDirectory,
  canonical: string,
): Promise<CodeEntry[]> {
  if (canonical === '') return [];
  const { first } = filesWanted(filesOf(directory), 'begin', canonical);
  return files.entries(first.map((one) => codeFilePath(fileName(one))));
}
