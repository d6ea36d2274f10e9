/** Verdicts come from the policy table, uncertainty carried through. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerPlan, type PlanTerms, policyOf } from '../../../src/decide/index.ts';
import { compilePolicy } from '../../../src/decide/plan/compile-policy.ts';
import { judge, keeps } from '../../../src/decide/plan/judge.ts';
import { usualPolicy } from '../../../src/decide/plan/policy.ts';
import { evaluateTable, type Given } from '../../../src/tables/index.ts';
import { judged } from './judged.ts';

const policy = policyOf([]);
const terms: PlanTerms = {
  feeds: 'aftermarket-amplifier',
  input: { leastVolts: 2, mostVolts: 6 },
  rearWanted: true,
  mostBassBoostDb: 3,
  highestLowCornerHz: 60,
  canCorrect: false,
  replacementUnit: false,
};

/** Profiles and plans at random, in steps coarse enough that limits are often met exactly. */
const profiles = fc.record({
  volts: fc.integer({ min: 2, max: 20 }).map((n) => n / 2),
  boostDb: fc.integer({ min: -2, max: 9 }),
  cornerHz: fc.constantFrom(20, 40, 60, 90, 125),
  rearDb: fc.constantFrom(undefined, -40, -20, -12, -6, -3, 0),
  behaviour: fc.constantFrom('none', 'fixed', 'fading', 'switched' as const),
  system: fc.constantFrom('amplified', 'unamplified' as const),
});
const plans = fc.record({
  feeds: fc.constantFrom('factory-amplifier', 'aftermarket-amplifier', 'speakers' as const),
  rearWanted: fc.boolean(),
  canCorrect: fc.boolean(),
  mostBassBoostDb: fc.constantFrom(2, 3, 6),
});

test('with exact values the verdict is the answer of the table at those values, by the FEEL library', () => {
  fc.assert(
    fc.property(profiles, plans, (values, changes) => {
      const asked = { ...terms, ...changes };
      const profile = judged(values, 0);
      const { verdict } = judge(policy, asked, profile, undefined);
      const rear = values.rearDb === undefined || values.rearDb === -40 ? 'silent' : 'playing';
      const given: Given = {
        feeds: asked.feeds,
        system: values.system,
        'level-short': 20 * Math.log10(2 / values.volts),
        'level-over': 20 * Math.log10(values.volts / 6),
        'low-end-short': Math.log2(values.cornerHz / 60),
        'boost-over': values.boostDb - asked.mostBassBoostDb,
        'boost-goes': values.behaviour,
        'can-correct': asked.canCorrect,
        'rear-wanted': asked.rearWanted,
        rear,
        'rear-below-front': rear === 'silent' ? 40 : -(values.rearDb ?? 0),
      };
      expect(evaluateTable(policy.table, given).answers).toEqual([{ verdict }]);
    }),
    { seed: 11, numRuns: 150 },
  );
});

test('a greater uncertainty never makes an open verdict certain, nor takes a possible one away', () => {
  fc.assert(
    fc.property(profiles, plans, fc.integer({ min: 1, max: 10 }), (values, changes, tenths) => {
      const asked = { ...terms, ...changes };
      const sharp = judge(policy, asked, judged(values, tenths / 100), undefined);
      const blunt = judge(policy, asked, judged(values, tenths / 20), undefined);
      for (const one of sharp.possible) expect(blunt.possible).toContain(one);
      if (sharp.possible.length > 1) expect(blunt.possible.length).toBeGreaterThan(1);
    }),
    { seed: 12, numRuns: 300 },
  );
});

describe('the shop’s own table', () => {
  const usual = usualPolicy();
  const strict = compilePolicy({
    ...usual,
    rules: [
      {
        ...(usual.rules[0] as (typeof usual.rules)[number]),
        id: 'any-boost',
        when: { 'boost-over': '> -3' },
        give: { verdict: 'reflash' },
        say: 'We take no boost at all.',
      },
      ...usual.rules,
    ],
  });

  test('changes the verdict, the outcome of the topic and what is said of it', () => {
    const values = {
      volts: 4,
      boostDb: 1,
      cornerHz: 40,
      rearDb: 0,
      behaviour: 'fixed',
      system: 'amplified',
    } as const;
    const plan = { id: 'p', terms };
    expect(answerPlan(policy, plan, judged(values, 0.01)).verdict).toBe('keep');
    if (!strict) throw new Error('the table cannot be read');
    const answer = answerPlan(strict, plan, judged(values, 0.01));
    expect(answer.verdict).toBe('reflash');
    expect(answer.reasons.find(({ topic }) => topic === 'bass')).toMatchObject({ outcome: 'fails' });
    expect(answer.sentence).toContain('We take no boost at all.');
    expect(answer.reasons.filter(({ outcome }) => outcome === 'fails')).toHaveLength(1);
  });
});

test('no other profile of the unit suits: a reflash cannot help', () => {
  const values = {
    volts: 1,
    boostDb: 1,
    cornerHz: 40,
    rearDb: 0,
    behaviour: 'fixed',
    system: 'amplified',
  } as const;
  expect(judge(policy, terms, judged(values, 0.01), 2).verdict).toBe('reflash');
  expect(judge(policy, terms, judged(values, 0.01), 0).verdict).toBe('replace');
  expect(keeps('replace')).toBe(false);
});
