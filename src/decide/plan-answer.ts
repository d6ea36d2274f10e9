/** Does a profile suit a plan? Each aspect is judged alone; the verdict follows from the worst. */
import type { Plan, Profile } from '../../schemas/index.ts';
import {
  type Characteristic,
  type CharacteristicName,
  formatNumber,
  formatQuantity,
  greatestBoost,
  type ProfileOutput,
  ratioDb,
} from '../measure/index.ts';
import { sideOf } from './compare.ts';
import type { PlanAnswer, Reason, Verdict } from './verdict.ts';

/** The plan, the profile it is held against, the outputs the unit has, and what was measured of it. */
export function answerPlan(
  plan: { readonly id: string; readonly data: Plan },
  profile: Profile,
  channels: readonly string[],
  output: ProfileOutput,
): PlanAnswer {
  const reasons = [
    systemReason(plan.data, profile),
    levelReason(plan.data, output),
    bassReason(plan.data, output),
    lowEndReason(plan.data, output),
    rearReason(plan.data, channels, output),
  ].flatMap((reason) => reason ?? []);
  const verdict = verdictOf(reasons);
  return { plan: plan.id, verdict, sentence: sentenceOf(verdict, reasons), reasons };
}

/** fails → reflash; else anything open → measure first; else anything to put right → keep and correct. */
function verdictOf(reasons: readonly Reason[]): Verdict {
  const has = (outcome: Reason['outcome']): boolean => reasons.some((one) => one.outcome === outcome);
  if (has('fails')) return 'reflash';
  if (has('borderline') || has('unknown')) return 'measure-first';
  return has('correct') ? 'keep-and-correct' : 'keep';
}

const openings: Readonly<Record<Verdict, string>> = {
  keep: 'Keep this profile: nothing needs to change.',
  'keep-and-correct': 'Keep this profile and put one thing right.',
  reflash: 'This profile does not suit the plan; another one would be needed.',
  replace: 'A replacement unit is the better way.',
  'measure-first': 'Not decided yet: one more reading would settle it.',
};

function sentenceOf(verdict: Verdict, reasons: readonly Reason[]): string {
  const deciding = reasons.filter((one) =>
    verdict === 'reflash'
      ? one.outcome === 'fails'
      : verdict === 'measure-first'
        ? one.outcome === 'borderline' || one.outcome === 'unknown'
        : one.outcome === 'correct',
  );
  const opening =
    verdict === 'keep-and-correct' && deciding.length > 1
      ? 'Keep this profile and put a few things right.'
      : openings[verdict];
  return [opening, ...deciding.map((one) => one.text)].join(' ');
}

function systemReason(plan: Plan, profile: Profile): Reason | undefined {
  const reason = (outcome: Reason['outcome'], text: string): Reason => ({
    topic: 'system',
    outcome,
    text,
    readings: [],
  });
  if (plan.feeds === 'factory-amplifier') {
    return profile.system === 'amplified'
      ? reason('fits', 'It is meant for a factory amplifier behind the unit.')
      : reason('fails', 'It is meant for speakers straight off the unit, never for a factory amplifier.');
  }
  if (plan.feeds === 'speakers') {
    return profile.system === 'unamplified'
      ? reason('fits', 'It is meant for speakers straight off the unit.')
      : reason('fails', 'It is meant for a factory amplifier, not for speakers straight off the unit.');
  }
  return undefined;
}

function levelReason(plan: Plan, output: ProfileOutput): Reason | undefined {
  if (!plan.input) return undefined;
  const volts = find(output, 'clean-volts');
  if (!volts) return unknown('level', output, 'clean-volts');
  const { leastVolts, mostVolts } = plan.input;
  const has = `It plays clean up to ${formatQuantity(volts)}`;
  const range = `the amplifier’s input takes ${volt(leastVolts)} to ${volt(mostVolts)}`;
  const reason = (outcome: Reason['outcome'], text: string): Reason => ({
    topic: 'level',
    outcome,
    text,
    readings: volts.readings,
  });
  const atLeast = sideOf(volts, leastVolts);
  const atMost = sideOf(volts, mostVolts);
  if (atLeast === 'below') {
    return reason('fails', `${has}, ${decibels(leastVolts / volts.value)} short: ${range}.`);
  }
  if (atMost === 'above') {
    return reason(
      'correct',
      `${has}, ${decibels(volts.value / mostVolts)} over: ${range}. Attenuate the feed or stop at a lower step.`,
    );
  }
  if (atLeast === 'borderline' || atMost === 'borderline') {
    return reason(
      'borderline',
      `${has}, too near the end of the range to tell: ${range}. Read the volts at the highest clean step again with a finer meter.`,
    );
  }
  return reason('fits', `${has}, within the range: ${range}.`);
}

