import { beforeAll, describe, expect, test } from 'vitest';
import type { Plan } from '../../schemas/index.ts';
import { type Answers, readAnswers } from '../../src/answers.ts';
import { answerPlan, type PlanAnswer, policyOf, termsOfPlan } from '../../src/decide/index.ts';

const policy = policyOf([]);

import type { Characteristic, CharacteristicName, ProfileOutput } from '../../src/measure/index.ts';

const plan: Plan = {
  name: 'plan',
  summary: 'made up for the test',
  order: 1,
  feeds: 'aftermarket-amplifier',
  input: { leastVolts: 2, mostVolts: 6 },
  rear: 'needed',
  mostBassBoostDb: 3,
  highestLowCornerHz: 60,
  canCorrect: false,
  sources: ['x'],
};

const units = {
  'clean-volts': 'V',
  'bass-boost': 'dB',
  'lower-corner': 'Hz',
  'rear-to-front': 'dB',
} as const;

function characteristic(
  name: keyof typeof units,
  value: number,
  expandedUncertainty: number,
  step = 20,
): Characteristic {
  return {
    name,
    value,
    unit: units[name],
    standardUncertainty: expandedUncertainty / 2,
    coverageFactor: 2,
    expandedUncertainty,
    bound: 'exact',
    budget: [],
    conditions: { step, loadOhms: 4, supplyVolts: 14.4, signalDbfs: 0 },
    readings: ['s:2'],
    sources: ['bench'],
  };
}

/** A profile that suits the plan in every way, with some values changed; undefined takes one away. */
function answer(
  changes: Partial<Record<keyof typeof units, Characteristic | undefined>> = {},
  planChanges: Partial<Plan> = {},
  others: Characteristic[] = [],
  boostBehaviour: ProfileOutput['boostBehaviour'] = 'fixed',
): PlanAnswer {
  const values: Partial<Record<CharacteristicName, Characteristic | undefined>> = {
    'clean-volts': characteristic('clean-volts', 4, 0.05),
    'bass-boost': characteristic('bass-boost', 1, 0.1),
    'lower-corner': characteristic('lower-corner', 40, 1),
    'rear-to-front': characteristic('rear-to-front', 0, 0.1),
    ...changes,
  };
  const characteristics = Object.values(values).filter((one) => one !== undefined);
  const output: ProfileOutput = {
    profile: 'f/p',
    characteristics,
    others,
    levelByStep: [],
    stepLaw: [],
    boostBehaviour,
    responses: [],
    mutedChannels: [],
    conditions: { loadOhms: 4, supplyVolts: 14.4, signalDbfs: 0 },
    sessions: ['s'],
    normalised: [],
    agreement: undefined,
    missing: [],
  };
  const profile = {
    family: 'f',
    code: 'P1',
    otherSpellings: [],
    origin: 'factory' as const,
    system: 'amplified' as const,
    soldAs: [],
    tellApart: [],
    about: 'made up',
    sources: ['x'],
  };
  const terms = termsOfPlan({ ...plan, ...planChanges });
  const judged = { data: profile, channels: ['FL', 'FR', 'RL', 'RR'], output };
  return answerPlan(policy, { id: 'plan', terms }, judged);
}

test('everything fits: keep, and each aspect says why', () => {
  const kept = answer();
  expect(kept.verdict).toBe('keep');
  expect(kept.reasons.map((one) => one.outcome)).toEqual(['fits', 'fits', 'fits', 'fits']);
});

describe('level against the input range', () => {
  test.each([
    [1, 0.1, 'reflash', /6\.0\u00a0dB short/],
    [8, 0.1, 'keep-and-correct', /2\.5\u00a0dB over/],
    [2.02, 0.05, 'measure-first', /too near the end of the range/],
    [5.98, 0.05, 'keep-and-correct', /may have to be put right.*too near the end of the range/],
  ] as const)('%s V ± %s V: %s', (volts, uncertainty, verdict, text) => {
    const given = answer({ 'clean-volts': characteristic('clean-volts', volts, uncertainty) });
    expect(given.verdict).toBe(verdict);
    expect(given.sentence).toMatch(text);
  });
  test('not measured: measure first', () => {
    expect(answer({ 'clean-volts': undefined }).verdict).toBe('measure-first');
  });
});

