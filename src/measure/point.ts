/** A point: the mean of the repeats of one reading, and what makes it uncertain. */
import type { Session } from '../../schemas/index.ts';
import type { BenchReading } from '../base/readings.ts';

/** What one session read of one profile. */
export interface Run {
  /** The session's id. */
  readonly session: string;
  readonly conditions: Session;
  readonly readings: readonly BenchReading[];
}

/** The mean of all repeats at one channel, step and frequency of one session, and what makes it uncertain. */
export interface Point {
  readonly session: string;
  readonly source: string;
  readonly channel: string;
  readonly step: number;
  readonly hz: number;
  readonly voltsRms: number;
  /** Mean THD, per cent of the fundamental; null where none was read. */
  readonly thdPercent: number | null;
  /** Limit of error of the THD as a fraction of it, from the analyser's specification. */
  readonly thdRelativeLimit: number;
  /** Limit of how far drive and rail may be off, dB: the signal's tolerance and the supply's. */
  readonly driveToleranceDb: number;
  readonly readings: readonly string[];
  readonly influences: Influences;
}

/**
 * What makes a point uncertain. Gain, signal and load act on all points of a session alike (the gain on all
 * of one voltmeter, whatever the session), so that they cancel in ratios; the rest is the point's own.
 */
export interface Influences {
  /** Limit of the voltmeter's gain error, relative, and which voltmeter and band of its specification. */
  readonly gain: { readonly limit: number; readonly id: string };
  /** Limit of error of the test signal's level, relative. */
  readonly signal: { readonly limit: number; readonly id: string };
  /** Limit of what the load's tolerance does to the output, relative. */
  readonly load: { readonly limit: number; readonly id: string };
  /** Limit of error in counts of the last digit, volts. */
  readonly countsVolts: number;
  /** One count of the last digit, volts. */
  readonly resolutionVolts: number;
  /** Standard deviation of the mean of the repeats, relative. */
  readonly repeats: { readonly relative: number; readonly degreesOfFreedom: number };
}
