/** Whether a reading can be held against a unit at all. */
import type { Channel } from '../../../schemas/index.ts';
import { formatHz, type ProfileOutput, referenceHz } from '../../measure/index.ts';
import type { Problem } from './parse-reading.ts';
import type { ReadingPoint } from './reading.ts';

/** What a unit has and what was measured of it. */
export interface ReadableUnit {
  readonly name: string;
  readonly channels: readonly Channel[];
  readonly lowestStep: number;
  readonly highestStep: number;
  readonly outputs: readonly ProfileOutput[];
}

/** A nominal frequency may lie this much outside the exact ones measured: 20 Hz stands for 19.95 Hz. */
const nominalTolerance = 0.01;

/** What is wrong with a reading of this unit, if anything: an output, a step or a frequency it does not have. */
export function readingProblem({ channel, step, hz }: ReadingPoint, unit: ReadableUnit): Problem | undefined {
  if (!unit.channels.includes(channel)) {
    return {
      message: `“${unit.name}” has no output ${channel}.`,
      help: `Its outputs are: ${unit.channels.join(', ')}.`,
    };
  }
  if (step < unit.lowestStep || step > unit.highestStep) {
    return {
      message: `“${unit.name}” has no volume step ${step}.`,
      help: `Its steps go from ${unit.lowestStep} to ${unit.highestStep}. A screen that counts otherwise belongs to another unit.`,
    };
  }
  const [lowest, highest] = measuredHz(unit.outputs);
  if (hz < lowest * (1 - nominalTolerance) || hz > highest * (1 + nominalTolerance)) {
    return {
      message: `No profile of “${unit.name}” was measured at ${formatHz(hz)}.`,
      help:
        lowest === highest
          ? `Play a tone of ${formatHz(lowest)}.`
          : `Play a tone between ${formatHz(lowest)} and ${formatHz(highest)}.`,
    };
  }
  return undefined;
}

/** The lowest and highest frequency any profile was measured at, hertz. */
function measuredHz(outputs: readonly ProfileOutput[]): [number, number] {
  const all = outputs.flatMap((output) =>
    output.responses.flatMap((curve) => curve.points.map((one) => one.hz)),
  );
  return [Math.min(referenceHz, ...all), Math.max(referenceHz, ...all)];
}
