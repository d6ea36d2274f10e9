/** `readback sweep FILE.wav`: what a recording of a sweep or a tone says about level and distortion. */
import { readFile, stat } from 'node:fs/promises';
import type { SweepFigures, SweepResult, ToneFigures } from '../../../schemas/results/sweep.ts';
import { CannotRun } from '../../base/index.ts';
import {
  clippedHelp,
  clippedMessage,
  decodeWav,
  readingsOf,
  type Stimulus,
  sweepFigures,
  toneFigures,
  UnusableRecording,
  type VoltsKnownBy,
} from '../../measure/recording/index.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson } from '../command.ts';
import { channelTaken, stimulusNamed, voltsKnownBy } from './sweep-options.ts';
import { type SessionOptions, sessionTarget, writeSheet } from './sweep-session.ts';
import { sweepText } from './sweep-text.ts';

export interface SweepOptions extends ContentOption, JsonOption, SessionOptions {
  readonly stimulus: string;
  readonly take?: string;
  readonly reference?: string;
  readonly fullScale?: string;
}

/** Larger files are no bench recordings. */
const mostBytes = 512 * 1024 ** 2;

/** 0 measured, 1 the recording cannot be used, 2 could not run. */
export async function sweep(file: string, options: SweepOptions, output: Output): Promise<number> {
  const stimulus = stimulusNamed(options.stimulus);
  const take = channelTaken(options.take);
  const volts = voltsKnownBy(options, stimulus);
  const target = await sessionTarget(options, stimulus, volts !== undefined);
  const bytes = await readRecording(file);
  try {
    const figures = figuresOf(decodeWav(bytes, take), stimulus, volts);
    if (target && figures.kind === 'tone' && figures.clipped) {
      throw new UnusableRecording(
        'clipped',
        `${clippedMessage}, so it is no reading for a session.`,
        clippedHelp,
      );
    }
    const session = target && (await writeSheet(target, readingsOf(figures, target.slot)));
    const result: SweepResult = session ? { ...figures, session } : figures;
    if (options.json) printJson(output, result);
    else output.out(sweepText(result, take));
    if (figures.kind === 'tone' && figures.clipped) {
      output.err(
        `${clippedMessage}: these figures are those of its limit, not of the unit.\n→ ${clippedHelp}`,
      );
    }
    return exitCodes.ok;
  } catch (error) {
    if (!(error instanceof UnusableRecording)) throw error;
    const { reason, message, help } = error;
    const result: SweepResult = { kind: 'unusable', reason, message, help };
    if (options.json) printJson(output, result);
    output.err(`${file}: ${message}\n→ ${help}`);
    return exitCodes.findings;
  }
}

function figuresOf(
  recording: ReturnType<typeof decodeWav>,
  stimulus: Stimulus,
  volts: VoltsKnownBy | undefined,
): SweepFigures | ToneFigures {
  return stimulus.kind === 'tone'
    ? toneFigures(recording, stimulus, volts)
    : sweepFigures(recording, stimulus, volts);
}

async function readRecording(file: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(file);
    if (size > mostBytes) {
      throw new CannotRun(
        `${file} is ${Math.ceil(size / 1024 ** 2)} MB; the most is ${mostBytes / 1024 ** 2} MB.`,
        'Cut the recording to the sweep and a second before and after it.',
      );
    }
    return await readFile(file);
  } catch (error) {
    if (error instanceof CannotRun) throw error;
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    if (code === 'ENOENT') throw new CannotRun(`There is no file ${file}.`, 'Check the name and the folder.');
    if (code === 'EISDIR') throw new CannotRun(`${file} is a folder.`, 'Name the WAV file in it.');
    throw new CannotRun(`${file} cannot be read (${code}).`, 'Check its permissions.');
  }
}
