/** What a phone makes of the directory of a long list of codes, and where the sentences are. */
import { type FamilyLength, type ListedFile, Positions, partOf, type WholeList } from '../codes/index.ts';
import type { CodeDirectory } from './code-list-format.ts';
import { codeSentencesPath, lookupFolder } from './paths.ts';

/** What a directory says of the whole list. */
export function wholeListOf({ families, lengths }: CodeDirectory): WholeList {
  return {
    familySizes: new Map(families.map(([id, , codes]) => [id, codes])),
    familyLengths: lengths.map(
      ([family, length, count, positions]): FamilyLength => ({
        family,
        length,
        count,
        positions: Positions.unpacked(positions, count),
      }),
    ),
  };
}

/** The files of a directory. */
export function filesOf({ files }: CodeDirectory): ListedFile[] {
  return files.map(([side, key, parts, codes, size]) => ({ side, key, parts, codes, size }));
}

/** With more profiles than this their sentences are in files of about so many. */
const mostSentencesInAll = 300;
const sentencesInFile = 32;

/** The file, below the base path, with the sentence of a profile that is one of so many. */
export function sentenceFileOf(profile: string, profiles: number): string {
  if (profiles <= mostSentencesInAll) return codeSentencesPath;
  const files = Math.ceil(profiles / sentencesInFile);
  return `${lookupFolder}sentences-${partOf(profile, files) + 1}of${files}.json`;
}
