/** What holds for a whole sheet: conditions above its header, and what is said with `--fact NAME=VALUE`. */
import { nearest } from '../base/index.ts';
import { cellName, cellText, columnNumber, type SheetRow } from './cell.ts';
import { dateOf } from './dates.ts';
import { type DecimalSign, figureOf, numberOf } from './numbers.ts';

/** What a value is made of. */
type FactKind = 'date' | 'text' | 'volts' | 'ohms' | 'dbfs' | 'percent' | 'key' | 'person';

interface FactSpec {
  readonly kind: FactKind;
  /** The field of the entry it goes into; of keys, the column it stands for. */
  readonly field: string;
  /** The field its ± goes into. */
  readonly tolerance?: string;
  /** What sheets call it, in lower case, its name among them. */
  readonly words: string;
}

/** By the name `--fact` takes. */
export const factSpecs: Readonly<Record<string, FactSpec>> = {
  date: {
    kind: 'date',
    field: 'date',
    words: 'date|datum|fecha|day|measured on|gemessen am|date of measurement|messdatum',
  },
  bench: {
    kind: 'text',
    field: 'bench',
    words: 'bench|test bench|messplatz|prüfplatz|prüfstand|banco|workshop|werkstatt|taller',
  },
  'taken by': { kind: 'text', field: 'takenBy', words: 'taken by|taken by, role|taken by (role)|role' },
  instrument: {
    kind: 'text',
    field: 'instrument.name',
    words: 'instrument|meter|voltmeter|multimeter|messgerät|instrumento|multímetro',
  },
  resolution: {
    kind: 'volts',
    field: 'instrument.resolutionVolts',
    words: 'resolution|resolution of the meter|auflösung|resolución',
  },
  'thd floor': { kind: 'percent', field: 'instrument.thdFloorPercent', words: 'thd floor' },
  'signal level': {
    kind: 'dbfs',
    field: 'signal.levelDbfs',
    tolerance: 'signal.levelToleranceDb',
    words:
      'signal level|signal|signal, dbfs|signal (dbfs)|test level|test signal|prüfpegel|pegel|nivel de señal|level',
  },
  'signal from': {
    kind: 'text',
    field: 'signal.from',
    words: 'signal from|source of signal|player|zuspieler|quelle|fuente',
  },
  load: {
    kind: 'ohms',
    field: 'load.ohms',
    tolerance: 'load.tolerancePercent',
    words: 'load|load read|load read, ω|load, ω|load resistor|dummy load|last|lastwiderstand|abschluss|carga',
  },
  supply: {
    kind: 'volts',
    field: 'supply.volts',
    tolerance: 'supply.toleranceVolts',
    words:
      'supply|supply, v|supply voltage|supply volts|battery|battery voltage|power supply|vbat|versorgung|versorgungsspannung|betriebsspannung|bordspannung|netzteil|alimentación|alimentacion|batería',
  },
  method: { kind: 'text', field: 'method', words: 'method|methode|método|how' },
  'kept at': { kind: 'text', field: 'source.keptAt', words: 'kept at|original kept at|aufbewahrt' },
  trust: { kind: 'text', field: 'source.trust', words: 'trust' },
  'trust reason': { kind: 'text', field: 'source.trustReason', words: 'trust reason' },
  origin: { kind: 'text', field: 'profile.origin', words: 'origin|herkunft|origen' },
  system: { kind: 'text', field: 'profile.system', words: 'system' },
  about: { kind: 'text', field: 'profile.about', words: 'about' },
  code: {
    kind: 'key',
    field: 'profile',
    words: 'code|profile|profile code|tune|tuning|calibration|profil|perfil|código|codigo|kennung',
  },
  unit: {
    kind: 'key',
    field: 'unit',
    words: 'unit|head unit|radio|family|gerät|radiogerät|familie|unidad|equipo|familia',
  },
  channel: { kind: 'key', field: 'channel', words: 'channel|output|kanal|ausgang|canal|salida' },
  step: { kind: 'key', field: 'step', words: 'step|volume|volume step|lautstärke|stufe|volumen|paso' },
  frequency: {
    kind: 'key',
    field: 'hz',
    words: 'frequency|freq|test frequency|tone|frequenz|prüffrequenz|frecuencia|hz',
  },
  // A person’s name is no business of a public site.
  person: {
    kind: 'person',
    field: '',
    words:
      'technician|operator|name|measured by|tester|techniker|prüfer|messung durch|técnico|tecnico|operador|initials',
  },
};

const byWord = new Map(
  Object.entries(factSpecs).flatMap(([name, { words }]) =>
    words.split('|').map((word) => [word, name] as const),
  ),
);

export interface Fact {
  readonly name: string;
  readonly text: string;
  /** `B2`, or `--fact`. */
  readonly from: string;
}

export interface Conditions {
  readonly facts: readonly Fact[];
  /** What stands there and was not understood. */
  readonly others: readonly { readonly from: string; readonly text: string }[];
}

