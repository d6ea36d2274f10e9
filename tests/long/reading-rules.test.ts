/** The rules about readings over many simulated bases: false alarms on good ones, detection on bad ones. */
import { expect, test } from 'vitest';
import { tallyMistakes } from '../check/sheet-mistakes.ts';
import { tallyBad, tallyGood } from '../check/unit-slips.ts';

test('300 good bases: no alarm but for sessions that chance sets apart, at most as often as promised', async () => {
  const { wrong } = await tallyGood(20260601, 300);
  console.log(`300 good bases: ${wrong.length} with a finding\n${wrong.join('\n')}`);
  // Sessions are compared at a level of 5 %; every other rule has to be silent.
  expect(wrong.filter((one) => !one.includes(': sessions-disagree'))).toEqual([]);
  expect(wrong.length).toBeLessThan(300 * 0.05);
});

test('300 bases with a slip of unit: named at its first row, with its cause', async () => {
  const { wrong, byKind } = await tallyBad(20260601, 300);
  const lines = [...byKind].map(([kind, { put, named }]) => `${kind}: ${named} of ${put}`).sort();
  console.log([`300 slips: ${300 - wrong.length} named`, ...lines, ...wrong].join('\n'));
  // Found at all: a row between 0.1 and 0.15 V, written divided by √2 on a coarse meter that nothing else is held
  // against, may hide in its counts; in this and two other campaigns of 300 none did (95 %: fewer than 1 in 300).
  // Told as what they are, but for a few at the last digits or where decibels are 2√2 times the volts.
  expect(wrong.filter((one) => one.endsWith(': nothing'))).toEqual([]);
  expect(wrong.length).toBeLessThanOrEqual(300 * 0.02);
});

test('270 bases with rows or series in the wrong place: named at their place', async () => {
  const { wrong, byKind } = await tallyMistakes(20260601, 270);
  const lines = [...byKind].map(
    ([kind, { put, found, named }]) => `${kind}: ${named} of ${put} named, ${found} found`,
  );
  console.log([...lines.sort(), ...wrong].join('\n'));
  for (const { put, found } of byKind.values()) expect(found).toBe(put);
  expect(wrong.length).toBeLessThanOrEqual(270 * 0.03);
});
