/** Characters of 5 by 7 dots: what looks alike follows from the dots, seen out of focus. */
import { confusionModel, type LookAlike } from '../confusion.ts';
import { bothWays, ocrPairs } from './ocr-pairs.ts';

/** Rows of dots from top to bottom, after the common 5×7 character tables, from memory. */
const dots: readonly (readonly [character: string, rows: string])[] = [
  ['0', '01110 10001 10011 10101 11001 10001 01110'],
  ['0', '01110 10001 10001 10001 10001 10001 01110'], // without the stroke
  ['1', '00100 01100 00100 00100 00100 00100 01110'],
  ['2', '01110 10001 00001 00010 00100 01000 11111'],
  ['3', '11111 00010 00100 00010 00001 10001 01110'],
  ['4', '00010 00110 01010 10010 11111 00010 00010'],
  ['5', '11111 10000 11110 00001 00001 10001 01110'],
  ['6', '00110 01000 10000 11110 10001 10001 01110'],
  ['7', '11111 00001 00010 00100 01000 01000 01000'],
  ['8', '01110 10001 10001 01110 10001 10001 01110'],
  ['9', '01110 10001 10001 01111 00001 00010 01100'],
  ['A', '01110 10001 10001 10001 11111 10001 10001'],
  ['B', '11110 10001 10001 11110 10001 10001 11110'],
  ['C', '01110 10001 10000 10000 10000 10001 01110'],
  ['D', '11100 10010 10001 10001 10001 10010 11100'],
  ['E', '11111 10000 10000 11110 10000 10000 11111'],
  ['F', '11111 10000 10000 11110 10000 10000 10000'],
  ['G', '01110 10001 10000 10111 10001 10001 01111'],
  ['H', '10001 10001 10001 11111 10001 10001 10001'],
  ['I', '01110 00100 00100 00100 00100 00100 01110'],
  ['J', '00111 00010 00010 00010 00010 10010 01100'],
  ['K', '10001 10010 10100 11000 10100 10010 10001'],
  ['L', '10000 10000 10000 10000 10000 10000 11111'],
  ['M', '10001 11011 10101 10101 10001 10001 10001'],
  ['N', '10001 10001 11001 10101 10011 10001 10001'],
  ['O', '01110 10001 10001 10001 10001 10001 01110'],
  ['P', '11110 10001 10001 11110 10000 10000 10000'],
  ['Q', '01110 10001 10001 10001 10101 10010 01101'],
  ['R', '11110 10001 10001 11110 10100 10010 10001'],
  ['S', '01111 10000 10000 01110 00001 00001 11110'],
  ['T', '11111 00100 00100 00100 00100 00100 00100'],
  ['U', '10001 10001 10001 10001 10001 10001 01110'],
  ['V', '10001 10001 10001 10001 10001 01010 00100'],
  ['W', '10001 10001 10001 10101 10101 10101 01010'],
  ['X', '10001 10001 01010 00100 01010 10001 10001'],
  ['Y', '10001 10001 10001 01010 00100 00100 00100'],
  ['Z', '11111 00001 00010 00100 01000 10000 11111'],
  ['l', '01100 00100 00100 00100 00100 00100 01110'],
  ['|', '00100 00100 00100 00100 00100 00100 00100'],
];

/** The rows of a character from top to bottom, `1` for a dot that is lit; undefined for one no screen shows. */
export function dotsOf(character: string): string | undefined {
  return dots.find(([known]) => known === character)?.[1];
}

/** How brightly a dot lights its own place, and the places beside it: out of focus by about a dot. */
const glow = [0.5, 0.25] as const;

/** The brightness of 7 by 9 places, a rim of one dot around the character. */
function outOfFocus(rows: string): number[] {
  const lit = rows.split(' ');
  const seen: number[] = [];
  for (let y = -1; y <= 7; y += 1) {
    for (let x = -1; x <= 5; x += 1) {
      let brightness = 0;
      for (const dy of [-1, 0, 1]) {
        for (const dx of [-1, 0, 1]) {
          if (lit[y + dy]?.[x + dx] === '1') {
            brightness += (glow[Math.abs(dy)] ?? 0) * (glow[Math.abs(dx)] ?? 0);
          }
        }
      }
      seen.push(brightness);
    }
  }
  return seen;
}

const blurred = dots.map(([character, rows]) => ({ character, seen: outOfFocus(rows) }));

/**
 * How far two characters are apart out of focus: the sum of squared differences of brightness over all places,
 * the least over the ways they are drawn. A dot alone makes 0.14.
 */
export function dotsApart(one: string, other: string): number {
  let least = Number.POSITIVE_INFINITY;
  for (const a of blurred) {
    if (a.character !== one) continue;
    for (const b of blurred) {
      if (b.character !== other) continue;
      least = Math.min(
        least,
        a.seen.reduce((sum, value, place) => sum + (value - (b.seen[place] ?? 0)) ** 2, 0),
      );
    }
  }
  return least;
}

/** Chance of what lights the same dots, how far apart it falls off, and where it stops: judgement, no source. */
const same = 0.06;
const fallOff = 0.3;
const leastChance = 0.001;

const characters = [...new Set(dots.map(([character]) => character))];
const derived = characters.flatMap((shown) =>
  characters.flatMap((seen): LookAlike[] => {
    const chance = same * Math.exp(-dotsApart(shown, seen) / fallOff);
    return shown === seen || chance < leastChance ? [] : [[shown, seen, chance]];
  }),
);

/** Each character stands in a cell of its own, so two never run together into one: no `RN` for `M`. */
export const dotMatrix = confusionModel('dot-matrix', [...derived, ...bothWays(ocrPairs)], []);
