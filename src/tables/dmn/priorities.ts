/** The order of answers where it decides (DMN 1.3, 8.2.10). */
import { CannotExport } from '../file-fault.ts';
import type { Value } from '../table.ts';

/**
 * All values of a choice in the order of their priority, highest first. In DMN and CSV the list of values is that order:
 * it would set apart what is level here.
 * @throws CannotExport where more than one value has no priority.
 */
export function valuesByPriority(
  label: string,
  values: readonly string[],
  priorities: readonly Value[],
): string[] {
  const rest = values.filter((one) => !priorities.includes(one));
  if (rest.length > 1) {
    throw new CannotExport(
      `“${label}” gives no priority to ${rest.map((one) => `“${one}”`).join(', ')}.`,
      'List them among its priorities, in their order.',
    );
  }
  return [...priorities.filter((one) => typeof one === 'string'), ...rest];
}
