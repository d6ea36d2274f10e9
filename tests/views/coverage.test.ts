/** What is measured, what is open because of it, and which readings are wanted; held against other ways to find out. */
import { describe, expect, test } from 'vitest';
import { type Answers, answerTable, judgedProfile } from '../../src/answers.ts';
import { answerPlan, behindInput, termsOfPlan } from '../../src/decide/index.ts';
import type { Characteristic, CharacteristicName, ProfileOutput } from '../../src/measure/index.ts';
import { countsOf, coverageOf, familyCoverage } from '../../src/views/coverage/coverage.ts';
import { coverageView, runsOfYears } from '../../src/views/coverage/coverage-page.ts';
import { type OpenAnswer, openAnswers } from '../../src/views/coverage/open-answers.ts';
import { decidingValue, wantedOf } from '../../src/views/coverage/wanted.ts';
import { isAsked } from '../../src/views/judged-tables.ts';
import { characteristic, demoAnswers, output } from './sample.ts';

const answers = await demoAnswers();

/** The answers with another output of one profile. */
const withOutput = (id: string, changed: ProfileOutput): Answers => ({
  ...answers,
  outputs: new Map(
    [...answers.base.profiles.keys()].flatMap((one) => {
      const known = one === id ? changed : answers.outputs.get(one);
      return known ? [[one, known] as const] : [];
    }),
  ),
});

const outputOf = (id: string): ProfileOutput => {
  const known = answers.outputs.get(id);
  if (!known) throw new Error(`no output of ${id}`);
  return known;
};

describe('coverage', () => {
  test('two sessions confirm, one stands alone, what could not be computed is missing, the rest does not apply', () => {
    const one = output(
      [
        characteristic('clean-volts', 5, 0.1, { readings: ['2026-03-quay:2', '2026-04-north:9'] }),
        characteristic('bass-boost', 0.2, 0.1, { readings: ['2026-03-quay:2', '2026-03-quay:3'] }),
      ],
      { missing: [{ name: 'noise-floor', reason: 'needs a reading' }] },
    );
    expect(coverageOf(one, 'clean-volts')).toBe('confirmed');
    expect(coverageOf(one, 'bass-boost')).toBe('single');
    expect(coverageOf(one, 'noise-floor')).toBe('missing');
    expect(coverageOf(one, 'bass-boost-frequency')).toBe('not-applicable');
  });

  test('of each family every characteristic of every profile is counted once', () => {
    for (const [family, profiles] of answers.base.profilesOfFamily) {
      const {
        confirmed,
        single,
        missing,
        'not-applicable': none,
      } = countsOf(familyCoverage(answers, family));
      expect(confirmed + single + missing + none, family).toBe(18 * profiles.length);
      // A profile one session measured has nothing confirmed.
      const lone = profiles.filter(({ id }) => answers.base.sessionsOfProfile.get(id)?.length === 1);
      const states = [...familyCoverage(answers, family).values()].flatMap((one) => one.confirmed);
      expect(states.filter((id) => lone.some((one) => one.id === id))).toEqual([]);
    }
  });

  test('years in a row with the same model lines are one, and none is lost', () => {
    const fitment = [
      { model: 'Aldmoor', fromYear: 2006, toYear: 2009 },
      { model: 'Bexley Fell', fromYear: 2008, toYear: 2008 },
      { model: 'Aldmoor', fromYear: 2012, toYear: 2012 },
    ];
    expect(runsOfYears(fitment)).toEqual([
      { from: 2006, to: 2007, models: ['Aldmoor'] },
      { from: 2008, to: 2008, models: ['Aldmoor', 'Bexley Fell'] },
      { from: 2009, to: 2009, models: ['Aldmoor'] },
      { from: 2012, to: 2012, models: ['Aldmoor'] },
    ]);
  });
});

describe('open answers', () => {
  const open = openAnswers(answers);
  const isOpen = (kind: OpenAnswer['of'], profile: string, path: string): boolean =>
    open.some((one) => one.of === kind && one.profile === profile && one.path === path);

  test('a plan’s answer is open where the profile page has more than one verdict for possible', () => {
    let several = 0;
    for (const [profile, given] of answers.planAnswers) {
      for (const { plan, possible } of given) {
        expect(isOpen('plan', profile, `plans/${plan}/`), `${profile} ${plan}`).toBe(possible.length > 1);
        several += Number(possible.length > 1);
      }
    }
    expect(several).toBeGreaterThan(0);
  });

  test('a table’s answer is open where its exact evaluation depends on something measured', () => {
    let several = 0;
    for (const [id, { table }] of answers.tables) {
      const inputs = answers.base.tables.get(id)?.data.inputs ?? [];
      if (!table || inputs.some(({ holds }) => holds === 'reckoned')) continue;
      for (const profile of answers.base.profiles.keys()) {
        const dependsOn = answerTable(answers, id, profile)?.within.dependsOn ?? [];
        const measured = inputs.filter((input) => dependsOn.includes(input.id) && !isAsked(input));
        expect(isOpen('table', profile, `tables/${id}/`), `${profile} ${id}`).toBe(measured.length > 0);
        several += measured.length;
      }
    }
    expect(several).toBeGreaterThan(0);
  });
});

