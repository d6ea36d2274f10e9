/**
 * What is assumed about riders, their meters, their tones and profiles nobody has measured. All of it is common
 * practice, no source; it is said here once, so that it can be argued with.
 */

/**
 * The limit of error (±, per cent of reading) taken where none is stated: 3 % for a hand-held true-rms meter,
 * and 2 % for tones that are not all equally loud and speakers in place of the bench's resistors. Above 1 kHz
 * it is twice that, because many hand-held meters fall off there.
 */
export function defaultAccuracyPercent(hz: number): number {
  return hz > 1001 ? 10 : 5;
}

/** Standard deviation of the tone’s level about full scale, dB: what a phone puts out is anyone’s guess. */
export const unknownLevelDb = 3;
/** The same where the rider plays full-scale tones the way the bench does. */
export const knownLevelDb = 0.3;

/** Volts a meter on a speaker output may plausibly show: an unknown profile's level is log-uniform over them. */
export const plausibleVolts = [0.002, 20] as const;
/** How far an unknown profile's output departs from what the known ones do on average, its level aside, dB. */
export const strangerDepartureDb = 5;
/** These departures are alike at near points: they lose touch over this many steps and octaves. */
export const strangerAlike = { steps: 10, octaves: 2, frontToRear: 0.5 } as const;
/** Share of unknown profiles whose rear outputs are silent. */
export const strangerRearSilent = 0.2;
/** Prior probability that it is none of those known: as likely as not, so that readings must speak for one. */
export const strangerPrior = 0.5;

/** What a meter shows on a silent output: hum and noise about this many volts, give or take this many dB. */
export const silentVolts = 0.002;
export const silentSpreadDb = 10;
/** Below this many volts an output that should play is hardly more than noise. */
export const audibleVolts = 0.005;

/** How far the other front output may be from the one measured, dB. */
export const otherFrontDb = 0.3;
/** How far a rear output's response may be from the front's, away from 1 kHz, dB. */
export const rearResponseDb = 0.5;
/** How far a response may change beyond the lowest or highest step it was taken at, dB. */
export const beyondCurvesDb = 2;
/** How far the clipping limit may be from the bench's: a battery at rest has less than the bench supply, dB. */
export const limitDb = 1;

/** Allowances of a known profile are alike at near points: they lose touch over this many steps and octaves. */
export const allowancesAlike = { steps: 8, octaves: 1, frontToRear: 0.5 } as const;

/** Profiles whose predicted levels differ nowhere by more than this beyond their uncertainty are twins, dB. */
export const twinsWithinDb = 0.25;

/** A group of at least this probability is `sure`, given enough readings; of at least that, `likely`. */
export const sureFrom = 0.95;
export const likelyFrom = 0.7;
/** Readings at different points below which nothing is sure: one places the level, one decides, one confirms. */
export const leastReadings = 3;

/** Nominal third-octave frequencies a next reading is looked for at, hertz (ISO 266). */
export const plannedHz = [40, 63, 100, 1000, 5000, 10_000] as const;
/** No reading is asked for where any profile puts out more than this, volts: 4 W in 4 Ω is loud enough. */
export const mostPlannedVolts = 4;
/** One unit of the last digit of a reading still to be taken, volts: a hand-held meter that counts to 4000. */
export function plannedDigitVolts(voltsRms: number): number {
  return voltsRms < 4 ? 0.001 : 0.01;
}
/** A reading expected to bring less information than this is not worth taking, bits. */
export const leastBits = 0.02;
