/** Single cells as the values of a reading, or why they are none. */
import type { Channel } from '../../schemas/index.ts';
import type { Cell } from './cell.ts';
import { channelOf } from './channels.ts';
import { type DecimalSign, figureOf, numberOf } from './numbers.ts';
import {
  type HzUnit,
  hertz,
  hzUnitOf,
  isPeak,
  noVoltsIn,
  type ThdUnit,
  thdPercent,
  thdUnitOf,
  type VoltsUnit,
  voltsRms,
  voltsUnitOf,
} from './units.ts';

/** A value, or what is wrong and what to do. */
export type Value<T> =
  | { readonly value: T; readonly problem?: never }
  | { readonly problem: string; readonly help: string };

const notRead = /^(?:|[-–—]+|n\/?a|n\.\s?a\.?|k\.\s?a\.?|not read|nicht gemessen|no medido|\.{2,3}|…)$/i;

/** Whether a cell says that nothing was read. */
export function isBlank(cell: Cell | undefined): boolean {
  return cell === undefined || cell === '' || (typeof cell === 'string' && notRead.test(cell));
}

function number(
  cell: Cell,
  sign: DecimalSign | undefined,
  hasSign: boolean,
): Value<{ value: number; unit: string }> {
  if (typeof cell === 'number') return { value: { value: cell, unit: '' } };
  if (/^#(?:DIV\/0!|REF!|VALUE!|N\/A|NAME\?|NUM!|WERT!|BEZUG!|¡?VALOR!)/i.test(cell)) {
    return {
      problem: 'is a formula that went wrong',
      help: 'Put the formula right, or write the value itself.',
    };
  }
  if (/^[=+@]\D|^=/.test(cell)) {
    return {
      problem: 'is a formula; it is taken as text and never worked out',
      help: 'Save the sheet with its values, or write the value itself.',
    };
  }
  const found = cell.length > 80 ? undefined : figureOf(cell);
  if (!found)
    return { problem: 'is no number', help: 'Write what the meter showed, or leave the cell empty.' };
  if (found.bound !== '') {
    return {
      problem: `is a bound (${found.bound}), not a reading`,
      help: 'Write the figure the meter showed, or leave the cell empty.',
    };
  }
  const value = numberOf(found.text, sign);
  if (value !== undefined && Number.isFinite(value)) return { value: { value, unit: found.unit } };
  return hasSign
    ? { problem: 'is no number', help: 'Look at its points, commas and blanks.' }
    : { problem: 'may be two numbers', help: 'Say --decimals comma or --decimals point.' };
}

export interface ValueSettings {
  readonly sign: DecimalSign | undefined;
  /** Whether the tone was a sine; undefined where nothing says. */
  readonly isSine: boolean | undefined;
}

/** Volts rms of a cell. @param unit of its column; one in the cell goes before. */
export function voltsIn(
  cell: Cell,
  unit: VoltsUnit | undefined,
  { sign, isSine }: ValueSettings,
): Value<number> {
  const read = number(cell, sign, sign !== undefined);
  if (read.problem !== undefined) return read;
  const { value, unit: written } = read.value;
  const own = written === '' ? unit : voltsUnitOf(written);
  if (own === undefined) {
    const why = noVoltsIn(written);
    return written === ''
      ? { problem: 'has no unit', help: 'Say --columns "HEAD=volts V", or with mV, dBV, dBu, Vpp or Vp.' }
      : {
          problem: why
            ? `is not in volts: ${why}`
            : `has a unit that is not known, “${written.slice(0, 20)}”`,
          help: 'Write volts rms.',
        };
  }
  if (isPeak(own) && isSine !== true) {
    return {
      problem: `is a peak value, and ${isSine === false ? 'the tone was no sine' : 'nothing says the tone was a sine'}`,
      help: 'Only of a sine volts rms follow from it. If it was one, say --fact signal.kind=sine.',
    };
  }
  // 1.234 V with commas for decimals is a slip of the pen, not a thousand volts.
  if (own === 'V' && value >= 1000 && typeof cell === 'string' && /\d[.,]\d{3}/.test(cell)) {
    return {
      problem: `would be ${value} V, as the rest of the sheet has its decimals`,
      help: 'Write it like the other cells.',
    };
  }
  const volts = voltsRms(value, own);
  if (volts < 0)
    return {
      problem: 'is below zero, and volts rms are not',
      help: 'If it is a level, say --columns "HEAD=volts dBV" or dBu.',
    };
  return { value: volts };
}

/** Per cent of a cell. */
export function thdIn(cell: Cell, unit: ThdUnit | undefined, { sign }: ValueSettings): Value<number> {
  const read = number(cell, sign, sign !== undefined);
  if (read.problem !== undefined) return read;
  const { value, unit: written } = read.value;
  const own = written === '' ? (unit ?? '%') : thdUnitOf(written);
  if (own === undefined) {
    return { problem: `has a unit that is not known, “${written.slice(0, 20)}”`, help: 'Write per cent.' };
  }
  return { value: thdPercent(value, own) };
}

/** Hertz of a cell: 63, 1.25 kHz, 1k, 2k5. */
export function hzIn(cell: Cell, unit: HzUnit, { sign }: ValueSettings): Value<number> {
  const short = typeof cell === 'string' ? /^(\d+)k(\d+)$/i.exec(cell) : null;
  if (short) return { value: hertz(Number(`${short[1]}.${short[2]}`), 'kHz') };
  const read = number(cell, sign, sign !== undefined);
  if (read.problem !== undefined) return read;
  const { value, unit: written } = read.value;
  const own = written === '' ? unit : hzUnitOf(written);
  return own === undefined
    ? { problem: `has a unit that is not known, “${written.slice(0, 20)}”`, help: 'Write hertz.' }
    : { value: hertz(value, own) };
}

/** A volume step or the number of a repeat: `12`, `step 12`, `12/30`, `#2`. */
export function wholeIn(cell: Cell): Value<number> {
  const text = String(cell);
  const found = /^(?:\p{L}+\.?\s*)?#?(\d{1,4})(?:[.,]0+)?(?:\s*(?:\/|of|von|de)\s*\d+)?$/u.exec(text);
  return found
    ? { value: Number(found[1]) }
    : { problem: 'is no whole number', help: 'Write the number the screen showed.' };
}

/** @param said what the person says names of outputs stand for. */
export function channelIn(cell: Cell, said: ReadonlyMap<string, Channel>): Value<Channel> {
  const text = String(cell);
  const channel = said.get(text.toLowerCase()) ?? channelOf(text);
  return channel
    ? { value: channel }
    : {
        problem: 'names none of the four outputs',
        help: `Write FL, FR, RL or RR, or say --channel "${text.slice(0, 20)}=FL".`,
      };
}
