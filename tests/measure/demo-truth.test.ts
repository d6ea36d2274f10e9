/** Computed values against the truth the demo's readings were made from. Invented data, so a self-check only. */
import { beforeAll, describe, expect, test } from 'vitest';
import { type Answers, readAnswers } from '../../src/answers.ts';
import * as truth from '../../src/demo/truth.ts';
import type { Characteristic } from '../../src/measure/index.ts';

let answers: Answers;
beforeAll(async () => {
  ({ answers } = await readAnswers('content'));
});

/** The true value of a computed one, under the same conditions. Undefined where the model has none. */
function trueValue(profile: string, computed: Characteristic): number | undefined {
  const { step = 0, loadOhms, supplyVolts } = computed.conditions;
  const conditions = { loadOhms, supplyVolts };
  switch (computed.name) {
    case 'clean-volts':
      return truth.trueOutput(profile, 'FL', step, 1000, conditions).voltsRms;
    case 'highest-clean-step':
      return truth.highestCleanStep(profile, conditions);
    case 'bass-boost':
      return truth.bassBoostDb(profile, step, conditions);
    case 'bass-boost-frequency':
      return undefined;
    case 'lower-corner':
      return truth.lowerCornerHz(profile, step, conditions) ?? undefined;
    case 'upper-corner':
      return truth.upperCornerHz(profile, step, conditions) ?? undefined;
    case 'rear-to-front':
      return truth.rearToFrontDb(profile, step, conditions) ?? undefined;
  }
}

interface Comparison {
  readonly label: string;
  readonly within: boolean;
  readonly off: number;
  readonly exact: boolean;
}

function comparisons(): Comparison[] {
  return [...answers.outputs.values()].flatMap((output) =>
    [...output.characteristics, ...output.others].flatMap((computed): Comparison[] => {
      const value = trueValue(output.profile, computed);
      if (value === undefined) return [];
      const label = `${output.profile} ${computed.name} ${computed.value} ± ${computed.expandedUncertainty} (${computed.bound}), truth ${value}`;
      if (computed.bound === 'at-most')
        return [{ label, within: value <= computed.value, off: 0, exact: false }];
      if (computed.bound === 'at-least')
        return [{ label, within: value >= computed.value, off: 0, exact: false }];
      const error = Math.abs(computed.value - value);
      const off = error === 0 ? 0 : error / computed.expandedUncertainty;
      return [{ label, within: off <= 1, off, exact: true }];
    }),
  );
}

describe('the demo, computed from its readings, against the model that made them', () => {
  test('every profile has an output', () => {
    expect(answers.outputs.size).toBeGreaterThanOrEqual(30);
    for (const output of answers.outputs.values()) expect(output.missing, output.profile).toEqual([]);
  });

  test('at least 95 % of values lie within their expanded uncertainty of the truth, all within 1.5 times it', () => {
    const all = comparisons();
    expect(all.length).toBeGreaterThan(200);
    const outside = all.filter((one) => !one.within).map((one) => one.label);
    expect(1 - outside.length / all.length, outside.join('\n')).toBeGreaterThanOrEqual(0.95);
    expect(all.filter((one) => one.off > 1.5).map((one) => one.label)).toEqual([]);
  });

  test('bounds hold: a value said to be at most or at least something is', () => {
    const bounds = comparisons().filter((one) => !one.exact);
    expect(bounds.length).toBeGreaterThan(10);
    expect(bounds.filter((one) => !one.within).map((one) => one.label)).toEqual([]);
  });

  test('silent outputs are those the model mutes', () => {
    for (const output of answers.outputs.values()) {
      const muted = (['RL', 'RR'] as const).filter((channel) => truth.isMuted(output.profile, channel));
      expect([...output.mutedChannels].sort(), output.profile).toEqual(muted);
    }
  });
});
