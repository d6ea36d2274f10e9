/** The characteristics a profile’s output is described by, and the unit of each; entries name them as the program does. */

/** Units of what is measured; `step` counts volume steps. */
type MeasuredUnit = 'V' | 'dB' | 'dBV' | 'dBu' | 'Hz' | '%' | 'step' | 'dB/step' | 'dB/oct' | 'oct' | 'Ω';

/**
 * Units of what is planned with it. `1` is the unit of numbers and ratios, shown without a sign; `AWG` is a wire's
 * gauge, 0 and below for 1/0, 2/0 and so on.
 */
type PlannedUnit = '1' | 'A' | 'W' | 'A·h' | 'm' | 'mm' | 'mm²' | 'Ω/km' | '°C' | 'h' | 'min' | 'AWG';

export type Unit = MeasuredUnit | PlannedUnit;

/** Computed from readings (src/measure/). */
export const characteristicUnits = {
  'clean-volts': 'V',
  'highest-clean-step': 'step',
  'boosted-clean-step': 'step',
  'limiter-onset': 'step',
  'step-size': 'dB/step',
  'bass-boost': 'dB',
  'bass-boost-frequency': 'Hz',
  'bass-boost-bandwidth': 'oct',
  'lower-corner': 'Hz',
  'lower-slope': 'dB/oct',
  'upper-corner': 'Hz',
  'upper-slope': 'dB/oct',
  'treble-tilt': 'dB',
  ripple: 'dB',
  'rear-to-front': 'dB',
  'left-to-right': 'dB',
  'source-resistance': 'Ω',
  'noise-floor': 'V',
} as const satisfies Record<string, Unit>;

export type CharacteristicName = keyof typeof characteristicUnits;
export const characteristicNames = Object.keys(characteristicUnits) as [
  CharacteristicName,
  ...CharacteristicName[],
];
