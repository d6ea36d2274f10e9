/**
 * What the interface says. The English text stands in the code and is its own key, as in GNU gettext; where a site
 * is made in another language, the text of that language comes in its place. On the server it is looked up when it is
 * said, so `phrase` is called within functions, never while a module is loaded; scripts of pages are given the text
 * when they are bundled (see source-texts.ts).
 */
import { fillSlots, type SlotValues } from './fill.ts';
import { english, type Language, type WordForms } from './language.ts';

type SlotOf<Text extends string> = Text extends `${string}{${infer Name}}${infer Rest}`
  ? Name | SlotOf<Rest>
  : never;

/** The values a text needs: none where it has no slot. */
type ValuesOf<Text extends string, Given extends string = never> = [Exclude<SlotOf<Text>, Given>] extends [
  never,
]
  ? []
  : [values: Readonly<Record<Exclude<SlotOf<Text>, Given>, string | number>>];

/** Astro loads modules through a runner of its own; the registry of symbols is what it shares with the command. */
const key = Symbol.for('readback.language');
type Spoken = { [key]?: Language };

function current(): Language {
  return (globalThis as Spoken)[key] ?? english;
}

/** From now on texts are said in a language; what is given back returns to the one before. */
export function speak(language: Language): () => void {
  const spoken = globalThis as Spoken;
  const before = spoken[key];
  spoken[key] = language;
  return () => {
    if (before) spoken[key] = before;
    else delete spoken[key];
  };
}

/** Runs something with the texts of a language: a build or a test, one after the other. */
export async function inLanguage<Result>(language: Language, run: () => Result): Promise<Awaited<Result>> {
  const silence = speak(language);
  try {
    return await run();
  } finally {
    silence();
  }
}

/**
 * A text in the language of the site, its slots filled: `phrase('step {step}', { step: 12 })`. The text is a literal. As
 * `phrase<string>('…')` it keeps its slots, for scripts that are to stand within a page without a module of their own.
 */
export function phrase<const Text extends string>(text: Text, ...values: ValuesOf<Text>): string {
  const found = current().texts[text];
  const said = typeof found === 'string' ? found : text;
  return values[0] === undefined ? said : fillSlots(said, values[0] as SlotValues);
}

/**
 * A text that counts, in the form the count asks for: `countPhrase(n, '{count} reading', '{count} readings')`. A list of
 * texts has its forms under the second. Counts are kept together with what they count by a no-break space.
 */
export function countPhrase<const One extends string, const Other extends string>(
  count: number,
  one: One,
  other: Other | WordForms,
  ...values: ValuesOf<One | Other, 'count'>
): string {
  const forms = typeof other === 'string' ? (current().texts[other] ?? { one, other }) : other;
  const text = typeof forms === 'string' ? forms : (forms[pluralCategory(count)] ?? forms.other);
  return fillSlots(text, { ...(values[0] as SlotValues | undefined), count });
}

/** Plural rules by language: making them takes far longer than asking them. */
const pluralRules = new Map<string, Intl.PluralRules>();

function pluralCategory(count: number): string {
  const tag = phrase('en');
  const rules = pluralRules.get(tag) ?? new Intl.PluralRules(tag);
  pluralRules.set(tag, rules);
  return rules.select(count);
}
