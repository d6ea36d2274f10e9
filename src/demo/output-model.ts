/**
 * The physics of an invented head unit: what stands at a speaker output for a tone of given level.
 *
 * Order of things: source level → volume step → tuning (boost, high-pass, tilt, rear trim) → limit, which is
 * the lower of the tuning's own ceiling and the supply rail → output resistance into the load → noise.
 * The unit's own roll-off counts as part of the response, ahead of the limit.
 */
import type { Channel } from '../../schemas/common.ts';
import { highPassDb, lowPassDb, lowShelfDb, peakDb } from '../measure/filter-levels.ts';
import { clipSine } from './clipped-sine.ts';

/** The hardware every profile of a family shares. */
export interface UnitModel {
  readonly topology: 'bridged' | 'ground-referenced';
  readonly lowestStep: number;
  readonly highestStep: number;
  /** true where the lowest step is silence. */
  readonly lowestStepMutes: boolean;
  /** Size of the lowest and of the highest volume step, dB; those between follow a straight line. */
  readonly stepDbAtBottom: number;
  readonly stepDbAtTop: number;
  readonly outputOhms: number;
  /** What the output stage cannot use of the supply, volts peak. */
  readonly railDropVolts: number;
  readonly noiseVoltsRms: number;
  /** Distortion well below clipping, per cent. */
  readonly baseThdPercent: number;
  /** First-order coupling corner at the low end, Hz. */
  readonly couplingHz: number;
  readonly rollOff: { readonly hz: number; readonly order: number };
}

/** How far a bass boost is applied as the volume rises. */
export type BoostOverVolume =
  | { readonly kind: 'fixed' }
  | { readonly kind: 'fades'; readonly fromStep: number; readonly goneAtStep: number }
  | { readonly kind: 'off-above'; readonly step: number };

export interface BassBoost {
  readonly shape: 'peak' | 'low-shelf';
  readonly hz: number;
  readonly gainDb: number;
  readonly q: number;
  readonly overVolume: BoostOverVolume;
}

/** What a profile sets. */
export interface Tuning {
  /** Open-circuit volts rms at the highest step, 1 kHz, full-scale sine, if nothing limited it. */
  readonly topVoltsRms: number;
  /** The largest sine the profile lets through, open-circuit volts rms; absent: only the supply limits. */
  readonly ceilingVoltsRms?: number;
  readonly boost?: BassBoost;
  readonly highPass?: { readonly hz: number; readonly order: number };
  /** Slope above 1 kHz, dB per octave. */
  readonly tiltDbPerOctave?: number;
  /** Rear level relative to front, dB, or no rear at all. */
  readonly rear: number | 'muted';
}

/** What a unit is fed and loaded with. */
export interface OperatingConditions {
  readonly supplyVolts: number;
  readonly loadOhms: number;
  /** Level of the tone, dB of a full-scale sine. */
  readonly levelDbfs: number;
}

/** What stands at an output. */
export interface OutputState {
  readonly voltsRms: number;
  /** Per cent of the fundamental; null where there is no tone to speak of. */
  readonly thdPercent: number | null;
}

/**
 * Share of the wide-band noise that an analyser counts as harmonics: harmonics 2 to 10, each read through a
 * band some 3 Hz wide, out of 20 kHz: √(9·3/20000) ≈ 0.04.
 */
const NOISE_IN_HARMONICS = 0.04;

/** Volume law: dB below the highest step. −Infinity where the step is silence. */
export function stepLevelDb(unit: UnitModel, step: number): number {
  if (unit.lowestStepMutes && step === unit.lowestStep) return Number.NEGATIVE_INFINITY;
  const rises = unit.highestStep - unit.lowestStep;
  let level = 0;
  for (let rise = rises; rise > step - unit.lowestStep; rise -= 1) {
    const along = rises === 1 ? 1 : (rise - 1) / (rises - 1);
    level -= unit.stepDbAtBottom + (unit.stepDbAtTop - unit.stepDbAtBottom) * along;
  }
  return level;
}

/** The boost's gain at a volume step, dB. */
export function boostGainDb(boost: BassBoost, step: number): number {
  const over = boost.overVolume;
  if (over.kind === 'fixed') return boost.gainDb;
  if (over.kind === 'off-above') return step > over.step ? 0 : boost.gainDb;
  const gone = (step - over.fromStep) / (over.goneAtStep - over.fromStep);
  return boost.gainDb * (1 - Math.min(1, Math.max(0, gone)));
}

function shapeDb(unit: UnitModel, tuning: Tuning, step: number, hz: number): number {
  let level = highPassDb(hz, unit.couplingHz, 1) + lowPassDb(hz, unit.rollOff.hz, unit.rollOff.order);
  const { boost, highPass, tiltDbPerOctave } = tuning;
  if (boost) {
    const curve = boost.shape === 'peak' ? peakDb : lowShelfDb;
    level += curve(hz, boost.hz, boostGainDb(boost, step), boost.q);
  }
  if (highPass) level += highPassDb(hz, highPass.hz, highPass.order);
  if (tiltDbPerOctave !== undefined && hz > 1000) level += tiltDbPerOctave * Math.log2(hz / 1000);
  return level;
}

/** Linear response relative to 1 kHz at a volume step, dB, before any limit. */
export function responseDb(unit: UnitModel, tuning: Tuning, step: number, hz: number): number {
  return shapeDb(unit, tuning, step, hz) - shapeDb(unit, tuning, step, 1000);
}

/**
 * The largest peak the output stage swings, open circuit, volts: the supply less its drop when bridged,
 * half the supply less its drop when one side is ground.
 */
export function railPeakVolts(unit: UnitModel, supplyVolts: number): number {
  return (unit.topology === 'bridged' ? supplyVolts : supplyVolts / 2) - unit.railDropVolts;
}

/** Volts rms and distortion at one output for one tone. Steps outside the unit's range are the caller's error. */
export function outputState(
  unit: UnitModel,
  tuning: Tuning,
  channel: Channel,
  step: number,
  hz: number,
  conditions: OperatingConditions,
): OutputState {
  const rear = channel === 'RL' || channel === 'RR';
  const trimDb = rear ? tuning.rear : 0;
  const stepDb = stepLevelDb(unit, step);
  if (trimDb === 'muted' || stepDb === Number.NEGATIVE_INFINITY) {
    return { voltsRms: unit.noiseVoltsRms, thdPercent: null };
  }
  const levelDb = stepDb + trimDb + responseDb(unit, tuning, step, hz) + conditions.levelDbfs;
  const amplitude = Math.SQRT2 * tuning.topVoltsRms * 10 ** (levelDb / 20);
  const ceilingPeak = Math.SQRT2 * (tuning.ceilingVoltsRms ?? Number.POSITIVE_INFINITY);
  const limitPeak = Math.min(ceilingPeak, railPeakVolts(unit, conditions.supplyVolts));
  const clipped = clipSine(amplitude, limitPeak);
  const toneVolts = (clipped.rms * conditions.loadOhms) / (conditions.loadOhms + unit.outputOhms);
  const noiseRatio = (NOISE_IN_HARMONICS * unit.noiseVoltsRms) / toneVolts;
  return {
    voltsRms: Math.hypot(toneVolts, unit.noiseVoltsRms),
    thdPercent: 100 * Math.hypot(clipped.thdRatio, unit.baseThdPercent / 100, noiseRatio),
  };
}
