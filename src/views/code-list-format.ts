/** The form of the list of codes that is sent to a phone: packed for a small file, unpacked for the lookup. */
import { type CodeEntry, canonicalCode, type Display } from '../codes/index.ts';

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

/** The sentence of each code, in the order of the list. */
export type CodeSentences = readonly string[];

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
