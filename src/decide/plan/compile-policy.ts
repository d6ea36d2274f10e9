/** Reads a policy entry into the table verdicts come from. */
import type { TableEntry } from '../../../schemas/index.ts';
import { cutTable, tableOfEntry } from '../../tables/index.ts';
import { type ReadPolicy, usualPolicy } from './policy.ts';

/** The policy of an entry; undefined where the entry has faults or gives no verdict. */
export function compilePolicy(entry: TableEntry): ReadPolicy | undefined {
  const { table } = tableOfEntry(entry);
  if (!table?.outputs.some(({ id }) => id === 'verdict')) return undefined;
  return { inputs: entry.inputs, rules: entry.rules, table, cut: cutTable(table) };
}

/** The shop’s policy: that of the first table that decides plans and can be read, else the usual one. */
export function policyOf(tables: Iterable<TableEntry>): ReadPolicy {
  for (const entry of tables) {
    const policy = entry.decides === 'plan' ? compilePolicy(entry) : undefined;
    if (policy) return policy;
  }
  const usual = compilePolicy(usualPolicy());
  if (!usual) throw new Error('the usual policy cannot be read');
  return usual;
}
