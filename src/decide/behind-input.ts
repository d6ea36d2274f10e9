/** Which measured characteristic a column of a decision table rests on. */
import type { TableEntryInput } from '../../schemas/index.ts';
import type { CharacteristicName } from '../measure/index.ts';

/** The characteristic whose readings decide the column; undefined where it is a fact of an entry, or the rider’s to say. */
export function behindInput(input: TableEntryInput): CharacteristicName | undefined {
  if (input.holds === 'characteristic') return input.characteristic;
  if (input.holds === 'trait') {
    switch (input.trait) {
      case 'greatest-bass-boost':
      case 'boost-behaviour':
        return 'bass-boost';
      case 'rear-outputs':
        return 'rear-to-front';
      default:
        return undefined;
    }
  }
  if (input.holds !== 'reckoned') return undefined;
  // The same as the formulas of plan/facts.ts.
  switch (input.reckoned) {
    case 'level-short':
    case 'level-over':
      return 'clean-volts';
    case 'boost-over':
      return 'bass-boost';
    case 'low-end-short':
      return 'lower-corner';
    case 'rear-below-front':
      return 'rear-to-front';
    default:
      return undefined;
  }
}
