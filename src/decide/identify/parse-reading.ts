/** Reads a reading as it is typed: `step=12,hz=60,volts=3.4,channel=RL,accuracy=2`. */
import { channels, mostReadableVolts } from '../../../schemas/index.ts';
import { defaultAccuracyPercent } from './constants.ts';
import type { RiderReading } from './reading.ts';

/** What is wrong with a text, and what to do about it. */
export interface Problem {
  readonly message: string;
  readonly help: string;
}

export type ParsedReading = { readonly reading: RiderReading } | { readonly problem: Problem };

export const readingKeys = ['step', 'hz', 'volts', 'channel', 'accuracy'] as const;
type ReadingKey = (typeof readingKeys)[number];

export const exampleReading = 'step=12,hz=60,volts=3.4';
const wholeExample = `Write it like ${exampleReading}, with channel=RL or accuracy=2 where they are not front left and the usual.`;

/** The most a limit of error may be, per cent: beyond it a reading says next to nothing. */
export const mostAccuracyPercent = 50;

/**
 * Parses one reading. `guess` gives the nearest of the known words to one that is not known; `accuracyPercent`
 * is the limit of error where the text states none, the usual one for its frequency where absent.
 */
export function parseReading(
  text: string,
  guess: (word: string, known: readonly string[]) => string | undefined,
  accuracyPercent?: number,
): ParsedReading {
  const values = new Map<ReadingKey, string>();
  if (text.trim() === '') return problem('This reading is empty.', wholeExample);
  for (const part of text.split(',')) {
    const at = part.indexOf('=');
    if (at === -1) {
      return problem(
        `“${part.trim()}” in the reading “${text}” is not of the form name=value.`,
        /^\s*\d/.test(part) ? 'Write numbers with a point, not a comma: volts=3.4.' : wholeExample,
      );
    }
    const name = part.slice(0, at).trim();
    const key = readingKeys.find((one) => one === name.toLowerCase());
    if (!key) {
      const near = guess(name, readingKeys);
      return problem(
        `“${name}” is not known in a reading.`,
        near
          ? `Did you mean ${near}=? ${wholeExample}`
          : `Known are: ${readingKeys.join(', ')}. ${wholeExample}`,
      );
    }
    if (values.has(key)) {
      return problem(
        `“${key}” is given twice in the reading “${text}”.`,
        'Give each once; a second reading takes a --reading of its own.',
      );
    }
    values.set(key, part.slice(at + 1).trim());
  }
  return readingOf(text, values, accuracyPercent);
}

function readingOf(
  text: string,
  values: ReadonlyMap<ReadingKey, string>,
  accuracyPercent: number | undefined,
): ParsedReading {
  const missing = (['step', 'hz', 'volts'] as const).filter((key) => !values.get(key));
  if (missing.length > 0) {
    return problem(`The reading “${text}” lacks ${missing.join(' and ')}.`, wholeExample);
  }
  for (const [key, value] of values) {
    if (key !== 'channel' && !plainNumber.test(value)) {
      return problem(
        `“${key}=${value}” is not a number.`,
        `${numberHelp[key]} Write numbers plainly, without a unit.`,
      );
    }
  }
  const number = (key: ReadingKey): number => Number(values.get(key));
  const step = number('step');
  if (!Number.isInteger(step))
    return problem(`“step=${values.get('step')}” is not a whole step.`, numberHelp.step);
  const hz = number('hz');
  if (hz <= 0) return problem(`“hz=${values.get('hz')}” is no frequency.`, numberHelp.hz);
  const volts = number('volts');
  if (volts <= 0) {
    return problem(
      `“volts=${values.get('volts')}” is not above zero.`,
      'Give volts rms without a sign. Where the meter shows nothing, give its smallest digit, such as volts=0.001.',
    );
  }
  if (volts > mostReadableVolts) {
    return problem(
      `“volts=${values.get('volts')}” is more than any head unit puts out.`,
      'Give volts, not millivolts: volts=3.4 for 3400 mV.',
    );
  }
  const stated = values.has('accuracy')
    ? number('accuracy')
    : (accuracyPercent ?? defaultAccuracyPercent(hz));
  const accuracy = accuracyProblem(stated, `accuracy=${values.get('accuracy')}`);
  if (accuracy) return { problem: accuracy };
  const typed = values.get('channel') ?? 'FL';
  const channel = channels.find((one) => one === typed.toUpperCase());
  if (!channel) {
    return problem(
      `There is no output “${typed}”.`,
      'The outputs are FL, FR, RL and RR: front left to rear right.',
    );
  }
  return {
    reading: {
      channel,
      step,
      hz,
      voltsRms: volts,
      accuracyPercent: stated,
      digitVolts: lastDigit(values.get('volts') ?? ''),
    },
  };
}

const plainNumber = /^-?\d+(\.\d+)?$/;

const numberHelp: Readonly<Record<Exclude<ReadingKey, 'channel'>, string>> = {
  step: 'Give the volume step the screen shows, such as step=12.',
  hz: 'Give the frequency of the tone in hertz, such as hz=60.',
  volts: 'Give what the meter shows in volts rms, such as volts=3.4.',
  accuracy: 'Give the limit of error in per cent of the reading, such as accuracy=3.',
};

/** What is wrong with a limit of error in per cent, if anything; `written` is how it was typed. */
export function accuracyProblem(percent: number, written: string): Problem | undefined {
  if (percent > 0 && percent <= mostAccuracyPercent) return undefined;
  return {
    message: `“${written}” is no limit of error: it is to lie above 0 and up to ${mostAccuracyPercent} per cent.`,
    help: numberHelp.accuracy,
  };
}

/** One unit of the last digit written: 0.1 for “3.4”, 1 for “12”. */
function lastDigit(written: string): number {
  const point = written.indexOf('.');
  return point === -1 ? 1 : 10 ** -(written.length - point - 1);
}

function problem(message: string, help: string): ParsedReading {
  return { problem: { message, help } };
}
