/** Units of a bench sheet, as they are written, and what they come to in those of a reading. */
import { dbRatio, voltsFromDbu, voltsFromDbv } from '../measure/index.ts';

export const voltsUnits = ['V', 'mV', 'µV', 'dBV', 'dBu', 'Vpp', 'mVpp', 'Vp', 'mVp'] as const;
export type VoltsUnit = (typeof voltsUnits)[number];
export const thdUnits = ['%', 'ratio', 'dB'] as const;
export type ThdUnit = (typeof thdUnits)[number];
export const hzUnits = ['Hz', 'kHz'] as const;
export type HzUnit = (typeof hzUnits)[number];

/** Ways of writing a unit, in lower case, blanks, points and hyphens left out. English, German, Spanish. */
const voltsWays: Readonly<Record<string, VoltsUnit>> = {
  ...ways(
    'V',
    'v',
    'volt',
    'volts',
    'voltios',
    'vrms',
    'veff',
    'vac',
    'v~',
    'voltsrms',
    'voltrms',
    'rmsv',
    'vef',
  ),
  ...ways('mV', 'mv', 'mvrms', 'mveff', 'mvac', 'millivolt', 'millivolts', 'milivoltios', 'mvef'),
  ...ways('µV', 'µv', 'uv', 'µvrms', 'uvrms', 'microvolts', 'mikrovolt'),
  ...ways('dBV', 'dbv', 'dbvrms'),
  ...ways('dBu', 'dbu'),
  ...ways('Vpp', 'vpp', 'vss', 'vpkpk', 'vpeaktopeak', 'vpktopk', 'vpicoapico'),
  ...ways('mVpp', 'mvpp', 'mvss', 'mvpkpk'),
  ...ways('Vp', 'vp', 'vpk', 'vpeak', 'vs', 'vpico', 'vmax'),
  ...ways('mVp', 'mvp', 'mvpk', 'mvpeak'),
};
const thdWays: Readonly<Record<string, ThdUnit>> = {
  ...ways('%', '%', 'percent', 'percents', 'pct', 'prozent', 'porciento', 'porcentaje', 'perc'),
  ...ways('ratio', 'ratio', 'fraction', 'verhältnis', 'razón', 'razon'),
  ...ways('dB', 'db', 'dbc'),
};
const hzWays: Readonly<Record<string, HzUnit>> = {
  ...ways('Hz', 'hz', 'hertz', 'cps', 'hercios'),
  ...ways('kHz', 'khz', 'kilohertz', 'k', 'kilohercios'),
};

function ways<U extends string>(unit: U, ...written: readonly string[]): Record<string, U> {
  return Object.fromEntries(written.map((one) => [one, unit]));
}

function plain(text: string): string {
  return text
    .normalize('NFC')
    .replace(/\u03bc/g, 'µ')
    .toLowerCase()
    .replace(/[\s._-]+/g, '');
}

function among<U>(known: Readonly<Record<string, U>>, text: string): U | undefined {
  const key = plain(text);
  return Object.hasOwn(known, key) ? known[key] : undefined;
}

export const voltsUnitOf = (text: string): VoltsUnit | undefined => among(voltsWays, text);
export const thdUnitOf = (text: string): ThdUnit | undefined => among(thdWays, text);
export const hzUnitOf = (text: string): HzUnit | undefined => among(hzWays, text);

/** Units of level that no volts follow from, and why. */
export function noVoltsIn(text: string): string | undefined {
  const key = plain(text);
  if (key === 'dbm')
    return 'dBm is a power: how many volts it is depends on a resistance the sheet does not say';
  if (key === 'dbfs') return 'dBFS is the level of the signal that was played, not of the output';
  if (key === 'w' || key === 'watt' || key === 'watts') return 'watts are no volts';
  return undefined;
}

export function isPeak(unit: VoltsUnit): boolean {
  return unit.endsWith('p');
}

/** Volts rms. Peak values as those of a sine: peak / √2, peak to peak / (2√2). dBV re 1 V, dBu re √0.6 V, both rms. */
export function voltsRms(value: number, unit: VoltsUnit): number {
  switch (unit) {
    case 'V':
      return value;
    case 'mV':
      return tidy(value / 1000, 12);
    case 'µV':
      return tidy(value / 1e6, 12);
    case 'dBV':
      return tidy(voltsFromDbv(value), 6);
    case 'dBu':
      return tidy(voltsFromDbu(value), 6);
    case 'Vpp':
      return tidy(value / (2 * Math.SQRT2), 6);
    case 'mVpp':
      return tidy(value / (2000 * Math.SQRT2), 6);
    case 'Vp':
      return tidy(value / Math.SQRT2, 6);
    case 'mVp':
      return tidy(value / (1000 * Math.SQRT2), 6);
  }
}

/** Per cent of the fundamental. dB below it, with or without the minus sign: 20·lg. */
export function thdPercent(value: number, unit: ThdUnit): number {
  if (unit === '%') return value;
  return unit === 'ratio' ? tidy(100 * value, 12) : tidy(100 * dbRatio(-Math.abs(value)), 6);
}

export function hertz(value: number, unit: HzUnit): number {
  return unit === 'kHz' ? tidy(value * 1000, 12) : value;
}

/** Without the noise of binary fractions, and no more digits than the value can bear. */
function tidy(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}
