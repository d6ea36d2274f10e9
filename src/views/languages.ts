/** The languages a site speaks, and where each of them is. */
import type { Answers } from '../answers.ts';
import { english, type Language } from '../words/index.ts';
import { shippedLanguages } from '../words/shipped.ts';

/** The languages of site.yaml in their order, with the texts the shop gives in words/ before those that are shipped. */
export function languagesOf({ base }: Pick<Answers, 'base'>): [Language, ...Language[]] {
  const [first = english, ...further] = (base.site?.data.languages ?? [english.tag]).map((tag): Language => {
    const shipped = shippedLanguages.find((one) => one.tag === tag);
    const own = base.words.get(tag.toLowerCase())?.data;
    return {
      tag,
      name: own?.name ?? shipped?.name ?? tag,
      texts: { en: tag, 'en-GB': tag, ...shipped?.texts, ...own?.texts } as Language['texts'],
    };
  });
  return [first, ...further];
}

/** The folder of a language below the base path: none for the first, `es/` for a further one. */
export function languageFolder(languages: readonly Pick<Language, 'tag'>[], tag: string): string {
  return languages[0]?.tag === tag ? '' : `${tag}/`;
}
