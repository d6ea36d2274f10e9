/** What the pages reckon without the FEEL library is what the evaluation with it comes to. */
import { describe, expect, test } from 'vitest';
import { answerTable, judgedProfile } from '../../src/answers.ts';
import { openPieces } from '../../src/tables/grid/open-pieces.ts';
import { evaluateTable, type Known, type Value } from '../../src/tables/index.ts';
import { isAsked, openOf, tablesOfProfiles } from '../../src/views/judged-tables.ts';
import {
  answerWords,
  brokenWords,
  decider,
  noAnswerWords,
  type TableData,
} from '../../src/views/table-outcomes.ts';
import { demoAnswers } from './sample.ts';

const answers = await demoAnswers();
const tables = tablesOfProfiles(answers);
const words = (
  judged: (typeof tables)[number],
  given: readonly Readonly<Record<string, Value>>[],
): string[] => given.map((one) => answerWords(Object.values(one), judged.data.outputs));

describe.each(tables.map((judged) => [judged.entry.id, judged] as const))('%s', (id, judged) => {
  test('with nothing said: the same answers, the same say, the same that settles, for every profile', () => {
    for (const profile of answers.outputs.keys()) {
      const judgedOne = judgedProfile(answers, profile);
      const within = answerTable(answers, id, profile)?.within;
      if (!judgedOne || !within) throw new Error(profile);
      const outcome = judged.decide(openOf(judged, judgedOne));
      const possible = new Set(within.possible.flatMap((one) => words(judged, one.answers)));
      expect(new Set(outcome.answers.keys()), profile).toEqual(possible);
      expect(new Set(outcome.rules.keys()), profile).toEqual(
        new Set(within.possible.flatMap(({ rules }) => rules.map((rule) => ruleIndex(judged, rule)))),
      );
      const ids = (indexes: readonly number[]) => indexes.map((at) => judged.table.inputs[at]?.id);
      expect(ids(outcome.dependsOn), profile).toEqual(within.dependsOn);
      expect(ids(outcome.settledBy), profile).toEqual(within.settledBy);
    }
  });

  test('with everything said: the answer the FEEL library gives to the best estimates, where no value is near', () => {
    const questions = judged.entry.data.inputs.filter(isAsked);
    let compared = 0;
    // Each question multiplies the cases: every fourth profile, one or two a family.
    const some = [...answers.outputs.keys()].filter((_, at) => at % 4 === 0);
    for (const profile of some) {
      const judgedOne = judgedProfile(answers, profile);
      if (!judgedOne) continue;
      for (const said of everyAnswer(questions.map((one) => valuesOf(one)))) {
        const planned = Object.fromEntries(questions.map((one, at) => [one.id, said[at] ?? null]));
        const known = answerTable(answers, id, profile, toKnown(planned))?.known ?? {};
        const given = Object.fromEntries(
          Object.entries(known).flatMap(([name, one]) => ('value' in one ? [[name, one.value]] : [])),
        );
        const open = openOf(judged, judgedOne).map((pieces, at) => {
          const input = judged.grid[at];
          const value = input && planned[input.input.id];
          return input && value !== undefined ? openPieces(input, { value }) : pieces;
        });
        const outcome = judged.decide(open);
        if (outcome.dependsOn.length > 0) continue;
        compared++;
        expect([...outcome.answers.keys()], `${profile} ${JSON.stringify(planned)}`).toEqual(
          words(judged, evaluateTable(judged.table, given).answers),
        );
      }
    }
    expect(compared).toBeGreaterThan(some.length);
  });
});

function ruleIndex({ table }: (typeof tables)[number], id: string): number {
  return table.rules.findIndex((rule) => rule.id === id);
}

function valuesOf(input: (typeof tables)[number]['entry']['data']['inputs'][number]): Value[] {
  if (input.holds === 'choice') return [...input.values];
  if (input.holds === 'yes-no') return [true, false];
  // Limits of the demo's bands and what lies between them.
  return input.holds === 'number' ? [0, 3.9, 4, 7, 8, 9.99, 10, 40] : [];
}

function everyAnswer(choices: readonly (readonly Value[])[]): Value[][] {
  return choices.reduce<Value[][]>(
    (all, values) => all.flatMap((one) => values.map((value) => one.concat(value))),
    [[]],
  );
}

function toKnown(planned: Readonly<Record<string, Value>>): Record<string, Known> {
  return Object.fromEntries(Object.entries(planned).map(([id, value]) => [id, { value }]));
}

describe('rules that clash, and cases no rule speaks of', () => {
  const data: TableData = {
    hit: 'unique',
    outputs: [{ id: 'do', label: 'Do', values: [] }],
    rules: [
      { id: 'one', gives: ['a'] },
      { id: 'two', gives: ['b'] },
    ],
    // Three pieces: only the first rule, both rules, none.
    passes: [['110', '010']],
  };
  const decide = decider(data);

  test('are told as such', () => {
    expect([...decide([[0]]).answers.keys()]).toEqual(['a']);
    expect([...decide([[1]]).answers.keys()]).toEqual([brokenWords()]);
    expect([...decide([[2]]).answers.keys()]).toEqual([noAnswerWords()]);
  });

  test('what is open is perhaps, and depends on the one input there is', () => {
    const { rules, answers: given, dependsOn, settledBy } = decide([[0, 2]]);
    expect([...rules]).toEqual([[0, 'perhaps']]);
    expect([...given.values()].map(({ sureness }) => sureness)).toEqual(['perhaps', 'perhaps']);
    expect([dependsOn, settledBy]).toEqual([[0], [0]]);
  });
});

test('several outputs are each named; numbers keep their unit', () => {
  const outputs = [
    { id: 'change', label: 'Change it', values: [] },
    { id: 'gain', label: 'Gain', unit: 'dB', values: [] },
  ];
  expect(answerWords([true, 3], outputs)).toBe('Change it: yes; Gain: 3\u00a0dB');
  expect(answerWords([null, 3], outputs)).toBe('Change it: nothing; Gain: 3\u00a0dB');
});
