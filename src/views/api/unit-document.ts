/** The document of a unit: what it is, and where those of its profiles are. */
import type { UnitDocument } from '../../../schemas/api/unit.ts';
import type { Answers } from '../../answers.ts';
import type { Entry } from '../../base/index.ts';
import { sentenceText } from '../answer-sentence.ts';
import { apiProfilePath, apiUnitPath, profilePath, relativePath, unitPath, wayPath } from '../paths.ts';
import { sentenceOf } from '../profile-page.ts';

/** `address` is that of the site. */
export function unitDocument(
  answers: Answers,
  address: string,
  { id, data }: Entry<'families'>,
): UnitDocument {
  const { name, alsoCalled, maker, summary, fitment, identify, output, volume, code, sources } = data;
  return {
    id,
    name,
    alsoCalled,
    maker,
    summary,
    page: `${address}${unitPath(id)}`,
    fitment,
    identify,
    output,
    volume,
    code,
    waysIn: (answers.base.sequencesOfFamily.get(id) ?? []).map((way) => ({
      id: way.id,
      name: way.data.name,
      page: `${address}${wayPath(id, way.id)}`,
    })),
    profiles: (answers.base.profilesOfFamily.get(id) ?? []).flatMap((profile) => {
      const sentence = sentenceOf(answers, profile);
      if (!sentence) return [];
      return [
        {
          id: profile.id,
          code: profile.data.code,
          sentence: sentenceText(sentence),
          document: relativePath(apiUnitPath(id), apiProfilePath(profile.id)),
          page: `${address}${profilePath(profile.id)}`,
        },
      ];
    }),
    sources,
  };
}
