/** Every kind of mistake once: found, at its place, by the rule that has the right words for it. */
import { expect, test } from 'vitest';
import { countsLine, faultCampaign, remembering, report } from './campaign.ts';
import { Demo } from './demo.ts';
import { faultKinds } from './kinds/index.ts';

test('kinds are many, and each is named once', () => {
  expect(faultKinds.length).toBeGreaterThanOrEqual(60);
  expect(new Set(faultKinds.map(({ name }) => name)).size).toBe(faultKinds.length);
});

test('a mistake of every kind is found', { timeout: 300_000 }, async () => {
  const demo = await Demo.read();
  const judgements = await faultCampaign(demo, faultKinds.length, await remembering(demo));
  console.log(countsLine(judgements));
  expect(report(judgements.filter(({ outcome }) => outcome !== 'found'))).toBe('');
});
