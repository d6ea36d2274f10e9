/** Words in a row, as the language of the site joins them (Unicode CLDR, list patterns). */
import { phrase } from './phrase.ts';

/** “a, b or c”. */
export function orList(words: readonly string[]): string {
  return listOf('disjunction', words);
}

/** “a, b and c”. */
export function andList(words: readonly string[]): string {
  return listOf('conjunction', words);
}

/** By language and type: making them takes far longer than asking them. */
const formats = new Map<string, Intl.ListFormat>();

function listOf(type: Intl.ListFormatType, words: readonly string[]): string {
  const tag = phrase('en-GB');
  const key = `${tag} ${type}`;
  const format = formats.get(key) ?? new Intl.ListFormat(tag, { type });
  formats.set(key, format);
  return format.format(words);
}
