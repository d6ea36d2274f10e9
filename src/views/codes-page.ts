/** Every known code, unit by unit: on one page while they are few, else on pages of their own. */
import type { Answers } from '../answers.ts';
import { phrase } from '../words/index.ts';
import { sentenceText } from './answer-sentence.ts';
import { codesPath, profilePath } from './paths.ts';
import { sentenceOf } from './profile-page.ts';

/** Codes on one page. */
export const mostCodesOfPage = 200;

export interface CodeRow {
  readonly code: string;
  readonly path: string;
  readonly sentence: string;
  readonly otherSpellings: readonly string[];
}

export interface CodesPageView {
  /** What follows `codes/` in the address, without the slash at the end; `all` for `codes/` itself. */
  readonly id: string;
  /** The unit whose codes they are; none where there are those of all. */
  readonly unit: string | undefined;
  readonly units: readonly { readonly name: string; readonly rows: readonly CodeRow[] }[];
  /** Further pages: of units, or of the same unit, named by its first and last code. */
  readonly pages: readonly { readonly path: string; readonly name: string; readonly isThis: boolean }[];
}

/** `codes/`, and where all are too many for it a page or several for each unit. */
export function codesPages(answers: Answers): CodesPageView[] {
  const { base } = answers;
  const units = [...base.families.values()]
    .map(({ id, data }) => ({
      id,
      name: data.name,
      rows: (base.profilesOfFamily.get(id) ?? []).map(
        (profile): CodeRow => ({
          code: profile.data.code,
          path: profilePath(profile.id),
          sentence: sentenceText(sentenceOf(answers, profile) ?? []),
          otherSpellings: profile.data.otherSpellings,
        }),
      ),
    }))
    .filter(({ rows }) => rows.length > 0);
  if (base.profiles.size <= mostCodesOfPage) return [{ id: 'all', unit: undefined, units, pages: [] }];
  const list: CodesPageView = {
    id: 'all',
    unit: undefined,
    units: [],
    pages: units.map(({ id, name }) => ({ path: `${codesPath}${id}/`, name, isThis: false })),
  };
  return [list, ...units.flatMap(pagesOfUnit)];
}

function pagesOfUnit(unit: { id: string; name: string; rows: readonly CodeRow[] }): CodesPageView[] {
  const count = Math.ceil(unit.rows.length / mostCodesOfPage);
  const parts = Array.from({ length: count }, (_, at) => ({
    id: at === 0 ? unit.id : `${unit.id}/${at + 1}`,
    rows: unit.rows.slice(at * mostCodesOfPage, (at + 1) * mostCodesOfPage),
  }));
  return parts.map(({ id, rows }) => ({
    id,
    unit: unit.name,
    units: [{ name: unit.name, rows }],
    pages:
      count === 1
        ? []
        : parts.map((part) => ({
            path: `${codesPath}${part.id}/`,
            name: phrase('{first} to {last}', {
              first: part.rows[0]?.code ?? '',
              last: part.rows.at(-1)?.code ?? '',
            }),
            isThis: part.id === id,
          })),
  }));
}
