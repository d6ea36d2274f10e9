/** Volts and decibels. */

/** The reference of dBu: √0.6 V, the volts that put 1 mW into 600 Ω. */
export const dbuReferenceVolts = Math.sqrt(0.6);

/** A voltage ratio as decibels: 20·lg(ratio). −∞ for 0; NaN for a negative ratio. */
export function ratioDb(ratio: number): number {
  return 20 * Math.log10(ratio);
}

/** Decibels as a voltage ratio: 10^(dB/20). */
export function dbRatio(levelDb: number): number {
  return 10 ** (levelDb / 20);
}

/** Volts rms as dBV (0 dBV = 1 V). */
export function dbv(voltsRms: number): number {
  return ratioDb(voltsRms);
}

/** Volts rms as dBu (0 dBu = √0.6 V). */
export function dbu(voltsRms: number): number {
  return ratioDb(voltsRms / dbuReferenceVolts);
}

/** dBV as volts rms. */
export function voltsFromDbv(levelDbv: number): number {
  return dbRatio(levelDbv);
}

/** dBu as volts rms. */
export function voltsFromDbu(levelDbu: number): number {
  return dbuReferenceVolts * dbRatio(levelDbu);
}

/** Half power, the level of a corner frequency: 10·lg(1/2) = −3.0103 dB. */
export const halfPowerDb = 10 * Math.log10(0.5);

/**
 * How many decibels a relative uncertainty of a voltage comes to: 20/ln 10 · u(V)/V
 * (first-order law of propagation, GUM 5.1.2).
 */
export function relativeToDb(relative: number): number {
  return (20 / Math.LN10) * relative;
}

/** The inverse of {@link relativeToDb}. */
export function dbToRelative(db: number): number {
  return (Math.LN10 / 20) * db;
}
