/** Holds every finding of an analysis against the table at every point. */
import { expect } from 'vitest';
import {
  analyseTable,
  type Decided,
  decided,
  evaluateTable,
  fittingRules,
  gapBoxes,
  readTable,
  type Table,
  type TableAnalysis,
  type TableRule,
  type WrittenTable,
} from '../../src/tables/index.ts';
import { givenOf, inBox, type Point, pointsOf, saidOf } from './points.ts';

const multiple = ['collect', 'rule order', 'output order'];

/** How many of each kind of finding there were, so that none is held against nothing. */
export type Tally = Map<keyof TableAnalysis, number>;

/** @throws where analysis and evaluation differ. */
export function expectAgreement(written: WrittenTable, tally: Tally): void {
  const { table, faults } = readTable(written);
  expect(faults).toEqual([]);
  if (!table) return;
  const points = pointsOf(table);
  const analysis = analyseTable(table, { mostGaps: 1000, mostOverlaps: 1000 });
  expect(analysis.complete).toBe(true);
  expectSameByTheTable(table, points);
  expectGaps(table, points, analysis);
  expectOverlaps(table, points, analysis);
  expectDead(table, points, analysis);
  expectSubsumed(written, table, points, analysis);
  expectIdle(table, points, analysis);
  expectMerges(written, points, analysis);
  for (const kind of ['gaps', 'overlaps', 'dead', 'subsumed', 'idle', 'mergeable'] as const) {
    tally.set(kind, (tally.get(kind) ?? 0) + analysis[kind].length);
  }
}

/** Fails with the values of a point that is wrong. */
function expectNone(points: readonly Point[], wrong: (point: Point) => boolean): void {
  expect(points.find(wrong)?.values).toBeUndefined();
}

/** The points were put together test by test: some of them are evaluated as a whole too. */
function expectSameByTheTable(table: Table, points: readonly Point[]): void {
  for (const point of [points[0], points[Math.floor(points.length / 2)]]) {
    if (point) expect(evaluateTable(table, givenOf(table, point.values))).toEqual(point.decided);
  }
}

function expectGaps(table: Table, points: readonly Point[], { gaps, gapsAreFaults }: TableAnalysis): void {
  expect(gapsAreFaults).toBe(!multiple.includes(table.hitPolicy));
  const apart = gapBoxes(table);
  expect(apart.complete).toBe(true);
  const hasDefaults = table.outputs.every(({ otherwise }) => otherwise !== undefined);
  if (hasDefaults) expect(gaps).toEqual([]);
  expectNone(points, ({ values, fitting }) => {
    const missing = fitting.length === 0;
    if (apart.boxes.filter((box) => inBox(box, values, table)).length !== (missing ? 1 : 0)) return true;
    return !hasDefaults && gaps.some(({ box }) => inBox(box, values, table)) !== missing;
  });
  for (const { box, notKnown } of gaps) {
    expect(fittingRules(table, box.example)).toEqual([]);
    expect(
      inBox(
        box,
        table.inputs.map(({ id }) => box.example[id] ?? null),
        table,
      ),
    ).toBe(true);
    const inside = points.filter(({ values }) => inBox(box, values, table));
    const unknown = inside.filter(({ values }) => values.includes(null)).length;
    expect(notKnown).toBe(unknown === 0 ? 'no' : unknown === inside.length ? 'only' : 'too');
    expectLargest(table, points, box);
    const others = gaps.filter((other) => other.box !== box);
    expect(inside.some(({ values }) => !others.some((other) => inBox(other.box, values, table)))).toBe(true);
  }
}

/** No value can be added to any input of a gap without meeting a rule. */
function expectLargest(
  table: Table,
  points: readonly Point[],
  box: TableAnalysis['gaps'][number]['box'],
): void {
  for (const [index] of table.inputs.entries()) {
    const freed = { ...box, sets: box.sets.map((set, at) => (at === index ? everythingSet : set)) };
    const beyond = Map.groupBy(
      points.filter(({ values }) => inBox(freed, values, table) && !inBox(box, values, table)),
      ({ values }) => values[index],
    );
    for (const at of beyond.values()) expect(at.some(({ fitting }) => fitting.length > 0)).toBe(true);
  }
}

const everythingSet = { intervals: [], values: [], allBut: true, missing: true } as const;

function expectOverlaps(table: Table, points: readonly Point[], analysis: TableAnalysis): void {
  const found = new Map(analysis.overlaps.map((one) => [one.rules.join(' '), one]));
  expect(found.size).toBe(analysis.overlapCount);
  for (const [index, a] of table.rules.entries()) {
    for (const b of table.rules.slice(index + 1)) {
      const both = points.filter(({ fitting }) => fitting.includes(a) && fitting.includes(b));
      const overlap = found.get(`${a.id} ${b.id}`);
      expect(overlap !== undefined).toBe(both.length > 0);
      if (!overlap) continue;
      const holding = new Set(both);
      expectNone(points, (point) => inBox(overlap.box, point.values, table) !== holding.has(point));
      const ids = fittingRules(table, overlap.box.example).map(({ id }) => id);
      expect(ids).toEqual(expect.arrayContaining([a.id, b.id]));
      const differ = JSON.stringify(a.results) !== JSON.stringify(b.results);
      const breaks =
        table.hitPolicy === 'unique' ||
        (table.hitPolicy === 'any' && differ) ||
        (table.hitPolicy === 'priority' &&
          both.some(({ fitting }) => saidWith(table, a, fitting) !== saidWith(table, b, fitting)));
      expect([overlap.breaks, overlap.contradicts]).toEqual([breaks, breaks && differ]);
    }
  }
  expectNone(points, ({ fitting, decided: now }) => {
    if (now.broken === undefined) return false;
    const ids = fitting.map(({ id }) => id);
    return !analysis.overlaps.some(({ rules, breaks }) => breaks && rules.every((id) => ids.includes(id)));
  });
}

