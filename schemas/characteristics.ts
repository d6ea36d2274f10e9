/** The characteristics a profile’s output is described by, and the unit of each; entries name them as the program does. */

/** Units of results; `step` counts volume steps. */
export type Unit = 'V' | 'dB' | 'dBV' | 'dBu' | 'Hz' | '%' | 'step' | 'dB/step' | 'dB/oct' | 'oct' | 'Ω';

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
