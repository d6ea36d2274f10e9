/** Recordings of sweeps and tones → levels and distortion. Pure computation: bytes and arrays in, numbers out. */
export { type Clipping, findClipping } from './clipping.ts';
export { growthSeconds, harmonicLeadSeconds, type Sweep, sweepSamples } from './exponential-sweep.ts';
export { sweepFigures, toneFigures } from './result.ts';
export { readingsOf, type Slot, sheetHeader, sheetLine } from './sheet-rows.ts';
export { clippedHelp, clippedMessage } from './signal-checks.ts';
export {
  describeStimulus,
  parseStimulus,
  type Stimulus,
  type StimulusProblem,
  type Tone,
} from './stimulus.ts';
export { analyseSweep, type SweepMeasurement } from './sweep-analysis.ts';
export { analyseTone, type ToneMeasurement } from './tone-analysis.ts';
export { UnusableRecording } from './unusable.ts';
export type { FullScale, MeterReading, VoltsKnownBy } from './volts.ts';
export { decodeWav, type Recording, type StereoChannel, stereoChannels } from './wav.ts';
export { coherentGain, flatTop, hamming, hann, noiseBandwidthBins } from './windows.ts';
