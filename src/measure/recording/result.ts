/** A recording → the figures that are printed, in volts where those are known. */
import type { SweepFigures, ToneFigures } from '../../../schemas/results/sweep.ts';
import { dbv, ratioDb } from '../level.ts';
import { referenceHz } from '../response.ts';
import type { Sweep } from './exponential-sweep.ts';
import type { Tone } from './stimulus.ts';
import { analyseSweep } from './sweep-analysis.ts';
import { highestOrder } from './sweep-response.ts';
import { analyseTone } from './tone-analysis.ts';
import type { VoltsKnownBy } from './volts.ts';
import type { Recording } from './wav.ts';

/**
 * The figures of a sweep. A meter's reading has to be at a frequency the sweep passes.
 * @throws UnusableRecording where the recording cannot be measured.
 */
export function sweepFigures(recording: Recording, sweep: Sweep, volts?: VoltsKnownBy): SweepFigures {
  const meterHz = volts?.kind === 'meter' ? volts.hz : undefined;
  const relative = volts === undefined ? referenceHz : undefined;
  const measured = analyseSweep(recording, sweep, meterHz ?? relative);
  const amplitude = measured.amplitudeAtReference ?? 1;
  const fullScaleVoltsRms = volts && volts.voltsRms / amplitude;
  return {
    kind: 'sweep',
    stimulus: `sweep:${sweep.fromHz}:${sweep.toHz}:${sweep.seconds}`,
    sampleRateHz: recording.sampleRateHz,
    levelReference: volts ? '1 V' : '1 kHz',
    response: measured.levels.map((level) =>
      levelPoint(
        level.hz,
        level.amplitude / amplitude,
        fullScaleVoltsRms && level.amplitude * fullScaleVoltsRms,
      ),
    ),
    distortion: measured.distortion.map(({ hz, order, ratio, bound }) => ({
      hz: writtenHz(hz),
      order,
      ratio: figure(ratio),
      bound,
    })),
    thd: measured.thd.map(({ hz, ratio, bound, upToOrder }) => ({
      hz: writtenHz(hz),
      ratio: figure(ratio),
      bound,
      upToOrder,
    })),
    signalToNoiseDb: decibels(measured.signalToNoiseDb),
    ...(fullScaleVoltsRms === undefined ? {} : { fullScaleVoltsRms: figure(fullScaleVoltsRms) }),
    startSeconds: figure(measured.startSeconds),
    leftOut: measured.leftOut.map(({ hz, reason }) => ({ hz: writtenHz(hz), reason })),
  };
}

/**
 * The figures of a tone, under the frequency it was named by. A meter's reading has to be at that frequency.
 * @throws UnusableRecording where the recording cannot be measured.
 */
export function toneFigures(recording: Recording, tone: Tone, volts?: VoltsKnownBy): ToneFigures {
  const measured = analyseTone(recording, tone);
  // The rms of a full-scale sine is 1/√2 (AES17), and the level is that of all a meter sees.
  const level = measured.rms * Math.SQRT2;
  const fullScaleVoltsRms = volts && (volts.kind === 'meter' ? volts.voltsRms / level : volts.voltsRms);
  const voltsRms = fullScaleVoltsRms && level * fullScaleVoltsRms;
  const hz = writtenHz(tone.hz);
  return {
    kind: 'tone',
    stimulus: `tone:${tone.hz}`,
    sampleRateHz: recording.sampleRateHz,
    levelReference: volts ? '1 V' : 'full scale',
    response: [
      levelPoint(tone.hz, measured.amplitude, fullScaleVoltsRms && measured.amplitude * fullScaleVoltsRms),
    ],
    distortion: measured.harmonics
      .filter(({ order }) => order <= highestOrder)
      .map(({ order, ratio, bound }) => ({ hz, order, ratio: figure(ratio), bound })),
    thd: measured.thd
      ? [
          {
            hz,
            ratio: figure(measured.thd.ratio),
            bound: measured.thd.bound,
            upToOrder: measured.thd.upToOrder,
          },
        ]
      : [],
    signalToNoiseDb: decibels(measured.signalToNoiseDb),
    ...(fullScaleVoltsRms === undefined ? {} : { fullScaleVoltsRms: figure(fullScaleVoltsRms) }),
    recordedHz: figure(measured.hz),
    level: {
      levelDbfs: decibels(ratioDb(level)),
      ...(voltsRms === undefined ? {} : { voltsRms: figure(voltsRms), levelDbv: decibels(dbv(voltsRms)) }),
    },
    thdPlusNoise: figure(measured.thdPlusNoise),
    noiseBandHz: [...measured.bandHz],
    clipped: measured.clipping.clipped,
  };
}

function levelPoint(
  hz: number,
  ratio: number,
  voltsRms: number | undefined,
): SweepFigures['response'][number] {
  return voltsRms === undefined
    ? { hz: writtenHz(hz), levelDb: decibels(ratioDb(ratio)) }
    : { hz: writtenHz(hz), levelDb: decibels(dbv(voltsRms)), voltsRms: figure(voltsRms) };
}

/** Six significant digits, as frequencies are written on sheets. */
function writtenHz(hz: number): number {
  return figure(hz);
}

function figure(value: number): number {
  return Number(value.toPrecision(6));
}

/** Decibels to a ten-thousandth; never −0. */
function decibels(value: number): number {
  return Number(value.toFixed(4)) + 0;
}
