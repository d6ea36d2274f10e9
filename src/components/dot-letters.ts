/** Words in dots, as the units’ screens set them: pictures with them need no font, and come out alike everywhere. */
import { dotsOf } from '../codes/displays/dot-matrix.ts';

/** Dots from the left edge of one character to that of the next. */
const pitch = 6;
const height = 7;
/** Dots of characters the table of the screens has no need for, drawn here. */
const others: Readonly<Record<string, string>> = {
  '-': '00000 00000 00000 11111 00000 00000 00000',
  '.': '00000 00000 00000 00000 00000 01100 01100',
  ',': '00000 00000 00000 00000 01100 00100 01000',
  ':': '00000 01100 01100 00000 01100 01100 00000',
  "'": '01100 00100 01000 00000 00000 00000 00000',
  '&': '01100 10010 10100 01000 10101 10010 01101',
  '/': '00000 00001 00010 00100 01000 10000 00000',
};

export interface DotLetters {
  /** A path of squares, one a dot. */
  readonly path: string;
  readonly width: number;
  readonly height: number;
}

/**
 * A line of text from (x, y), its dots as large as fit into `width`, no larger than `mostDot`. Letters are capitals;
 * accents are left out, and so are characters no screen has.
 */
export function dotLetters(text: string, x: number, y: number, width: number, mostDot: number): DotLetters {
  const shown = [...text.normalize('NFD').replace(/\p{M}/gu, '').replaceAll('’', "'").toUpperCase()];
  const dot = Math.min(mostDot, width / Math.max(1, shown.length * pitch - 1));
  const squares = shown.flatMap((character, place) => {
    const rows = (dotsOf(character) ?? others[character] ?? '').split(' ');
    return rows.flatMap((row, down) =>
      [...row].flatMap((lit, across) =>
        lit === '1' ? [square(x + (place * pitch + across) * dot, y + down * dot, dot * 0.88)] : [],
      ),
    );
  });
  return { path: squares.join(''), width: (shown.length * pitch - 1) * dot, height: height * dot };
}

function square(x: number, y: number, side: number): string {
  const [left, top, size] = [x, y, side].map((value) => Math.round(value * 100) / 100);
  return `M${left} ${top}h${size}v${size}h-${size}z`;
}
