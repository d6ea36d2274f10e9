/** The frame all plots share: its size, its margins, and a place on an axis. */

/** A plot is drawn in these units; on a phone one of them is about one CSS pixel. */
export const frame = {
  width: 380,
  height: 290,
  left: 40,
  right: 368,
  top: 24,
  bottom: 252,
} as const;

/** A ruled line of an axis in drawing units, with its label. */
export interface PlacedTick {
  readonly at: number;
  readonly label: string | undefined;
}

/** One decimal is finer than a phone can show. */
export function round(value: number): number {
  return Math.round(value * 10) / 10;
}
