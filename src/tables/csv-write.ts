/** A decision table → CSV. */
import { csvCell } from './csv-cells.ts';
import { headText, otherwiseRow, policyText } from './csv-head.ts';
import { feelLiteral } from './dmn/feel-text.ts';
import { valuesByPriority } from './dmn/priorities.ts';
import { feelTest } from './entry/feel-test.ts';
import { writtenTest } from './entry/written-test.ts';
import { CannotExport } from './file-fault.ts';
import type { Table, TableOutput, Value, ValueType } from './table.ts';

/**
 * A table as CSV, with commas and CRLF line ends (RFC 4180). Labels are left out: columns go by their ids. Cells a
 * spreadsheet would run get an apostrophe, which {@link rowsFromCsv} takes away again.
 * @throws CannotExport where a rule goes by the name of the default row, or an answer has no place in the order of
 *   priorities.
 */
export function rowsToCsv(table: Table, says: Readonly<Record<string, string | undefined>> = {}): string {
  if (table.rules.some(({ id }) => id === otherwiseRow)) {
    throw new CannotExport(`A rule is called “${otherwiseRow}”, which means the defaults.`, 'Rename it.');
  }
  const head = [
    policyText(table.hitPolicy, table.aggregation),
    ...table.inputs.map(({ id, type, mayBeMissing }) => headText({ kind: 'when', id, type, mayBeMissing })),
    ...table.outputs.map((output) => {
      const type = withPriorities(output, table);
      return headText({ kind: 'give', id: output.id, type, mayBeMissing: false });
    }),
    'say',
  ];
  const rules = table.rules.map(({ id, cells, results }) => [
    id,
    ...cells.map(({ text }, index) => plainTest(text, table.inputs[index]?.type ?? { kind: 'text' })),
    ...results.map((value, index) => answerText(value, table.outputs[index]?.type)),
    says[id] ?? '',
  ]);
  const otherwise = table.outputs.some((output) => output.otherwise !== undefined)
    ? [
        [
          otherwiseRow,
          ...table.inputs.map(() => ''),
          ...table.outputs.map((output) => answerText(output.otherwise ?? null, output.type)),
          '',
        ],
      ]
    : [];
  return [head, ...rules, ...otherwise].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

/** A choice with its values in the order of their priority, as in CSV their order is their priority. */
function withPriorities(output: TableOutput, { hitPolicy }: Table): ValueType {
  const { label, type, priorities } = output;
  if (hitPolicy !== 'priority' && hitPolicy !== 'output order') return type;
  if (type.kind !== 'choice') {
    if (priorities.length === 0) return type;
    const message = `“${label}” is no choice, and in CSV only the values of a choice have an order.`;
    throw new CannotExport(message, 'Export it as DMN.');
  }
  return { kind: 'choice', values: valuesByPriority(label, type.values, priorities) };
}

/** The test as people write it where that comes to the same: `fixed, fading`, `yes`, `< 2026-03-14`. */
function plainTest(text: string, type: ValueType): string {
  // A list written close together could be taken for a number with a decimal comma.
  const apart = text.replace(/"(?:[^"\\]|\\.)*"|,(?=\S)/g, (found) => (found === ',' ? ', ' : found));
  const plain = writtenTest(apart, type);
  const same = (a: string, b: string): boolean => a.replace(/\s/g, '') === b.replace(/\s/g, '');
  return same(feelTest(plain, type), apart) ? plain : apart;
}

function answerText(value: Value, type: ValueType | undefined): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return feelLiteral(value, { kind: 'number' });
  const plain = value !== '' && value === value.trim() && !value.startsWith('"') && !/[\r\n]/.test(value);
  return plain || type?.kind === 'date' ? value : JSON.stringify(value);
}
