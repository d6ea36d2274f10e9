/** The names of a DMN table as ids of entries: lower-case words joined by hyphens. */
import type { WrittenTable } from '../table.ts';
import { idFor, idOfFeelName, renamed } from './names.ts';

/** The table with ids for the names of its columns, also where tests use them. */
export function withEntryIds(table: WrittenTable): WrittenTable {
  const inputs = idsOf(table.inputs.map(({ id }) => id));
  const outputs = idsOf(table.outputs.map(({ id }) => id));
  return {
    ...table,
    inputs: table.inputs.map((input) => ({ ...input, id: inputs.get(input.id) ?? input.id })),
    outputs: table.outputs.map((output) => ({ ...output, id: outputs.get(output.id) ?? output.id })),
    rules: table.rules.map((rule) => ({ ...rule, tests: rule.tests.map((test) => renamed(test, inputs)) })),
  };
}

/** Each name with an id no other has. */
function idsOf(names: readonly string[]): Map<string, string> {
  const ids = new Map<string, string>();
  const taken = new Set<string>();
  for (const name of names) {
    const id = /^_?[a-z0-9]+( [a-z0-9]+)*$/.test(name) ? idOfFeelName(name) : idFor(name);
    let own = id;
    for (let number = 2; taken.has(own); number += 1) own = `${id}-${number}`;
    taken.add(own);
    ids.set(name, own);
  }
  return ids;
}
