/** Which answers of tables a change flips, held against the FEEL library (`feelin`) asked on both tables. */
import { describe, expect, test } from 'vitest';
import type { TableEntryInput } from '../../schemas/index.ts';
import { type Answers, judgedProfile } from '../../src/answers.ts';
import { knownOfProfile } from '../../src/decide/index.ts';
import { evaluateTable, type Known, type Value } from '../../src/tables/index.ts';
import { exampleAnswers, impactFrom } from './edited.ts';

/** Values to try for a column: the ends of what is known, or, where anything may be, values on all sides of `cuts`. */
function tried(input: TableEntryInput, known: Known | undefined, cuts: readonly number[]): Value[] {
  if (known && 'low' in known) return [known.low, known.value, known.high];
  if (known && 'value' in known) return [known.value];
  if (known && 'oneOf' in known) return [...known.oneOf];
  if (input.holds === 'yes-no') return [true, false];
  if (input.holds === 'choice') return [...input.values];
  if (input.holds === 'trait' && input.trait === 'boost-behaviour') {
    return ['none', 'fixed', 'fading', 'switched', 'changing', 'unknown'];
  }
  if (input.holds === 'trait' && input.trait === 'rear-outputs') return ['playing', 'silent', 'none'];
  return [0, 0.01, ...cuts.flatMap((cut) => [cut - 0.001, cut, cut + 0.001]), 20];
}

function everyCase(choices: readonly (readonly [string, readonly Value[]])[]): Record<string, Value>[] {
  return choices.reduce<Record<string, Value>[]>(
    (all, [id, values]) => all.flatMap((one) => values.map((value) => ({ ...one, [id]: value }))),
    [{}],
  );
}

/** For each thing the rider may say, every answer FEEL gives within what is known of the profile. */
function answersBySaid(answers: Answers, id: string, profile: string, cuts: readonly number[]) {
  const inputs = answers.base.tables.get(id)?.data.inputs ?? [];
  const table = answers.tables.get(id)?.table;
  const judged = judgedProfile(answers, profile);
  if (!table || !judged) throw new Error(`${id} ${profile}`);
  const known = knownOfProfile(inputs, judged);
  const isAsked = ({ holds }: TableEntryInput) => holds !== 'characteristic' && holds !== 'trait';
  const choices = (some: readonly TableEntryInput[]) =>
    everyCase(some.map((one) => [one.id, tried(one, known[one.id], cuts)] as const));
  return choices(inputs.filter(isAsked)).map((said) => {
    const given = choices(inputs.filter((one) => !isAsked(one))).map((one) => ({ ...one, ...said }));
    const decided = given.map((one) => evaluateTable(table, one));
    return [
      ...new Set(decided.map(({ answers: all, broken }) => JSON.stringify([all, broken !== undefined]))),
    ].sort();
  });
}

function flippedByFeel(
  before: Answers,
  now: Answers,
  id: string,
  profile: string,
  cuts: readonly number[],
): number {
  const [was, is] = [before, now].map((one) => answersBySaid(one, id, profile, cuts));
  return (was ?? []).filter((set, at) => JSON.stringify(set) !== JSON.stringify(is?.[at])).length;
}

const table = 'behind-an-amplifier';
const file = `tables/${table}.yaml`;
const example = await exampleAnswers();

describe('a threshold edited in the table of the example base', () => {
  test.each([0.5, 2.1, 2.2, 6.3])('from 1 to %d', async (limit) => {
    const now = await exampleAnswers([{ file, good: '"< 1"', bad: `"< ${limit}"` }]);
    const { profiles, rules } = impactFrom(example, now);
    expect(rules).toEqual([{ table, added: [], removed: [], edited: ['too-quiet'], otherwise: false }]);
    for (const id of example.base.profiles.keys()) {
      const change = profiles.find(({ profile }) => profile === id)?.tables[0];
      expect(change?.differing ?? 0, id).toBe(flippedByFeel(example, now, table, id, [1, limit]));
      if (!change) continue;
      expect(change.cases).toBe(2);
      expect(change.causes).toEqual([
        { kind: 'tables', id: table, rules: expect.arrayContaining(['too-quiet']) },
      ]);
    }
  });
});

test('a threshold of what the rider is asked, in a table whose rules then clash', async () => {
  const good = '{ rear: "playing", feet: "<= 10" }';
  const now = await exampleAnswers([
    { file: 'tables/rear-speakers.yaml', good, bad: good.replace('10', '12') },
  ]);
  const { profiles } = impactFrom(example, now);
  const flipped = [...example.base.profiles.keys()].filter(
    (id) => flippedByFeel(example, now, 'rear-speakers', id, [10, 12]) > 0,
  );
  expect(profiles.map(({ profile }) => profile)).toEqual(flipped);
  // Only where the rear plays, or may: 0 to 10, over 10 to 12, over 12 feet, and each end by itself.
  expect(flipped).not.toHaveLength(0);
  expect(profiles[0]?.tables[0]).toMatchObject({ table: 'rear-speakers', cases: 7, differing: 2 });
  expect(profiles[0]?.tables[0]?.now.answers.some(({ broken }) => broken !== undefined)).toBe(true);
});

test('cases, not the answers there are in all: two rules that exchange their answers flip every case', async () => {
  const yaml = (first: string, second: string) => `name: Either way
question: What now?
about: Two answers that a question parts.
order: 30
hit: unique
inputs:
  - { id: loud, label: Loud, holds: yes-no, question: "Is it loud?" }
outputs:
  - { id: answer, label: Answer, holds: choice, values: [stay, go] }
rules:
  - { id: loud, when: { loud: "yes" }, give: { answer: ${first} } }
  - { id: quiet, when: { loud: "no" }, give: { answer: ${second} } }
sources: [maker-bulletin]
`;
  const [before, now] = [
    await exampleAnswers([{ file: 'tables/either.yaml', good: '', bad: yaml('stay', 'go') }]),
    await exampleAnswers([{ file: 'tables/either.yaml', good: '', bad: yaml('go', 'stay') }]),
  ];
  const { profiles } = impactFrom(before, now);
  expect(profiles).toHaveLength(example.base.profiles.size);
  expect(profiles[0]?.tables).toMatchObject([{ cases: 2, differing: 2, example: { loud: true } }]);
});

test('labels, questions and what rules say are wording', async () => {
  const now = await exampleAnswers([
    { file, good: 'label: Clean volts', bad: 'label: Volts' },
    { file, good: 'question: Has your amplifier an equaliser?', bad: 'question: Is there an equaliser?' },
    { file, good: 'say: Take the boost out with the equaliser.', bad: 'say: Turn it down.' },
  ]);
  const { profiles, rules, entries } = impactFrom(example, now);
  expect({ profiles, rules }).toEqual({ profiles: [], rules: [] });
  expect(entries).toEqual([{ kind: 'tables', file, what: 'edited', decisive: false }]);
});