function bassReason(plan: Plan, output: ProfileOutput): Reason {
  const boost = greatestBoost(output);
  if (!boost) return unknown('bass', output, 'bass-boost');
  const limit = `the plan’s speakers are to get at most ${formatNumber(plan.mostBassBoostDb, 0)} dB`;
  const moving = ['fading', 'switched', 'changing'].includes(output.boostBehaviour);
  const has = moving
    ? `Bass boost changes with the volume, up to ${formatQuantity(boost)} at step ${boost.conditions.step}`
    : `Bass boost is ${formatQuantity(boost)}`;
  const reason = (outcome: Reason['outcome'], text: string): Reason => ({
    topic: 'bass',
    outcome,
    text,
    readings: boost.readings,
  });
  const side = sideOf(boost, plan.mostBassBoostDb);
  if (side === 'below') return reason('fits', `${has}; ${limit}.`);
  if (side === 'borderline') return reason('borderline', `${has}, too near the limit to tell: ${limit}.`);
  if (plan.canCorrect && output.boostBehaviour === 'unknown') {
    return reason(
      'unknown',
      `${has} at the one step measured; ${limit}. Whether an equaliser can take it out needs the response at a second step.`,
    );
  }
  if (plan.canCorrect && !moving) {
    return reason(
      'correct',
      `${has}; ${limit}. It stays the same with the volume, so the amplifier’s equaliser can take it out.`,
    );
  }
  const why = moving
    ? 'No equaliser setting takes out a boost that changes.'
    : 'The plan has no equaliser to take it out.';
  return reason('fails', `${has}; ${limit}. ${why}`);
}

function lowEndReason(plan: Plan, output: ProfileOutput): Reason | undefined {
  if (plan.highestLowCornerHz === undefined) return undefined;
  const lower = find(output, 'lower-corner');
  if (!lower) return unknown('low-end', output, 'lower-corner');
  const has = `Bass reaches down to ${formatQuantity(lower)}`;
  const limit = `the plan wants it down to ${formatNumber(plan.highestLowCornerHz, 0)} Hz`;
  const side = sideOf(lower, plan.highestLowCornerHz);
  const outcome = side === 'below' ? 'fits' : side === 'above' ? 'fails' : 'borderline';
  const ending = side === 'borderline' ? ', too near to tell' : '';
  return { topic: 'low-end', outcome, text: `${has}; ${limit}${ending}.`, readings: lower.readings };
}

/** A rear feed this much below the front is within what an amplifier's gain makes up, dB: common practice, no source. */
const rearWithinGainDb = -12;

function rearReason(plan: Plan, channels: readonly string[], output: ProfileOutput): Reason | undefined {
  if (plan.rear === 'not-needed') return undefined;
  const gainCanHelp = plan.feeds === 'aftermarket-amplifier';
  const silent = (text: string, readings: readonly string[]): Reason => ({
    topic: 'rear',
    outcome: gainCanHelp ? 'correct' : 'fails',
    text: gainCanHelp ? `${text} Feed the amplifier’s rear inputs from the front outputs.` : text,
    readings,
  });
  if (!channels.some((channel) => channel.startsWith('R'))) {
    return silent('The unit has no rear outputs.', []);
  }
  const level = find(output, 'rear-to-front');
  if (!level) return unknown('rear', output, 'rear-to-front');
  if (level.bound === 'at-most') return silent('The rear outputs are silent.', level.readings);
  const text = `The rear outputs play at ${formatQuantity(level)} relative to the front.`;
  if (level.value - level.expandedUncertainty >= -3) {
    return { topic: 'rear', outcome: 'fits', text, readings: level.readings };
  }
  if (!gainCanHelp || level.value + level.expandedUncertainty < rearWithinGainDb) {
    return { topic: 'rear', outcome: 'fails', text, readings: level.readings };
  }
  return {
    topic: 'rear',
    outcome: 'correct',
    text: `${text} Make up for it with the rear gain of the amplifier.`,
    readings: level.readings,
  };
}

function unknown(topic: Reason['topic'], output: ProfileOutput, name: CharacteristicName): Reason {
  const reason = output.missing.find((one) => one.name === name)?.reason ?? 'needs readings';
  return { topic, outcome: 'unknown', text: `Not measured: this ${reason}.`, readings: [] };
}

function find(output: ProfileOutput, name: CharacteristicName): Characteristic | undefined {
  return output.characteristics.find((one) => one.name === name);
}

function volt(value: number): string {
  return `${Number(value.toPrecision(3))}\u00a0V`;
}

function decibels(ratio: number): string {
  return `${formatNumber(ratioDb(ratio), 1)}\u00a0dB`;
}
