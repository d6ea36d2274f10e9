/** The most volts an output can give. */
import type { Family, Reading, Session } from '../../../schemas/index.ts';
import { cleanThdPercent, dbRatio, hardClipOverdriveDb } from '../../measure/index.ts';

/** How far a sine may be overdriven and still be clean, as a ratio of volts. */
const cleanOverdrive = dbRatio(hardClipOverdriveDb(cleanThdPercent / 100));

export interface VoltsLimit {
  readonly volts: number;
  /** The limit in words, without its number. */
  readonly why: string;
}

/**
 * The most volts rms an output can give: a bridged one swings the supply each way, a ground-referenced one
 * half of it (common practice, derived). A clean sine has 1/√2 of the swing, a little more where its crests
 * are already cut by as much as 1 % THD; a fully clipped one approaches the swing itself.
 */
export function voltsLimit(
  { thdPercent }: Pick<Reading, 'thdPercent'>,
  { supply, instrument }: Session,
  topology: Family['output']['topology'],
): VoltsLimit {
  const swing = (supply.volts + supply.toleranceVolts) * (topology === 'bridged' ? 1 : 0.5);
  const thdError = 1 + (instrument.thdOfReadingPercent ?? 0) / 100;
  if (thdPercent !== null && thdPercent * thdError <= cleanThdPercent) {
    return { volts: (swing / Math.SQRT2) * cleanOverdrive, why: cleanLimit[topology] };
  }
  return { volts: swing, why: clippedLimit[topology] };
}

const cleanLimit = {
  bridged: 'a clean sine is at most the supply over √2',
  'ground-referenced': 'a clean sine is at most half the supply over √2',
} as const;

const clippedLimit = {
  bridged: 'even a square wave is at most the supply',
  'ground-referenced': 'even a square wave is at most half the supply',
} as const;
