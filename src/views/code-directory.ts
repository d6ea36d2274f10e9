/** How the list of codes is sent: whole while it is short, else in files of which a lookup needs few. */
import {
  type CodeEntry,
  type CodeFile,
  canonicalCode,
  fileCodes,
  fileName,
  Positions,
  sides,
} from '../codes/index.ts';
import { sentenceFileOf } from './code-directory-format.ts';
import {
  type CodeDirectory,
  type CodeList,
  type CodeSentences,
  type CodesFile,
  entriesOf,
  familyCodes,
} from './code-list-format.ts';
import { codeFilePath, codeListPath, unitCodesPath } from './paths.ts';

/** A list of more characters is sent in files: about 30 kB compressed, 6,000 codes. */
const mostCharactersOfList = 60_000;
/** Codes in one file: about 3 kB compressed. */
const codesInFile = 600;
/** Families and lengths of which the directory tells the characters one by one, those with most codes; the others it sums up. */
const mostLengths = 64;

/** The files a list and its sentences are sent in, by their paths below the base path. */
export function codeFiles(list: CodeList, sentences: CodeSentences): Map<string, CodesFile | CodeSentences> {
  const all = Object.entries(sentences);
  const sent = new Map<string, CodesFile | CodeSentences>();
  const inFile = Map.groupBy(all, ([profile]) => sentenceFileOf(profile, all.length));
  for (const [path, some] of inFile) sent.set(path, Object.fromEntries(some));
  if (JSON.stringify(list).length <= mostCharactersOfList) return sent.set(codeListPath, list);
  const entries = entriesOf(list);
  const files = sides.flatMap((side) => fileCodes(entries, side, codesInFile));
  for (const file of files) sent.set(codeFilePath(nameOf(file)), listOf(file.entries, list));
  for (const unit of list) sent.set(unitCodesPath(unit.id), [unit]);
  const sizeOf = (path: string): number => JSON.stringify(sent.get(path)).length;
  return sent.set(codeListPath, {
    families: list.map(({ id, name }) => [
      id,
      name,
      entries.filter(({ family }) => family === id).length,
      sizeOf(unitCodesPath(id)),
    ]),
    lengths: lengthsOf(entries),
    files: [...Map.groupBy(files, ({ side, key }) => `${side} ${key}`).values()].map((parts) => {
      const { side, key } = parts[0] as CodeFile;
      const size = Math.max(...parts.map((file) => sizeOf(codeFilePath(nameOf(file)))));
      return [side, key, parts.length, parts.reduce((sum, { entries: some }) => sum + some.length, 0), size];
    }),
  });
}

/** What characters stand where: of each family and length with most codes, and of all the rest together. */
function lengthsOf(entries: readonly CodeEntry[]): CodeDirectory['lengths'] {
  const codes = entries.map(({ family, code }) => ({ family, code: canonicalCode(code) }));
  const alike = [...Map.groupBy(codes, ({ family, code }) => `${code.length} ${family}`).values()].sort(
    (a, b) => b.length - a.length,
  );
  const rest = Map.groupBy(alike.slice(mostLengths).flat(), ({ code }) => code.length);
  const told = (family: string, some: readonly { readonly code: string }[]) => {
    const written = some.map(({ code }) => code);
    return [family, written[0]?.length ?? 0, written.length, Positions.of(written).packed()] as const;
  };
  return [
    ...alike.slice(0, mostLengths).map((some) => told(some[0]?.family ?? '', some)),
    ...[...rest.values()].map((some) => told('', some)),
  ];
}

function nameOf({ side, key, part, parts }: CodeFile): string {
  return fileName({ file: { side, key, parts, codes: 0, size: 0 }, part });
}

/** Some codes in the form of the list, family by family. */
function listOf(entries: readonly CodeEntry[], list: CodeList): CodeList {
  const ofFamily = Map.groupBy(entries, ({ family }) => family);
  return list.flatMap(({ id, name, display }) => {
    const own = ofFamily.get(id);
    return own ? [familyCodes({ id, name, display }, own)] : [];
  });
}
