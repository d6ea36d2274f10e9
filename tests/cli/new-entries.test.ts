/** What is answered or given as flags is what the written entry says, for any entry that keeps to its schema. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entrySchemas, markdownKinds } from '../../schemas/index.ts';
import { MemoryFiles, readBase } from '../../src/base/index.ts';
import { newKinds } from '../../src/cli/commands/new.ts';
import type { EntryAnswers } from '../../src/cli/new/answers.ts';
import { entryLines } from '../../src/cli/new/answers-yaml.ts';
import type { Dialogue } from '../../src/cli/new/dialogue.ts';
import { fileFor, type NewKind } from '../../src/cli/new/entry-file.ts';
import { type Shape, shapeOfKind } from '../../src/cli/new/fields.ts';
import { answersFrom, flagsOf } from '../../src/cli/new/flags.ts';
import { Questions } from '../../src/cli/new/questions.ts';
import { randomEntry } from './random-entries.ts';

const kinds = [...newKinds];
const own = ['schema', 'syntax', 'unknown-key', 'unsourced'];

/** The base that holds this entry alone, and an empty sheet where a session needs one. */
async function baseWith(kind: NewKind, answers: EntryAnswers) {
  const file = fileFor(kind, 'this-one', answers);
  const lines = entryLines(shapeOfKind(kind), answers);
  const text = markdownKinds.includes(kind) ? `---\n${lines}---\n` : lines;
  const sheet = 'profile,channel,step,hz,voltsRms,thdPercent,repeat\n';
  const files = new Map([
    [file, text],
    ...(kind === 'outputs' ? [['outputs/this-one/readings.csv', sheet] as const] : []),
  ]);
  const { base, findings } = await readBase(new MemoryFiles('', files));
  const [entry] = base[kind].values();
  return {
    text,
    data: entry?.data,
    findings: findings.filter(({ rule, place }) => place.file === file && own.includes(rule)),
  };
}

describe.each(kinds)('a new %s', (_, kind) => {
  const schema = entrySchemas[kind];
  const drawn = randomEntry(schema);

  test('reads back as what it was made of, and keeps to its schema', async () => {
    await fc.assert(
      fc.asyncProperty(drawn, async (entry) => {
        const { text, data, findings } = await baseWith(kind, entry as EntryAnswers);
        expect(findings, text).toEqual([]);
        expect(data, text).toEqual(schema.parse(entry));
      }),
      { numRuns: 25, seed: 20261126, endOnFailure: true },
    );
  });

  test('comes back from its flags', () => {
    const flags = flagsOf(shapeOfKind(kind));
    fc.assert(
      fc.property(drawn, (entry) => {
        const options: Record<string, unknown> = {};
        for (const { path, option, shape } of flags) {
          const value = path.reduce<unknown>(
            (block, name) => (block as EntryAnswers | undefined)?.[name],
            entry,
          );
          if (value === undefined) continue;
          options[option.attributeName()] =
            shape.is === 'list'
              ? (value as unknown[]).map((one) => flagText(shape.of, one))
              : flagText(shape, value);
        }
        expect(withoutEmpty(answersFrom(flags, options))).toEqual(withoutEmpty(entry));
      }),
      { numRuns: 25, seed: 20261126, endOnFailure: true },
    );
  });

  test('comes out of the answers to its questions', async () => {
    await fc.assert(
      fc.asyncProperty(randomEntry(schema, true), async (entry) => {
        const shape = shapeOfKind(kind);
        const { base } = await readBase(new MemoryFiles('', new Map()));
        const named = Object.fromEntries(Object.keys(entrySchemas).map((one) => [one, everyId]));
        const known = { ...base, ...named } as typeof base;
        const answers = [...answersTo(shape, entry, true)];
        const told: string[] = [];
        const dialogue: Dialogue = {
          ask: async (question) => {
            const answer = answers.shift();
            if (answer === undefined) throw new Error(`nothing left for: ${question}`);
            return answer;
          },
          tell: (line) => told.push(line),
          close: () => undefined,
        };
        const questions = new Questions(kind, shape, known, dialogue);
        await questions.askAll(async () => undefined);
        expect(answers).toEqual([]);
        expect(told.filter((line) => line.includes('→'))).toEqual([]);
        expect(withoutEmpty(questions.answers)).toEqual(withoutEmpty(entry));
      }),
      { numRuns: 10, seed: 20261126, endOnFailure: true },
    );
  });
});

/** Every entry named is there. */
const everyId = { has: () => true, keys: () => [][Symbol.iterator]() };

function flagText(shape: Shape, value: unknown): string {
  return shape.is === 'value' ? String(value) : JSON.stringify(value);
}

/** What a person types who wants this entry. */
function* answersTo(shape: Shape, value: unknown, needed: boolean): Generator<string> {
  switch (shape.is) {
    case 'value':
      yield value === undefined ? '' : typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
      return;
    case 'list': {
      const list = (value ?? []) as unknown[];
      const { of, least } = shape;
      for (const [index, one] of list.entries()) {
        if (of.is !== 'value' && index >= least) yield 'yes';
        yield* answersTo(of, one, true);
      }
      yield '';
      return;
    }
    case 'record':
      for (const [name, one] of Object.entries(value ?? {})) {
        const looksOther = typeof one === 'string' && /^(?:true|false|-?\d+(?:\.\d+)?)$/.test(one);
        yield `${name}: ${looksOther ? JSON.stringify(one) : String(one)}`;
      }
      yield '';
      return;
    default: {
      if (!needed) yield value === undefined ? '' : 'yes';
      if (value === undefined) return;
      const block = value as EntryAnswers;
      const key = shape.is === 'union' ? shape.key : undefined;
      if (key !== undefined) yield String(block[key]);
      const fields =
        shape.is === 'block'
          ? shape.fields
          : (shape.members.find(({ values }) => values.includes(String(block[shape.key])))?.block.fields ??
            []);
      for (const field of fields) {
        if (field.name !== key) yield* answersTo(field.shape, block[field.name], field.needed);
      }
    }
  }
}

/** Empty lists and blocks that may be left out say the same as none. */
function withoutEmpty(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutEmpty);
  if (value === null || typeof value !== 'object') return value;
  const kept = Object.entries(value).flatMap(([name, one]) => {
    const inner = withoutEmpty(one);
    const isEmpty = inner !== null && typeof inner === 'object' && Object.keys(inner).length === 0;
    return isEmpty ? [] : [[name, inner] as const];
  });
  return Object.fromEntries(kept);
}
