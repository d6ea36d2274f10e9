/** The units that field names end in, and the other units people write into such fields by mistake. */

export interface FieldUnit {
  /** `V` */
  readonly symbol: string;
  /** `volts` */
  readonly name: string;
  /** Other units of the same quantity by symbol, each in units of the field; the likeliest slip first. */
  readonly others: Readonly<Record<string, number>>;
}

const none: Readonly<Record<string, number>> = {};

/** By the ending of the field's name in lower case; longer endings first. SI prefixes: BIPM, SI Brochure, 9th ed. */
const units: readonly (readonly [ending: string, unit: FieldUnit])[] = [
  ['voltsrms', { symbol: 'V', name: 'volts', others: { mV: 1e-3, µV: 1e-6, uV: 1e-6, kV: 1e3 } }],
  ['volts', { symbol: 'V', name: 'volts', others: { mV: 1e-3, µV: 1e-6, uV: 1e-6, kV: 1e3 } }],
  ['ohms', { symbol: 'Ω', name: 'ohms', others: { kΩ: 1e3, mΩ: 1e-3, kOhm: 1e3, k: 1e3 } }],
  ['percent', { symbol: '%', name: 'per cent', others: {} }],
  ['seconds', { symbol: 's', name: 'seconds', others: { ms: 1e-3, min: 60 } }],
  ['dbfs', { symbol: 'dBFS', name: 'dBFS', others: none }],
  ['db', { symbol: 'dB', name: 'dB', others: none }],
  ['hz', { symbol: 'Hz', name: 'hertz', others: { kHz: 1e3, MHz: 1e6 } }],
  ['mm', { symbol: 'mm', name: 'millimetres', others: { cm: 10, m: 1000 } }],
];

/** Other ways the field's own unit is written. */
const ownWays: Readonly<Record<string, readonly string[]>> = {
  V: ['volt', 'volts', 'vrms', 'v rms'],
  Ω: ['ω', 'ohm', 'ohms', 'r'],
  '%': ['percent', 'per cent', 'pc'],
  s: ['sec', 'secs', 'second', 'seconds'],
  dBFS: ['db'],
  dB: [],
  Hz: ['hertz'],
  mm: ['millimetre', 'millimetres'],
};

/** The unit of a field; undefined where its name ends in none. */
export function unitOfField(key: string): FieldUnit | undefined {
  const name = key.toLowerCase();
  return units.find(([ending]) => name.endsWith(ending))?.[1];
}

/** How many of the field's unit one of the written unit is; undefined where it is another quantity or unknown. */
export function factorTo(unit: FieldUnit, written: string): number | undefined {
  const symbol = written.trim().normalize('NFKC').replace('μ', 'µ');
  const others = Object.entries(unit.others).map(
    ([name, factor]) => [name.normalize('NFKC'), factor] as const,
  );
  const exact = others.find(([name]) => name.replace('μ', 'µ') === symbol);
  if (exact) return exact[1];
  const lower = symbol.toLowerCase();
  if (lower === unit.symbol.normalize('NFKC').toLowerCase()) return 1;
  return ownWays[unit.symbol]?.includes(lower) ? 1 : undefined;
}

/** A product without the noise of binary fractions: 0.1 × 3 gives 0.3. */
export function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
