/** How a recording is known in volts: by one level read with a meter, or by the interface's calibration. */

/** The level at a frequency, read with a voltmeter while it was recorded. */
export interface MeterReading {
  readonly kind: 'meter';
  readonly hz: number;
  readonly voltsRms: number;
}

/** What a full-scale sine is at the input, volts rms. */
export interface FullScale {
  readonly kind: 'full-scale';
  readonly voltsRms: number;
}

export type VoltsKnownBy = MeterReading | FullScale;
