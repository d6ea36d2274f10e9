/**
 * The campaign: 500 mistakes, spread evenly over their kinds, all found at the right file and line with the right
 * rule first; 500 harmless edits, of which nothing is said. Each is checked anew and with the memory of a run
 * before the edit, and both must say the same.
 */
import { expect, test } from 'vitest';
import {
  anew,
  type Checking,
  countsLine,
  faultCampaign,
  harmlessCampaign,
  remembering,
  report,
} from '../faults/campaign.ts';
import { Demo } from '../faults/demo.ts';

const demo = await Demo.read();

/** Checks twice, and fails where the two do not agree. */
async function bothWays(): Promise<Checking> {
  const [first, second] = [anew(demo), await remembering(demo)];
  return async (edits) => {
    const findings = await first(edits);
    expect(await second(edits)).toEqual(findings);
    return findings;
  };
}

test('500 faults', async () => {
  const judgements = await faultCampaign(demo, 500, await bothWays());
  console.log(countsLine(judgements));
  expect(report(judgements.filter(({ outcome }) => outcome !== 'found'))).toBe('');
});

test('500 harmless edits', async () => {
  const alarms = await harmlessCampaign(demo, 500, await bothWays());
  console.log(`500 harmless edits, ${alarms.length} false alarms`);
  expect(report(alarms)).toBe('');
});
