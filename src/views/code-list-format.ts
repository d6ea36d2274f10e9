/** The form of the list of codes that is sent to a phone: packed for a small file, unpacked for the lookup. */
import { type CodeEntry, canonicalCode, type Display, type ListedFile } from '../codes/index.ts';

/** The codes of one family. What can be worked out is left out. */
export interface FamilyCodes {
  readonly id: string;
  readonly name: string;
  readonly display: Display;
  /** As displayed, one a line. */
  readonly codes: string;
  /** The last part of the profile’s id where it is not the code in small letters, by the code's place. */
  readonly slugs?: Readonly<Record<number, string>>;
  /** Other spellings, by the code's place. */
  readonly otherSpellings?: Readonly<Record<number, readonly string[]>>;
}

export type CodeList = readonly FamilyCodes[];

/**
 * `codes.json` of a base whose list is too long to be sent whole: what is known of all codes together, and the files they
 * lie in (see `src/codes/code-files.ts`).
 */
export interface CodeDirectory {
  /** `size`: characters of the unit’s own list. */
  readonly families: readonly (readonly [id: string, name: string, codes: number, size: number])[];
  /** Which characters stand where in the codes of a family that are equally long; without a family: of all the rest. */
  readonly lengths: readonly (readonly [family: string, length: number, codes: number, positions: string])[];
  readonly files: readonly (readonly [
    side: ListedFile['side'],
    key: string,
    parts: number,
    codes: number,
    size: number,
  ])[];
}

/** `codes.json`: the list itself while it is short. */
export type CodesFile = CodeList | CodeDirectory;

/** Whether `codes.json` is the list itself. */
export function isWholeList(file: CodesFile): file is CodeList {
  return Array.isArray(file);
}

/** The sentence of each code by the id of its profile: of all, or of those in one file. */
export type CodeSentences = Readonly<Record<string, string>>;

/** A code with what the list says of it. */
export interface ListedCode {
  readonly code: string;
  /** Id of the profile, `family/slug`. */
  readonly profile: string;
  readonly otherSpellings: readonly string[];
}

/** Puts the codes of a family into as little as they need. */
export function familyCodes(
  family: { readonly id: string; readonly name: string; readonly display: Display },
  listed: readonly ListedCode[],
): FamilyCodes {
  const slugs: Record<number, string> = {};
  const otherSpellings: Record<number, readonly string[]> = {};
  listed.forEach((one, at) => {
    const slug = one.profile.slice(family.id.length + 1);
    if (slug !== slugOf(one.code)) slugs[at] = slug;
    if (one.otherSpellings.length > 0) otherSpellings[at] = one.otherSpellings;
  });
  return {
    ...family,
    codes: listed.map(({ code }) => code).join('\n'),
    ...(Object.keys(slugs).length > 0 && { slugs }),
    ...(Object.keys(otherSpellings).length > 0 && { otherSpellings }),
  };
}

/** The codes of a list as the lookup takes them, in the list's order. */
export function entriesOf(list: CodeList): CodeEntry[] {
  return list.flatMap(({ id, display, codes, slugs, otherSpellings }) =>
    codes
      .split('\n')
      .filter((code) => code !== '')
      .map(
        (code, at): CodeEntry => ({
          code,
          family: id,
          profile: `${id}/${slugs?.[at] ?? slugOf(code)}`,
          otherSpellings: otherSpellings?.[at] ?? [],
          display,
        }),
      ),
  );
}

/** How profiles are mostly named: the code in small letters, a hyphen for each separator. */
const slugOf = (code: string): string =>
  canonicalCode(code) === '' ? '' : code.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
