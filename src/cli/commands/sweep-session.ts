/** Writes figures of a recording as readings of a bench session: whole or not at all, and over nothing. */
import { mkdir, unlink } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { channels, type Reading, sessionSchema } from '../../../schemas/index.ts';
import { CannotRun, nearest, readBase } from '../../base/index.ts';
import { type Slot, type Stimulus, sheetHeader, sheetLine } from '../../measure/recording/index.ts';
import type { ContentOption } from '../command.ts';
import { sessionTemplate } from './session-template.ts';
import { isThere, place, removeEmpty, replace, textIfThere } from './whole-file.ts';

export interface SessionOptions extends ContentOption {
  readonly session?: string;
  readonly profile?: string;
  readonly channel?: string;
  readonly step?: string;
  readonly repeat?: string;
  readonly append?: boolean;
}

/** Where the readings go, looked over before anything is measured. */
export interface SessionTarget {
  readonly folder: string;
  readonly slot: Slot;
  readonly append: boolean;
  readonly stimulus: Stimulus;
}

/** What was written. */
export interface Written {
  readonly folder: string;
  readonly files: string[];
  readonly readings: number;
}

/**
 * The session asked for; undefined where none is.
 * @throws CannotRun where the options do not name a place for readings.
 */
export async function sessionTarget(
  options: SessionOptions,
  stimulus: Stimulus,
  inVolts: boolean,
): Promise<SessionTarget | undefined> {
  const { session, profile, channel, step } = options;
  if (session === undefined) {
    const stray = (['profile', 'channel', 'step', 'repeat', 'append'] as const).find(
      (name) => options[name] !== undefined,
    );
    if (stray)
      throw new CannotRun(`--${stray} belongs to a session, and none is named.`, 'Add --session FOLDER.');
    return undefined;
  }
  if (profile === undefined || channel === undefined || step === undefined) {
    throw new CannotRun(
      'A reading needs a profile, a channel and a volume step.',
      'Add --profile ID, --channel FL and --step N.',
    );
  }
  if (!inVolts) {
    throw new CannotRun(
      'A session holds volts, and nothing says how many this recording stands for.',
      'Add --reference HZ=VOLTS as read with a meter, or --full-scale VOLTS.',
    );
  }
  const folder = folderOf(session, options.content);
  const slot = await slotOf(options.content, profile, channel, step, options.repeat ?? '1');
  const target = { folder, slot, append: options.append ?? false, stimulus };
  await lookOver(target);
  return target;
}

/** A bare name is a session of the content folder; a path is taken as it is. */
function folderOf(session: string, content: string): string {
  const folder = /[/\\]/.test(session) ? session.replace(/[/\\]+$/, '') : join(content, 'outputs', session);
  if (/^[a-z0-9]+(-[a-z0-9]+)*$/.test(basename(folder))) return folder;
  throw new CannotRun(
    `“${basename(folder)}” cannot name a session.`,
    'Use lower-case letters, digits and single hyphens, such as 2026-03-north.',
  );
}

async function slotOf(
  content: string,
  profile: string,
  channelText: string,
  stepText: string,
  repeatText: string,
): Promise<Slot> {
  const { base } = await readBase(content);
  const known = base.profiles.get(profile);
  if (!known) {
    const guess = nearest(profile, base.profiles.keys());
    throw new CannotRun(
      `There is no profile “${profile}” in ${content}.`,
      guess ? `Did you mean --profile ${guess}?` : 'Give its path below profiles/ without the ending.',
    );
  }
  const family = base.families.get(known.data.family)?.data;
  const offered = family?.output.channels ?? channels;
  const channel = offered.find((one) => one === channelText.toUpperCase());
  if (!channel) {
    throw new CannotRun(`The unit has no output “${channelText}”.`, `It is one of: ${offered.join(', ')}.`);
  }
  const step = wholeNumber(stepText);
  const { lowestStep = 0, highestStep = 200 } = family?.volume ?? {};
  if (step === undefined || step < lowestStep || step > highestStep) {
    throw new CannotRun(
      `--step ${stepText} is no volume step of this unit.`,
      `Give a whole number from ${lowestStep} to ${highestStep}.`,
    );
  }
  const repeat = wholeNumber(repeatText);
  if (repeat === undefined || repeat < 1 || repeat > 1000) {
    throw new CannotRun(
      `--repeat ${repeatText} is no number of a repeat.`,
      'Give 1 for the first, 2 for the second.',
    );
  }
  return { profile, channel, step, repeat };
}

