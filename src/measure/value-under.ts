/** One value of an output, picked by its name and the conditions it is asked for. */
import type { Characteristic, CharacteristicName, ProfileOutput } from './quantity.ts';

/** Conditions a value is asked for; those left out are the main ones where the output has such a value. */
export interface WantedConditions {
  readonly step?: number | undefined;
  readonly loadOhms?: number | undefined;
  readonly supplyVolts?: number | undefined;
  /** Level of the test signal, dBFS. */
  readonly signalDbfs?: number | undefined;
}

/** All values of one name: the headline one first, then those under the main conditions, then the others. */
export function valuesNamed(output: ProfileOutput, name: CharacteristicName): Characteristic[] {
  return [...output.characteristics, ...output.others].filter((one) => one.name === name);
}

/**
 * The value of this name under the wanted conditions; where several fit, the headline one, or else that
 * nearest to the main conditions. Undefined where the readings give none.
 */
export function valueUnder(
  output: ProfileOutput,
  name: CharacteristicName,
  wanted: WantedConditions,
): Characteristic | undefined {
  return valuesNamed(output, name).find(
    ({ conditions }) =>
      fits(conditions.step, wanted.step) &&
      fits(conditions.loadOhms, wanted.loadOhms) &&
      fits(conditions.supplyVolts, wanted.supplyVolts) &&
      fits(conditions.signalDbfs, wanted.signalDbfs),
  );
}

function fits(actual: number | undefined, wanted: number | undefined): boolean {
  return wanted === undefined || actual === wanted;
}
