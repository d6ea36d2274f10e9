/** What a meter is to show on a profile: level over channel, step and frequency, from its computed output. */
import type { Channel } from '../../../schemas/index.ts';
import { dbv, type ProfileOutput, referenceHz, relativeToDb } from '../../measure/index.ts';
import {
  audibleVolts,
  beyondCurvesDb,
  limitDb,
  otherFrontDb,
  rearResponseDb,
  silentSpreadDb,
  silentVolts,
} from './constants.ts';
import { type Interpolated, interpolate, interpolateSwitched, type Knot } from './interpolate.ts';
import { type LimitCurve, limitCurve, linearise } from './limit.ts';
import { isRear, type ReadingPoint } from './reading.ts';

/** The level a profile puts out at a point, as a Gaussian that moves with the tone's offset. */
export interface Prediction {
  /** Level for a full-scale tone, dBV. */
  readonly levelDbv: number;
  /** dB of output for each dB the tone is louder; 0 where nothing plays. */
  readonly perOffset: number;
  /** Standard uncertainty that is this point's own, dB: the bench's, and that of the line in the offset. */
  readonly ownDb: number;
  /** Standard uncertainty of interpolating and assuming, dB: alike at points near each other. */
  readonly allowanceDb: number;
  /** How far below the level it is known to play clean at, dB; negative where it may clip. */
  readonly headroomDb: number;
}

/** Predicts one profile; undefined at points its readings say nothing about. */
export type Predictor = (point: ReadingPoint) => Prediction | undefined;

/**
 * The predictor of a profile's output for a tone whose offset is normal with standard deviation `offsetDb`.
 * Undefined where the profile was not measured.
 *
 * level(step, hz) = level(step, 1 kHz) + response(hz), the response from the curves taken at the nearest
 * steps, straight over the logarithm of frequency; rear outputs lie their measured distance below the front
 * and share its response; what would exceed the clean level is bent as the steps that clip were seen to bend.
 */
export function predictorOf(output: ProfileOutput, offsetDb: number): Predictor | undefined {
  const steps = output.levelByStep.filter((one) => one.volts.value > 0).sort((a, b) => a.step - b.step);
  if (steps.length === 0) return undefined;
  const curve = limitCurve(steps);
  const drive = steps.map(({ step, volts }, index) => ({
    x: step,
    y: curve.driveDbv[index] ?? dbv(volts.value),
    u: relativeToDb(volts.standardUncertainty / volts.value),
  }));
  const quietest = output.levelByStep.filter((one) => one.volts.value < audibleVolts).map((one) => one.step);
  const response = responseOf(output);
  const rear = rearOf(output);

  return ({ channel, step, hz }) => {
    if (output.mutedChannels.includes(channel) || quietest.includes(step)) return silentPrediction;
    const level = interpolate(drive, step);
    const shape = response(step, hz);
    const trim = isRear(channel) ? rear(step, hz) : frontOf(channel);
    if (!level || !shape || !trim) return undefined;
    if (trim === 'silent') return silentPrediction;
    return combine([level, shape, trim], curve, offsetDb);
  };
}

/** An output on which nothing plays: hum and noise, whatever the tone. */
export const silentPrediction: Prediction = {
  levelDbv: dbv(silentVolts),
  perOffset: 0,
  ownDb: 0,
  allowanceDb: silentSpreadDb,
  headroomDb: Number.POSITIVE_INFINITY,
};

function combine(parts: readonly Interpolated[], curve: LimitCurve, offsetDb: number): Prediction {
  const driveDbv = parts.reduce((sum, one) => sum + one.y, 0);
  const { levelDbv, perOffset, residualDb } = linearise(curve, driveDbv, offsetDb);
  const limit = limitDb * (1 - perOffset);
  return {
    levelDbv,
    perOffset,
    ownDb: Math.hypot(residualDb, ...parts.map((one) => one.u)),
    allowanceDb: Math.hypot(limit, ...parts.map((one) => one.allowance)),
    headroomDb: curve.cleanDbv - driveDbv,
  };
}

const exactly: Interpolated = { y: 0, u: 0, allowance: 0 };

/** Front left is the channel measured; front right is taken to play alike. */
function frontOf(channel: Channel): Interpolated {
  return channel === 'FL' ? exactly : { ...exactly, allowance: otherFrontDb };
}

/** 1 within an octave and more of 1 kHz, less nearer to it: what may differ there is little. */
function awayFromReference(hz: number): number {
  return Math.min(1, Math.abs(Math.log2(hz / referenceHz)));
}

function responseOf(output: ProfileOutput): (step: number, hz: number) => Interpolated | undefined {
  const curves = output.responses
    .map(({ step, points }) => ({
      step,
      knots: points
        .map((one): Knot => ({ x: Math.log2(one.hz), y: one.level.value, u: one.level.standardUncertainty }))
        .sort((a, b) => a.x - b.x),
    }))
    .sort((a, b) => a.step - b.step);
  return (step, hz) => {
    if (Math.abs(hz / referenceHz - 1) < 1e-3) return exactly;
    const here = curves.flatMap((curve) => {
      const at = atLogHz(curve.knots, hz);
      return at ? [{ step: curve.step, ...at }] : [];
    });
    const between = interpolateSwitched(
      here.map((one) => ({ x: one.step, y: one.y, u: one.u })),
      step,
    );
    if (!between) return undefined;
    const bend = Math.max(...here.map((one) => one.allowance));
    const beyond = between.beyond ? beyondCurvesDb * awayFromReference(hz) : 0;
    return { y: between.y, u: between.u, allowance: Math.hypot(between.allowance, bend, beyond) };
  };
}

/** A nominal frequency stands for the exact third-octave centre it is called after, 1 % away at most. */
function atLogHz(knots: readonly Knot[], hz: number): Interpolated | undefined {
  const x = Math.log2(hz);
  const near = knots.find((knot) => Math.abs(knot.x - x) < 0.014);
  return near ? { y: near.y, u: near.u, allowance: 0 } : interpolate(knots, x);
}

/** Rear relative to front over the steps it was read at, under the main conditions. */
function rearOf(output: ProfileOutput): (step: number, hz: number) => Interpolated | 'silent' | undefined {
  const main = output.conditions;
  const read = [...output.characteristics, ...output.others].filter(
    ({ name, conditions }) =>
      name === 'rear-to-front' &&
      conditions.loadOhms === main?.loadOhms &&
      conditions.supplyVolts === main.supplyVolts &&
      conditions.signalDbfs === main.signalDbfs,
  );
  const levels = read.filter((one) => one.bound === 'exact' && one.conditions.step !== undefined);
  const knots = levels
    .map((one): Knot => ({ x: one.conditions.step ?? 0, y: one.value, u: one.standardUncertainty }))
    .sort((a, b) => a.x - b.x);
  // The level is the mean of both rears: with one of them silent it says nothing of the other.
  const oneMuted = output.mutedChannels.some(isRear);
  return (step, hz) => {
    if (read.length > 0 && levels.length === 0) return 'silent';
    if (oneMuted) return undefined;
    const at = interpolateSwitched(knots, step);
    return at && { ...at, allowance: Math.hypot(at.allowance, rearResponseDb * awayFromReference(hz)) };
  };
}
