/** Which values of an output hold under its main conditions. */
import type { Characteristic, CharacteristicName, ProfileOutput } from './quantity.ts';

/** All values of one name under the main load, supply and signal, at whatever step: the headline one first. */
export function underMainConditions(output: ProfileOutput, name: CharacteristicName): Characteristic[] {
  const main = output.conditions;
  return [...output.characteristics, ...output.others].filter(
    (one) =>
      one.name === name &&
      one.conditions.loadOhms === main?.loadOhms &&
      one.conditions.supplyVolts === main.supplyVolts &&
      one.conditions.signalDbfs === main.signalDbfs,
  );
}
