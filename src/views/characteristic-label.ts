/** What a characteristic is called: apart from other words, as most scripts of pages do without. */
import type { CharacteristicName } from '../measure/quantity.ts';
import { phrase } from '../words/index.ts';

export function characteristicLabel(name: CharacteristicName): string {
  const labels: Readonly<Record<CharacteristicName, string>> = {
    'clean-volts': phrase('Clean output'),
    'highest-clean-step': phrase('Highest clean step'),
    'boosted-clean-step': phrase('Highest step clean at its loudest frequency'),
    'limiter-onset': phrase('Level falls short of the scale from'),
    'step-size': phrase('Size of a volume step'),
    'bass-boost': phrase('Bass boost'),
    'bass-boost-frequency': phrase('Bass boost is at'),
    'bass-boost-bandwidth': phrase('Bass boost is this wide'),
    'lower-corner': phrase('Bass ends at (−3 dB)'),
    'lower-slope': phrase('Bass slope below that'),
    'upper-corner': phrase('Treble ends at (−3 dB)'),
    'upper-slope': phrase('Treble slope above that'),
    'treble-tilt': phrase('At 10 kHz relative to 1 kHz'),
    ripple: phrase('Ripple, 315 Hz to 5 kHz'),
    'rear-to-front': phrase('Rear relative to front'),
    'left-to-right': phrase('Front right relative to front left'),
    'source-resistance': phrase('Resistance of the output'),
    'noise-floor': phrase('Noise with the volume down'),
  };
  return labels[name];
}
