/** How many sources stand behind a claim. */
import type { Claim } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { claimsAgree, compareClaim } from '../decide/index.ts';
import { rootsOf } from './source-roots.ts';

/**
 * Whether a claim of a statement has nothing behind it but its own source: no bench session measured it, and
 * no other statement that agrees with it comes from an independent source. Two sources that were taken from
 * the same third one are not independent of each other.
 */
export function restsOnOneSource(answers: Answers, claim: Claim, source: string): boolean {
  if (isMeasured(answers, claim)) return false;
  const own = rootsOf(answers.base, source);
  const statements = answers.base.statementsOfProfile.get(claim.profile) ?? [];
  return !statements.some(
    ({ data }) =>
      data.source !== source &&
      data.claims.some((other) => claimsAgree(claim, other)) &&
      [...rootsOf(answers.base, data.source)].every((root) => !own.has(root)),
  );
}

/** Whether a bench session took readings that the claim can be held against. */
function isMeasured(answers: Answers, claim: Claim): boolean {
  const output = answers.outputs.get(claim.profile);
  if (!output) return false;
  if (claim.trait !== 'muted') return compareClaim(claim, output).comparison !== 'not-measured';
  return output.sessions.some((session) =>
    answers.base.readings
      .get(session)
      ?.readingsOf(claim.profile)
      .some((reading) => reading.channel === claim.channel),
  );
}
