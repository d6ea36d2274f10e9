/** Computed values against the truth the demo's readings were made from. Invented data, so a self-check only. */
import { beforeAll, describe, expect, test } from 'vitest';
import { type Answers, readAnswers } from '../../src/answers.ts';
import { stepLevelDb } from '../../src/demo/output-model.ts';
import * as truth from '../../src/demo/truth.ts';
import { findProfile } from '../../src/demo/world/index.ts';
import { type Characteristic, exactCentre } from '../../src/measure/index.ts';

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
    case 'boosted-clean-step':
      return truth.highestStepCleanThroughout(profile, conditions);
    case 'limiter-onset':
      return limiterOnset(profile, conditions);
    case 'bass-boost':
      return bassSummit(profile, step, computed, conditions).levelDb;
    case 'bass-boost-frequency':
      return bassSummit(profile, step, computed, conditions).hz;
    case 'treble-tilt':
      return truth.trueResponseDb(profile, step, 10_000, conditions);
    case 'left-to-right':
      return 0;
    case 'source-resistance':
      return findProfile(profile).family.unit.outputOhms;
    case 'noise-floor':
      return findProfile(profile).family.unit.noiseVoltsRms;
    // What the model has no plain figure for is checked on made-up responses instead.
    case 'step-size':
    case 'bass-boost-bandwidth':
    case 'lower-slope':
    case 'upper-slope':
    case 'ripple':
      return undefined;
    case 'lower-corner':
      return truth.lowerCornerHz(profile, step, conditions) ?? undefined;
    case 'upper-corner':
      return truth.upperCornerHz(profile, step, conditions) ?? undefined;
    case 'rear-to-front':
      return truth.rearToFrontDb(profile, step, conditions) ?? undefined;
  }
}

type Conditions = { readonly loadOhms: number; readonly supplyVolts: number };

/** The highest point of the true response in the bass, over a fine grid; as read, where there is no boost. */
function bassSummit(
  profile: string,
  step: number,
  computed: Characteristic,
  conditions: Conditions,
): { hz: number | undefined; levelDb: number } {
  const level = (hz: number) => truth.trueResponseDb(profile, step, hz, conditions);
  const readHz = computed.conditions.hz;
  if (computed.name === 'bass-boost' && computed.value < 0.5 && readHz !== undefined) {
    return { hz: readHz, levelDb: level(readHz) };
  }
  const fine = Array.from({ length: 2000 }, (_, index) => exactCentre(-17) * 2 ** (index / 560));
  const inBand = fine.filter((hz) => hz <= 251);
  const hz = inBand.reduce((best, one) => (level(one) > level(best) ? one : best));
  return { hz, levelDb: level(hz) };
}

/** The first step whose true level is more than 0.3 dB short of the volume law. */
function limiterOnset(profile: string, conditions: Conditions): number {
  const { unit } = findProfile(profile).family;
  const level = (step: number) =>
    20 * Math.log10(truth.trueOutput(profile, 'FL', step, 1000, conditions).voltsRms);
  const reference = unit.lowestStep + 5;
  const short = (step: number) =>
    stepLevelDb(unit, step) - stepLevelDb(unit, reference) + level(reference) - level(step);
  return (
    truth.volumeSteps(profile).find((step) => step > reference && short(step) > 0.3) ?? unit.highestStep + 1
  );
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
    for (const output of answers.outputs.values()) {
      const missing = output.missing.map((one) => one.name);
      // Two loads, a silent step, or enough points past a corner are not to be had for every profile.
      const scarce = ['source-resistance', 'noise-floor', 'lower-slope', 'upper-slope'];
      const wanted = missing.filter((name) => !scarce.includes(name));
      expect(wanted, output.profile).toEqual([]);
    }
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
