/** The languages a site speaks, and where each of them is. */
import type { Answers } from '../answers.ts';
import { english, type Language, type Texts } from '../words/index.ts';
import { shippedLanguage } from '../words/shipped.ts';

/** The languages of site.yaml in their order, with the texts the shop gives in words/ before those that are shipped. */
export function languagesOf({ base }: Pick<Answers, 'base'>): [Language, ...Language[]] {
  const [first = english, ...further] = (base.site?.data.languages ?? [english.tag]).map((tag): Language => {
    const shipped = shippedLanguage(tag);
    const own = base.words.get(tag.toLowerCase())?.data;
    return {
      tag,
      name: own?.name ?? shipped?.name ?? tag,
      texts: {
        ...shipped?.texts,
        ...(own?.texts as Texts | undefined),
        en: tag,
        // As the English dates: day, month, year.
        'en-GB': tag === english.tag ? 'en-GB' : tag,
      },
    };
  });
  return [first, ...further];
}

/** The folder of a language below the base path: none for the first, `es/` for a further one. */
export function languageFolder(languages: readonly Pick<Language, 'tag'>[], tag: string): string {
  return languages[0]?.tag === tag ? '' : `${tag}/`;
}
