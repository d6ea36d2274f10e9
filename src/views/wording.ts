/** Words for the values that entries and results are coded in. */
import type { Profile, Source } from '../../schemas/index.ts';
import type { Reason, Verdict } from '../decide/verdict.ts';
import { formatHz, formatNumber } from '../measure/format.ts';
import type { Conditions } from '../measure/quantity.ts';
import { phrase } from '../words/index.ts';

export function verdictLabel(verdict: Verdict): string {
  const labels: Readonly<Record<Verdict, string>> = {
    keep: phrase('Keep'),
    'keep-and-correct': phrase('Keep and correct'),
    reflash: phrase('Reflash'),
    replace: phrase('Replace'),
    'measure-first': phrase('Measure first'),
  };
  return labels[verdict];
}

export function outcomeLabel(outcome: Reason['outcome']): string {
  const labels: Readonly<Record<Reason['outcome'], string>> = {
    fits: phrase('fits'),
    correct: phrase('can be corrected'),
    fails: phrase('does not fit'),
    borderline: phrase('too close to call'),
    unknown: phrase('not known'),
  };
  return labels[outcome];
}

export function topicLabel(topic: Reason['topic']): string {
  const labels: Readonly<Record<Reason['topic'], string>> = {
    level: phrase('Level'),
    bass: phrase('Bass'),
    'low-end': phrase('Low end'),
    rear: phrase('Rear'),
    system: phrase('System'),
  };
  return labels[topic];
}

export function originLabel(origin: Profile['origin']): string {
  const labels: Readonly<Record<Profile['origin'], string>> = {
    factory: phrase('Factory'),
    'dealer-update': phrase('Dealer update'),
    'third-party': phrase('Third party'),
  };
  return labels[origin];
}

export function systemLabel(system: Profile['system']): string {
  const labels: Readonly<Record<Profile['system'], string>> = {
    amplified: phrase('Factory amplifier behind the unit'),
    unamplified: phrase('Speakers straight on the unit'),
  };
  return labels[system];
}

/** The same in a word, for tables. */
export function systemShortLabel(system: Profile['system']): string {
  const labels: Readonly<Record<Profile['system'], string>> = {
    amplified: phrase('amplifier'),
    unamplified: phrase('speakers'),
  };
  return labels[system];
}

export function sourceKindLabel(kind: Source['kind']): string {
  const labels: Readonly<Record<Source['kind'], string>> = {
    'bench-session': phrase('Bench session'),
    'service-bulletin': phrase('Service bulletin'),
    'data-sheet': phrase('Data sheet'),
    'riders-report': phrase('Riders’ report'),
    'published-standard': phrase('Published standard'),
  };
  return labels[kind];
}

export function trustLabel(trust: Source['trust']): string {
  const labels: Readonly<Record<Source['trust'], string>> = {
    high: phrase('High'),
    medium: phrase('Medium'),
    low: phrase('Low'),
  };
  return labels[trust];
}

const channelLabels: Readonly<Record<string, () => string>> = {
  FL: () => phrase('front left'),
  FR: () => phrase('front right'),
  RL: () => phrase('rear left'),
  RR: () => phrase('rear right'),
};

export function channelLabel(channel: string): string {
  return channelLabels[channel]?.() ?? channel;
}

/** What a value was read at: “front left, step 27, 1 kHz”. Empty where nothing narrows it down. */
export function readAt({ channel, step, hz }: Conditions): string {
  return [
    channel === undefined ? '' : (channelLabel(channel) ?? channel),
    step === undefined ? '' : phrase('step {step}', { step }),
    hz === undefined ? '' : formatHz(hz),
  ]
    .filter((part) => part !== '')
    .join(', ');
}

/** What the bench was set to: “4 Ω per channel, 14.4 V supply, test signal 0 dBFS”. */
export function benchSetting({ loadOhms, supplyVolts, signalDbfs }: Conditions): string {
  return phrase('{load}\u00a0Ω per channel, {supply}\u00a0V supply, test signal {signal}\u00a0dBFS', {
    load: plainNumber(loadOhms),
    supply: formatNumber(supplyVolts, 1),
    signal: plainNumber(signalDbfs),
  });
}

/** A number as it was entered, with a true minus sign. */
export function plainNumber(value: number): string {
  return String(value).replace('-', '−');
}

/** A date for people, in the language of the site: 14 March 2026. */
export function longDate(isoDate: string): string {
  const tag = phrase('en-GB');
  const format = longDates.get(tag) ?? new Intl.DateTimeFormat(tag, { dateStyle: 'long', timeZone: 'UTC' });
  longDates.set(tag, format);
  return format.format(new Date(isoDate));
}

/** By language: making them takes far longer than asking them. */
const longDates = new Map<string, Intl.DateTimeFormat>();
