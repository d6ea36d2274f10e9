/** A language of the interface: its tag and its texts. */

/** A text for each plural category of the language (Unicode CLDR: one, few, many, other …). */
export interface WordForms {
  readonly other: string;
  readonly [category: string]: string;
}

/** The English text → the text in this language; forms by count where the text counts something. */
export type Texts = Readonly<Record<string, string | WordForms>>;

export interface Language {
  /** IETF BCP 47: `es`, `pt-BR`. */
  readonly tag: string;
  /** The name it has in itself: “Español”. */
  readonly name: string;
  readonly texts: Texts;
}

/** The language the code says its texts in; it needs no list. */
export const english: Language = { tag: 'en', name: 'English', texts: {} };

/** The tags of the language and of its dates are said like texts (`phrase('en')`); the program gives them itself. */
export const tagTexts: readonly string[] = ['en', 'en-GB'];
