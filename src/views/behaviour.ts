/** How a profile behaves over the volume scale, in sentences. */
import { formatNumber, formatQuantity } from '../measure/format.ts';
import type { BoostBehaviour, ProfileOutput } from '../measure/quantity.ts';
import { plainNumber } from './wording.ts';

const boostSentences: Readonly<Record<BoostBehaviour, string>> = {
  none: '',
  unknown: '',
  fixed: 'The bass boost stays the same at every step measured.',
  fading: 'The bass boost fades by degrees with the volume.',
  switched: 'The bass boost is switched between two steps: it is there in full, or not at all.',
  changing: 'The bass boost is not the same at all steps; two steps do not tell how it goes between them.',
};

/** What one step of the volume is worth, stretch by stretch, and how the boost goes with it. */
export function behaviourOf(output: ProfileOutput): string[] {
  const scale = output.stepLaw.map(
    ({ fromStep, toStep, stepSize }) => `from ${fromStep} to ${toStep}, ${formatQuantity(stepSize)}`,
  );
  return [
    scale.length === 0 ? '' : `One step of the volume raises the level, ${scale.join('; ')}.`,
    boostSentences[output.boostBehaviour],
  ].filter((sentence) => sentence !== '');
}

/** Which sessions were taken at another signal level, and how far their readings count all the same. */
export function normalisedSentences({ normalised, conditions }: ProfileOutput): string[] {
  return normalised.map(
    ({ session, fromDbfs }) =>
      `Session ${session} was taken at ${plainNumber(fromDbfs)}\u00a0dBFS; its levels are brought to ${plainNumber(conditions?.signalDbfs ?? 0)}\u00a0dBFS, in the clean region only.`,
  );
}

/** How the sessions behind the clean level agree, and which stand apart; undefined for fewer than two. */
export function agreementSentence({ agreement }: ProfileOutput): string | undefined {
  if (!agreement) return undefined;
  const { sessions, agreeing, step, test, consistent, betweenBenchVolts } = agreement;
  const figures = `largest E_n ${formatNumber(agreement.largestNormalisedError, 2)}, χ² ${formatNumber(
    test.chiSquare,
    2,
  )} for ${test.degreesOfFreedom}, probability ${formatNumber(test.probability, 2)}, Birge ratio ${formatNumber(
    agreement.birgeRatio,
    2,
  )}`;
  const measured = `Sessions ${sessions.join(', ')} read the level at step ${step}`;
  if (consistent) return `${measured} and agree (${figures}).`;
  const apart = sessions.filter((one) => !agreeing.includes(one));
  const subset =
    agreeing.length > 1
      ? `${agreeing.join(', ')} agree, ${apart.join(', ')} ${apart.length === 1 ? 'stands' : 'stand'} apart`
      : 'no two of them agree';
  return `${measured} and do not agree (${figures}): ${subset}. All are kept, with a deviation between benches of ${formatNumber(
    betweenBenchVolts,
    3,
  )}\u00a0V in the uncertainty.`;
}
