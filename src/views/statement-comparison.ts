/** What others say of a profile, held against its readings. */
import type { Claim } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { restsOnOneSource } from '../check/support.ts';
import { type ClaimComparison, compareClaim, type ValueClaim } from '../decide/index.ts';
import { formatHz, formatQuantity } from '../measure/format.ts';
import type { ProfileOutput, Unit } from '../measure/quantity.ts';
import { phrase } from '../words/index.ts';
import { type SourceLink, sourceLinks } from './reading-links.ts';
import { benchSetting, channelLabel, characteristicLabel, plainNumber, readAt } from './wording.ts';

export interface ClaimView {
  readonly label: string;
  readonly stated: string;
  /** The measured value it was held against; undefined where there is none. */
  readonly measured: string | undefined;
  /** Conditions of the measured value, where they are not those of the headline value. */
  readonly measuredAt: string | undefined;
  readonly comparison: ClaimComparison['comparison'];
  /** Whether nothing stands behind the claim but this one source: not measured, and said by no other. */
  readonly oneSourceOnly: boolean;
}

type Compared = Omit<ClaimView, 'oneSourceOnly'>;

export interface StatementView {
  readonly quote: string;
  readonly source: SourceLink | undefined;
  readonly claims: readonly ClaimView[];
}

/** Every statement about a profile, in the order of their files. */
export function statementViews(answers: Answers, profile: string): StatementView[] {
  const output = answers.outputs.get(profile);
  return (answers.base.statementsOfProfile.get(profile) ?? []).map(({ data }) => ({
    quote: data.quote,
    source: sourceLinks(answers, [data.source])[0],
    claims: data.claims
      .filter((claim) => claim.profile === profile)
      .map((claim) => ({
        ...(claim.trait === 'muted' ? compareMuted(answers, claim, output) : compareValue(claim, output)),
        oneSourceOnly: restsOnOneSource(answers, claim, data.source),
      })),
  }));
}

function compareValue(claim: ValueClaim, output: ProfileOutput | undefined): Compared {
  const { stated, unit, tolerance, computed, isHeadline, comparison } = compareClaim(claim, output);
  return {
    label: characteristicLabel(claim.trait),
    stated: statedText(stated, unit, tolerance),
    measured: computed && formatQuantity(computed),
    measuredAt:
      !computed || isHeadline
        ? undefined
        : `${readAt(computed.conditions)}; ${benchSetting(computed.conditions)}`,
    comparison,
  };
}

function statedText(value: number, unit: Unit, tolerance: number | undefined): string {
  if (unit === 'Hz')
    return `${formatHz(value)}${tolerance === undefined ? '' : ` ±\u00a0${formatHz(tolerance)}`}`;
  const range =
    tolerance === undefined
      ? ''
      : ` ±\u00a0${plainNumber(tolerance)}${unit === 'step' ? '' : `\u00a0${unit}`}`;
  return unit === 'step'
    ? `${phrase('step\u00a0{step}', { step: plainNumber(value) })}${range}`
    : `${plainNumber(value)}\u00a0${unit}${range}`;
}

function compareMuted(
  answers: Answers,
  claim: Extract<Claim, { trait: 'muted' }>,
  output: ProfileOutput | undefined,
): Compared {
  const silent = isSilent(answers, output, claim.channel);
  const words = (muted: boolean): string => (muted ? phrase('silent') : phrase('plays'));
  return {
    label: phrase('Output {channel}', { channel: channelLabel(claim.channel) }),
    stated: words(claim.value),
    measured: silent === undefined ? undefined : words(silent),
    measuredAt: undefined,
    comparison: silent === undefined ? 'not-measured' : silent === claim.value ? 'agrees' : 'differs',
  };
}

/** Whether an output was found silent; undefined where no session read it. */
function isSilent(answers: Answers, output: ProfileOutput | undefined, channel: string): boolean | undefined {
  if (!output) return undefined;
  if (output.mutedChannels.includes(channel)) return true;
  const wasRead = output.sessions.some((session) =>
    answers.base.readings
      .get(session)
      ?.readingsOf(output.profile)
      .some((reading) => reading.channel === channel),
  );
  return wasRead ? false : undefined;
}
