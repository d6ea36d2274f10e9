/** A profile that was never measured, and columns that may be missing: nothing is made up for it. */
import { expect, test } from 'vitest';
import { readAnswers } from '../../src/answers.ts';
import { tableAnswerViews } from '../../src/views/table-answers.ts';
import { partWords } from '../../src/views/table-listing.ts';
import { tablePages } from '../../src/views/table-page.ts';
import { editedExample } from '../check/example-base.ts';

const unmeasured = 'fellside/310';

async function withTable(column: string, rules: string) {
  const bad = `name: Loud enough
question: Is it loud enough?
about: Whether it is loud enough.
order: 1
hit: first
inputs:
  - { id: clean-volts, label: Clean volts, holds: characteristic, characteristic: clean-volts${column} }
outputs:
  - { id: answer, label: Answer, holds: choice, values: [yes it is, no, measure it] }
rules:
${rules}
sources: [maker-bulletin]
`;
  const { answers, findings } = await readAnswers(
    editedExample([{ file: 'tables/loud.yaml', good: '', bad }]),
  );
  expect(findings).toEqual([]);
  const table = tablePages(answers).find(({ id }) => id === 'loud');
  const said = tableAnswerViews(answers, unmeasured).find(({ path }) => path === table?.path);
  if (!table || !said) throw new Error('no table');
  return { table, said };
}

test('it could be anything: both answers are possible, and the readings that are missing are named', async () => {
  const { table, said } = await withTable(
    '',
    '  - { id: quiet, when: { clean-volts: "< 2" }, give: { answer: "no" } }\n  - { id: loud, give: { answer: yes it is } }',
  );
  expect(said.answer).toBe('');
  expect(said.borderline).toEqual([
    {
      label: 'Clean volts',
      value: '',
      anchor: '',
      settledBy: 'readings of front left at 1 kHz from two or more volume steps, with THD',
    },
  ]);
  const parts = table.listing.groups.flatMap((group) => group.parts.map((part) => partWords(part)));
  expect(parts).toContain('Perhaps, not measured: Clean volts');
  expect(table.settling).toHaveLength(1);
});

test('a rule may speak of what was not measured', async () => {
  const { table, said } = await withTable(
    ', mayBeMissing: true',
    '  - { id: unknown, when: { clean-volts: "null" }, give: { answer: measure it } }\n  - { id: loud, give: { answer: yes it is } }',
  );
  expect(said.answer).toBe('measure it');
  expect(said.rules[0]?.because).toMatchObject([
    { test: 'not measured', found: 'not measured', readings: [] },
  ]);
  expect(table.rules[0]?.cells[0]?.words).toBe('not measured');
});
