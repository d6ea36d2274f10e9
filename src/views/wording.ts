/** Words for the values that entries and results are coded in. */
import type { Profile, Source } from '../../schemas/index.ts';
import type { Reason, Verdict } from '../decide/verdict.ts';
import { formatHz, formatNumber } from '../measure/format.ts';
import type { CharacteristicName, Conditions } from '../measure/quantity.ts';
import { phrase } from '../words/index.ts';

export const characteristicLabels: Readonly<Record<CharacteristicName, string>> = {
  'clean-volts': 'Clean output',
  'highest-clean-step': 'Highest clean step',
  'boosted-clean-step': 'Highest step clean at its loudest frequency',
  'limiter-onset': 'Level falls short of the scale from',
  'step-size': 'Size of a volume step',
  'bass-boost': 'Bass boost',
  'bass-boost-frequency': 'Bass boost is at',
  'bass-boost-bandwidth': 'Bass boost is this wide',
  'lower-corner': 'Bass ends at (−3 dB)',
  'lower-slope': 'Bass slope below that',
  'upper-corner': 'Treble ends at (−3 dB)',
  'upper-slope': 'Treble slope above that',
  'treble-tilt': 'At 10 kHz relative to 1 kHz',
  ripple: 'Ripple, 315 Hz to 5 kHz',
  'rear-to-front': 'Rear relative to front',
  'left-to-right': 'Front right relative to front left',
  'source-resistance': 'Resistance of the output',
  'noise-floor': 'Noise with the volume down',
};

export const verdictLabels: Readonly<Record<Verdict, string>> = {
  keep: 'Keep',
  'keep-and-correct': 'Keep and correct',
  reflash: 'Reflash',
  replace: 'Replace',
  'measure-first': 'Measure first',
};

export const outcomeLabels: Readonly<Record<Reason['outcome'], string>> = {
  fits: 'fits',
  correct: 'can be corrected',
  fails: 'does not fit',
  borderline: 'too close to call',
  unknown: 'not known',
};

export const topicLabels: Readonly<Record<Reason['topic'], string>> = {
  level: 'Level',
  bass: 'Bass',
  'low-end': 'Low end',
  rear: 'Rear',
  system: 'System',
};

export const originLabels: Readonly<Record<Profile['origin'], string>> = {
  factory: 'Factory',
  'dealer-update': 'Dealer update',
  'third-party': 'Third party',
};

export const systemLabels: Readonly<Record<Profile['system'], string>> = {
  amplified: 'Factory amplifier behind the unit',
  unamplified: 'Speakers straight on the unit',
};

/** The same in a word, for tables. */
export const systemShortLabels: Readonly<Record<Profile['system'], string>> = {
  amplified: 'amplifier',
  unamplified: 'speakers',
};

export const sourceKindLabels: Readonly<Record<Source['kind'], string>> = {
  'bench-session': 'Bench session',
  'service-bulletin': 'Service bulletin',
  'data-sheet': 'Data sheet',
  'riders-report': 'Riders’ report',
  'published-standard': 'Published standard',
};

export const trustLabels: Readonly<Record<Source['trust'], string>> = {
  high: 'High',
  medium: 'Medium',
  low: 'Low',
};

export const channelLabels: Readonly<Record<string, string>> = {
  FL: 'front left',
  FR: 'front right',
  RL: 'rear left',
  RR: 'rear right',
};

/** What a value was read at: “front left, step 27, 1 kHz”. Empty where nothing narrows it down. */
export function readAt({ channel, step, hz }: Conditions): string {
  return [
    channel === undefined ? '' : (channelLabels[channel] ?? channel),
    step === undefined ? '' : `step ${step}`,
    hz === undefined ? '' : formatHz(hz),
  ]
    .filter((part) => part !== '')
    .join(', ');
}

/** What the bench was set to: “4 Ω per channel, 14.4 V supply, test signal 0 dBFS”. */
export function benchSetting({ loadOhms, supplyVolts, signalDbfs }: Conditions): string {
  return `${plainNumber(loadOhms)}\u00a0Ω per channel, ${formatNumber(supplyVolts, 1)}\u00a0V supply, test signal ${plainNumber(signalDbfs)}\u00a0dBFS`;
}

/** A number as it was entered, with a true minus sign. */
export function plainNumber(value: number): string {
  return String(value).replace('-', '−');
}

/** A date for people, in the language of the site: 14 March 2026. */
export function longDate(isoDate: string): string {
  return new Intl.DateTimeFormat(phrase('en-GB'), { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(isoDate),
  );
}

/** A count with its noun: “1 reading”, “12 readings”. */
export function counted(count: number, noun: string, plural = `${noun}s`): string {
  return `${count}\u00a0${count === 1 ? noun : plural}`;
}
