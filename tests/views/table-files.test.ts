/** Tables as files: what is offered reads back as the same table; and what is proved of them is said. */
import { expect, test } from 'vitest';
import { rowsFromCsv } from '../../src/tables/csv.ts';
import { readDmn } from '../../src/tables/dmn/index.ts';
import { readTable } from '../../src/tables/index.ts';
import { tableFiles } from '../../src/views/table-files.ts';
import { proofOf } from '../../src/views/table-proof.ts';
import { demoAnswers } from './sample.ts';

const answers = await demoAnswers();

test('each table is there as DMN and as CSV, and reads back with all its rules', async () => {
  const all = await tableFiles(answers);
  expect(all.map(([id]) => id)).toEqual([...answers.tables.keys()]);
  for (const [id, { files }] of all) {
    const rules = answers.tables.get(id)?.table?.rules.map((rule) => rule.id);
    expect(files.map(({ path }) => path)).toEqual([`tables/${id}.dmn`, `tables/${id}.csv`]);
    for (const { form, text } of files) {
      if (form === 'csv') {
        const { table } = rowsFromCsv(text, id);
        expect(table?.rules.map((rule) => rule.id)).toEqual(rules);
      } else {
        const { decisions } = await readDmn(text);
        expect(decisions).toHaveLength(1);
        const logic = decisions[0]?.logic;
        expect(logic?.kind === 'table' && logic.rules.map((rule) => rule.id)).toEqual(rules);
      }
    }
  }
});

test('the demo’s tables are proved whole; a table with a gap, a clash or a dead rule is not', () => {
  for (const { table } of answers.tables.values()) {
    expect(table && proofOf(table)[0]).toBe('Complete: every combination has a rule.');
  }
  const proof = (tests: readonly string[], hitPolicy: 'unique' | 'first'): string[] => {
    const { table } = readTable({
      name: 'Bands',
      hitPolicy,
      aggregation: undefined,
      inputs: [{ id: 'it', label: 'It', type: { kind: 'number' }, mayBeMissing: false }],
      outputs: [{ id: 'out', label: 'Out', type: { kind: 'text' }, priorities: [], otherwise: undefined }],
      rules: tests.map((text, at) => ({ id: `r${at}`, tests: [text], results: [`answer ${at}`] })),
    });
    if (!table) throw new Error('no table');
    return proofOf(table);
  };
  expect(proof(['< 1', '> 1'], 'unique')).toEqual([
    'There are cases that no rule speaks of.',
    'No case has two rules.',
    'Every rule decides some case.',
  ]);
  expect(proof(['<= 1', '>= 1'], 'unique')).toContain('There are rules that contradict each other.');
  expect(proof(['-', '>= 1'], 'first')).toEqual([
    'Complete: every combination has a rule.',
    'No two rules contradict each other: the one that stands first decides.',
    'There are rules that never decide.',
  ]);
});
