/** The options of `readback sweep` as values. */
import { CannotRun } from '../../base/index.ts';
import { formatHz } from '../../measure/index.ts';
import {
  describeStimulus,
  parseStimulus,
  type StereoChannel,
  type Stimulus,
  stereoChannels,
  type VoltsKnownBy,
} from '../../measure/recording/index.ts';

/** @throws CannotRun where the text names no stimulus. */
export function stimulusNamed(text: string): Stimulus {
  const stimulus = parseStimulus(text);
  if (stimulus.kind === 'problem') throw new CannotRun(stimulus.message, stimulus.help);
  return stimulus;
}

/** @throws CannotRun where it is neither left nor right. */
export function channelTaken(text: string | undefined): StereoChannel | undefined {
  const channel = stereoChannels.find((one) => one === text);
  if (text !== undefined && !channel) {
    throw new CannotRun(`--take ${text} names no channel.`, `It is one of: ${stereoChannels.join(', ')}.`);
  }
  return channel;
}

/** The highest voltage that is believed: a head unit puts out a few volts, an amplifier some tens. */
const mostVolts = 1000;

/**
 * What makes the recording known in volts, if anything: `--reference HZ=VOLTS` or `--full-scale VOLTS`.
 * @throws CannotRun where they cannot be read, contradict each other, or lie where the stimulus is not.
 */
export function voltsKnownBy(
  { reference, fullScale }: { readonly reference?: string; readonly fullScale?: string },
  stimulus: Stimulus,
): VoltsKnownBy | undefined {
  if (reference !== undefined && fullScale !== undefined) {
    throw new CannotRun(
      'Both --reference and --full-scale say how many volts the recording stands for.',
      'Give the one you measured, and leave the other out.',
    );
  }
  if (fullScale !== undefined) {
    return {
      kind: 'full-scale',
      voltsRms: volts(fullScale, `--full-scale ${fullScale}`, '--full-scale 8.5'),
    };
  }
  if (reference === undefined) return undefined;
  const [hzText = '', voltsText, ...more] = reference.split('=');
  const hz = decimal(hzText);
  if (voltsText === undefined || more.length > 0 || hz === undefined || hz <= 0) {
    throw new CannotRun(
      `--reference ${reference} is not a frequency and a voltage.`,
      'Write hertz and volts rms with a point, such as --reference 1000=1.00.',
    );
  }
  const voltsRms = volts(voltsText, `--reference ${reference}`, '--reference 1000=1.00');
  const plays =
    stimulus.kind === 'tone'
      ? Math.abs(hz / stimulus.hz - 1) <= 0.01
      : hz >= stimulus.fromHz && hz <= stimulus.toHz;
  if (!plays) {
    throw new CannotRun(
      `The reference is at ${formatHz(hz)}, where the ${describeStimulus(stimulus)} does not play.`,
      'Give the volts read at a frequency that was played, or --full-scale VOLTS from an earlier recording at the same input gain.',
    );
  }
  return { kind: 'meter', hz, voltsRms };
}

function volts(text: string, option: string, example: string): number {
  const value = decimal(text);
  if (value === undefined || !(value > 0 && value <= mostVolts)) {
    throw new CannotRun(
      `${option} is not a voltage above 0 V, up to ${mostVolts} V.`,
      `Write volts rms with a point, such as ${example}.`,
    );
  }
  return value;
}

function decimal(text: string): number | undefined {
  return /^\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : undefined;
}
