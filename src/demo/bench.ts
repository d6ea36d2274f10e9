/** What an instrument of stated specification makes of a true value. */
import type { Session } from '../../schemas/entries/session.ts';
import type { RandomStream } from './random.ts';

type Instrument = Session['instrument'];

/** Share of a distortion analyser's limit of error that lasts a whole session; the rest is new at each reading. */
const lastingThdShare = 0.8;

/** The errors one session keeps from its first reading to its last. */
export interface SessionErrors {
  /** Gain error of the voltmeter by accuracy band, as a ratio: 0.002 reads 0.2 % high. */
  readonly gainByBand: readonly number[];
  /** Gain error of the distortion analyser, as a ratio. */
  readonly thdGain: number;
  readonly levelDb: number;
  readonly loadRatio: number;
  readonly supplyVolts: number;
}

/** Draws a session's errors, each uniform within ± its limit: a specification says no more than that. */
export function drawSessionErrors(
  instrument: Instrument,
  limits: { levelDb: number; loadPercent: number; supplyVolts: number },
  random: RandomStream,
): SessionErrors {
  const within = (limit: number) => random.uniform(-limit, limit);
  return {
    gainByBand: instrument.accuracy.map((band) => within(band.ofReadingPercent / 100)),
    thdGain: within((lastingThdShare * (instrument.thdOfReadingPercent ?? 0)) / 100),
    levelDb: within(limits.levelDb),
    loadRatio: within(limits.loadPercent / 100),
    supplyVolts: within(limits.supplyVolts),
  };
}

/**
 * Reads volts rms: repeat scatter, the session's gain error in the band of hz, a count error uniform within
 * ± the band's counts, then rounding to the resolution. Never below zero.
 * @throws RangeError where the specification covers no such frequency.
 */
export function readVolts(
  instrument: Instrument,
  errors: SessionErrors,
  trueVolts: number,
  hz: number,
  repeatScatter: number,
  random: RandomStream,
): number {
  const index = instrument.accuracy.findIndex((each) => hz >= each.fromHz && hz < each.toHz);
  const band = instrument.accuracy[index];
  if (!band) throw new RangeError(`The specification of "${instrument.name}" does not cover ${hz} Hz.`);
  const scattered = trueVolts * (1 + repeatScatter * random.gaussian());
  const counts = random.uniform(-band.counts, band.counts) * instrument.resolutionVolts;
  const reading = scattered * (1 + (errors.gainByBand[index] ?? 0)) + counts;
  return Math.max(0, Math.round(reading / instrument.resolutionVolts) * instrument.resolutionVolts);
}

/**
 * Reads THD, per cent: the session's gain error and a little of the reading's own, together within the limit,
 * then the analyser's floor added in power, so that no reading lies below the floor.
 * null where the instrument takes none.
 */
export function readThdPercent(
  instrument: Instrument,
  errors: SessionErrors,
  trueThdPercent: number,
  random: RandomStream,
): number | null {
  if (instrument.thdFloorPercent === undefined) return null;
  const own = ((1 - lastingThdShare) * (instrument.thdOfReadingPercent ?? 0)) / 100;
  const gain = 1 + errors.thdGain + random.uniform(-own, own);
  return Math.hypot(trueThdPercent * gain, instrument.thdFloorPercent);
}
