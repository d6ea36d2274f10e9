/** What number formats make of a number: a date, a percentage, or neither. */
import { eachTag } from './xml.ts';

export type Shown = 'number' | 'date' | 'percent';

/** Formats every program knows by number alone (ISO/IEC 29500-1, 18.8.30): percentages and dates. */
const percents = [9, 10];
const dates = [14, 15, 16, 17, 18, 19, 20, 21, 22, 45, 46, 47];

/** How each style of cells shows numbers, by its number. */
export function shownByStyle(xml: string | undefined): readonly Shown[] {
  if (xml === undefined) return [];
  const codes = new Map<number, string>();
  const shown: Shown[] = [];
  let inCells = false;
  eachTag(xml, {
    open(name, { numFmtId, formatCode }) {
      if (name === 'numFmt') codes.set(Number(numFmtId), formatCode ?? '');
      else if (name === 'cellXfs') inCells = true;
      else if (name === 'xf' && inCells) shown.push(shownAs(Number(numFmtId ?? 0), codes));
    },
    close(name) {
      if (name === 'cellXfs') inCells = false;
    },
  });
  return shown;
}

function shownAs(id: number, codes: ReadonlyMap<number, string>): Shown {
  const code = codes.get(id);
  if (code === undefined) {
    if (percents.includes(id)) return 'percent';
    return dates.includes(id) ? 'date' : 'number';
  }
  // Texts, colours and conditions aside.
  const plain = code.replace(/"[^"]*"|\\.|_.|\*.|\[[^\]]*\]/g, '').toLowerCase();
  if (plain.includes('%')) return 'percent';
  return /[dyhs]|m{1,5}/.test(plain) && !/[0#?]/.test(plain) ? 'date' : 'number';
}
