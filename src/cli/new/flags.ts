/** The flags of `readback new`: one for each field of the kind, by its name in the schema. */
import { Option } from 'commander';
import { parse } from 'yaml';
import { CannotRun } from '../../base/index.ts';
import { type EntryAnswers, typedValue } from './answers.ts';
import type { BlockShape, Field, Shape, UnionShape } from './fields.ts';

export interface Flag {
  /** Where its value goes. */
  readonly path: readonly string[];
  readonly option: Option;
  readonly shape: Shape;
  /** Whether the block it belongs to cannot do without it. */
  readonly needed: boolean;
}

/** `--other-spellings`, `--supply.tolerance-volts`: fields of a block are named behind a point. */
export function flagsOf(shape: BlockShape | UnionShape): Flag[] {
  return fieldsOf(shape).flatMap((field) => flagsOfField(field, []));
}

/** All fields; of a block of several kinds, those of every kind, each once. */
function fieldsOf(shape: BlockShape | UnionShape): Field[] {
  if (shape.is === 'block') return [...shape.fields];
  const all = new Map<string, Field>();
  for (const { block } of shape.members) {
    for (const field of block.fields) {
      const before = all.get(field.name);
      all.set(field.name, before ? bothOf(before, field) : field);
    }
  }
  return [...all.values()];
}

/** A field that two kinds of block have, with the choices of both. */
function bothOf(one: Field, other: Field): Field {
  if (one.shape.is !== 'value' || other.shape.is !== 'value') return one;
  return {
    ...one,
    about: one.about === other.about ? one.about : `${one.about} Or: ${other.about}`,
    shape: { ...one.shape, choices: [...new Set([...one.shape.choices, ...other.shape.choices])] },
  };
}

function flagsOfField({ name, about, needed, shape }: Field, above: readonly string[]): Flag[] {
  const path = [...above, name];
  if (shape.is === 'block') return shape.fields.flatMap((field) => flagsOfField(field, path));
  const words = path.map((part) => part.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`));
  const option = new Option(`--${words.join('.')} <${valueName(shape)}>`, `${about}${hintOf(shape)}`);
  if (shape.is === 'list') {
    option.argParser((text: string, before: readonly string[] | undefined) => [...(before ?? []), text]);
  }
  return [{ path, option, shape, needed }];
}

function valueName(shape: Shape): string {
  const one = shape.is === 'list' ? shape.of : shape;
  if (one.is !== 'value') return '{ … }';
  if (one.entriesIn) return 'id';
  return { text: 'text', number: 'number', 'yes-no': 'yes/no', cell: 'value' }[one.holds];
}

function hintOf(shape: Shape): string {
  const one = shape.is === 'list' ? shape.of : shape;
  const choices = one.is === 'value' && one.choices.length > 1 ? ` One of: ${one.choices.join(', ')}.` : '';
  return `${choices}${shape.is === 'list' ? ' May be given again.' : ''}`;
}

/**
 * The answers given as flags.
 * @throws CannotRun where a block cannot be read.
 */
export function answersFrom(
  flags: readonly Flag[],
  options: Readonly<Record<string, unknown>>,
): EntryAnswers {
  const answers: EntryAnswers = {};
  for (const { path, option, shape } of flags) {
    const given = options[option.attributeName()];
    if (given === undefined) continue;
    const value =
      shape.is === 'list'
        ? (given as readonly string[]).map((text) => flagValue(shape.of, text, option))
        : flagValue(shape, String(given), option);
    let block = answers;
    for (const part of path.slice(0, -1)) {
      block[part] ??= {};
      block = block[part] as EntryAnswers;
    }
    block[path.at(-1) ?? ''] = value;
  }
  return answers;
}

function flagValue(shape: Shape, text: string, option: Option): unknown {
  if (shape.is === 'value') return typedValue(shape, text);
  try {
    return parse(text, { schema: 'core', logLevel: 'error' }) as unknown;
  } catch {
    throw new CannotRun(
      `What follows ${option.long} cannot be read: ${text}`,
      'Write the block on one line, in quotes for the shell: \'{ name: value, other: "a text" }\'.',
    );
  }
}
