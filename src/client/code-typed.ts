/** The known code that was typed right: for the planner, which loads this when a code is typed. */
import { type CodeEntry, canonicalCode, fileName, filesWanted } from '../codes/index.ts';
import { filesOf } from '../views/code-directory-format.ts';
import { type CodesFile, entriesOf, isWholeList } from '../views/code-list-format.ts';
import { codeFilePath, codeListPath } from '../views/paths.ts';
import { CodeFiles } from './code-list.ts';

let files: CodeFiles | undefined;

/**
 * However it is spelled, of a unit or, where none is given, of any.
 * @param base the address of the site, with a slash at its end
 * @throws where a file cannot be loaded.
 */
export async function codeTyped(
  base: string,
  canonical: string,
  unit: string | undefined,
): Promise<CodeEntry | undefined> {
  const like = (await codesNear(base, canonical)).filter((one) =>
    [one.code, ...one.otherSpellings].some((code) => canonicalCode(code) === canonical),
  );
  return unit === undefined ? like[0] : like.find(({ family }) => family === unit);
}

async function codesNear(base: string, canonical: string): Promise<CodeEntry[]> {
  files ??= new CodeFiles(base);
  const list = await files.json<CodesFile>(codeListPath);
  if (isWholeList(list)) return entriesOf(list);
  if (canonical === '') return [];
  const { first } = filesWanted(filesOf(list), 'begin', canonical);
  return files.entries(first.map((one) => codeFilePath(fileName(one))));
}
