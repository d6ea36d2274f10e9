/** A written table → a table whose tests have been read, or what is wrong with it. */
import { daysOf } from './sets/days.ts';
import { heldBy, readTest } from './sets/read-test.ts';
import type { Cell, Table, TableFault, TableInput, TableOutput, Value, WrittenTable } from './table.ts';

export interface ReadTable {
  /** Undefined where it has faults. */
  readonly table: Table | undefined;
  readonly faults: readonly TableFault[];
}

/** Reads every test and holds every result to its column. */
export function readTable(written: WrittenTable): ReadTable {
  const faults: TableFault[] = [...tableFaults(written)];
  const rules = written.rules.map((rule, index) => {
    const cells = written.inputs.map((input, column): Cell => {
      const text = rule.tests[column] ?? '-';
      const read = readTest(text, input.type);
      const fault = read.fault ?? (read.set && strangerIn(read.set.values, input));
      if (fault) faults.push({ rule: index, column, in: 'inputs', ...fault });
      return { text, set: read.set };
    });
    for (const [column, output] of written.outputs.entries()) {
      const fault = resultFault(rule.results[column] ?? null, output);
      if (fault) faults.push({ rule: index, column, in: 'outputs', ...fault });
    }
    return { id: rule.id, cells, results: rule.results };
  });
  return { table: faults.length === 0 ? { ...written, rules } : undefined, faults };
}

function* tableFaults(written: WrittenTable): Generator<TableFault> {
  const about = { rule: undefined, column: undefined, in: 'aggregation' } as const;
  const { hitPolicy, aggregation, outputs } = written;
  if (aggregation !== undefined && hitPolicy !== 'collect') {
    const message = `“${aggregation}” sums up what “collect” collects, but the hit policy is “${hitPolicy}”.`;
    yield { ...about, message, help: 'Leave it out, or make the hit policy “collect”.' };
  }
  // DMN 1.3, 8.2.11: aggregation is not defined for compound outputs.
  if (aggregation !== undefined && outputs.length > 1) {
    yield { ...about, message: 'Only a table with one output can be summed up.', help: 'Keep one output.' };
  }
  if (
    aggregation !== undefined &&
    aggregation !== 'count' &&
    outputs.some(({ type }) => type.kind !== 'number')
  ) {
    yield {
      ...about,
      message: `Only numbers have a ${aggregation}.`,
      help: 'Make the output a number, or leave the aggregation out.',
    };
  }
  // DMN 1.3, 8.2.10: outputs that list no values are not taken into account in the order.
  if (
    (hitPolicy === 'priority' || hitPolicy === 'output order') &&
    outputs.every((one) => one.priorities.length === 0)
  ) {
    const message = `“${hitPolicy}” goes by the order of the answers, but no output lists them.`;
    yield {
      ...about,
      in: 'hit policy',
      message,
      help: 'List the values of the output, the one that goes first at the top.',
    };
  }
}

function strangerIn(
  values: readonly (string | boolean)[],
  { type }: TableInput,
): { message: string; help: string } | undefined {
  if (type.kind !== 'choice') return undefined;
  const stranger = values.find((one) => !type.values.includes(String(one)));
  if (stranger === undefined) return undefined;
  return { message: `“${stranger}” is no value of this column.`, help: `It holds ${heldBy(type)}.` };
}

function resultFault(value: Value, output: TableOutput): { message: string; help: string } | undefined {
  if (value === null) return undefined;
  const { type } = output;
  const fits =
    type.kind === 'number'
      ? typeof value === 'number'
      : type.kind === 'yes-no'
        ? typeof value === 'boolean'
        : typeof value === 'string' &&
          (type.kind !== 'choice' || type.values.includes(value)) &&
          (type.kind !== 'date' || daysOf(value) !== undefined);
  if (fits) return undefined;
  return { message: `“${value}” is no answer of “${output.label}”.`, help: `It holds ${heldBy(type)}.` };
}
