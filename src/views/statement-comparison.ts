/** What others say of a profile, held against its readings. */
import type { Claim } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { normalisedError } from '../measure/consistency.ts';
import { formatQuantity } from '../measure/format.ts';
import type { Characteristic, ProfileOutput, Unit } from '../measure/quantity.ts';
import { type SourceLink, sourceLinks } from './reading-links.ts';
import { benchSetting, channelLabels, characteristicLabels, plainNumber, readAt } from './wording.ts';

/** How a claim compares with what was measured. */
export type Comparison = 'agrees' | 'differs' | 'not-measured';

export interface ClaimView {
  readonly label: string;
  readonly stated: string;
  /** The measured value it was held against; undefined where there is none. */
  readonly measured: string | undefined;
  /** Conditions of the measured value, where they are not those of the headline value. */
  readonly measuredAt: string | undefined;
  readonly comparison: Comparison;
}

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
      .map((claim) =>
        claim.trait === 'muted' ? compareMuted(answers, claim, output) : compareValue(claim, output),
      ),
  }));
}

type ValueClaim = Exclude<Claim, { trait: 'muted' }>;

function compareValue(claim: ValueClaim, output: ProfileOutput | undefined): ClaimView {
  const { value, unit, tolerance } = claimValue(claim);
  const label = characteristicLabels[claim.trait];
  const stated = statedText(value, unit, tolerance);
  const headline = output?.characteristics.find((one) => one.name === claim.trait);
  const others = (output?.others ?? []).filter((one) => one.name === claim.trait);
  const allowed = tolerance ?? asRounded(value);
  const fitting = [...(headline ? [headline] : []), ...others].find((one) => agrees(value, allowed, one));
  const shown = fitting ?? headline ?? others[0];
  if (!shown) {
    return { label, stated, measured: undefined, measuredAt: undefined, comparison: 'not-measured' };
  }
  return {
    label,
    stated,
    measured: formatQuantity(shown),
    measuredAt:
      shown === headline ? undefined : `${readAt(shown.conditions)}; ${benchSetting(shown.conditions)}`,
    comparison: fitting ? 'agrees' : 'differs',
  };
}

function claimValue(claim: ValueClaim): { value: number; unit: Unit; tolerance: number | undefined } {
  switch (claim.trait) {
    case 'clean-volts':
      return { value: claim.valueVolts, unit: 'V', tolerance: claim.toleranceVolts };
    case 'highest-clean-step':
      return { value: claim.valueStep, unit: 'step', tolerance: claim.toleranceSteps };
    case 'lower-corner':
    case 'upper-corner':
      return { value: claim.valueHz, unit: 'Hz', tolerance: claim.toleranceHz };
    default:
      return { value: claim.valueDb, unit: 'dB', tolerance: claim.toleranceDb };
  }
}

function statedText(value: number, unit: Unit, tolerance: number | undefined): string {
  const range =
    tolerance === undefined ? '' : ` ± ${plainNumber(tolerance)}${unit === 'step' ? '' : `\u00a0${unit}`}`;
  return unit === 'step'
    ? `step\u00a0${plainNumber(value)}${range}`
    : `${plainNumber(value)}\u00a0${unit}${range}`;
}

/** A number without a tolerance is meant as rounded: half a unit of its last digit. */
function asRounded(value: number): number {
  const decimals = String(value).split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

/** E_n of at most 1 agrees (ISO 13528, 9.7), the tolerance standing for the statement's uncertainty. */
function agrees(value: number, tolerance: number, measured: Characteristic): boolean {
  if (measured.bound === 'at-most') return value - tolerance <= measured.value;
  if (measured.bound === 'at-least') return value + tolerance >= measured.value;
  const error = normalisedError({ value, expandedUncertainty: tolerance }, measured);
  return Number.isNaN(error) || Math.abs(error) <= 1;
}

function compareMuted(
  answers: Answers,
  claim: Extract<Claim, { trait: 'muted' }>,
  output: ProfileOutput | undefined,
): ClaimView {
  const silent = isSilent(answers, output, claim.channel);
  const words = (muted: boolean): string => (muted ? 'silent' : 'plays');
  return {
    label: `Output ${channelLabels[claim.channel] ?? claim.channel}`,
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
