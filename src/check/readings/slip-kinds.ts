/** The slips of unit a bench sheet suffers from, and how a written number is told to be one. */
import { dbu, dbv, voltsFromDbu, voltsFromDbv } from '../../measure/index.ts';

/** One way to write another number than the volts rms that were read. */
export interface SlipKind {
  readonly id:
    | 'millivolts'
    | 'thousandth'
    | 'peak'
    | 'peak-to-peak'
    | 'unpeaked'
    | 'unpeaked-twice'
    | 'dbv'
    | 'dbu';
  /** What is written is the volts times this; undefined for decibels. */
  readonly factor: number | undefined;
  /** What is written where this many volts were read. */
  readonly written: (volts: number) => number;
  /** The volts that were read where this is written. */
  readonly meant: (written: number) => number;
  /** The likely cause, to stand before a question mark. */
  readonly cause: string;
  /** What to do about the numbers. */
  readonly remedy: string;
}

function byFactor(id: SlipKind['id'], factor: number, cause: string, remedy: string): SlipKind {
  return {
    id,
    factor,
    written: (volts) => volts * factor,
    meant: (written) => written / factor,
    cause,
    remedy,
  };
}

/** A sine’s peak is √2 times its rms value, its peak-to-peak 2√2 times (from the integral of a sine). */
export const slipKinds: readonly SlipKind[] = [
  byFactor('millivolts', 1000, 'millivolts written for volts', 'Divide by 1000.'),
  byFactor('thousandth', 1 / 1000, 'volts divided by 1000 as if they were millivolts', 'Multiply by 1000.'),
  byFactor('peak', Math.SQRT2, 'peak volts written for rms', 'Divide by 1.4142.'),
  byFactor('peak-to-peak', 2 * Math.SQRT2, 'peak-to-peak volts written for rms', 'Divide by 2.8284.'),
  byFactor(
    'unpeaked',
    Math.SQRT1_2,
    'rms volts taken for peak volts and divided by √2',
    'Multiply by 1.4142.',
  ),
  byFactor(
    'unpeaked-twice',
    Math.SQRT1_2 / 2,
    'rms volts taken for peak-to-peak volts and divided by 2√2',
    'Multiply by 2.8284.',
  ),
  {
    id: 'dbv',
    factor: undefined,
    written: dbv,
    meant: voltsFromDbv,
    cause: 'decibels over 1 V (dBV) written for volts',
    remedy: 'Raise 10 to a twentieth of each number: 6 dBV is 2 V.',
  },
  {
    id: 'dbu',
    factor: undefined,
    written: dbu,
    meant: voltsFromDbu,
    cause: 'decibels over 0.775 V (dBu) written for volts',
    remedy: 'Raise 10 to a twentieth of each number and multiply by 0.7746: 6 dBu is 1.55 V.',
  },
];

/** A tolerance wider than this tells no factor of √2 (0.347 as a logarithm) from none. */
export const widestTolerance = 0.12;

/** The widest tolerance that tells a slip: the further its factor is from the others, the wider. */
export function widestFor({ factor = 1 }: SlipKind): number {
  const size = Math.abs(Math.log(factor));
  return size > 5 ? 4 * widestTolerance : size > 1 ? 2 * widestTolerance : widestTolerance;
}

/** How far a reading of this many volts may be off what it is held against, relative. */
export type ToleranceAt = (volts: number) => number;

/**
 * The slips that make `written` of `expected` volts, best fit first; none where it fits as it is, or where the
 * tolerance of what it would mean is too wide to tell.
 */
export function slipsBetween(written: number, expected: number, toleranceAt: ToleranceAt): SlipKind[] {
  if (!(written > 0) || !(expected > 0)) return [];
  const off = Math.abs(Math.log(written / expected));
  if (off < leastOff || off <= 2 * toleranceAt(expected)) return [];
  return slipKinds
    .map((kind) => ({
      kind,
      misfit: misfitOf(kind, written, expected),
      most: toleranceAt(kind.meant(written)),
    }))
    .filter(({ kind, misfit, most }) => most <= widestFor(kind) && misfit <= most)
    .sort((a, b) => a.misfit - b.misfit)
    .map(({ kind }) => kind);
}

/** The best of {@link slipsBetween}. */
export function slipBetween(
  written: number,
  expected: number,
  toleranceAt: ToleranceAt,
): SlipKind | undefined {
  return slipsBetween(written, expected, toleranceAt)[0];
}

/** Numbers nearer than this (as a logarithm) are not a slip of unit. */
const leastOff = 0.2;

/** The least decibels a number is taken for: smaller ones are as likely anything else. */
const leastDecibels = 0.5;

/** How far what is meant lies off what is expected, as a logarithm. */
export function misfitOf(kind: SlipKind, written: number, expected: number): number {
  if (kind.factor === undefined && written < leastDecibels) return Number.POSITIVE_INFINITY;
  return Math.abs(Math.log(kind.meant(written) / expected));
}

/** The kind by its id. @throws Error where there is none. */
export function slipKind(id: SlipKind['id']): SlipKind {
  const kind = slipKinds.find((one) => one.id === id);
  if (!kind) throw new Error(`no slip ${id}`);
  return kind;
}

/** The slip that would have the other of two numbers at fault; undefined for decibels, which go one way. */
export function inverseOf(kind: SlipKind): SlipKind | undefined {
  const { factor } = kind;
  if (factor === undefined) return undefined;
  return slipKinds.find((one) => one.factor !== undefined && Math.abs(one.factor * factor - 1) < 1e-6);
}
