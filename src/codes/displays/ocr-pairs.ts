/** Pairs that tables of look-alikes hold, whatever the display. */
import type { LookAlike } from '../confusion.ts';

/**
 * 0/O and 1/I/l are confusable in Unicode UTS #39 (so is the bar with 1 and I); 5/S, 8/B, 2/Z, 6/G stand in
 * every common OCR table; Q and D beside 0 and O are common practice, no source. The chances are judgement, no
 * source: one to eight of a hundred times that a character is shown. Each holds both ways.
 */
export const ocrPairs: readonly LookAlike[] = [
  ['0', 'O', 0.05],
  ['0', 'D', 0.015],
  ['0', 'Q', 0.015],
  ['O', 'D', 0.03],
  ['O', 'Q', 0.03],
  ['D', 'Q', 0.01],
  ['1', 'I', 0.04],
  ['1', 'l', 0.04],
  ['I', 'l', 0.04],
  ['1', '|', 0.03],
  ['I', '|', 0.01],
  ['l', '|', 0.01],
  // A small l that the list has as a capital, and a capital L with a short foot.
  ['1', 'L', 0.015],
  ['I', 'L', 0.015],
  ['L', '|', 0.005],
  ['5', 'S', 0.08],
  ['8', 'B', 0.08],
  ['2', 'Z', 0.08],
  ['6', 'G', 0.08],
];

/** A table in which every pair holds both ways. */
export function bothWays(pairs: readonly LookAlike[]): LookAlike[] {
  return pairs.flatMap(([a, b, chance]): LookAlike[] => [
    [a, b, chance],
    [b, a, chance],
  ]);
}
