/** Names in a table entry that are used twice, that nothing stands behind, or that are missing. */
import type { TableEntry } from '../../../schemas/index.ts';
import type { EntryFault } from './entry-fault.ts';

/** Two columns or two rules of one name. */
export function* repeatedIds({ inputs, outputs, rules }: TableEntry): Generator<EntryFault> {
  for (const [field, all] of Object.entries({ inputs, outputs, rules })) {
    const seen = new Map<string, number>();
    for (const [index, { id }] of all.entries()) {
      const first = seen.get(id);
      if (first === undefined) {
        seen.set(id, index);
        continue;
      }
      yield {
        path: [field, index, 'id'],
        part: 'value',
        message: `There are two ${field} with the id “${id}”.`,
        help: 'Give each an id of its own, or take one of the two out.',
        also: [[field, first, 'id']],
      };
    }
  }
}

/** Tests of columns that are not there, and answers that are missing. */
export function* unknownNames(entry: TableEntry): Generator<EntryFault> {
  const misnamed = [misnamedColumn(entry, 'inputs', 'when'), misnamedColumn(entry, 'outputs', 'give')];
  const found = misnamed.filter((one) => one !== undefined);
  if (found.length > 0) yield* found;
  else yield* unknownInRules(entry);
}

/** A column no rule names, where several rules name one that is not there: the slip is in the column. */
function misnamedColumn(
  entry: TableEntry,
  side: 'inputs' | 'outputs',
  field: 'when' | 'give',
): EntryFault | undefined {
  const used = entry.rules.flatMap((rule) => Object.keys(rule[field]));
  const ids = entry[side].map(({ id }) => id);
  const unused = ids.filter((id) => !used.includes(id));
  const unknown = used.filter((name) => !ids.includes(name));
  const [id, name] = [unused[0], unknown[0]];
  if (id === undefined || name === undefined || unused.length > 1) return undefined;
  if (unknown.length < 2 || new Set(unknown).size > 1) return undefined;
  return {
    path: [side, ids.indexOf(id), 'id'],
    part: 'value',
    message: `No rule names “${id}”, and ${unknown.length} rules name “${name}”, which is no column of this table.`,
    help: 'Call the column and what the rules name by one id.',
    unknown: { name: id, known: [name] },
    also: entry.rules.flatMap((rule, index) =>
      Object.hasOwn(rule[field], name) ? [['rules', index, field, name]] : [],
    ),
  };
}

function* unknownInRules(entry: TableEntry): Generator<EntryFault> {
  const outputIds = entry.outputs.map(({ id }) => id);
  const columns = { when: entry.inputs.map(({ id }) => id), give: outputIds };
  for (const [index, rule] of entry.rules.entries()) {
    for (const field of ['when', 'give'] as const) {
      const known = columns[field];
      for (const name of Object.keys(rule[field]).filter((one) => !known.includes(one))) {
        const noun = field === 'when' ? 'input' : 'output';
        yield {
          path: ['rules', index, field, name],
          part: 'key',
          message: `This table has no ${noun} “${name}”.`,
          help: `Its ${noun}s are: ${known.join(', ')}.`,
          unknown: { name, known },
        };
      }
    }
    const missing = outputIds.filter((one) => !Object.hasOwn(rule.give, one));
    const unknown = Object.keys(rule.give).filter((one) => !outputIds.includes(one));
    // A misspelt name stands for the one that seems to be missing.
    for (const id of missing.slice(unknown.length)) {
      yield {
        path: ['rules', index, 'give'],
        part: 'key',
        message: `The rule “${rule.id}” gives no answer for “${id}”.`,
        help: `Write it behind “give”: { ${id}: … }, or, with a line each, below it.`,
      };
    }
  }
}