describe('bass boost against the plan’s limit', () => {
  const boost = characteristic('bass-boost', 6, 0.2);
  test('fixed, without an equaliser: reflash', () => {
    expect(answer({ 'bass-boost': boost }).verdict).toBe('reflash');
  });
  test('fixed, with an equaliser: keep and correct', () => {
    expect(answer({ 'bass-boost': boost }, { canCorrect: true }).verdict).toBe('keep-and-correct');
  });
  test('changing with the volume: no equaliser helps, and the greatest boost counts', () => {
    const quiet = characteristic('bass-boost', 8, 0.2, 6);
    const loud = { 'bass-boost': characteristic('bass-boost', 0, 0.1) };
    const given = answer(loud, { canCorrect: true }, [quiet], 'changing');
    expect(given.verdict).toBe('reflash');
    expect(given.sentence).toMatch(
      /changes with the volume, up to 8\.00\u00a0dB ±\u00a00\.20\u00a0dB at step 6/,
    );
  });
});

test('a boost measured at one step only: nobody knows yet whether an equaliser can take it out', () => {
  const boost = { 'bass-boost': characteristic('bass-boost', 6, 0.2) };
  const given = answer(boost, { canCorrect: true }, [], 'unknown');
  expect(given.verdict).toBe('measure-first');
  expect(given.sentence).toContain('needs the response at a second step');
});

test('bass that ends too high: reflash', () => {
  expect(answer({ 'lower-corner': characteristic('lower-corner', 125, 2) }).verdict).toBe('reflash');
});

describe('rear outputs', () => {
  const silent: Characteristic = { ...characteristic('rear-to-front', -40, 0), bound: 'at-most' };
  test('silent, with an amplifier of its own: feed it from the front', () => {
    const given = answer({ 'rear-to-front': silent });
    expect(given.verdict).toBe('keep-and-correct');
    expect(given.sentence).toContain('Feed the amplifier’s rear inputs from the front outputs.');
  });
  test('silent and not needed: keep', () => {
    expect(answer({ 'rear-to-front': silent }, { rear: 'not-needed' }).verdict).toBe('keep');
  });
  test('silent, straight into rear speakers: reflash', () => {
    expect(answer({ 'rear-to-front': silent }, { feeds: 'speakers' }).verdict).toBe('reflash');
  });
});

test('an amplified profile is not for speakers straight off the unit (common practice, no source)', () => {
  const given = answer({}, { feeds: 'speakers' });
  expect(given.verdict).toBe('reflash');
  expect(given.sentence).toContain('meant for a factory amplifier');
});

describe('the demo answers its main question', () => {
  let answers: Answers;
  beforeAll(async () => {
    ({ answers } = await readAnswers('content'));
  });
  test('every profile has an answer to every plan; keeping, correcting and reflashing all occur', () => {
    const all = [...answers.planAnswers.values()].flat();
    expect(all).toHaveLength(answers.base.profiles.size * answers.base.plans.size);
    const given = new Set(all.map((one) => one.verdict));
    for (const verdict of ['keep', 'keep-and-correct', 'reflash'] as const) expect(given).toContain(verdict);
  });
  test('some factory profiles need no reflash for an aftermarket amplifier (common practice, no source)', () => {
    const kept = [...answers.base.profiles.values()].filter(
      ({ id, data }) =>
        data.origin === 'factory' &&
        answers.planAnswers
          .get(id)
          ?.some((one) => one.plan === 'four-channel-front-rear' && one.verdict === 'keep'),
    );
    expect(kept.length).toBeGreaterThan(0);
  });
});
