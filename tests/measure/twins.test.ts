import fc from 'fast-check';
import { expect, test } from 'vitest';
import { comparableOutput, compareOutputs, groupOutputs, leastCompared } from '../../src/measure/index.ts';
import { type Row, run } from './bench.ts';

const unit = { ratedLoadOhms: 4, highestStep: 40 };
/** An output of 30 even steps, so loud at the top and with so much boost at 63 Hz. */
function output(name: string, topVolts: number, boostDb: number) {
  const rows: Row[] = [];
  for (let step = 1; step <= 30; step += 1)
    rows.push(['FL', step, 1000, topVolts * 10 ** ((step - 30) / 20), 0.1]);
  for (const hz of [31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250]) {
    const boost = boostDb / (1 + (Math.log2(hz / 63) * 2) ** 2);
    rows.push(['FL', 20, hz, topVolts * 10 ** ((20 - 30 + boost) / 20)]);
  }
  return comparableOutput(name, [run(rows, { bench: name }, name)], unit);
}

test('equal outputs are one group; a louder one and one with boost stand alone', () => {
  const outputs = [output('a', 4, 0), output('b', 4.002, 0), output('c', 6, 0), output('d', 4, 3)];
  const { groups, nearest } = groupOutputs(outputs);
  expect(groups.map(({ profiles }) => profiles)).toEqual([['a', 'b']]);
  expect(groups[0]?.apart).toBeLessThan(1);
  expect(nearest?.apart).toBeGreaterThan(1);
});

test('every pair of a group agrees: a chain of small differences is not one group', () => {
  const chain = [4, 4.03, 4.06, 4.09, 4.12, 4.15].map((volts, index) => output(`p${index}`, volts, 0));
  const { groups } = groupOutputs(chain);
  for (const { profiles } of groups) {
    for (const a of profiles) {
      for (const b of profiles) {
        const [first, second] = [a, b].map((name) => chain.find((one) => one.profile === name));
        if (first && second && a !== b) expect(compareOutputs(first, second).apart).toBeLessThanOrEqual(1);
      }
    }
  }
  expect(groups.flatMap(({ profiles }) => profiles).length).toBeGreaterThan(2);
  expect(groups.length).toBeGreaterThan(1);
});

test('skipping pairs that are surely far apart changes nothing: nearest and groups as by comparing all', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 3 })), {
        minLength: 2,
        maxLength: 8,
      }),
      (kinds) => {
        const outputs = kinds.map(([gain, boost], index) => output(`p${index}`, 3 * 1.01 ** gain, boost / 4));
        const { groups, nearest } = groupOutputs(outputs);
        const groupOf = (name: string) => groups.find(({ profiles }) => profiles.includes(name)) ?? name;
        const others = outputs.flatMap((a, index) =>
          outputs
            .slice(index + 1)
            .filter((b) => groupOf(a.profile) !== groupOf(b.profile))
            .map((b) => compareOutputs(a, b))
            .filter(({ compared, apart }) => compared >= leastCompared && Number.isFinite(apart)),
        );
        const least = Math.min(...others.map(({ apart }) => apart));
        expect(nearest?.apart ?? Number.POSITIVE_INFINITY).toBeCloseTo(least, 9);
      },
    ),
    { numRuns: 40, seed: 7 },
  );
});

test('the gain of a voltmeter cancels within a session, not from one session of a bench to another', () => {
  const rows = (volts: number): Row[] =>
    Array.from({ length: leastCompared + 5 }, (_, step) => ['FL', step + 1, 1000, volts * 1.12 ** step]);
  const output = (profile: string, session: string, volts: number) =>
    comparableOutput(profile, [run(rows(volts), {}, session)], unit);
  // 0.6 % apart: the accuracy allows 0.5 % either side from session to session, counts alone in one.
  const [one, other] = [output('a', '2026-01', 0.5), output('b', '2026-01', 0.503)];
  expect(compareOutputs(one, other).apart).toBeGreaterThan(1);
  expect(compareOutputs(one, output('b', '2026-06', 0.503)).apart).toBeLessThan(1);
});
