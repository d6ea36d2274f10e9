/** The list that codes are looked up in, as small as it can be sent to a phone. */
import type { Answers } from '../answers.ts';
import { sentenceText } from './answer-sentence.ts';
import { profilePath } from './paths.ts';
import { sentenceOf } from './profile-page.ts';

/** One code: as displayed, index of its family, path of its page, answer, other spellings. */
export type CodeRow = readonly [
  code: string,
  family: number,
  path: string,
  sentence: string,
  otherSpellings: readonly string[],
];

export interface CodeList {
  /** Names of the families. */
  readonly families: readonly string[];
  readonly codes: readonly CodeRow[];
}

/** Every code of the base with its one-sentence answer, family by family. */
export function codeList(answers: Answers): CodeList {
  const { base } = answers;
  const families = [...base.families.values()];
  return {
    families: families.map((family) => family.data.name),
    codes: families.flatMap((family, index) =>
      (base.profilesOfFamily.get(family.id) ?? []).map(
        (profile): CodeRow => [
          profile.data.code,
          index,
          profilePath(profile.id),
          sentenceText(sentenceOf(answers, profile) ?? []),
          profile.data.otherSpellings,
        ],
      ),
    ),
  };
}
