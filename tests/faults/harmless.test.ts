/** Every kind of harmless edit once: nothing is said of it. */
import { expect, test } from 'vitest';
import { harmlessCampaign, remembering, report } from './campaign.ts';
import { Demo } from './demo.ts';
import { harmlessKinds } from './harmless.ts';

test('kinds are many, and each is named once', () => {
  expect(harmlessKinds.length).toBeGreaterThanOrEqual(25);
  expect(new Set(harmlessKinds.map(({ name }) => name)).size).toBe(harmlessKinds.length);
});

test('no harmless edit raises an alarm', { timeout: 300_000 }, async () => {
  const demo = await Demo.read();
  const alarms = await harmlessCampaign(demo, harmlessKinds.length, await remembering(demo));
  console.log(`${harmlessKinds.length} harmless edits, ${alarms.length} false alarms`);
  expect(report(alarms)).toBe('');
});
