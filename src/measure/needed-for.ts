/** The readings that a characteristic is computed from, in words. */
import { phrase } from '../words/index.ts';
import type { CharacteristicName } from './quantity.ts';

/** What has to be read for a characteristic: “readings at one clean step into two loads”. */
export function neededFor(name: CharacteristicName): string {
  const level = phrase('readings of front left at 1 kHz from two or more volume steps, with THD');
  const bass = phrase('readings of front left at 20–250 Hz and at 1 kHz at one clean step');
  const words: Readonly<Record<CharacteristicName, string>> = {
    'clean-volts': level,
    'highest-clean-step': level,
    'boosted-clean-step': bass,
    'limiter-onset': phrase('readings of front left at 1 kHz at every step, past the last clean one'),
    'step-size': phrase('readings of front left at 1 kHz from more clean steps'),
    'bass-boost': bass,
    'bass-boost-frequency': bass,
    'bass-boost-bandwidth': bass,
    'lower-corner': phrase('readings of front left below 1 kHz and at 1 kHz at one clean step'),
    'lower-slope': phrase('more readings of front left below its lower corner'),
    'upper-corner': phrase('readings of front left above 1 kHz and at 1 kHz at one clean step'),
    'upper-slope': phrase('more readings of front left above its upper corner'),
    'treble-tilt': phrase('a reading of front left at 10 kHz and one at 1 kHz at one clean step'),
    ripple: phrase('readings of front left at third octaves from 315 Hz to 5 kHz at one clean step'),
    'rear-to-front': phrase('readings of a rear and a front output at 1 kHz at one clean step'),
    'left-to-right': phrase('readings of front left and front right at 1 kHz at one clean step'),
    'source-resistance': phrase('readings at one clean step into two loads'),
    'noise-floor': phrase('a reading of front left with the volume at silence'),
  };
  return words[name];
}
