/** Where a boosted band clips, and how much loudness it costs to stay below. */
import { type Characteristic, limits, type Quantity } from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import { type ArithmeticLine, lookedUp, measured, type Refusal } from './line.ts';
import { levelChange, type VolumeScale } from './steps.ts';

/**
 * The first step at which the boosted band may clip, and the loudness lost by staying below it; refused where the
 * readings do not tell.
 */
export function headroom(
  highestCleanStep: Characteristic,
  boostedCleanStep: Characteristic | undefined,
  scale: VolumeScale,
): readonly ArithmeticLine[] | Refusal {
  if (!boostedCleanStep) {
    return {
      refused: phrase('Where the boosted band clips is not known: it needs a response at one step at least.'),
    };
  }
  const [from, to] = [highestCleanStep.value, boostedCleanStep.value];
  const clips = lookedUp(
    {
      id: 'boosted-band-clips',
      title: phrase('First step at which the boosted band may clip'),
      symbol: 'N_clip',
      formula: 'N_boost + 1',
      given: [
        measured('N_boost', phrase('highest step at which the boosted band plays clean'), boostedCleanStep),
      ],
      note: phrase(
        'The boosted band reaches the ceiling before 1 kHz does. Music seldom holds the band at full level, so that clipping may be heard some steps later.',
      ),
      cautions: ['hearing'],
    },
    stepAbove(boostedCleanStep),
  );
  const stepDb = Math.max(0, ...scale.stepLaw.map(({ stepSize }) => stepSize.value));
  const loss = levelChange(
    scale,
    from,
    to,
    {
      id: 'headroom-loss',
      title: phrase('Loudness given up to keep the boosted band clean'),
      symbol: 'L',
      note: phrase(
        'Against the highest step at which 1 kHz alone plays clean. Where either step is not certain, its range counts by the size of a step.',
      ),
    },
    {
      sources: [...new Set([...highestCleanStep.sources, ...boostedCleanStep.sources])],
      own: [
        limits('range of the clean step', highestCleanStep.expandedUncertainty * stepDb),
        limits('range of the boosted clean step', boostedCleanStep.expandedUncertainty * stepDb),
      ],
    },
  );
  if (!loss)
    return {
      refused: phrase('The level between steps {to} and {from} is not known: read 1 kHz at both.', {
        to,
        from,
      }),
    };
  return [clips, loss];
}

/** The step after this one, with its range. */
function stepAbove({
  value,
  standardUncertainty,
  coverageFactor,
  expandedUncertainty,
  bound,
}: Quantity): Quantity {
  return {
    value: value + 1,
    unit: 'step',
    standardUncertainty,
    coverageFactor,
    expandedUncertainty,
    bound,
    budget: [],
  };
}
