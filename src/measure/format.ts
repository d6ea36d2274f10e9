/** The one formatter of numbers: for pages, commands and messages alike. */

import { phrase } from '../words/index.ts';
import type { Quantity, Unit } from './quantity.ts';
import { nominalOf } from './third-octave.ts';

const minus = '−';
/** A no-break space, so that a number and its unit stay on one line. */
const space = '\u00a0';

/** A number with a fixed count of decimals and a true minus sign; never “−0”. */
export function formatNumber(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `${minus}${text}` : text;
}

/**
 * A frequency: `63 Hz`, `1.25 kHz`. Exact third-octave centres are called by their nominal name
 * (ISO 266); others are given to three significant digits.
 */
export function formatHz(hz: number): string {
  const nominal = nominalOf(hz);
  const shown = nominal ?? Number(hz.toPrecision(3));
  return shown >= 1000 ? `${shown / 1000}${space}kHz` : `${shown}${space}Hz`;
}

/**
 * Decimals to show for an uncertainty: two significant digits where it begins with a 1 or 2, one elsewhere
 * (GUM 7.2.6 asks for at most two), never more than the unit is read in.
 */
export function decimalsFor(expandedUncertainty: number, unit: Unit): number {
  const most = mostDecimals[unit];
  if (!(expandedUncertainty > 0)) return usualDecimals[unit];
  const exponent = Math.floor(Math.log10(expandedUncertainty));
  const leading = expandedUncertainty / 10 ** exponent;
  const decimals = leading < 2.95 ? 1 - exponent : -exponent;
  return Math.min(most, Math.max(0, decimals));
}

const mostDecimals: Readonly<Record<Unit, number>> = {
  V: 4,
  dB: 2,
  dBV: 2,
  dBu: 2,
  Hz: 1,
  '%': 3,
  step: 0,
  'dB/step': 3,
  'dB/oct': 2,
  oct: 3,
  Ω: 3,
  '1': 3,
  A: 2,
  W: 2,
  A·h: 1,
  m: 2,
  mm: 3,
  'mm²': 2,
  'Ω/km': 3,
  '°C': 1,
  h: 1,
  min: 1,
  AWG: 0,
};
const usualDecimals: Readonly<Record<Unit, number>> = {
  V: 2,
  dB: 1,
  dBV: 1,
  dBu: 1,
  Hz: 0,
  '%': 2,
  step: 0,
  'dB/step': 2,
  'dB/oct': 1,
  oct: 2,
  Ω: 2,
  '1': 3,
  A: 2,
  W: 2,
  A·h: 1,
  m: 2,
  mm: 3,
  'mm²': 2,
  'Ω/km': 2,
  '°C': 0,
  h: 1,
  min: 1,
  AWG: 0,
};

function bounded(value: string, bound: Quantity['bound']): string {
  if (bound === 'exact') return value;
  return bound === 'at-most' ? phrase('at most {value}', { value }) : phrase('at least {value}', { value });
}

/** What of a quantity is written out. */
type Written = Pick<Quantity, 'value' | 'unit' | 'expandedUncertainty' | 'bound'> & Partial<Quantity>;

/** A value with its expanded uncertainty: `3.62 V ± 0.05 V`; a bound with its word: `at most −40 dB`. */
export function formatQuantity(quantity: Written): string {
  const [value, uncertainty] = formatParts(quantity);
  return uncertainty === '' ? value : `${value} ±${space}${uncertainty}`;
}

/** The value alone, to the digits its uncertainty allows: `3.62 V`, `at most −40 dB`. */
export function formatValue(quantity: Written): string {
  return formatParts(quantity)[0];
}

/** Value and uncertainty, each with its unit; the uncertainty is empty where there is none to give. */
function formatParts(quantity: Written): readonly [value: string, uncertainty: string] {
  const { value, unit, expandedUncertainty, bound } = quantity;
  const decimals = decimalsFor(expandedUncertainty, unit);
  const isCertain = !(expandedUncertainty > 0);
  if (unit === 'step') {
    const range = isCertain ? '' : formatNumber(expandedUncertainty, 0);
    return [bounded(phrase('step\u00a0{step}', { step: formatNumber(value, 0) }), bound), range];
  }
  if (unit === 'AWG') return [bounded(`AWG${space}${value > 0 ? value : `${1 - value}/0`}`, bound), ''];
  if (unit === 'Hz' && isCertain) return [bounded(formatHz(value), bound), ''];
  if (unit === 'Hz' && value >= 1000) return kilohertzParts(quantity);
  const sign = unit === '1' ? '' : `${space}${unit}`;
  const plain = bounded(`${formatNumber(value, decimals)}${sign}`, bound);
  if (isCertain) return [plain, ''];
  return [plain, `${formatUncertainty(expandedUncertainty, decimals)}${sign}`];
}

function kilohertzParts({ value, expandedUncertainty, bound }: Written): readonly [string, string] {
  const decimals = Math.min(3, decimalsFor(expandedUncertainty / 1000, 'V'));
  const uncertainty = formatUncertainty(expandedUncertainty / 1000, decimals);
  return [bounded(`${formatNumber(value / 1000, decimals)}${space}kHz`, bound), `${uncertainty}${space}kHz`];
}

/** An uncertainty is rounded up in its last digit, never to nothing (GUM 7.2.6: “it may be appropriate to round up”). */
function formatUncertainty(expandedUncertainty: number, decimals: number): string {
  const scale = 10 ** decimals;
  return formatNumber(Math.ceil(expandedUncertainty * scale - 1e-9) / scale, decimals);
}
