/** Single values in words: “clean volts 5 V, rear wanted”. */
import { daysOf } from '../sets/days.ts';
import { oneValue, onlyMissing } from '../sets/value-set.ts';
import type { Given, TableInput } from '../table.ts';
import { describeSet } from './describe.ts';

/** The values given for some inputs, in their order; one left out counts as not known. */
export function describeGiven(given: Given, inputs: readonly TableInput[]): string {
  return inputs
    .map((input) => {
      const value = given[input.id] ?? null;
      const ordered = input.type.kind === 'date' && typeof value === 'string' ? daysOf(value) : value;
      const set = ordered === null || ordered === undefined ? onlyMissing : oneValue(ordered);
      return describeSet(set, { ...input, mayBeMissing: true });
    })
    .join(', ');
}
