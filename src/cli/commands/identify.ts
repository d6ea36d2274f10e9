/** `readback identify --unit FAMILY --reading …`: which profile is this unit on, without the code? */
import type { IdentifyResult } from '../../../schemas/results/identify.ts';
import { type Answers, readAnswers } from '../../answers.ts';
import { CannotRun, nearest } from '../../base/index.ts';
import {
  accuracyProblem,
  conclusion,
  type Identification,
  identify as identifyProfile,
  meterCautions,
  modelOf,
  nextSentence,
  type Problem,
  parseReading,
  type ReadableUnit,
  type RiderReading,
  readingProblem,
} from '../../decide/identify/index.ts';
import { cautionDeferral } from '../../views/cautions.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson } from '../command.ts';
import { unitOf } from '../unit.ts';

export interface IdentifyOptions extends ContentOption, JsonOption {
  readonly unit: string;
  /** As typed, one text a reading; with none, the first reading to take is named. */
  readonly reading?: readonly string[];
  /** Limit of error of readings that state none, per cent, as typed. */
  readonly accuracy?: string;
  readonly levelKnown?: boolean;
}

export async function identify(options: IdentifyOptions, output: Output): Promise<number> {
  const { answers } = await readAnswers(options.content);
  const { result, next } = identifyResult(answers, options);
  if (options.json) printJson(output, result);
  else printText(result, next, output);
  return result.sureness === 'none-of-these' ? exitCodes.findings : exitCodes.ok;
}

/**
 * Ranks the profiles of a unit by what was read; `next` is the sentence that asks for the next reading.
 * @throws CannotRun where unit, reading or accuracy is not what it should be, or nothing was measured.
 */
export function identifyResult(
  answers: Answers,
  options: Omit<IdentifyOptions, 'content' | 'json'>,
): { readonly result: IdentifyResult; readonly next: string } {
  const { base, outputs } = answers;
  const family = unitOf(base, options.unit);
  const profiles = (base.profilesOfFamily.get(family.id) ?? []).map(({ id }) => ({
    id,
    output: outputs.get(id),
  }));
  const accuracy = options.accuracy === undefined ? undefined : accuracyOf(options.accuracy);
  const levelKnown = options.levelKnown ?? false;
  const model = modelOf({ channels: family.data.output.channels, profiles }, levelKnown);
  if (model.groups.length === 0) {
    throw new CannotRun(
      `No profile of “${family.data.name}” has been measured yet.`,
      'Bench a profile first (outputs/<session>/readings.csv), or read the code and look it up with readback find.',
    );
  }
  const unit: ReadableUnit = {
    name: family.data.name,
    channels: family.data.output.channels,
    ...family.data.volume,
    outputs: profiles.flatMap(({ output }) => output ?? []),
  };
  const readings = (options.reading ?? []).map((text) => readingOf(text, unit, accuracy));
  const found = identifyProfile(model, readings, accuracy);
  const codeOf = (profile: string): string => base.profiles.get(profile)?.data.code ?? profile;
  const result: IdentifyResult = {
    unit: family.id,
    levelKnown,
    readings: readings.map(({ step, hz, channel, voltsRms, accuracyPercent }) => ({
      step,
      hz,
      channel,
      volts: voltsRms,
      accuracyPercent,
    })),
    candidates: found.candidates.map(({ profile, probability, twins }) => ({
      profile,
      code: codeOf(profile),
      probability,
      twins: [...twins],
    })),
    noneOfThese: found.noneOfThese,
    sureness: found.sureness,
    conclusion: conclusion(found, readings.length, codeOf),
    nextReading: publishedNext(found),
    notes: notesOn(found, {
      name: family.data.name,
      levelKnown,
      readings: readings.length,
      unmeasured: model.unmeasured.map(codeOf),
    }),
    cautions: [...meterCautions, cautionDeferral()],
  };
  return { result, next: nextSentence(found, readings.length, codeOf) };
}

function accuracyOf(typed: string): number {
  const percent = /^\d+(\.\d+)?$/.test(typed.trim()) ? Number(typed) : Number.NaN;
  refuse(accuracyProblem(percent, `--accuracy ${typed}`));
  return percent;
}

function readingOf(text: string, unit: ReadableUnit, accuracy: number | undefined): RiderReading {
  const parsed = parseReading(text, nearest, accuracy);
  if ('problem' in parsed) throw new CannotRun(parsed.problem.message, parsed.problem.help);
  refuse(readingProblem(parsed.reading, unit));
  return parsed.reading;
}

function refuse(problem: Problem | undefined): void {
  if (problem) throw new CannotRun(problem.message, problem.help);
}

function publishedNext({ nextReading }: Identification): IdentifyResult['nextReading'] {
  if (!nextReading) return null;
  const { step, hz, channel, expectedBits, expect } = nextReading;
  return {
    step,
    hz,
    channel,
    expectedBits,
    expect: expect.flatMap(({ profiles, voltsRms }) =>
      profiles.map((profile) => ({ profile, volts: voltsRms })),
    ),
  };
}

function notesOn(
  { sureness }: Identification,
  given: {
    readonly name: string;
    readonly levelKnown: boolean;
    readonly readings: number;
    readonly unmeasured: readonly string[];
  },
): string[] {
  const notes = [
    `Readings tell the profiles of one unit apart, not the units: that it is a ${given.name} must be seen on its face.`,
  ];
  if (!given.levelKnown && given.readings > 0 && sureness !== 'sure') {
    notes.push(
      'The level of the tones counts as unknown, so loudness alone says little. Full-scale test tones from a disc or USB stick, as the bench plays them, and --level-known tell more.',
    );
  }
  if (given.unmeasured.length > 0) {
    notes.push(`Not measured yet, and so among none of these: ${given.unmeasured.join(', ')}.`);
  }
  return notes;
}

/** Candidates less probable than this are counted, not listed. */
const listedFrom = 0.005;

function printText(result: IdentifyResult, next: string, output: Output): void {
  const codes = new Map(result.candidates.map(({ profile, code }) => [profile, code]));
  output.out(result.conclusion);
  const listed = result.candidates.filter((one) => one.probability >= listedFrom);
  const width = Math.max(13, ...listed.map((one) => one.code.length));
  for (const { code, probability, twins, profile } of listed) {
    const same = twins.length > 0 ? `  same output as ${twins.map((one) => codes.get(one)).join(', ')}` : '';
    output.out(`  ${code.padEnd(width)}  ${percent(probability)}  (${profile})${same}`);
  }
  output.out(`  ${'none of these'.padEnd(width)}  ${percent(result.noneOfThese)}`);
  const rest = result.candidates.length - listed.length;
  if (rest > 0)
    output.out(`  ${rest} more ${rest === 1 ? 'profile fits' : 'profiles fit'} hardly or not at all.`);
  output.out('');
  output.out(next);
  for (const note of result.notes) output.out(note);
  output.out('');
  output.out('Before you connect a meter:');
  for (const caution of result.cautions) output.out(`  - ${caution}`);
}

function percent(probability: number): string {
  const shown = Math.round(probability * 100);
  return `${shown === 0 ? '<1' : shown} %`.padStart(6);
}