/**
 * The output with one characteristic known exactly. The greatest boost is known when it is at all steps: none of the
 * others is above it then.
 */
function knownExactly(from: ProfileOutput, name: CharacteristicName, value: number): ProfileOutput {
  const known = decidingValue(from, name);
  const fixed = (one: Characteristic): Characteristic =>
    one === known || (name === 'bass-boost' && one.name === name)
      ? {
          ...one,
          name: one.name,
          unit: one.unit,
          conditions: one.conditions,
          readings: one.readings,
          sources: one.sources,
          standardUncertainty: 0,
          coverageFactor: 2,
          budget: [],
          value: one === known ? value : Math.min(one.value, value),
          expandedUncertainty: 0,
          bound: 'exact',
        }
      : one;
  return { ...from, characteristics: from.characteristics.map(fixed), others: from.others.map(fixed) };
}

describe('wanted', () => {
  const wanted = wantedOf(answers);

  test('what is said to settle an answer does, wherever in its interval the value turns out to be', () => {
    let held = 0;
    for (const { profile, characteristic: name, settles, state } of wanted) {
      const from = outputOf(profile);
      const known = decidingValue(from, name);
      if (state !== 'borderline' || !known) continue;
      for (const share of [-1, -0.7, -0.31, -0.02, 0.013, 0.29, 0.66, 1]) {
        const value = known.value + share * known.expandedUncertainty;
        const changed = withOutput(profile, knownExactly(from, name, value));
        for (const one of settles) {
          expect(answersTo(changed, one), `${profile} ${name} ${value} ${one.name}`).toBe(1);
          held += 1;
        }
      }
    }
    expect(held).toBeGreaterThan(50);
  });

  test('and as it is, none of them is settled', () => {
    for (const { settles, hasASay } of wanted) {
      for (const one of [...settles, ...hasASay]) expect(answersTo(answers, one)).toBeGreaterThan(1);
    }
  });

  test('what settles most comes first', () => {
    const counts = wanted.map(({ settles }) => settles.length);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
    expect(coverageView(answers).wanted.map(({ settles }) => settles)).toEqual(counts);
  });

  test('of a profile nothing was measured of, each characteristic a plan goes by is missing and has a say', () => {
    const id = 'brasslight/8b0s-15z';
    const bare = withOutput(id, {
      ...outputOf(id),
      characteristics: [],
      others: [],
      levelByStep: [],
      responses: [],
      boostBehaviour: 'unknown',
      conditions: undefined,
      sessions: [],
    });
    const own = wantedOf(bare).filter(({ profile }) => profile === id);
    const named = new Set(own.map(({ characteristic: name }) => name));
    for (const name of ['clean-volts', 'bass-boost', 'lower-corner', 'rear-to-front'] as const) {
      expect(named, name).toContain(name);
    }
    expect(own.every(({ state }) => state === 'missing')).toBe(true);
    expect(own.some(({ hasASay }) => hasASay.length > 1)).toBe(true);
    const columns = [
      ...answers.policy.inputs,
      ...[...answers.base.tables.values()].flatMap(({ data }) => data.inputs),
    ];
    const possible = new Set(columns.map(behindInput));
    for (const name of named) expect(possible).toContain(name);
  });
});

/** How many answers are possible, apart from what the rider is asked, found out the way the commands do. */
function answersTo(given: Answers, { of, path, profile }: OpenAnswer): number {
  const id = path.split('/')[1] ?? '';
  if (of === 'plan') {
    const plan = answers.base.plans.get(id);
    const judged = judgedProfile(given, profile);
    if (!plan || !judged) throw new Error(`no ${path} of ${profile}`);
    return answerPlan(answers.policy, { id, terms: termsOfPlan(plan.data) }, judged, 1).possible.length;
  }
  const within = answerTable(given, id, profile)?.within;
  const inputs = answers.base.tables.get(id)?.data.inputs ?? [];
  const measured = inputs.filter((input) => within?.dependsOn.includes(input.id) && !isAsked(input));
  return measured.length === 0 ? 1 : (within?.possible.length ?? 0);
}
