/** An equaliser's settings that take a profile's fixed curve back out, and what they leave. */
import {
  type BoostBehaviour,
  type CharacteristicName,
  type Filter,
  halfPowerDb,
  type ProfileOutput,
  propagate,
  type Quantity,
  quantity,
  type ResponseAtStep,
} from '../../../measure/index.ts';
import { countPhrase, phrase } from '../../../words/index.ts';
import { type ArithmeticLine, given, lookedUp, type Refusal } from '../line.ts';
import { type EqualiserLimits, gridOf, togetherDb } from './curve.ts';
import { fitFilters, levelled } from './fit.ts';

/** What an output says that a correction rests on. */
export type Correctable = Pick<ProfileOutput, 'responses' | 'boostBehaviour' | 'characteristics'>;

type Points = ResponseAtStep['points'];

export interface Correction {
  /** Settings, lowest frequency first, rounded as they are to be entered; the residuals are those of these settings. */
  readonly filters: readonly Filter[];
  /** The volume step its response was read at. */
  readonly step: number;
  /** Level at each frequency, dB, before and after: relative to the mean difference from the target. */
  readonly points: readonly { readonly hz: number; readonly beforeDb: number; readonly afterDb: number }[];
  readonly lines: readonly ArithmeticLine[];
}

/** The level wanted at a frequency, dB; its overall level does not matter. */
export type Target = (hz: number) => number;

const flat: Target = () => 0;

/** Fewer frequencies than this within the range say too little to set filters by. */
const leastPoints = 7;

/** Filters that bring the clean part of a response to the target; refused where one setting cannot fit every volume. */
export function correction(
  output: Correctable,
  limits: EqualiserLimits,
  target: Target = flat,
): Correction | Refusal {
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
      refused: countPhrase(
        points.length,
        'Only {count} frequency was read between {from} and {to} Hz: read {least} at least, better every third octave.',
        'Only {count} frequencies were read between {from} and {to} Hz: read {least} at least, better every third octave.',
        { from: Math.round(range.leastHz), to: Math.round(range.mostHz), least: leastPoints },
      ),
    };
  }
  const grid = gridOf(points.map(({ hz }) => hz));
  const before = levelled(points.map(({ hz, level }) => level.value - target(hz)));
  const filters = cutting(fitFilters({ grid, errorDb: before }, limits), limits)
    .map(rounded)
    .filter((one) => one.kind === 'high-pass' || one.gainDb !== 0)
    .sort((a, b) => a.hz - b.hz);
  const curve = togetherDb(filters, grid);
  const after = levelled(before.map((level, index) => level + (curve[index] ?? 0)));
  return {
    filters,
    step: response.step,
    points: points.map(({ hz }, index) => ({ hz, beforeDb: before[index] ?? 0, afterDb: after[index] ?? 0 })),
    lines: residualLines(points, before, after, curve, sourcesOf(output)),
  };
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

/**
 * Shelves that cut in the place of those that boost, where the equaliser has them: a high shelf of +G is, but for the
 * overall level, the low shelf of −G at the same frequency and Q. A cut takes no headroom.
 */
function cutting(filters: readonly Filter[], { kinds, gainDb }: EqualiserLimits): Filter[] {
  const swaps = filters.map((one): Filter => {
    const other =
      one.kind === 'low-shelf' ? 'high-shelf' : one.kind === 'high-shelf' ? 'low-shelf' : undefined;
    const isBetter =
      other !== undefined && one.gainDb > 0 && kinds.includes(other) && -one.gainDb >= gainDb[0];
    return isBetter ? { ...one, kind: other, gainDb: -one.gainDb } : one;
  });
  const shelves = swaps.flatMap(({ kind }) => (kind.endsWith('shelf') ? [kind] : []));
  // One of each at most: of two, either both change places or neither.
  return new Set(shelves).size === shelves.length ? swaps : [...filters];
}

/** To four digits of frequency, hundredths of a decibel, thousandths of Q. */
function rounded({ kind, hz, gainDb, q }: Filter): Filter {
  return { kind, hz: Number(hz.toPrecision(4)), gainDb: Number(gainDb.toFixed(2)), q: Number(q.toFixed(3)) };
}

function residualLines(
  points: Points,
  before: readonly number[],
  after: readonly number[],
  curve: readonly number[],
  sources: readonly string[],
): readonly ArithmeticLine[] {
  const readings = [...new Set(points.flatMap((point) => point.readings))];
  const over = [
    { ...given('n', phrase('frequencies'), points.length, '1', sources), readings },
    given('f_1', phrase('lowest of them'), points[0]?.hz ?? 0, 'Hz'),
    given('f_2', phrase('highest of them'), points.at(-1)?.hz ?? 0, 'Hz'),
  ];
  const note = phrase(
    'Over the frequencies read within the profile’s own pass band, the overall level being free.',
  );
  const root = {
    symbol: 'e_rms',
    formula: phrase('the root of the mean of the squares of what is left at the n frequencies'),
    given: over,
  };
  return [
    lookedUp(
      { ...root, id: 'response-rms', title: phrase('Departure from the target before'), symbol: 'e_0', note },
      rootMeanSquare(points, before),
    ),
    lookedUp(
      { ...root, id: 'residual-rms', title: phrase('Departure from the target that is left'), note },
      rootMeanSquare(points, after),
    ),
    lookedUp(
      {
        id: 'residual-largest',
        title: phrase('Largest departure that is left'),
        symbol: 'e_max',
        formula: phrase('the largest of what is left at the n frequencies'),
        given: over,
        note,
      },
      largest(points, after),
    ),
    lookedUp(
      {
        id: 'correction-headroom',
        title: phrase('Headroom the filters take'),
        symbol: 'H',
        formula: phrase('the highest level of all filters together, or 0'),
        given: over,
        note: phrase(
          'Turn the equaliser’s input down by this much, or the filters’ boosts may clip it at full level.',
        ),
      },
      quantity(Math.max(0, ...curve), 'dB', []),
    ),
  ];
}

/** √(Σe²/n); moves with each level by e/(n·rms). */
function rootMeanSquare(points: Points, errors: readonly number[]): Quantity {
  const rms = Math.sqrt(errors.reduce((sum, one) => sum + one * one, 0) / errors.length);
  if (rms === 0) return quantity(0, 'dB', []);
  return propagate(
    rms,
    'dB',
    points.map(({ level }, index) => [(errors[index] ?? 0) / (errors.length * rms), level]),
  );
}

function largest(points: Points, errors: readonly number[]): Quantity {
  const sizes = errors.map(Math.abs);
  const most = Math.max(...sizes);
  const at = sizes.indexOf(most);
  const level = points[at]?.level;
  return propagate(most, 'dB', level ? [[Math.sign(errors[at] ?? 0), level]] : []);
}
