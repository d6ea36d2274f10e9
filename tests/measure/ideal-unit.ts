/** An ideal unit for tests: a level law of 2 dB a step, and any response, read without error but for rounding. */

import type { ProfileOutput, Run } from '../../src/measure/index.ts';
import { type Characteristic, type CharacteristicName, exactCentre } from '../../src/measure/index.ts';
import { type Row, run } from './bench.ts';

export const unit = { ratedLoadOhms: 4, highestStep: 30 };

/** The step the responses are read at, and its level at 1 kHz. */
export const responseStep = 16;
export const responseVolts = 1;

/** 1 kHz at steps 1 to 30, 2 dB a step, 1 V at step 16; THD passes 1 % above step 25. */
export const levels: readonly Row[] = Array.from({ length: 30 }, (_, index) => {
  const step = index + 1;
  return ['FL', step, 1000, 10 ** ((step - responseStep) / 10), step <= 25 ? 0.1 : 5 * (step - 25)];
});

/** Exact third-octave centres from 20 Hz to 20 kHz, every `spacing`-th of them, 1 kHz always among them. */
export function thirdOctaves(spacing = 1, fromHz = 19.9, toHz = 20_000): number[] {
  return Array.from({ length: 61 }, (_, index) => exactCentre((index - 30) * spacing)).filter(
    (hz) => hz >= fromHz && hz <= toHz,
  );
}

/** A response at step 16 as a voltmeter shows it: volts at each frequency, to its last digit. */
export function responseRows(
  levelDb: (hz: number) => number,
  frequencies: readonly number[] = thirdOctaves(),
  resolutionVolts = 0.0001,
): Row[] {
  return frequencies
    .filter((hz) => hz !== 1000)
    .map((hz) => {
      const volts = responseVolts * 10 ** ((levelDb(hz) - levelDb(1000)) / 20);
      return ['FL', responseStep, hz, Math.round(volts / resolutionVolts) * resolutionVolts];
    });
}

/** One session that read levels and a response. */
export function responseRun(...[levelDb, frequencies]: Parameters<typeof responseRows>): Run {
  return run([...levels, ...responseRows(levelDb, frequencies)]);
}

/** A characteristic of the output; undefined where it has none. */
export function found(output: ProfileOutput, name: CharacteristicName): Characteristic | undefined {
  return output.characteristics.find((one) => one.name === name);
}

/** A characteristic the output must have. */
export function value(output: ProfileOutput, name: CharacteristicName): Characteristic {
  const one = found(output, name);
  if (!one) throw new Error(`no ${name}`);
  return one;
}
