/** Whole plans on the demo’s profiles: changes that help do help, stages end at the plan, sections fit the plan. */
import { beforeAll, describe, expect, test } from 'vitest';
import { type Answers, catalogueOf, judgedProfile, readAnswers, reportPlan } from '../../../src/answers.ts';
import {
  type Catalogue,
  keeps,
  type PlanQuery,
  readQuery,
  sideBySide,
  termsOfQuery,
} from '../../../src/decide/index.ts';
import { judge } from '../../../src/decide/plan/judge.ts';

let answers: Answers;
let catalogue: Catalogue;
beforeAll(async () => {
  ({ answers } = await readAnswers('content'));
  catalogue = catalogueOf(answers);
});

const planned = (fields: Record<string, string>): PlanQuery => {
  const { query, faults } = readQuery(fields, catalogue);
  expect(faults).toEqual([]);
  return query;
};
const usual = { amplifier: 'four-channels-medium', front: 'fairing-coaxial', rear: 'lid-speaker' };

test('the answer of a plan is that of the table, for every profile of the demo', () => {
  const query = planned(usual);
  for (const id of answers.base.profiles.keys()) {
    const profile = judgedProfile(answers, id);
    const report = reportPlan(answers, id, query);
    if (!profile || !report) throw new Error(id);
    expect(report.answer.verdict).toBe(
      judge(answers.policy, termsOfQuery(query), profile, report.suits.length).verdict,
    );
    expect(report.answer.sentence).not.toBe('');
  }
});

test('every smallest change makes the plan work when it is made', () => {
  let tried = 0;
  for (const id of ['brasslight/8b0s-i5z', 'glasswick/0x2f6', 'lanternby/2z6i1b', 'dialstone/1-10']) {
    const query = planned(usual);
    const report = reportPlan(answers, id, query);
    if (!report || keeps(report.answer.verdict)) continue;
    for (const { changes, verdict } of report.changes) {
      const [only, ...more] = changes;
      if (!only || more.length > 0) continue;
      const changed =
        only.change === 'profile'
          ? reportPlan(answers, only.to, query)
          : reportPlan(answers, id, {
              ...query,
              ...(only.change === 'leave-out-rear' ? { rear: undefined } : { [only.change]: only.to }),
            });
      expect(changed?.answer.verdict, JSON.stringify(changes)).toBe(verdict);
      expect(keeps(verdict)).toBe(true);
      tried += 1;
    }
  }
  expect(tried).toBeGreaterThan(5);
});

describe('sections follow the plan', () => {
  const ids = (fields: Record<string, string>, profile = 'glasswick/0x2f6') =>
    reportPlan(answers, profile, planned(fields))?.sections.map(({ id }) => id);

  test('no amplifier: nothing to set, to feed or to fuse', () => {
    expect(ids({ front: 'fairing-small' })).toEqual(['headroom', 'bandwidth']);
  });

  test('an amplifier with an equaliser: filters for a boost that stays', () => {
    const report = reportPlan(
      answers,
      'glasswick/0x2f6',
      planned({ ...usual, amplifier: 'four-channels-equaliser' }),
    );
    const filters = report?.sections.find(({ id }) => id === 'correction')?.correction?.filters ?? [];
    expect(filters.length).toBeGreaterThan(0);
    expect(filters.length).toBeLessThanOrEqual(4);
  });

  test('a boost that changes is refused, with the reason', () => {
    const report = reportPlan(
      answers,
      'brasslight/8b0s-i5z',
      planned({ ...usual, amplifier: 'four-channels-equaliser' }),
    );
    const section = report?.sections.find(({ id }) => id === 'correction');
    expect(section?.correction).toBeUndefined();
    expect(section?.remarks.join()).toContain('changes with the volume');
  });

  test('a replacement unit: whether the old code goes with it', () => {
    expect(ids({ ...usual, replacement: 'yes' })).toContain('carry-over');
  });

  test('a fuse, a wire and the caution to leave it to those who may', () => {
    const supply = reportPlan(answers, 'glasswick/0x2f6', planned(usual))?.sections.find(
      ({ id }) => id === 'supply',
    );
    expect(supply?.lines.map(({ id }) => id)).toEqual(expect.arrayContaining(['fuse', 'wire-gauge']));
    expect(supply?.lines.flatMap(({ cautions }) => cautions)).toContain('fuse');
    expect(supply?.remarks.join()).toContain('licensed workshop');
  });
});

test('stages buy everything once, and end at the plan', () => {
  const query = planned({ ...usual, subwoofer: 'case-subwoofer' });
  const report = reportPlan(answers, 'glasswick/0x1d0', query);
  const bought = report?.staged?.stages.map(({ buy }) => buy) ?? [];
  expect([...bought].sort()).toEqual(['amplifier', 'front', 'rear', 'subwoofer']);
  const last = report?.staged?.stages.at(-1)?.verdict;
  expect([last === 'replace' ? 'reflash' : last]).toEqual([
    report?.answer.verdict === 'replace' ? 'reflash' : report?.answer.verdict,
  ]);
});

test('what the rider wants first comes first, where that costs no change of the profile', () => {
  const fields = { ...usual, subwoofer: 'case-subwoofer' };
  const order = (first: string): string[] =>
    reportPlan(answers, 'glasswick/0x1d0', planned({ ...fields, first }))?.staged?.stages.map(
      ({ buy }) => buy,
    ) ?? [];
  const best = reportPlan(answers, 'glasswick/0x1d0', planned(fields))?.staged;
  for (const first of ['front', 'rear', 'subwoofer']) {
    const wished = reportPlan(answers, 'glasswick/0x1d0', planned({ ...fields, first }))?.staged;
    const changes = (staged: typeof best): number =>
      staged?.stages.filter(({ verdict }) => !keeps(verdict)).length ?? 0;
    expect(changes(wished)).toBe(changes(best));
  }
  expect(order('amplifier')[0]).toBe('amplifier');
});

describe('what cannot be read is told at its field', () => {
  test.each([
    [{ amplifier: 'four-channels' }, 'amplifier'],
    [{ wire: 'two' }, 'wire'],
    [{ supply: '48' }, 'supply'],
    [{ first: 'speakers' }, 'first'],
    [{ amplifier: 'four-channels-medium', least: '9', most: '2' }, 'least'],
  ] as const)('%j', (fields, field) => {
    expect(readQuery(fields, catalogue).faults.map((one) => one.field)).toEqual([field]);
  });

  test('a decimal comma is understood', () => {
    expect(planned({ wire: '2,5' }).wireMetres).toBe(2.5);
  });
});

test('two profiles side by side: a profile does not differ from itself', () => {
  const own = answers.outputs.get('glasswick/0x2f6');
  const other = answers.outputs.get('glasswick/0x7e8');
  if (!own || !other) throw new Error('not in the demo');
  expect(sideBySide(own, own).filter(({ differs }) => differs)).toEqual([]);
  expect(sideBySide(own, other).find(({ name }) => name === 'bass-boost')?.differs).toBe(true);
});
