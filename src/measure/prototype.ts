/**
 * The filters of the W3C Note “Audio EQ Cookbook” (2021) as their analogue prototypes, s in units of the centre's
 * or corner's angular frequency. Their levels and their digital forms both follow from these.
 */

/** (b2·s² + b1·s + b0)/(a2·s² + a1·s + a0), as [b2, b1, b0] and [a2, a1, a0]. */
export interface Prototype {
  readonly numerator: readonly [number, number, number];
  readonly denominator: readonly [number, number, number];
}

export const filterKinds = ['peaking', 'low-shelf', 'high-shelf', 'high-pass'] as const;
export type FilterKind = (typeof filterKinds)[number];

/** A filter as it is set on an equaliser. A high-pass is of the second order and has no gain. */
export interface Filter {
  readonly kind: FilterKind;
  /** Centre of a peak, midpoint of a shelf, corner of a high-pass, hertz. */
  readonly hz: number;
  readonly gainDb: number;
  readonly q: number;
}

/** The Cookbook's A: the square root of the gain as a voltage ratio, 10^(gain/40). */
export function rootGain(gainDb: number): number {
  return 10 ** (gainDb / 40);
}

/** The prototype of a filter; its frequency enters only where it is evaluated. */
export function prototypeOf({ kind, gainDb, q }: Omit<Filter, 'hz'>): Prototype {
  const a = rootGain(gainDb);
  const root = Math.sqrt(a);
  switch (kind) {
    case 'peaking':
      return { numerator: [1, a / q, 1], denominator: [1, 1 / (a * q), 1] };
    case 'low-shelf':
      return { numerator: [a, (a * root) / q, a * a], denominator: [a, root / q, 1] };
    case 'high-shelf':
      return { numerator: [a * a, (a * root) / q, a], denominator: [1, root / q, a] };
    case 'high-pass':
      return { numerator: [1, 0, 0], denominator: [1, 1 / q, 1] };
  }
}

/** The Q of a shelf of slope S: 1/Q = √((A + 1/A)·(1/S − 1) + 2); S = 1 is the steepest without a hump. */
export function shelfQ(gainDb: number, slope: number): number {
  const a = rootGain(gainDb);
  return 1 / Math.sqrt((a + 1 / a) * (1 / slope - 1) + 2);
}

/** Level at `ratio` times its own frequency, dB. */
export function prototypeDb({ numerator, denominator }: Prototype, ratio: number): number {
  return 10 * Math.log10(square(numerator, ratio) / square(denominator, ratio));
}

function square(of: Prototype['numerator'], ratio: number): number {
  const real = of[2] - of[0] * ratio * ratio;
  const imaginary = of[1] * ratio;
  return real * real + imaginary * imaginary;
}