function wholeNumber(text: string): number | undefined {
  return /^\d{1,6}$/.test(text) ? Number(text) : undefined;
}

/** Refuses what cannot be written beside, before the recording is measured. */
async function lookOver({ folder, slot, append, stimulus }: SessionTarget): Promise<void> {
  const sheet = join(folder, 'readings.csv');
  const text = await textIfThere(sheet);
  if (text !== undefined && !append) {
    throw new CannotRun(
      `${sheet} is there already, and nothing is written over it.`,
      'Name another session, or add --append to put these readings below the ones it has.',
    );
  }
  if (text !== undefined) refuseSheet(sheet, text, slot, stimulus);
  const conditions = await textIfThere(join(folder, 'session.yaml'));
  if (text !== undefined && conditions === undefined) {
    throw new CannotRun(`${folder} has readings but no session.yaml.`, 'Add its conditions first.');
  }
  if (conditions !== undefined) refuseOtherSignal(folder, conditions, signalOf(stimulus));
}

/** What session.yaml calls the signal. */
function signalOf(stimulus: Stimulus): 'sine' | 'sweep' {
  return stimulus.kind === 'tone' ? 'sine' : 'sweep';
}

function refuseSheet(sheet: string, text: string, slot: Slot, stimulus: Stimulus): void {
  const { profile, channel, step, repeat } = slot;
  const [header = '', ...lines] = text.split(/\r?\n/).map((one) => one.trim());
  if (header !== sheetHeader) {
    throw new CannotRun(
      `${sheet} does not begin with ${sheetHeader}.`,
      'Run readback check and put the sheet right first.',
    );
  }
  const place = [profile, channel, step, ...(stimulus.kind === 'tone' ? [stimulus.hz] : []), ''].join(',');
  if (!lines.some((one) => one.startsWith(place) && one.endsWith(`,${repeat}`))) return;
  throw new CannotRun(
    `${sheet} has readings of ${profile}, ${channel}, step ${step}, repeat ${repeat} already.`,
    `If this is another recording of the same, add --repeat ${repeat + 1}.`,
  );
}

const signalKind = z.object({ signal: z.object({ kind: sessionSchema.shape.signal.shape.kind }) });

/** Sweeps and single tones are taken under different conditions, so they are different sessions. */
function refuseOtherSignal(folder: string, yaml: string, signal: 'sine' | 'sweep'): void {
  let data: unknown;
  try {
    data = parse(yaml);
  } catch {
    throw new CannotRun(
      `${join(folder, 'session.yaml')} cannot be read as YAML.`,
      'Run readback check and put it right first.',
    );
  }
  const known = signalKind.safeParse(data);
  if (!known.success || known.data.signal.kind === signal) return;
  throw new CannotRun(
    `The session ${basename(folder)} was taken with the signal “${known.data.signal.kind}”, this recording with “${signal}”.`,
    'Name another session for it.',
  );
}

/**
 * Adds the readings, with a session.yaml to fill in where there is none. Everything is written under other
 * names first; what was begun is taken away again where the rest cannot be done.
 * @throws CannotRun where the folder cannot be written, or something has come there meanwhile.
 */
export async function writeSheet(target: SessionTarget, readings: readonly Reading[]): Promise<Written> {
  const { folder } = target;
  const sheet = join(folder, 'readings.csv');
  const conditions = join(folder, 'session.yaml');
  const undo: (() => Promise<unknown>)[] = [];
  try {
    const made = await mkdir(folder, { recursive: true });
    if (made !== undefined) undo.push(() => removeEmpty(folder, made));
    const lines = readings.map((reading) => `${sheetLine(reading)}\n`).join('');
    const before = target.append ? await textIfThere(sheet) : undefined;
    const files = [sheet];
    if (!(await isThere(conditions))) {
      await place(conditions, sessionTemplate({ signal: signalOf(target.stimulus) }));
      undo.push(() => unlink(conditions));
      files.push(conditions);
    }
    if (before === undefined) await place(sheet, `${sheetHeader}\n${lines}`);
    else await replace(sheet, `${before}${before.endsWith('\n') ? '' : '\n'}${lines}`);
    return { folder, files, readings: readings.length };
  } catch (error) {
    for (const step of undo.reverse()) await step().catch(() => undefined);
    if (error instanceof CannotRun) throw error;
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    if (code === 'EEXIST') {
      throw new CannotRun(
        `Something came into ${folder} meanwhile, and nothing is written over it.`,
        'Try again.',
      );
    }
    throw new CannotRun(
      `${folder} cannot be written (${code}).`,
      'Check its permissions and the space left.',
    );
  }
}
