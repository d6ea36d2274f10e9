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
  const meant =
    data.system === 'amplified' ? 'a factory amplifier behind the unit' : 'speakers straight off the unit';
  const planned = terms.feeds === 'factory-amplifier' ? 'amplified' : 'unamplified';
  if (data.system === planned) {
    return { topic: 'system', text: `It is meant for ${meant}.`, readings: [] };
  }
  const not =
    terms.feeds === 'factory-amplifier'
      ? 'never for a factory amplifier'
      : 'not for speakers straight off the unit';
  return {
    topic: 'system',
    text: `It is meant for ${meant.replace(' behind the unit', '')}, ${not}.`,
    readings: [],
  };
}

function level({ input }: PlanTerms, output: ProfileOutput): Found | undefined {
  if (!input) return undefined;
  const volts = headlineValue(output, 'clean-volts');
  if (!volts) return notMeasured('level', output, 'clean-volts');
  const { leastVolts, mostVolts } = input;
  const range = `the amplifier’s input takes ${volt(leastVolts)} to ${volt(mostVolts)}`;
  const short = sideOf(volts, leastVolts) === 'below' ? leastVolts / volts.value : undefined;
  const over = sideOf(volts, mostVolts) === 'above' ? volts.value / mostVolts : undefined;
  const isOpen = sideOf(volts, leastVolts) === 'borderline' || sideOf(volts, mostVolts) === 'borderline';
  const how =
    short !== undefined && short > 1
      ? `${decibels(short)} short`
      : over !== undefined
        ? `${decibels(over)} over`
        : isOpen
          ? 'too near the end of the range to tell'
          : 'within the range';
  return {
    topic: 'level',
    text: `It plays clean up to ${formatQuantity(volts)}, ${how}: ${range}.`,
    ifOpen: 'Read the volts at the highest clean step again with a finer meter.',
    readings: volts.readings,
  };
}

function bass(terms: PlanTerms, output: ProfileOutput): Found {
  const boost = greatestBoost(output);
  if (!boost) return notMeasured('bass', output, 'bass-boost');
  const limit = `the plan’s speakers are to get at most ${formatNumber(terms.mostBassBoostDb, 0)} dB`;
  const moving = ['fading', 'switched', 'changing'].includes(output.boostBehaviour);
  const has = moving
    ? `Bass boost changes with the volume, up to ${formatQuantity(boost)} at step ${boost.conditions.step}`
    : `Bass boost is ${formatQuantity(boost)}`;
  const side = sideOf(boost, terms.mostBassBoostDb);
  const near = side === 'borderline' ? ', too near the limit to tell' : '';
  const ifOpen =
    output.boostBehaviour === 'unknown' && side !== 'below'
      ? 'It was measured at one step only: whether an equaliser can take it out needs the response at a second step.'
      : 'Read the response at the step of the greatest boost again, with more repeats.';
  return { topic: 'bass', text: `${has}${near}; ${limit}.`, ifOpen, readings: boost.readings };
}

function lowEnd({ highestLowCornerHz: limitHz }: PlanTerms, output: ProfileOutput): Found | undefined {
  if (limitHz === undefined) return undefined;
  const lower = headlineValue(output, 'lower-corner');
  if (!lower) return notMeasured('low-end', output, 'lower-corner');
  const near = sideOf(lower, limitHz) === 'borderline' ? ', too near to tell' : '';
  return {
    topic: 'low-end',
    text: `Bass reaches down to ${formatQuantity(lower)}; the plan wants it down to ${formatNumber(limitHz, 0)} Hz${near}.`,
    ifOpen: 'Read the response around that frequency at closer spacing.',
    readings: lower.readings,
  };
}

function rear(terms: PlanTerms, { channels, output }: JudgedProfile): Found | undefined {
  if (!terms.rearWanted) return undefined;
  if (!channels.some((channel) => channel.startsWith('R'))) {
    return { topic: 'rear', text: 'The unit has no rear outputs.', readings: [] };
  }
  const below = headlineValue(output, 'rear-to-front');
  if (!below) return notMeasured('rear', output, 'rear-to-front');
  const text =
    below.bound === 'at-most'
      ? 'The rear outputs are silent.'
      : `The rear outputs play at ${formatQuantity(below)} relative to the front.`;
  return { topic: 'rear', text, ifOpen: 'Read front and rear again at one step.', readings: below.readings };
}

function notMeasured(topic: Reason['topic'], output: ProfileOutput, name: CharacteristicName): Found {
  const reason = output.missing.find((one) => one.name === name)?.reason ?? 'needs readings';
  return { topic, text: `Not measured: this ${reason}.`, readings: [] };
}

function volt(value: number): string {
  return `${Number(value.toPrecision(3))}\u00a0V`;
}

function decibels(ratio: number): string {
  return `${formatNumber(ratioDb(ratio), 1)}\u00a0dB`;
}
