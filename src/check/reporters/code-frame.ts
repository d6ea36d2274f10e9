/** The line a finding points at, cut to what can be shown, in three parts: before, the stretch itself, after. */
import type { Place } from '../../base/index.ts';
import type { SourceLookup } from '../source-texts.ts';
import { columnsOf, printable, signsOf } from './printable.ts';

export interface CodeFrame {
  /** 1-based number of the line. */
  readonly line: number;
  readonly before: string;
  /** The stretch pointed at; empty where the place is a point between two signs. */
  readonly marked: string;
  readonly after: string;
}

const tabColumns = 4;
const cut = '…';

/**
 * The frame of a place: tabs as spaces, control characters as pictures, and at most `mostColumns` terminal
 * columns of a long line, around the stretch. Of a stretch over several lines, its first. Undefined where the
 * file has no such line.
 */
export function codeFrame(sourceOf: SourceLookup, place: Place, mostColumns = 100): CodeFrame | undefined {
  const source = sourceOf(place.file);
  if (!source || place.line > source.lineCount) return undefined;
  const text = source.lineText(place.line);
  const from = Math.min(place.column - 1, text.length);
  const to = place.endLine > place.line ? text.length : Math.min(place.endColumn - 1, text.length);
  // Of a line that goes on and on, only what can come into the frame is looked at, sign by sign.
  const [left, right] = [Math.max(0, from - 4 * mostColumns), from + 4 * mostColumns];
  const signs: Sign[] = [];
  let column = 0;
  for (const [part, piece] of [
    ['before', text.slice(left, from)],
    ['marked', text.slice(from, Math.min(to, right))],
    ['after', text.slice(to, right)],
  ] as const) {
    for (const sign of signsOf(piece)) {
      const columns = sign === '\t' ? tabColumns - (column % tabColumns) : columnsOf(printable(sign));
      signs.push({ part, shown: sign === '\t' ? ' '.repeat(columns) : printable(sign), columns });
      column += columns;
    }
  }
  const shown = column <= mostColumns ? signs : clipped(signs, mostColumns);
  const textOf = (part: Sign['part']): string =>
    shown.flatMap((sign) => (sign.part === part ? sign.shown : [])).join('');
  return { line: place.line, before: textOf('before'), marked: textOf('marked'), after: textOf('after') };
}

interface Sign {
  readonly part: 'before' | 'marked' | 'after';
  readonly shown: string;
  readonly columns: number;
}

/** A window of a long line that begins at most a third of its width before the stretch. */
function clipped(signs: readonly Sign[], mostColumns: number): Sign[] {
  const room = mostColumns - 2;
  const firstMarked = signs.findIndex(({ part }) => part !== 'before');
  let start = firstMarked === -1 ? signs.length : firstMarked;
  let lead = 0;
  while (start > 0 && lead + (signs[start - 1]?.columns ?? 0) <= room / 3) {
    start -= 1;
    lead += signs[start]?.columns ?? 0;
  }
  let end = start;
  let used = 0;
  while (end < signs.length && used + (signs[end]?.columns ?? 0) <= room) {
    used += signs[end]?.columns ?? 0;
    end += 1;
  }
  // A line that ends within the window leaves room for more of its beginning.
  while (start > 0 && used + (signs[start - 1]?.columns ?? 0) <= room) {
    start -= 1;
    used += signs[start]?.columns ?? 0;
  }
  const dots = (part: Sign['part']): Sign => ({ part, shown: cut, columns: 1 });
  return [
    ...(start > 0 ? [dots('before')] : []),
    ...signs.slice(start, end),
    ...(end < signs.length ? [dots('after')] : []),
  ];
}
