/**
 * The true characteristics of every demo profile, straight from the model, free of any instrument.
 * What readings are computed back to is held against these.
 */
import { type Channel, channels } from '../../schemas/common.ts';
import { type OperatingConditions, type OutputState, outputState, responseDb } from './output-model.ts';
import { findProfile, signalLevelDbfs } from './world/index.ts';

/** At most this much distortion counts as clean, per cent (rating condition of CTA-2006). */
export const cleanThdPercent = 1;

/** The exact third-octave frequencies from 20 Hz to 20 kHz, 1000·10^(k/10) Hz (IEC 61260-1:2014). */
export const thirdOctavesHz: readonly number[] = Array.from(
  { length: 31 },
  (_, i) => 1000 * 10 ** ((i - 17) / 10),
);

/** Bass is looked for up to here, Hz. */
export const highestBassHz = 200;

/** Conditions truth is asked for under; what is left out is 14.4 V, the rated load and full scale. */
export type TruthConditions = Partial<OperatingConditions>;

function full(profileId: string, conditions: TruthConditions): OperatingConditions {
  return {
    supplyVolts: 14.4,
    loadOhms: findProfile(profileId).family.ratedLoadOhms,
    levelDbfs: signalLevelDbfs,
    ...conditions,
  };
}

/** Volts rms and THD (per cent, null where there is no tone) at one output. @throws on an unknown profile. */
export function trueOutput(
  profileId: string,
  channel: Channel,
  step: number,
  hz: number,
  conditions: TruthConditions = {},
): OutputState {
  const { family, profile } = findProfile(profileId);
  return outputState(family.unit, profile.tuning, channel, step, hz, full(profileId, conditions));
}

/** Every volume step of the profile's unit, lowest first. */
export function volumeSteps(profileId: string): number[] {
  const { lowestStep, highestStep } = findProfile(profileId).family.unit;
  return Array.from({ length: highestStep - lowestStep + 1 }, (_, i) => lowestStep + i);
}

function isClean(profileId: string, step: number, hz: number, conditions: TruthConditions): boolean {
  const { thdPercent } = trueOutput(profileId, 'FL', step, hz, conditions);
  return thdPercent !== null && thdPercent <= cleanThdPercent;
}

/** The highest step at which front left is clean at 1 kHz. @throws where none is. */
export function highestCleanStep(profileId: string, conditions: TruthConditions = {}): number {
  const step = volumeSteps(profileId).findLast((each) => isClean(profileId, each, 1000, conditions));
  if (step === undefined) throw new Error(`Profile "${profileId}" of the demo world is clean at no step.`);
  return step;
}

/** Volts rms of front left at 1 kHz at the highest clean step. */
export function cleanVolts(profileId: string, conditions: TruthConditions = {}): number {
  return trueOutput(profileId, 'FL', highestCleanStep(profileId, conditions), 1000, conditions).voltsRms;
}

/**
 * The highest step at which front left is clean at whichever third-octave frequency comes out loudest, so
 * that no tone of a response is clipped. @throws where none is.
 */
export function highestStepCleanThroughout(profileId: string, conditions: TruthConditions = {}): number {
  const { family, profile } = findProfile(profileId);
  const step = volumeSteps(profileId).findLast((each) => {
    const level = (hz: number) => responseDb(family.unit, profile.tuning, each, hz);
    const loudestHz = thirdOctavesHz.reduce((best, hz) => (level(hz) > level(best) ? hz : best));
    return isClean(profileId, each, loudestHz, conditions);
  });
  if (step === undefined) throw new Error(`Profile "${profileId}" of the demo world is clean at no step.`);
  return step;
}

/** Level of front left at hz relative to 1 kHz at one step, dB, limits included. */
export function trueResponseDb(
  profileId: string,
  step: number,
  hz: number,
  conditions: TruthConditions = {},
): number {
  const volts = (at: number) => trueOutput(profileId, 'FL', step, at, conditions).voltsRms;
  return 20 * Math.log10(volts(hz) / volts(1000));
}

