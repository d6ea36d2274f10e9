/** A rider's reading: where it was taken, what the meter showed, how far it is to be trusted. */
import type { Channel } from '../../../schemas/index.ts';
import { dbv, rectangular, relativeToDb } from '../../measure/index.ts';

/** A place to read: an output, a volume step, a tone. */
export interface ReadingPoint {
  readonly channel: Channel;
  readonly step: number;
  readonly hz: number;
}

export interface RiderReading extends ReadingPoint {
  readonly voltsRms: number;
  /** Limit of error (±), per cent of the reading. */
  readonly accuracyPercent: number;
  /** One unit of the last digit as it was written: 0.1 for “3.4”. */
  readonly digitVolts: number;
}

/** A reading as level with its standard uncertainty. */
export interface LevelReading extends ReadingPoint {
  readonly levelDbv: number;
  readonly uncertaintyDb: number;
}

/**
 * Standard uncertainty of a reading's level, dB: the limit of error and one unit of the last digit, both as
 * rectangular distributions (GUM 4.3.7), to first order.
 */
export function readingUncertaintyDb(voltsRms: number, accuracyPercent: number, digitVolts: number): number {
  return relativeToDb(Math.hypot(rectangular(accuracyPercent / 100), rectangular(digitVolts / voltsRms)));
}

/**
 * Levels in a fixed order, repeats at one point brought together: their mean level, with the uncertainty of
 * the best of them. A meter that reads high does so each time, so repeats count as one reading.
 */
export function levelReadings(readings: readonly RiderReading[]): LevelReading[] {
  const byPoint = new Map<string, RiderReading[]>();
  for (const reading of readings) {
    const key = `${reading.channel} ${reading.step} ${reading.hz}`;
    byPoint.set(key, [...(byPoint.get(key) ?? []), reading]);
  }
  return [...byPoint.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, repeats]) => {
      const [first] = repeats;
      if (!first) return [];
      const levels = repeats.map((one) => dbv(one.voltsRms)).sort((a, b) => a - b);
      return [
        {
          channel: first.channel,
          step: first.step,
          hz: first.hz,
          levelDbv: levels.reduce((sum, one) => sum + one, 0) / levels.length,
          uncertaintyDb: Math.min(
            ...repeats.map((one) => readingUncertaintyDb(one.voltsRms, one.accuracyPercent, one.digitVolts)),
          ),
        },
      ];
    });
}

/** True for the rear outputs. */
export function isRear(channel: string): boolean {
  return channel === 'RL' || channel === 'RR';
}
