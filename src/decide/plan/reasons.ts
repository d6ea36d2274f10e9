/** Why a plan’s verdict is what it is: one plain sentence a topic, values and uncertainties included. */
import {
  type CharacteristicName,
  formatNumber,
  formatQuantity,
  greatestBoost,
  headlineValue,
  type ProfileOutput,
  ratioDb,
} from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import { sideOf } from '../compare.ts';
import type { JudgedProfile } from '../table-given.ts';
import type { Reason } from '../verdict.ts';
import type { Judgement } from './judge.ts';
import type { PlanPolicy } from './policy.ts';
import type { PlanTerms } from './terms.ts';
import { judgeTopic } from './topics.ts';

/** What was found on a topic, before the policy is asked: the sentence, and what to do where it is not certain. */
interface Found {
  readonly topic: Reason['topic'];
  readonly text: string;
  readonly readings: readonly string[];
  /** What would settle it. */
  readonly ifOpen?: string;
}

/** One reason for each topic the plan asks about, in the order they are read. */
export function reasonsFor(
  policy: PlanPolicy,
  { known }: Judgement,
  terms: PlanTerms,
  profile: JudgedProfile,
): Reason[] {
  const { output } = profile;
  const found = [
    system(terms, profile),
    level(terms, output),
    bass(terms, output),
    lowEnd(terms, output),
    rear(terms, profile),
  ];
  return found.flatMap((one): Reason[] => {
    if (!one) return [];
    const { topic, text, readings } = one;
    const { outcome, advice } = judgeTopic(policy, known, topic, terms.feeds);
    const isOpen = outcome === 'borderline' || outcome === 'unknown';
    const more = isOpen ? one.ifOpen : advice;
    return [{ topic, outcome, text: more === undefined ? text : `${text} ${more}`, readings }];
  });
}

function system(terms: PlanTerms, { data }: JudgedProfile): Found | undefined {
  if (terms.feeds === 'aftermarket-amplifier') return undefined;
  const isAmplified = data.system === 'amplified';
  const found = (text: string): Found => ({ topic: 'system', text, readings: [] });
  if (terms.feeds === 'factory-amplifier') {
    return found(
      isAmplified
        ? phrase('It is meant for a factory amplifier behind the unit.')
        : phrase('It is meant for speakers straight off the unit, never for a factory amplifier.'),
    );
  }
  return found(
    isAmplified
      ? phrase('It is meant for a factory amplifier, not for speakers straight off the unit.')
      : phrase('It is meant for speakers straight off the unit.'),
  );
}

function level({ input }: PlanTerms, output: ProfileOutput): Found | undefined {
  if (!input) return undefined;
  const volts = headlineValue(output, 'clean-volts');
  if (!volts) return notMeasured('level', output, 'clean-volts');
  const { leastVolts, mostVolts } = input;
  const told = { volts: formatQuantity(volts), least: volt(leastVolts), most: volt(mostVolts) };
  const short = sideOf(volts, leastVolts) === 'below' ? leastVolts / volts.value : undefined;
  const over = sideOf(volts, mostVolts) === 'above' ? volts.value / mostVolts : undefined;
  const isOpen = sideOf(volts, leastVolts) === 'borderline' || sideOf(volts, mostVolts) === 'borderline';
  const text =
    short !== undefined && short > 1
      ? phrase('It plays clean up to {volts}, {db} short: the amplifier’s input takes {least} to {most}.', {
          ...told,
          db: decibels(short),
        })
      : over !== undefined
        ? phrase('It plays clean up to {volts}, {db} over: the amplifier’s input takes {least} to {most}.', {
            ...told,
            db: decibels(over),
          })
        : isOpen
          ? phrase(
              'It plays clean up to {volts}, too near the end of the range to tell: the amplifier’s input takes {least} to {most}.',
              told,
            )
          : phrase(
              'It plays clean up to {volts}, within the range: the amplifier’s input takes {least} to {most}.',
              told,
            );
  return {
    topic: 'level',
    text,
    ifOpen: phrase('Read the volts at the highest clean step again with a finer meter.'),
    readings: volts.readings,
  };
}

