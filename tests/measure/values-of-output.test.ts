/** Outputs of which the values are held say the same as whole ones, and ask for these only where more is wanted. */
import { expect, test } from 'vitest';
import { answersOf } from '../../src/answers.ts';
import {
  type Characteristic,
  type ProfileOutput,
  type Quantity,
  valuesOfOutput,
} from '../../src/measure/index.ts';
import { demoAnswers } from '../views/sample.ts';

const { base, outputs, planAnswers, outputGroups } = await demoAnswers();

const stated = ({
  value,
  unit,
  bound,
  standardUncertainty,
  coverageFactor,
  expandedUncertainty,
}: Quantity) => ({
  ...{ value, unit, bound, standardUncertainty, coverageFactor, expandedUncertainty },
});
const valuesOf = (all: readonly Characteristic[]) =>
  all.map((one) => ({ name: one.name, conditions: one.conditions, sources: one.sources, ...stated(one) }));
const restOf = ({ levelByStep, stepLaw, responses, normalised, agreement }: ProfileOutput) => ({
  ...{ levels: levelByStep.map(({ volts, ...level }) => ({ ...level, volts: stated(volts) })) },
  steps: stepLaw.map(({ stepSize, ...part }) => ({ ...part, stepSize: stated(stepSize) })),
  responses: responses.map(({ step, points }) => ({
    step,
    points: points.map(({ level, ...point }) => ({ ...point, level: stated(level) })),
  })),
  normalised,
  agreement,
});

test('values, what is missing and what is silent are held; the rest is that of the whole', () => {
  let values = 0;
  for (const whole of outputs.values()) {
    let asked = 0;
    const held = valuesOfOutput(whole, () => {
      asked += 1;
      return whole;
    });
    expect(valuesOf(held.characteristics)).toEqual(valuesOf(whole.characteristics));
    expect(valuesOf(held.others)).toEqual(valuesOf(whole.others));
    const { profile, boostBehaviour, mutedChannels, conditions, sessions } = whole;
    expect(held).toMatchObject({ profile, boostBehaviour, mutedChannels, conditions, sessions });
    expect(held.missing.map(({ name, reason }) => [name, reason])).toEqual(
      whole.missing.map(({ name, reason }) => [name, reason]),
    );
    expect(asked).toBe(0);
    expect(restOf(held)).toEqual(restOf(whole));
    for (const list of ['characteristics', 'others'] as const) {
      for (const [at, one] of held[list].entries()) {
        expect(one.budget).toEqual(whole[list][at]?.budget);
        expect(one.readings).toEqual(whole[list][at]?.readings);
      }
    }
    expect(asked).toBeGreaterThan(4);
    values += held.characteristics.length + held.others.length;
  }
  expect(values).toBeGreaterThan(500);
});

test('plans and groups come to the same with two whole outputs at hand as with all', () => {
  const few = answersOf(base, 2);
  expect([...few.outputs.values()].some((output) => output === outputs.get(output.profile))).toBe(false);
  expect([...few.planAnswers]).toEqual([...planAnswers]);
  expect([...few.outputGroups]).toEqual([...outputGroups]);
});
