/** The headline value of a characteristic. */
import type { Characteristic, CharacteristicName, ProfileOutput } from './quantity.ts';

/** The value under the main conditions; undefined where it could not be computed. */
export function headlineValue(
  output: Pick<ProfileOutput, 'characteristics'>,
  name: CharacteristicName,
): Characteristic | undefined {
  return output.characteristics.find((one) => one.name === name);
}