function bass(terms: PlanTerms, output: ProfileOutput): Found {
  const boost = greatestBoost(output);
  if (!boost) return notMeasured('bass', output, 'bass-boost');
  const moving = ['fading', 'switched', 'changing'].includes(output.boostBehaviour);
  const side = sideOf(boost, terms.mostBassBoostDb);
  const told = { boost: formatQuantity(boost), most: formatNumber(terms.mostBassBoostDb, 0) };
  const movingTold = { ...told, step: boost.conditions.step ?? '' };
  const text =
    side === 'borderline'
      ? moving
        ? phrase(
            'Bass boost changes with the volume, up to {boost} at step {step}, too near the limit to tell; the plan’s speakers are to get at most {most} dB.',
            movingTold,
          )
        : phrase(
            'Bass boost is {boost}, too near the limit to tell; the plan’s speakers are to get at most {most} dB.',
            told,
          )
      : moving
        ? phrase(
            'Bass boost changes with the volume, up to {boost} at step {step}; the plan’s speakers are to get at most {most} dB.',
            movingTold,
          )
        : phrase('Bass boost is {boost}; the plan’s speakers are to get at most {most} dB.', told);
  const ifOpen =
    output.boostBehaviour === 'unknown' && side !== 'below'
      ? phrase(
          'It was measured at one step only: whether an equaliser can take it out needs the response at a second step.',
        )
      : phrase('Read the response at the step of the greatest boost again, with more repeats.');
  return { topic: 'bass', text, ifOpen, readings: boost.readings };
}

function lowEnd({ highestLowCornerHz: limitHz }: PlanTerms, output: ProfileOutput): Found | undefined {
  if (limitHz === undefined) return undefined;
  const lower = headlineValue(output, 'lower-corner');
  if (!lower) return notMeasured('low-end', output, 'lower-corner');
  const told = { corner: formatQuantity(lower), hz: formatNumber(limitHz, 0) };
  return {
    topic: 'low-end',
    text:
      sideOf(lower, limitHz) === 'borderline'
        ? phrase('Bass reaches down to {corner}; the plan wants it down to {hz} Hz, too near to tell.', told)
        : phrase('Bass reaches down to {corner}; the plan wants it down to {hz} Hz.', told),
    ifOpen: phrase('Read the response around that frequency at closer spacing.'),
    readings: lower.readings,
  };
}

function rear(terms: PlanTerms, { channels, output }: JudgedProfile): Found | undefined {
  if (!terms.rearWanted) return undefined;
  if (!channels.some((channel) => channel.startsWith('R'))) {
    return { topic: 'rear', text: phrase('The unit has no rear outputs.'), readings: [] };
  }
  const below = headlineValue(output, 'rear-to-front');
  if (!below) return notMeasured('rear', output, 'rear-to-front');
  const text =
    below.bound === 'at-most'
      ? phrase('The rear outputs are silent.')
      : phrase('The rear outputs play at {level} relative to the front.', { level: formatQuantity(below) });
  return {
    topic: 'rear',
    text,
    ifOpen: phrase('Read front and rear again at one step.'),
    readings: below.readings,
  };
}

function notMeasured(topic: Reason['topic'], output: ProfileOutput, name: CharacteristicName): Found {
  return { topic, text: notMeasuredText(output, name), readings: [] };
}

/** What is to be read before there is such a value. */
export function notMeasuredText({ missing }: ProfileOutput, name: CharacteristicName): string {
  const { reason } = missing.find((one) => one.name === name) ?? {};
  return phrase('Not measured: this {reason}.', { reason: reason ?? phrase('needs readings') });
}

function volt(value: number): string {
  return `${Number(value.toPrecision(3))}\u00a0V`;
}

function decibels(ratio: number): string {
  return `${formatNumber(ratioDb(ratio), 1)}\u00a0dB`;
}
