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

/** The words of a question that say most, the longest first; none where there is but one. */
export function wordsOf(asked: string): string[] {
  const words = asked.match(/[\p{L}\p{N}]{4,}/gu) ?? [];
  return words.length < 2 ? [] : [...new Set(words)].sort((a, b) => b.length - a.length).slice(0, 3);
}

/**
 * The parts of a longer text that may be codes, the longest first: words with a digit in them, and such words
 * with the one after, since a code may be written with a space.
 */
export function codesWithin(typed: string): string[] {
  const words = typed.split(/[\s,;:()"“”'’]+/u).filter((word) => word !== '');
  if (words.length < 2) return [];
  const parts = words.flatMap((word, at) => {
    const pair = `${word} ${words[at + 1] ?? ''}`.trim();
    return [word, pair].filter((part) => /\d/.test(part) && part.length > 2 && part !== typed.trim());
  });
  return [...new Set(parts)].sort((a, b) => b.length - a.length).slice(0, mostParts);
}

/** Of a long pasted text the first words are tried, or each key would take long. */
const mostParts = 12;

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
