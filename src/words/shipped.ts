/** The languages that come with the program, beside the English of the code. */
import { spanish } from './es/index.ts';
import { english, type Language } from './language.ts';
import list from './texts.json' with { type: 'json' };

export const shippedLanguages: readonly Language[] = [english, spanish];

/** Every text of the interface, and whether it counts. */
export const interfaceTexts: ReadonlyMap<string, boolean> = new Map(Object.entries(list));

/** The shipped language of a tag, or of the language it is a variety of (`es` for `es-MX`; RFC 4647, lookup). */
export function shippedLanguage(tag: string): Language | undefined {
  return [tag, tag.split('-')[0]].flatMap(
    (one) => shippedLanguages.find((shipped) => shipped.tag === one) ?? [],
  )[0];
}
