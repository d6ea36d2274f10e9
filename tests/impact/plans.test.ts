/** Which verdicts a change flips: the same that the planner gives in both states, plan by plan and class by class. */
import { expect, test } from 'vitest';
import { type Answers, catalogueOf, judgedProfile } from '../../src/answers.ts';
import { answerPlan, suitableProfiles, termsOfQuery, usualQuery } from '../../src/decide/index.ts';
import type { ProfileImpact } from '../../src/impact/index.ts';
import { demoAnswers, exampleAnswers, impactFrom, withVolts } from './edited.ts';

const before = await demoAnswers();

/** The verdict on a combination, worked out as the planner does: one plan, one profile, no comparison. */
function planned(
  answers: Answers,
  id: string,
  plan: Exclude<ProfileImpact['verdicts'][number]['plan'], string>,
) {
  const catalogue = catalogueOf(answers);
  const speaker = (name: string | undefined) => catalogue.speakers.find((one) => one.id === name);
  const amplifier = catalogue.amplifiers.find((one) => one.id === plan.amplifier);
  const query = { ...usualQuery, amplifier, front: speaker(plan.front), rear: speaker(plan.rear) };
  const [profile, family] = [judgedProfile(answers, id), id.split('/')[0] ?? ''];
  const others = (answers.base.profilesOfFamily.get(family) ?? []).flatMap((one) => {
    const other = one.id === id ? undefined : judgedProfile(answers, one.id);
    return other ? [{ id: one.id, profile: other }] : [];
  });
  const { length } = suitableProfiles(answers.policy, query, { catalogue, others });
  const terms = termsOfQuery(query);
  return profile && answerPlan(answers.policy, { id: 'yours', terms }, profile, length).verdict;
}

function expectSamePlans(now: Answers): ProfileImpact[] {
  const { profiles } = impactFrom(before, now);
  // Every verdict takes its time: those of one unit.
  for (const { id } of now.base.profilesOfFamily.get('brasslight') ?? []) {
    const was = new Map(before.planAnswers.get(id)?.map(({ plan, verdict }) => [plan, verdict]));
    const expected = (now.planAnswers.get(id) ?? [])
      .filter(({ plan, verdict }) => was.get(plan) !== verdict)
      .map(({ plan, verdict }) => `${plan}: ${was.get(plan)} → ${verdict}`);
    const told = (profiles.find(({ profile }) => profile === id)?.verdicts ?? []).flatMap((one) =>
      typeof one.plan === 'string' ? [`${one.plan}: ${one.before} → ${one.now}`] : [],
    );
    expect(told.sort(), id).toEqual(expected.sort());
  }
  return [...profiles];
}

test('a plan and a class of amplifier that ask for more flip what has to do with them, for that reason', async () => {
  const now = await demoAnswers({
    'plans/two-channel-front.yaml': (text) => text.replace('leastVolts: 1,', 'leastVolts: 3,'),
    'equipment/two-channels-small.yaml': (text) => text.replace('leastVolts: 1', 'leastVolts: 4'),
  });
  const verdicts = expectSamePlans(now).flatMap((one) => one.verdicts);
  const [plans, combinations] = [true, false].map((typical) =>
    verdicts.filter(({ plan }) => (typeof plan === 'string') === typical),
  );
  expect(plans?.length).toBeGreaterThan(5);
  expect(combinations?.length).toBeGreaterThan(5);
  for (const { plan, causes } of plans ?? []) {
    expect([plan, causes]).toEqual(['two-channel-front', [{ kind: 'plans', id: 'two-channel-front' }]]);
  }
  for (const { plan, causes } of combinations ?? []) {
    expect(plan).toMatchObject({ amplifier: 'two-channels-small' });
    expect(causes).toEqual([{ kind: 'equipment', id: 'two-channels-small' }]);
  }
});

test('readings: the profile flips by its sheet, and those of its unit by it where it was the last that suited', async () => {
  const isMeant = ([id]: readonly string[]) => id === 'brasslight/8b0s-15z';
  const lower = withVolts(isMeant, (volts) => volts / 6);
  const sheets = [...(before.base.sessionsOfProfile.get('brasslight/8b0s-15z') ?? [])].map(
    ({ id }) => `outputs/${id}/readings.csv`,
  );
  const now = await demoAnswers(Object.fromEntries(sheets.map((sheet) => [sheet, lower])));
  const profiles = expectSamePlans(now);
  expect(profiles.map(({ profile }) => profile)).toContain('brasslight/8b0s-15z');
  expect(profiles.every(({ profile }) => profile.startsWith('brasslight/'))).toBe(true);
  for (const { causes } of profiles.flatMap((one) => one.verdicts)) {
    expect(causes.map(({ kind, id }) => `${kind}/${id}/readings.csv`)).toEqual(sheets);
  }
  // A dozen of the combinations that flipped, from all over them, against the planner.
  const flipped = profiles.flatMap(({ profile, verdicts }) => verdicts.map((one) => ({ profile, ...one })));
  const some = flipped.filter((_, at) => at % Math.ceil(flipped.length / 12) === 0);
  expect(some.filter(({ plan }) => typeof plan !== 'string').length).toBeGreaterThan(5);
  for (const { profile, plan, before: was, now: is } of some) {
    if (typeof plan === 'string') continue;
    expect([planned(before, profile, plan), planned(now, profile, plan)]).toEqual([was, is]);
  }
});

test('the table that decides plans, its entry taken out: the usual one decides', async () => {
  const example = await exampleAnswers();
  const other = await exampleAnswers([
    { file: 'tables/plan-verdict.yaml', good: 'level-short: "> 0"', bad: 'level-short: "> -100"' },
  ]);
  const [one] = impactFrom(example, other).profiles.filter(({ verdicts }) => verdicts.length > 0);
  expect(one?.verdicts[0]).toMatchObject({
    plan: 'two-channel',
    before: 'keep',
    causes: [{ kind: 'tables', id: 'plan-verdict' }],
  });
});

test('the grid is stated and bounded', async () => {
  const { grid } = impactFrom(before, before);
  // 6 plans; 6 amplifiers and none, 5 kinds of full-range speakers, a rear or none.
  expect(grid).toMatchObject({ typical: 6, combinations: 7 * 5 * 2, leftOut: 0 });
});