/** The answer at a point, were this rule the first of the table. */
function saidWith(table: Table, first: TableRule, fitting: readonly TableRule[]): string {
  return saidOf(table, decided(table, [first, ...fitting.filter((one) => one !== first)]));
}

/** What is decided at a point without some rules. */
function without(table: Table, fitting: readonly TableRule[], ids: readonly string[]): Decided {
  return decided(
    table,
    fitting.filter(({ id }) => !ids.includes(id)),
  );
}

function expectDead(table: Table, points: readonly Point[], { dead }: TableAnalysis): void {
  const found = new Map(dead.map((one) => [one.rule, one]));
  for (const rule of table.rules) {
    const holding = points.filter(({ fitting }) => fitting.includes(rule));
    const answers = holding.filter((point) => givesTheAnswer(table, rule, point));
    const finding = found.get(rule.id);
    expect(finding !== undefined).toBe(answers.length === 0);
    if (!finding) continue;
    expect(finding.why).toBe(holding.length === 0 ? 'empty' : 'covered');
    expectNone(holding, ({ fitting }) => !fitting.some(({ id }) => finding.by.includes(id)));
    for (const needed of finding.by) {
      const rest = finding.by.filter((id) => id !== needed);
      expect(holding.some(({ fitting }) => !fitting.some(({ id }) => rest.includes(id)))).toBe(true);
    }
    if (table.hitPolicy === 'unique' || table.hitPolicy === 'any') continue;
    expectNone(holding, ({ fitting, decided: now }) => {
      return saidOf(table, without(table, fitting, [rule.id])) !== saidOf(table, now);
    });
  }
}

/**
 * A point at which the rule is not dead, by what evaluation says: where answers are picked, it is the one picked if no
 * other rule has the same answer.
 */
function givesTheAnswer(
  table: Table,
  rule: TableRule,
  { decided: { broken, rules }, fitting }: Point,
): boolean {
  if (broken !== undefined) return false;
  if (table.hitPolicy === 'unique' || table.hitPolicy === 'first') return rules.join() === rule.id;
  if (!picks(table)) return true;
  const key = JSON.stringify(rule.results);
  const alike = fitting.filter((one) => one !== rule && JSON.stringify(one.results) === key);
  const alone = without(
    table,
    fitting,
    alike.map(({ id }) => id),
  );
  return JSON.stringify(Object.values(alone.answers[0] ?? {})) === key;
}

/** Whether the policy picks one of the answers by their order or value. */
function picks({ hitPolicy, aggregation }: Table): boolean {
  return hitPolicy === 'priority' || aggregation === 'min' || aggregation === 'max';
}

function expectSubsumed(
  written: WrittenTable,
  table: Table,
  points: readonly Point[],
  { subsumed }: TableAnalysis,
): void {
  if (subsumed.length === 0) return;
  const gone = subsumed.map(({ rule }) => rule);
  const rest = { ...written, rules: written.rules.filter(({ id }) => !gone.includes(id)) };
  expect(subsumed.every(({ by }) => rest.rules.some(({ id }) => id === by))).toBe(true);
  expectNone(points, ({ fitting, decided: now }) => {
    const [before, after] = [saidOf(table, now), saidOf(table, without(table, fitting, gone))];
    return before !== after && !(table.hitPolicy === 'unique' && before === 'broken');
  });
}

function expectIdle(table: Table, points: readonly Point[], { idle }: TableAnalysis): void {
  const found = new Set(idle.map(({ input }) => input));
  const exact = picks(table) || !multiple.includes(table.hitPolicy);
  for (const [index, { id }] of table.inputs.entries()) {
    const groups = Map.groupBy(points, ({ values }) => JSON.stringify(values.toSpliced(index, 1)));
    const isIdle = [...groups.values()].every(
      (group) => new Set(group.map((point) => saidOf(table, point.decided))).size === 1,
    );
    if (exact) expect([id, found.has(id)]).toEqual([id, isIdle]);
    else if (found.has(id)) expect([id, isIdle]).toEqual([id, true]);
  }
}

function expectMerges(written: WrittenTable, points: readonly Point[], { mergeable }: TableAnalysis): void {
  for (const { rules, at, input, test } of mergeable) {
    const column = written.inputs.findIndex(({ id }) => id === input);
    const merged = readTable({
      ...written,
      rules: written.rules
        .filter(({ id }) => id === at || !rules.includes(id))
        .map((rule) => (rule.id === at ? { ...rule, tests: rule.tests.toSpliced(column, 1, test) } : rule)),
    });
    expect(merged.faults).toEqual([]);
    if (!merged.table) continue;
    const after = pointsOf(merged.table);
    const now = merged.table;
    const mergedAt = new Map(points.map((point, index) => [point, after[index]]));
    expectNone(points, (point) => {
      const other = mergedAt.get(point);
      return !other || saidOf(now, other.decided) !== saidOf(now, point.decided);
    });
  }
}
