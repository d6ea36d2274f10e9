/** Words in a row, as the language of the site joins them (Unicode CLDR, list patterns). */
import { phrase } from './phrase.ts';

/** “a, b or c”. */
export function orList(words: readonly string[]): string {
  return new Intl.ListFormat(phrase('en-GB'), { type: 'disjunction' }).format(words);
}

/** “a, b and c”. */
export function andList(words: readonly string[]): string {
  return new Intl.ListFormat(phrase('en-GB'), { type: 'conjunction' }).format(words);
}
