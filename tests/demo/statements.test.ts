import { expect, it } from 'vitest';
import {
  bassBoostDb,
  cleanVolts,
  highestCleanStep,
  highestStepCleanThroughout,
  isMuted,
  lowerCornerHz,
  rearToFrontDb,
  upperCornerHz,
} from '../../src/demo/truth.ts';
import { entriesOf } from './entries.ts';

const statements = entriesOf('statements');

it.each(statements)('the claims of $id are true within their tolerance', ({ data }) => {
  for (const claim of data.claims) {
    const { profile } = claim;
    const throughout = highestStepCleanThroughout(profile);
    const off = (truth: number | null, value: number) => Math.abs((truth ?? Number.NaN) - value);
    if (claim.trait === 'muted') expect(claim.value).toBe(isMuted(profile, claim.channel));
    else if (claim.trait === 'bass-boost') {
      expect(off(bassBoostDb(profile, throughout), claim.valueDb)).toBeLessThanOrEqual(
        claim.toleranceDb ?? 0.5,
      );
    } else if (claim.trait === 'clean-volts') {
      expect(off(cleanVolts(profile), claim.valueVolts)).toBeLessThanOrEqual(claim.toleranceVolts ?? 0.05);
    } else if (claim.trait === 'highest-clean-step') {
      expect(off(highestCleanStep(profile), claim.valueStep)).toBeLessThanOrEqual(claim.toleranceSteps ?? 0);
    } else if (claim.trait === 'rear-to-front') {
      expect(off(rearToFrontDb(profile), claim.valueDb)).toBeLessThanOrEqual(claim.toleranceDb ?? 0.5);
    } else {
      const corner = claim.trait === 'lower-corner' ? lowerCornerHz : upperCornerHz;
      expect(off(corner(profile, throughout), claim.valueHz)).toBeLessThanOrEqual(claim.toleranceHz ?? 0.5);
    }
  }
});

it('speaks of six traits and more', () => {
  const traits = new Set(statements.flatMap(({ data }) => data.claims.map(({ trait }) => trait)));
  expect(traits.size).toBeGreaterThanOrEqual(6);
});
