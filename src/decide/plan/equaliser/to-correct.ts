/** What of a profile's curve an equaliser is to take back out, before any filter is fitted. */
import {
  type BoostBehaviour,
  type CharacteristicName,
  halfPowerDb,
  type ProfileOutput,
  type Quantity,
  type ResponseAtStep,
} from '../../../measure/index.ts';
import { phrase } from '../../../words/index.ts';
import type { Refusal } from '../line.ts';
import { gridOf, levelled, type Wrong } from './wrong.ts';

/** What an output says that a correction rests on. */
export type Correctable = Pick<ProfileOutput, 'responses' | 'boostBehaviour' | 'characteristics'>;

/** The level wanted at a frequency, dB; its overall level does not matter. */
export type Target = (hz: number) => number;

const flat: Target = () => 0;

/** Fewer frequencies than this within the range say too little to set filters by. */
const leastPoints = 7;

export type Points = ResponseAtStep['points'];

/** What filters are to be fitted to, and what it was taken from. */
export interface ToCorrect {
  readonly step: number;
  /** The frequencies within the range to correct, with their readings. */
  readonly points: Points;
  readonly wrong: Wrong;
  readonly sources: readonly string[];
}

/** What is to be corrected; refused where one setting cannot fit every volume. */
export function toCorrect(output: Correctable, target: Target = flat): ToCorrect | Refusal {
  const whyNot = refusalFor(output.boostBehaviour);
  if (whyNot !== undefined) return { refused: whyNot };
  const response = cleanResponse(output);
  if (!response) {
    return {
      refused: phrase(
        'No response was read at a clean step: read one, at 1 kHz too, at a step that plays clean.',
      ),
    };
  }
  const range = correctableHz(response);
  const points = response.points.filter(({ hz }) => hz >= range.leastHz && hz <= range.mostHz);
  if (points.length < leastPoints) {
    return {
      refused: phrase(
        'Too few frequencies were read between {from} and {to} Hz ({count}): read {least} at least, better every third octave.',
        {
          count: points.length,
          from: Math.round(range.leastHz),
          to: Math.round(range.mostHz),
          least: leastPoints,
        },
      ),
    };
  }
  const errorDb = levelled(points.map(({ hz, level }) => level.value - target(hz)));
  const wrong = { grid: gridOf(points.map(({ hz }) => hz)), errorDb };
  return { step: response.step, points, wrong, sources: sourcesOf(output) };
}

/** Why a boost that goes like this cannot be corrected. */
function refusalFor(behaviour: BoostBehaviour): string | undefined {
  switch (behaviour) {
    case 'fading':
    case 'switched':
    case 'changing':
      return phrase(
        'The boost changes with the volume: a setting that is right at one step is wrong at another. Another profile would have to take it out.',
      );
    case 'unknown':
      return phrase(
        'Whether the boost stays the same with the volume is not known: it needs the response at a second step.',
      );
    default:
      return undefined;
  }
}

function value(output: Correctable, name: CharacteristicName): Quantity | undefined {
  return output.characteristics.find((one) => one.name === name);
}

/** The response read at most frequencies among the clean steps; of equals that at the highest step. */
function cleanResponse(output: Correctable): ResponseAtStep | undefined {
  const clean = value(output, 'boosted-clean-step') ?? value(output, 'highest-clean-step');
  const most = clean?.value ?? Number.POSITIVE_INFINITY;
  return output.responses
    .filter(({ step }) => step <= most)
    .toSorted((a, b) => b.points.length - a.points.length || b.step - a.step)[0];
}

/**
 * From the lowest to the highest frequency at no less than half power of the median level. What falls off beyond was
 * taken out on purpose, and lifting it costs headroom; a dip between is put right.
 */
function correctableHz({ points }: ResponseAtStep): { leastHz: number; mostHz: number } {
  const levels = points.map(({ level }) => level.value).toSorted((a, b) => a - b);
  const least = (levels[Math.floor(levels.length / 2)] ?? 0) + halfPowerDb;
  const within = ({ level }: Points[number]): boolean => level.value >= least;
  return { leastHz: points.find(within)?.hz ?? 0, mostHz: points.findLast(within)?.hz ?? 0 };
}

function sourcesOf({ characteristics }: Correctable): string[] {
  return [...new Set(characteristics.flatMap(({ sources }) => sources))];
}
