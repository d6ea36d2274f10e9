/** What the page works out from the planner’s data is what the program works out from all readings. */
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { catalogueOf, readAnswers, reportPlan } from '../../src/answers.ts';
import { judgePlan, planReport, readQuery } from '../../src/decide/index.ts';
import { plannerData, plannerProfile, plannerUnit } from '../../src/views/planner-data.ts';
import { arithmeticProfile, policyFrom, verdictProfile } from '../../src/views/planner-format.ts';

const { answers } = await readAnswers(new URL('../../content', import.meta.url).pathname);
// As it comes out of the files: nothing that JSON does not carry may be missed.
const sent = <Kind>(data: Kind): Kind => JSON.parse(JSON.stringify(data)) as Kind;
const site = sent(plannerData(answers));
const units = new Map([...answers.base.families.keys()].map((id) => [id, sent(plannerUnit(answers, id))]));
const profiles = new Map(
  [...answers.base.profiles.keys()].flatMap((id) => {
    const data = plannerProfile(answers, id);
    return data ? [[id, sent(data)] as const] : [];
  }),
);

const plans: readonly Record<string, string>[] = [
  {},
  { amplifier: 'factory-amplifier', fitted: 'factory-amplifier', front: 'fairing-coaxial' },
  {
    amplifier: 'four-channels-medium',
    front: 'fairing-coaxial',
    rear: 'lid-speaker',
    generator: '30',
    machine: '18',
    battery: '20',
  },
  {
    amplifier: 'four-channels-equaliser',
    front: 'horn-and-midwoofer',
    rear: 'lid-speaker',
    subwoofer: 'case-subwoofer',
    overlap: '10',
    wire: '3,5',
  },
  {
    amplifier: 'four-channels-sensitive',
    front: 'fairing-small',
    replacement: 'yes',
    least: '0.4',
    most: '2',
  },
  { amplifier: 'two-channels-small', front: 'fairing-coaxial', ear: '1', supply: '12.4' },
];

/** Fields that only the program has, or that are made when asked for. */
const leftOut = new Set(['readings', 'budget']);
/** What a value was made from. */
const madeFrom = new Set([
  'points',
  'sensitivities',
  'others',
  'standardUncertainty',
  'coverageFactor',
  'expandedUncertainty',
]);

/** Where two reports differ by more than a millionth, as paths; ids of readings aside. */
function differences(one: unknown, other: unknown, path = ''): string[] {
  if (typeof one === 'number' && typeof other === 'number') {
    return Object.is(one, other) || Math.abs(one - other) <= 1e-9 + 1e-6 * Math.abs(other)
      ? []
      : [`${path}: ${one}, ${other}`];
  }
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) {
    return one === other ? [] : [`${path}: ${String(one)}, ${String(other)}`];
  }
  const [ours, theirs] = [fieldsOf(one), fieldsOf(other)];
  const keys = new Set([...Object.keys(ours), ...Object.keys(theirs)]);
  return [...keys].flatMap((key) => differences(ours[key], theirs[key], `${path}/${key}`));
}

function fieldsOf(value: object): Record<string, unknown> {
  const isValue = 'expandedUncertainty' in value && 'standardUncertainty' in value;
  const fields = Object.entries(value).filter(
    ([key, one]) => one !== undefined && !leftOut.has(key) && !(isValue && madeFrom.has(key)),
  );
  const uncertainties = isValue ? [value.standardUncertainty, value.expandedUncertainty] : undefined;
  return { ...Object.fromEntries(fields), ...(uncertainties && { uncertainties }) };
}

test.each(plans.map((fields, at) => [JSON.stringify(fields), fields, at] as const))(
  'every second or fourth profile, in turn with the plans, with the plan %s',
  (_, fields, at) => {
    const policy = policyFrom(site);
    const { query, faults } = readQuery(fields, site.catalogue);
    expect(faults).toEqual([]);
    expect(query).toEqual(readQuery(fields, catalogueOf(answers)).query);
    // The equaliser’s settings, found twice for each profile, take by far the longest.
    const every = query.amplifier?.equaliser ? 4 : 2;
    let compared = 0;
    for (const { id: family, channels } of site.units) {
      const ids = Object.keys(units.get(family)?.profiles ?? {});
      for (const id of ids.filter((_one, place) => (place + at) % every === 0)) {
        const own = profiles.get(id);
        if (!own) throw new Error(`no data of ${id}`);
        const others = Object.entries(units.get(family)?.profiles ?? {}).flatMap(([other, data]) =>
          other === id ? [] : [{ id: other, profile: verdictProfile(data, channels, other) }],
        );
        const choices = { catalogue: site.catalogue, others };
        const named = { id, profile: arithmeticProfile(own, channels, id) };
        const full = reportPlan(answers, id, query);
        expect(differences(planReport(policy, query, named, choices), full), id).toEqual([]);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(answers.base.profiles.size / (every + 1.5));
  },
  120_000,
);

test('a verdict needs no more of a profile than the data of its unit', () => {
  const policy = policyFrom(site);
  for (const fields of plans) {
    const { query } = readQuery(fields, site.catalogue);
    for (const { id: family, channels } of site.units) {
      for (const [id, data] of Object.entries(units.get(family)?.profiles ?? {})) {
        const named = { id, profile: verdictProfile(data, channels, id) };
        const { answer } = judgePlan(policy, query, named, { catalogue: site.catalogue, others: [] });
        const own = profiles.get(id);
        if (!own) throw new Error(`no data of ${id}`);
        const whole = { id, profile: arithmeticProfile(own, channels, id) };
        const wanted = judgePlan(policy, query, whole, { catalogue: site.catalogue, others: [] }).answer;
        expect(differences(answer, wanted), id).toEqual([]);
      }
    }
  }
});

test('no reading is named in the data, and they are small enough for one bar of signal', () => {
  const sessions = [...answers.base.sessionsOfProfile.values()].flat();
  expect(sessions.length).toBeGreaterThan(30);
  for (const data of [site, ...units.values(), ...profiles.values()]) {
    const text = JSON.stringify(data);
    for (const { id } of sessions) expect(text).not.toContain(`${id}:`);
    expect(gzipSync(text).length).toBeLessThan(30_000);
  }
});
