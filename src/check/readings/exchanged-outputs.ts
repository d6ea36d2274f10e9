/** Two outputs of a sheet that stand under each other's name. */
import type { Channel } from '../../../schemas/index.ts';
import { type Cell, cellKey, type ProfileSheet } from './cells.ts';
import { agree, leastFit } from './sheet-pairs.ts';

export interface ExchangedOutputs {
  readonly outputs: readonly [Channel, Channel];
  /** The sheet more likely at fault, and the other. */
  readonly sheet: ProfileSheet;
  readonly witness: ProfileSheet;
  /** The cells of `sheet` that stand under the wrong output, in its order. */
  readonly cells: readonly Cell[];
}

const outputPairs: readonly (readonly [Channel, Channel])[] = [
  ['FL', 'FR'],
  ['RL', 'RR'],
  ['FL', 'RL'],
  ['FR', 'RR'],
  ['FR', 'RL'],
  ['FL', 'RR'],
];

/**
 * The two outputs of one sheet that fit the other sheet once they change places, where every cell of `apart`,
 * what the sheets contradict each other in, is of them.
 */
export function exchangedOutputs(
  a: ProfileSheet,
  b: ProfileSheet,
  apart: readonly Cell[],
): ExchangedOutputs | undefined {
  for (const outputs of outputPairs) {
    const [one, other] = outputs;
    // Whether a cell of one fits the other: undefined where it cannot be told.
    const crossing = (cell: Cell): boolean | undefined => {
      if (cell.channel !== one && cell.channel !== other) return false;
      const key = cellKey(cell.channel === one ? other : one, cell.step, cell.hz);
      const there = b.byKey.get(key);
      return a.byKey.has(key) && there ? agree(cell, a, there, b) : false;
    };
    const crossed = apart.filter((cell) => crossing(cell) !== false);
    const certain = crossed.filter((cell) => crossing(cell)).length;
    if (certain < 2 || crossed.length < leastFit * apart.length) continue;
    const [sheet, witness] = blamesFirst(a, b, crossed) ? [a, b] : [b, a];
    // Cells too coarse to tell go with the others, unless one that tells stands where it should.
    const isOf = ({ channel }: Cell): boolean => channel === one || channel === other;
    const isPart = a.cells.some((cell) => isOf(cell) && stands(cell, a, b) && crossing(cell) === false);
    const moved = isPart ? crossed : a.cells.filter((cell) => crossing(cell) !== false);
    const hit = new Set(moved.map(({ key }) => key));
    return { outputs, sheet, witness, cells: sheet.cells.filter(({ key }) => hit.has(key)) };
  }
  return undefined;
}

/** Whether a cell fits the other sheet where it is. */
function stands(cell: Cell, a: ProfileSheet, b: ProfileSheet): boolean {
  const there = b.byKey.get(cell.key);
  return there !== undefined && agree(cell, a, there, b) === true;
}

/** How far one sheet has to jump more than the other to be the one at fault, nepers over all crossed cells. */
const tellingJump = 0.1;

/** The sheet whose crossed outputs jump from their neighbours in step is at fault; without such a sign the newer. */
function blamesFirst(a: ProfileSheet, b: ProfileSheet, crossed: readonly Cell[]): boolean {
  const jumpsIn = (sheet: ProfileSheet): number => {
    let sum = 0;
    for (const { channel, hz, step, key } of crossed) {
      const cell = sheet.byKey.get(key);
      const [below, above] = [-1, 1].map((by) => sheet.byKey.get(cellKey(channel, step + by, hz)));
      const isRead = cell && below && above && cell.volts > 0 && below.volts > 0 && above.volts > 0;
      if (isRead) sum += Math.abs(Math.log(cell.volts ** 2 / (below.volts * above.volts)));
    }
    return sum;
  };
  return jumpsIn(a) > jumpsIn(b) + tellingJump;
}