/** Bass boost at one step: the greatest level relative to 1 kHz at a third-octave frequency up to 200 Hz, dB. */
export function bassBoostDb(profileId: string, step: number, conditions: TruthConditions = {}): number {
  return Math.max(
    ...thirdOctavesHz
      .filter((hz) => hz <= highestBassHz)
      .map((hz) => trueResponseDb(profileId, step, hz, conditions)),
  );
}

/** −3 dB relative to 1 kHz, looked for from 1 kHz outwards to limitHz; null where it lies beyond. */
function cornerHz(
  profileId: string,
  step: number,
  limitHz: number,
  conditions: TruthConditions,
): number | null {
  const below = (hz: number) => trueResponseDb(profileId, step, hz, conditions) < -3;
  const slices = 400;
  const ratio = (limitHz / 1000) ** (1 / slices);
  for (let i = 1; i <= slices; i += 1) {
    if (!below(1000 * ratio ** i)) continue;
    let [inside, outside] = [1000 * ratio ** (i - 1), 1000 * ratio ** i];
    for (let halving = 0; halving < 40; halving += 1) {
      const middle = Math.sqrt(inside * outside);
      if (below(middle)) outside = middle;
      else inside = middle;
    }
    return inside;
  }
  return null;
}

/** The frequency below 1 kHz where front left is first 3 dB down, Hz; null where that is below 5 Hz. */
export function lowerCornerHz(
  profileId: string,
  step: number,
  conditions: TruthConditions = {},
): number | null {
  return cornerHz(profileId, step, 5, conditions);
}

/** The frequency above 1 kHz where front left is first 3 dB down, Hz; null where that is above 80 kHz. */
export function upperCornerHz(
  profileId: string,
  step: number,
  conditions: TruthConditions = {},
): number | null {
  return cornerHz(profileId, step, 80_000, conditions);
}

/** true where the profile keeps this output silent. @throws on an unknown profile. */
export function isMuted(profileId: string, channel: Channel): boolean {
  const rear = channel === 'RL' || channel === 'RR';
  return rear && findProfile(profileId).profile.tuning.rear === 'muted';
}

/**
 * Level of rear left relative to front left at 1 kHz, dB, at one step (the highest clean one unless given).
 * Above the clean steps a clipped front brings it nearer to 0. null where the rear is muted.
 */
export function rearToFrontDb(
  profileId: string,
  step?: number,
  conditions: TruthConditions = {},
): number | null {
  if (isMuted(profileId, 'RL')) return null;
  const at = step ?? highestCleanStep(profileId, conditions);
  const volts = (channel: Channel) => trueOutput(profileId, channel, at, 1000, conditions).voltsRms;
  return 20 * Math.log10(volts('RL') / volts('FL'));
}

/** What is true of a profile under the given conditions, in the terms statements are made in. */
export interface TrueCharacteristics {
  readonly highestCleanStep: number;
  readonly cleanVolts: number;
  readonly highestStepCleanThroughout: number;
  /** By step, index 0 for the lowest; NaN where the step is silence. */
  readonly bassBoostDbByStep: readonly number[];
  /** Corners at the highest step that is clean throughout. */
  readonly lowerCornerHz: number | null;
  readonly upperCornerHz: number | null;
  readonly rearToFrontDb: number | null;
  readonly muted: readonly Channel[];
}

/** All of the above for one profile. @throws on an unknown profile. */
export function trueCharacteristics(
  profileId: string,
  conditions: TruthConditions = {},
): TrueCharacteristics {
  const { unit } = findProfile(profileId).family;
  const throughout = highestStepCleanThroughout(profileId, conditions);
  return {
    highestCleanStep: highestCleanStep(profileId, conditions),
    cleanVolts: cleanVolts(profileId, conditions),
    highestStepCleanThroughout: throughout,
    bassBoostDbByStep: volumeSteps(profileId).map((step) =>
      unit.lowestStepMutes && step === unit.lowestStep
        ? Number.NaN
        : bassBoostDb(profileId, step, conditions),
    ),
    lowerCornerHz: lowerCornerHz(profileId, throughout, conditions),
    upperCornerHz: upperCornerHz(profileId, throughout, conditions),
    rearToFrontDb: rearToFrontDb(profileId, undefined, conditions),
    muted: channels.filter((channel) => isMuted(profileId, channel)),
  };
}
