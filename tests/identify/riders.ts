/** Riders with meters, simulated from the demo's model: invented data, true values known. */
import { type Answers, readAnswers } from '../../src/answers.ts';
import { defaultAccuracyPercent, plannedDigitVolts } from '../../src/decide/identify/constants.ts';
import {
  type Identification,
  type IdentifyModel,
  identify,
  type MeasuredUnit,
  modelOf,
  type ReadingPoint,
  type RiderReading,
} from '../../src/decide/identify/index.ts';
import { type RandomStream, randomStream } from '../../src/demo/random.ts';
import { trueOutput } from '../../src/demo/truth.ts';
import { findProfile } from '../../src/demo/world/index.ts';

export const { answers }: { answers: Answers } = await readAnswers('content');
export const families: readonly string[] = [...answers.base.families.keys()];

export function unitOf(family: string): MeasuredUnit {
  return {
    channels: answers.base.families.get(family)?.data.output.channels ?? [],
    profiles: profilesOf(family).map((id) => ({ id, output: answers.outputs.get(id) })),
  };
}

export function profilesOf(family: string): string[] {
  return (answers.base.profilesOfFamily.get(family) ?? []).map((profile) => profile.id);
}

const models = new Map<string, IdentifyModel>();

/** The model of a family, built once. */
export function modelFor(family: string, levelKnown: boolean): IdentifyModel {
  const key = `${family} ${levelKnown}`;
  const model = models.get(key) ?? modelOf(unitOf(family), levelKnown);
  models.set(key, model);
  return model;
}

/** What comes out before any reading, computed once for each model: it is the same for all riders. */
const beginnings = new Map<IdentifyModel, Identification>();
function beginning(model: IdentifyModel): Identification {
  const found = beginnings.get(model) ?? identify(model, []);
  beginnings.set(model, found);
  return found;
}

export interface Rider {
  /** The profile the unit is truly on. */
  readonly profile: string;
  /** How much louder than full scale the tones are, dB. */
  readonly offsetDb: number;
  readonly random: RandomStream;
}

/** A rider whose tones are off by a normal error of `spreadDb`. */
export function riderOf(profile: string, name: string, spreadDb: number): Rider {
  const random = randomStream(20_260_117, `${profile} ${name}`);
  return { profile, offsetDb: spreadDb * random.gaussian(), random };
}

/** One reading: true volts, an error uniform within the meter's usual limit, rounded to its last digit. */
export function read(
  { profile, offsetDb, random }: Rider,
  { channel, step, hz }: ReadingPoint,
): RiderReading {
  const { voltsRms } = trueOutput(profile, channel, step, hz, { levelDbfs: offsetDb });
  const accuracyPercent = defaultAccuracyPercent(hz);
  const digitVolts = plannedDigitVolts(voltsRms);
  const shown = voltsRms * (1 + random.uniform(-accuracyPercent, accuracyPercent) / 100);
  const counts = Math.max(1, Math.round(shown / digitVolts));
  return { channel, step, hz, voltsRms: counts * digitVolts, accuracyPercent, digitVolts };
}

export function hasStep(profile: string, step: number): boolean {
  const { unit } = findProfile(profile).family;
  return step >= unit.lowestStep && step <= unit.highestStep;
}

export interface Call {
  readonly readings: readonly RiderReading[];
  readonly found: Identification;
  /** True where the unit lacks a step that was asked for, which gives a wrong unit away. */
  readonly lacksStep: boolean;
}

/** A telephone call: takes the reading asked for until it is sure or nothing helps, eight readings at most. */
export function call(model: IdentifyModel, rider: Rider): Call {
  const readings: RiderReading[] = [];
  let found = beginning(model);
  while (found.sureness !== 'sure' && found.nextReading && readings.length < 8) {
    if (!hasStep(rider.profile, found.nextReading.step)) return { readings, found, lacksStep: true };
    readings.push(read(rider, found.nextReading));
    found = identify(model, readings);
  }
  return { readings, found, lacksStep: false };
}

/** Whether the first candidate, or a twin of it, is the profile. */
export function isRight({ candidates }: Identification, profile: string): boolean {
  const [best] = candidates;
  return best !== undefined && (best.profile === profile || best.twins.includes(profile));
}
