/** How likely two independent readings of one level are the same to the last digit. */
import type { BenchReading } from '../../base/index.ts';
import { cellKey } from './cells.ts';

/** The chance for a reading of so many volts. */
export type ChanceOfSame = (volts: number) => number;

type Read = Pick<BenchReading, 'channel' | 'step' | 'hz' | 'voltsRms'>;

/** Repeats on a quiet bench scatter by more than this, relative: common practice, no source. */
const leastScatter = 0.0002;
/** Fewer degrees of freedom say nothing of a session's scatter. */
const leastDegreesOfFreedom = 8;
/** With 8 degrees of freedom the scatter is above this part of what repeats show in 95 of 100 cases, by χ². */
const surePart = 0.7;

/**
 * The chance in a session: at most what it is for two profiles that put out the same. Two readings scattered by
 * s each differ by a normal deviate of √2·s, of density at most 1/(2√π·s), and are rounded to one digit r wide
 * with a chance of at most r/(2√π·s). The s at some volts is at least that of the repeats no louder than it:
 * scatter in volts does not fall as volts rise. `profiles` are the readings of the session, profile by profile.
 */
export function chanceOfSame(profiles: readonly (readonly Read[])[], resolutionVolts: number): ChanceOfSame {
  const repeats = profiles.flatMap(repeatsOf);
  repeats.sort((a, b) => a.mean - b.mean);
  let squares = 0;
  let degreesOfFreedom = 0;
  const scatterUpTo = repeats.map((one) => {
    squares += one.squares;
    degreesOfFreedom += one.degreesOfFreedom;
    const known = degreesOfFreedom >= leastDegreesOfFreedom;
    return { volts: one.mean, scatter: known ? Math.sqrt(squares / degreesOfFreedom) : 0 };
  });
  return (volts) => {
    const known = scatterUpTo.findLast((one) => one.volts <= volts)?.scatter ?? 0;
    const scatter = Math.max(leastScatter * volts, surePart * known);
    return Math.min(1, resolutionVolts / (2 * Math.sqrt(Math.PI) * scatter));
  };
}

interface Repeats {
  readonly mean: number;
  /** The sum of squares about the mean. */
  readonly squares: number;
  readonly degreesOfFreedom: number;
}

function repeatsOf(readings: readonly Read[]): Repeats[] {
  const groups = new Map<number, number[]>();
  for (const { channel, step, hz, voltsRms } of readings) {
    const key = cellKey(channel, step, hz);
    const known = groups.get(key);
    if (known) known.push(voltsRms);
    else groups.set(key, [voltsRms]);
  }
  return [...groups.values()].flatMap((volts): Repeats[] => {
    if (volts.length < 2) return [];
    const mean = volts.reduce((sum, one) => sum + one, 0) / volts.length;
    const squares = volts.reduce((sum, one) => sum + (one - mean) ** 2, 0);
    return [{ mean, squares, degreesOfFreedom: volts.length - 1 }];
  });
}
