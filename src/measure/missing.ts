/** Characteristics that the readings do not give. */
import { phrase } from '../words/index.ts';
import { neededFor } from './needed-for.ts';
import {
  type Characteristic,
  type CharacteristicName,
  characteristicNames,
  type ProfileOutput,
} from './quantity.ts';

/** What could not be computed, and what it would need. A bandwidth without a boost, or a slope without a corner, is not missed. */
export function missingFrom(found: readonly Characteristic[]): ProfileOutput['missing'] {
  const bound = (name: CharacteristicName) => found.find((one) => one.name === name)?.bound;
  const notApplicable = (name: CharacteristicName): boolean =>
    (name.startsWith('bass-boost-') && bound('bass-boost') !== undefined) ||
    (name === 'lower-slope' && bound('lower-corner') === 'at-most') ||
    (name === 'upper-slope' && bound('upper-corner') === 'at-least');
  return characteristicNames
    .filter((name) => bound(name) === undefined && !notApplicable(name))
    .map((name) => ({
      name,
      // Said when it is asked for: outputs are computed once for all languages.
      get reason() {
        return phrase('needs {readings}', { readings: neededFor(name) });
      },
    }));
}
