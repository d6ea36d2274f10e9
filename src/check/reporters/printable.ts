/** Text from a contributor's file made safe to show, and how wide a terminal shows it. */

/**
 * Text without signs that would move the cursor, change colours or turn the direction of writing: control
 * characters become their pictures (␛), bidirectional controls a replacement sign. Line ends stay where
 * `keepLines` says so.
 */
export function printable(text: string, keepLines = false): string {
  return text.replace(/[\p{Cc}\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069]/gu, (sign) => {
    const code = sign.charCodeAt(0);
    if (sign === '\n' && keepLines) return sign;
    if (code < 0x20) return String.fromCharCode(0x2400 + code);
    return code === 0x7f ? '\u2421' : '\uFFFD';
  });
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The signs of a text as a person counts them: a letter with its accents is one. */
export function signsOf(text: string): string[] {
  return Array.from(graphemes.segment(text), ({ segment }) => segment);
}

/**
 * The columns a terminal gives a sign: two for those of East Asian scripts and for emoji (Unicode Standard
 * Annex #11, as far as scripts tell it), none for those that only join or mark others, else one.
 */
export function columnsOf(sign: string): number {
  if (/^[\p{Mn}\p{Me}\p{Cf}]+$/u.test(sign)) return 0;
  if (/^[\uFF61-\uFFDC]/u.test(sign)) return 1;
  return /^(?:\p{Emoji_Presentation}|[\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Hangul}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6])/u.test(
    sign,
  ) || sign.includes('\uFE0F')
    ? 2
    : 1;
}

/** The columns a terminal gives a text without tabs. */
export function widthOf(text: string): number {
  return signsOf(text).reduce((sum, sign) => sum + columnsOf(sign), 0);
}
