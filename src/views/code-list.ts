/** The list that codes are looked up in, and the answers shown with them. */
import type { Answers } from '../answers.ts';
import { sentenceText } from './answer-sentence.ts';
import { type CodeList, type CodeSentences, familyCodes } from './code-list-format.ts';
import { sentenceOf } from './profile-page.ts';

/** Every code of the base, family by family. */
export function codeList(answers: Answers): CodeList {
  const { base } = answers;
  return [...base.families.values()].map(({ id, data }) =>
    familyCodes(
      { id, name: data.name, display: data.face.screen.display },
      (base.profilesOfFamily.get(id) ?? []).map((profile) => ({
        code: profile.data.code,
        profile: profile.id,
        otherSpellings: profile.data.otherSpellings,
      })),
    ),
  );
}

/** The one-sentence answer of every code. */
export function codeSentences(answers: Answers): CodeSentences {
  return Object.fromEntries(
    [...answers.base.profiles.values()].map((profile) => [
      profile.id,
      sentenceText(sentenceOf(answers, profile) ?? []),
    ]),
  );
}
