/** What someone has typed into the code field: a code, or words. */

/**
 * True for text that is plainly words and no code: letters only, and either several words or longer than any
 * code without a digit is likely to be.
 */
export function looksLikeWords(typed: string): boolean {
  const text = typed.trim();
  if (/\d/.test(text)) return false;
  const words = text.match(/\p{L}+/gu) ?? [];
  return words.length > 1 ? words.some((word) => word.length > 2) : (words[0] ?? '').length > 4;
}

/**
 * True where a page has one of the words asked for, or another form of it. Pagefind offers pages with a shorter
 * beginning where it knows no such word (`zeppelin` brings pages with `z`); those do not answer the question.
 */
export function speaksOf(pageText: string, asked: string): boolean {
  const text = pageText.toLowerCase();
  const words = asked.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.some((word) => text.includes(word.slice(0, stemLength)));
}

/** Forms of an English word share about this many letters: measure, measuring; clip, clipped. */
const stemLength = 4;
