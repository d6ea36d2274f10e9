/** Which column of distortion belongs to which column of volts. */
import type { Column } from './columns.ts';
import type { Role } from './role.ts';

/** A column of readings. */
export interface ValueColumn extends Column {
  readonly role: Role & { readonly is: 'volts' | 'thd' };
}

export interface ThdColumns {
  /** The column of distortion of a column of volts. */
  readonly of: ReadonlyMap<ValueColumn, ValueColumn>;
  /** Columns of distortion that belong to none of volts. */
  readonly alone: readonly ValueColumn[];
}

/** The columns of readings. */
export function valueColumns(columns: readonly Column[]): ValueColumn[] {
  return columns.filter((one): one is ValueColumn => one.role.is === 'volts' || one.role.is === 'thd');
}

/**
 * Pairs columns: first those whose heads name the same output, step and frequency; then each one of distortion that is
 * left with the column of volts it stands behind, where its head says nothing else.
 */
export function pairThd(columns: readonly Column[]): ThdColumns {
  const values = valueColumns(columns).sort((a, b) => a.at - b.at);
  const volts = values.filter(({ role }) => role.is === 'volts');
  const of = new Map<ValueColumn, ValueColumn>();
  const left: ValueColumn[] = [];
  for (const thd of values.filter(({ role }) => role.is === 'thd')) {
    const same = volts.find((one) => !of.has(one) && saysAllOf(one, thd) && saysAllOf(thd, one));
    if (same) of.set(same, thd);
    else left.push(thd);
  }
  const alone = left.filter((thd) => {
    const before = values.slice(0, values.indexOf(thd)).findLast(({ role }) => role.is === 'volts');
    const only = volts.length === 1 ? volts[0] : undefined;
    const beside = [before, only].find((one) => one && !of.has(one) && saysAllOf(one, thd));
    if (beside) of.set(beside, thd);
    return !beside;
  });
  return { of, alone };
}

/** Whether what the head of `other` fixes is fixed alike by that of `one`. */
function saysAllOf(one: ValueColumn, other: ValueColumn): boolean {
  const fixed = new Map(Object.entries(one.role.fixed));
  return Object.entries(other.role.fixed).every(([key, value]) => fixed.get(key) === value);
}