/** The conditions in rows above a header, or between blocks of readings. */
export function conditionsIn(rows: readonly SheetRow[]): Conditions {
  const facts: Fact[] = [];
  const others: { from: string; text: string }[] = [];
  for (const { row, cells } of rows) {
    for (let column = 0; column < cells.length; column += 1) {
      const text = cellText(cells[column]);
      if (text === '') continue;
      const from = cellName(column, row);
      for (const piece of text.split(/;|\s\|\s/).map((one) => one.trim())) {
        if (piece === '') continue;
        const { name, value } = keyed(piece);
        if (name === undefined) others.push({ from, text: piece });
        else if (value !== '') facts.push({ name, text: value, from });
        else {
          // A label; what it is of stands to the right, unless another label does.
          const next = cells.findIndex((cell, at) => at > column && cellText(cell) !== '');
          const right = next === -1 ? '' : cellText(cells[next]);
          if (next === -1 || (isLabel(right) && keyed(right).name !== undefined)) continue;
          facts.push({ name, text: right, from: cellName(next, row) });
          column = next;
          break;
        }
      }
    }
  }
  return { facts, others };
}

function isLabel(text: string): boolean {
  return /[:=]\s*$/.test(text) || byWord.has(wordOf(text));
}

function wordOf(text: string): string {
  return text
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .replace(/[:=]\s*$/, '')
    .trim();
}

/** `Supply (V): 14,4` → supply and 14,4. Without a colon, only figures behind the word count as its value. */
function keyed(piece: string): { readonly name: string | undefined; readonly value: string } {
  const whole = named(piece);
  if (whole !== undefined) return { name: whole, value: '' };
  const [, label = '', value = ''] = /^([^:=]{1,40})[:=](.*)$/s.exec(piece) ?? [];
  const byColon = named(label);
  if (byColon !== undefined) return { name: byColon, value: value.trim() };
  const words = piece.split(' ');
  for (let length = Math.min(4, words.length - 1); length > 0; length -= 1) {
    const rest = words.slice(length).join(' ').trim();
    const name = named(words.slice(0, length).join(' '));
    if (name !== undefined && /^[-+\u2212]?\d/.test(rest)) return { name, value: rest };
  }
  return { name: undefined, value: '' };
}

function named(label: string): string | undefined {
  const word = wordOf(label);
  return byWord.get(word) ?? byWord.get(word.replace(/\s*[([][^)\]]*[)\]]$/, ''));
}

/** A fact said on the command line, `NAME=VALUE`; a sentence on what is wrong with it instead. */
export function saidFact(text: string): Fact | string {
  const [, label = '', value = ''] = /^([^=]+)=(.*)$/s.exec(text) ?? [];
  const name = named(label) ?? (/^[a-zA-Z]+\.[a-zA-Z]+$/.test(label.trim()) ? label.trim() : undefined);
  if (name !== undefined && value.trim() !== '') return { name, text: value.trim(), from: '--fact' };
  const names = Object.keys(factSpecs).filter((one) => one !== 'person');
  const guess = nearest(wordOf(label), names);
  return guess === undefined
    ? `“${text}” is no fact: write NAME=VALUE, with one of ${names.join(', ')}, or a field of session.yaml such as signal.from.`
    : `“${text}” is no fact: did you mean “${guess}=…”?`;
}

/** What a fact comes to, by field; or why it cannot be understood. */
export type FactValue =
  | { readonly fields: ReadonlyMap<string, unknown>; readonly problem?: never }
  | { readonly problem: string };

const unitsOf: Readonly<Record<'volts' | 'ohms' | 'dbfs' | 'percent', RegExp>> = {
  volts: /^(?:v|volts?|vdc|v dc|mv)?$/i,
  ohms: /^(?:ω|Ω|ohms?|r)?$/iu,
  dbfs: /^(?:dbfs|db)?$/i,
  percent: /^%?$/,
};

/** The value of a fact that is no key and no person. */
export function factValue({ name, text }: Fact, sign: DecimalSign | undefined): FactValue {
  const spec = factSpecs[name];
  if (!spec) return { problem: `“${name}” is not known` };
  const { kind, field, tolerance } = spec;
  if (kind === 'date') {
    const read = dateOf(text);
    return 'date' in read ? { fields: new Map([[field, read.date]]) } : read;
  }
  if (kind !== 'volts' && kind !== 'ohms' && kind !== 'dbfs' && kind !== 'percent') {
    return { fields: new Map([[field, text]]) };
  }
  const [main = '', within] = text.split(/\s*(?:±|\+\/?-)\s*/);
  const value = amount(main, unitsOf[kind], sign);
  if (value === undefined) return { problem: `${quotedText(text)} is no ${amountNames[kind]}` };
  const fields = new Map<string, unknown>([[field, value]]);
  if (within === undefined || tolerance === undefined) return { fields };
  const limit = amount(within, kind === 'ohms' ? unitsOf.percent : unitsOf[kind], sign);
  if (limit === undefined) return { problem: `“±${within}” is not understood` };
  return { fields: fields.set(tolerance, limit) };
}

const amountNames = { volts: 'voltage', ohms: 'resistance', dbfs: 'level in dBFS', percent: 'percentage' };

function quotedText(text: string): string {
  return `“${text.slice(0, 40)}”`;
}

function amount(text: string, unit: RegExp, sign: DecimalSign | undefined): number | undefined {
  const found = figureOf(text.trim());
  if (found?.bound !== '' || !unit.test(found.unit)) return undefined;
  const value = numberOf(found.text, sign);
  return value !== undefined && found.unit.toLowerCase() === 'mv' ? value / 1000 : value;
}

/** The column a cell name of a fact stands in; −1 for one said. */
export function columnOfFact({ from }: Fact): number {
  return columnNumber(from.replace(/\d+$/, ''));
}
