/** How a profile behaves over the volume scale, in sentences. */
import { formatNumber, formatQuantity } from '../measure/format.ts';
import type { BoostBehaviour, ProfileOutput } from '../measure/quantity.ts';
import { countPhrase, phrase } from '../words/index.ts';
import { plainNumber } from './wording.ts';

function boostSentence(behaviour: BoostBehaviour): string {
  const sentences: Readonly<Record<BoostBehaviour, string>> = {
    none: '',
    unknown: '',
    fixed: phrase('The bass boost stays the same at every step measured.'),
    fading: phrase('The bass boost fades by degrees with the volume.'),
    switched: phrase('The bass boost is switched between two steps: it is there in full, or not at all.'),
    changing: phrase(
      'The bass boost is not the same at all steps; two steps do not tell how it goes between them.',
    ),
  };
  return sentences[behaviour];
}

/** What one step of the volume is worth, stretch by stretch, and how the boost goes with it. */
export function behaviourOf(output: ProfileOutput): string[] {
  const scale = output.stepLaw.map(({ fromStep, toStep, stepSize }) =>
    phrase('from {from} to {to}, {size}', { from: fromStep, to: toStep, size: formatQuantity(stepSize) }),
  );
  return [
    scale.length === 0
      ? ''
      : phrase('One step of the volume raises the level, {scale}.', { scale: scale.join('; ') }),
    boostSentence(output.boostBehaviour),
  ].filter((sentence) => sentence !== '');
}

/** Which sessions were taken at another signal level, and how far their readings count all the same. */
export function normalisedSentences({ normalised, conditions }: ProfileOutput): string[] {
  return normalised.map(({ session, fromDbfs }) =>
    phrase(
      'Session {session} was taken at {level}\u00a0dBFS; its levels are brought to {main}\u00a0dBFS, in the clean region only.',
      { session, level: plainNumber(fromDbfs), main: plainNumber(conditions?.signalDbfs ?? 0) },
    ),
  );
}

/** How the sessions behind the clean level agree, and which stand apart; undefined for fewer than two. */
export function agreementSentence({ agreement }: ProfileOutput): string | undefined {
  if (!agreement) return undefined;
  const { sessions, agreeing, step, test, consistent, betweenBenchVolts } = agreement;
  const figures = phrase(
    'largest E_n {normalised}, χ² {chiSquare} for {freedom}, probability {probability}, Birge ratio {birge}',
    {
      normalised: formatNumber(agreement.largestNormalisedError, 2),
      chiSquare: formatNumber(test.chiSquare, 2),
      freedom: test.degreesOfFreedom,
      probability: formatNumber(test.probability, 2),
      birge: formatNumber(agreement.birgeRatio, 2),
    },
  );
  const values = { sessions: sessions.join(', '), step, figures };
  if (consistent) {
    return phrase('Sessions {sessions} read the level at step {step} and agree ({figures}).', values);
  }
  const apart = sessions.filter((one) => !agreeing.includes(one));
  const subset =
    agreeing.length > 1
      ? countPhrase(
          apart.length,
          '{agreeing} agree, {apart} stands apart',
          '{agreeing} agree, {apart} stand apart',
          { agreeing: agreeing.join(', '), apart: apart.join(', ') },
        )
      : phrase('no two of them agree');
  return phrase(
    'Sessions {sessions} read the level at step {step} and do not agree ({figures}): {subset}. All are kept, with a deviation between benches of {deviation}\u00a0V in the uncertainty.',
    { ...values, subset, deviation: formatNumber(betweenBenchVolts, 3) },
  );
}
