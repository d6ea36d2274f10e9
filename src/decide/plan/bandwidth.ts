/** The low end of a profile: whether it starves a subwoofer, and whether its boost endangers small speakers. */
import {
  type Characteristic,
  limits,
  propagate,
  type Quantity,
  type ResponseAtStep,
} from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import { sideOf } from '../compare.ts';
import { type ArithmeticLine, carried, given, measured, type Refusal, workedOut } from './line.ts';

type ResponsePoint = ResponseAtStep['points'][number];

/** Level relative to 1 kHz at a frequency, from the measured response: read there, or between its neighbours. */
export function levelAt(
  response: ResponseAtStep,
  hz: number,
  sources: readonly string[],
): ArithmeticLine | Refusal {
  const above = response.points.find((point) => point.hz >= hz * (1 - 1e-6));
  const below = response.points.findLast((point) => point.hz <= hz * (1 + 1e-6));
  if (!above || !below) {
    const [first, last] = [response.points[0]?.hz ?? 0, response.points.at(-1)?.hz ?? 0];
    return {
      refused: phrase(
        'The response at step {step} was read from {first} to {last} Hz: read it at {hz} Hz too.',
        { step: response.step, first: Math.round(first), last: Math.round(last), hz },
      ),
    };
  }
  const at = (symbol: string, name: string, { level, readings }: typeof above) => ({
    ...given(symbol, name, level, 'dB', sources),
    readings,
  });
  const words = {
    id: 'level-at-frequency',
    title: phrase('Level at the lowest frequency wanted, relative to 1 kHz'),
    symbol: 'L',
    unit: 'dB' as const,
    note: phrase(
      'From the response at step {step}; between two frequencies that were read, along a straight line over their logarithms.',
      { step: response.step },
    ),
  };
  if (above.hz / below.hz < 1 + 3e-6) {
    return workedOut({ ...words, formula: 'L_f', given: [at('L_f', phrase('level read there'), below)] });
  }
  return workedOut({
    ...words,
    formula: 'L_1 + (L_2 − L_1)·lg(f/f_1)/lg(f_2/f_1)',
    given: [
      given('f', phrase('lowest frequency wanted'), hz, 'Hz'),
      given('f_1', phrase('next one read below'), below.hz, 'Hz'),
      given('f_2', phrase('next one read above'), above.hz, 'Hz'),
      at('L_1', phrase('level read below'), below),
      at('L_2', phrase('level read above'), above),
    ],
    own: [limits('between two frequencies', bendDb(response.points, below, above, hz))],
  });
}

/**
 * How far the response may bend away from the straight line between two of its points, dB: for a curve of constant
 * second derivative c the line is off by c/2·(x − x₁)·(x₂ − x); the greater c of the neighbours counts,
 * and half as much again, as it changes from point to point.
 */
function bendDb(
  points: ResponseAtStep['points'],
  below: ResponsePoint,
  above: ResponsePoint,
  hz: number,
): number {
  const at = points.indexOf(below);
  const octaves = (a: ResponsePoint, b: ResponsePoint): number => Math.log2(b.hz / a.hz);
  const slope = (a: ResponsePoint, b: ResponsePoint): number =>
    (b.level.value - a.level.value) / octaves(a, b);
  const bend = (a: ResponsePoint | undefined, b: ResponsePoint, c: ResponsePoint | undefined): number =>
    a && c ? Math.abs(slope(b, c) - slope(a, b)) / (octaves(a, c) / 2) : 0;
  const most = Math.max(bend(points[at - 1], below, above), bend(below, above, points[at + 2]));
  return 1.5 * (most / 2) * Math.log2(hz / below.hz) * Math.log2(above.hz / hz);
}

/** Whether a level this low starves a subwoofer: lower than `mostLossDb` under 1 kHz, its uncertainty counted in. */
export function starves(level: Quantity, mostLossDb: number): 'yes' | 'no' | 'borderline' {
  const side = sideOf(level, -mostLossDb);
  return side === 'below' ? 'yes' : side === 'above' ? 'no' : 'borderline';
}

/** How many times the power of 1 kHz a boost sends to a speaker at its frequency. */
export function boostPower(boost: Characteristic): ArithmeticLine {
  return workedOut({
    id: 'boost-power',
    title: phrase('Power at the boost’s frequency against that at 1 kHz'),
    symbol: 'p',
    formula: '10^(B/10)',
    given: [measured('B', phrase('bass boost'), boost)],
    unit: '1',
    note: phrase(
      'For one voltage, into one impedance. Below its resonance a small speaker moves as far as its suspension allows long before it gets hot, so that its rated power says nothing there.',
    ),
    cautions: ['hearing'],
  });
}

/** A high-pass that protects a small speaker. */
export interface Protection {
  /** The frequency below which the speaker is to be spared, as its data say, hertz. */
  readonly lowestHz: number;
  /** How far it may be above 1 kHz at the boost's frequency, dB. */
  readonly mostBoostDb: number;
  /** 2 for 12 dB an octave, 4 for 24 dB. */
  readonly order: 1 | 2 | 3 | 4;
  readonly sources: readonly string[];
}

/**
 * The corner of a Butterworth high-pass that brings a boost down to what is allowed: 10·lg(1 + (f_c/f)^(2n)) = A at
 * the boost's frequency, and no lower than the speaker's own limit. The boost counts with its uncertainty.
 */
export function protectiveHighPass(
  boost: Characteristic,
  boostHz: Characteristic,
  { lowestHz, mostBoostDb, order, sources }: Protection,
): readonly ArithmeticLine[] {
  const slope = workedOut({
    id: 'high-pass-slope',
    title: phrase('Slope of the protective high-pass'),
    symbol: 'S',
    formula: '20·n·lg(2)',
    given: [given('n', phrase('order of the filter'), order, '1')],
    unit: 'dB/oct',
    note: phrase('A Butterworth filter of order n falls this fast an octave below its corner.'),
  });
  const excess = workedOut({
    id: 'boost-to-take-out',
    title: phrase('What is to be taken out at the boost’s frequency'),
    symbol: 'A',
    formula: 'max(0, B + U_B − B_max)',
    given: [
      { ...measured('B', phrase('bass boost'), boost), quantity: propagate(boost.value, 'dB', []) },
      given('U_B', phrase('its expanded uncertainty'), boost.expandedUncertainty, 'dB'),
      given('B_max', phrase('most boost the speaker is to be given'), mostBoostDb, 'dB', sources),
    ],
    unit: 'dB',
    note: phrase('The uncertainty is added, so that the filter is enough.'),
  });
  const corner = workedOut({
    id: 'protective-high-pass',
    title: phrase('Corner of a high-pass that protects the speaker'),
    symbol: 'f_c',
    formula: 'max(f_min, f_B·(10^(A/10) − 1)^(1/(2·n)))',
    given: [
      given('f_min', phrase('lowest frequency the speaker is made for'), lowestHz, 'Hz', sources),
      measured('f_B', phrase('frequency of the boost'), boostHz),
      carried(phrase('to be taken out'), excess),
      given('n', phrase('order of the filter'), order, '1'),
    ],
    unit: 'Hz',
    bound: 'at-least',
    note: phrase(
      'Butterworth, half power at its corner. The maker’s advice for the speaker comes first where there is any.',
    ),
  });
  return [slope, excess, corner];
}
