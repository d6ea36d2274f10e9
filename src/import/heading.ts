/** The head of one column → what it may hold, by its words alone. */
import { nearest } from '../base/index.ts';
import { channelOf } from './channels.ts';
import { evidenceOf, figureOf, numberOf } from './numbers.ts';
import type { Fixed, Role } from './role.ts';
import { hertz, hzUnitOf, noVoltsIn, thdUnitOf, voltsUnitOf } from './units.ts';
import { type ColumnWord, columnNames, columnWord } from './words.ts';

export interface Heading {
  /** Undefined where the words say nothing that is known. */
  readonly role: Role | undefined;
  /** Whether the name and, of values, the unit are said. What is not said has to be confirmed. */
  readonly isSaid: boolean;
  readonly why: string;
}

/** What the head of a column says. */
export function headingOf(text: string): Heading {
  const taken = partsOf(text);
  const { units, fixed, name } = taken;
  const noVolts = units.map(noVoltsIn).find((one) => one !== undefined);
  if (noVolts !== undefined) return { role: { is: 'note' }, isSaid: true, why: `left out: ${noVolts}` };
  const hasFixed = Object.keys(fixed).length > 0;
  const word = columnWord(name) ?? (name === '' ? undefined : columnWord(name.replace(/s$/, '')));
  if (word !== undefined) return headingOfWord(word, taken, 'by its name');
  if (name === '') {
    if (units.some(hzUnitOf) && !hasFixed && text.trim() !== '')
      return headingOfWord('hz', taken, 'by its unit');
    if (units.some(voltsUnitOf) || hasFixed) return headingOfWord('volts', taken, 'by its head');
    if (units.some((unit) => thdUnitOf(unit) === '%')) {
      return { ...headingOfWord('thd', taken, 'by its unit'), isSaid: false };
    }
    return { role: undefined, isSaid: false, why: 'it has no name' };
  }
  const guess = name.length > 3 ? nearest(name, columnNames) : undefined;
  const meant = guess === undefined ? undefined : columnWord(guess);
  if (guess === undefined || meant === undefined) {
    return { role: undefined, isSaid: false, why: 'its name is not known' };
  }
  return { ...headingOfWord(meant, taken, `taken for “${guess}”`), isSaid: false };
}

interface Parts {
  readonly units: readonly string[];
  readonly fixed: Fixed;
  /** What is left, in lower case. */
  readonly name: string;
}

function headingOfWord(word: ColumnWord, { units, fixed, name }: Parts, why: string): Heading {
  switch (word) {
    case 'volts':
    case 'level': {
      const own = /^(volts?|volts ?rms|v ?rms|voltios|rms volts|output volts)$/.test(name) ? 'V' : undefined;
      const unit = units.map(voltsUnitOf).find((one) => one !== undefined) ?? own;
      return { role: { is: 'volts', unit, fixed }, isSaid: unit !== undefined, why };
    }
    case 'thd': {
      const unit =
        units.map(thdUnitOf).find((one) => one !== undefined) ?? (/percent/.test(name) ? '%' : undefined);
      return { role: { is: 'thd', unit, fixed }, isSaid: unit !== undefined, why };
    }
    case 'thd+n':
      return {
        role: { is: 'note' },
        isSaid: true,
        why: 'left out: THD+N is not THD, the noise is in it',
      };
    case 'hz': {
      const unit = hzUnitOf(name) ?? units.map(hzUnitOf).find((one) => one !== undefined);
      return { role: { is: 'hz', unit: unit ?? 'Hz' }, isSaid: true, why };
    }
    default:
      return { role: { is: word }, isSaid: true, why };
  }
}

const isUnit = (text: string): boolean =>
  [voltsUnitOf, thdUnitOf, hzUnitOf, noVoltsIn].some((of) => of(text) !== undefined);

/** Takes units in brackets or at the end, outputs, frequencies, steps and numbers of repeats out of a head. */
function partsOf(text: string): Parts {
  const units: string[] = [];
  const fixed: { -readonly [K in keyof Fixed]: Fixed[K] } = {};
  let rest = text.normalize('NFC').replace(/\s+/g, ' ').toLowerCase().slice(0, 200);
  rest = rest.replace(/[([{]([^)\]}]*)[)\]}]/g, (_, inner: string) => {
    const pieces = inner.split(/[,;/ ]+/).filter((piece) => piece !== '');
    if (isUnit(inner)) units.push(inner);
    else if (pieces.some(isUnit)) units.push(...pieces.filter(isUnit));
    else return ` ${inner} `;
    return ' ';
  });
  rest = rest.replace(
    /(?<![\p{L}\d.,])(\d[\d.,]*)\s*(hz|khz|k)(?![\p{L}\d])/gu,
    (whole, figures: string, unit: string) => {
      const hz = audible(figures, unit);
      if (hz === undefined) return whole;
      fixed.hz = hz;
      return ' ';
    },
  );
  rest = rest.replace(
    /(?<!\p{L})(steps?|vol(?:ume)?|volume step|stufe|schritt|lautstärke|paso|volumen)\.?\s*#?(\d{1,3})(?!\d|[.,]\d|\s*k?hz)/gu,
    (_, __, number: string) => {
      fixed.step = Number(number);
      return ' ';
    },
  );
  rest = rest.replace(
    /(?<!\p{L})(repeat|rep|run|take|reading|try|messung|durchgang|wiederholung|lectura|pasada|repetición)\.?\s*#?(\d{1,3})(?!\d|[.,]\d)|#\s*(\d{1,3})(?!\d)/gu,
    (_, __, number: string | undefined, other: string | undefined) => {
      fixed.repeat = Number(number ?? other);
      return ' ';
    },
  );
  let words = rest
    .split(/[\s,;:/|=_]+|(?<!\p{L})-+|-+(?!\p{L})/u)
    .filter((word) => word !== '' && !/^(in|at|bei|a|en|the|of|@|per|measured at)$/.test(word));
  // A lone “V” or “%” is a unit, “Hz” is a name.
  const last = words.at(-1) ?? '';
  const lastTwo = words.slice(-2).join(' ');
  if (columnWord(words.join(' ')) !== undefined) {
    // A name as it stands, “Hz” and “Volts rms” among them.
  } else if (words.length > 2 && isUnit(lastTwo)) {
    units.push(lastTwo);
    words = words.slice(0, -2);
  } else if (words.length > 1 && isUnit(last)) {
    units.push(last);
    words = words.slice(0, -1);
  } else if (words.length === 1 && (voltsUnitOf(last) ?? thdUnitOf(last))) {
    units.push(last);
    words = [];
  }
  for (let from = 0; from < words.length && !fixed.channel; from += 1) {
    for (const length of [2, 1]) {
      const channel = channelOf(words.slice(from, from + length).join(' '));
      // “r” alone is rear or right.
      if (!channel || words.slice(from, from + length).join('').length < 2) continue;
      fixed.channel = channel;
      words.splice(from, length);
      break;
    }
  }
  if (fixed.channel && words.length > 0)
    words = words.filter((word) => !/^(ch|channel|output|out|kanal|ausgang|canal|salida)$/.test(word));
  return { units, fixed, name: words.join(' ').replace(/[.:]+$/, '') };
}

/** Hertz where only one way of reading the figures can be heard; undefined where both can, or none. */
function audible(figures: string, unit: string): number | undefined {
  const evidence = evidenceOf(figures);
  const signs = evidence === 'either' ? (['point', 'comma'] as const) : ([undefined] as const);
  const heard = signs
    .map((sign) => numberOf(figures, sign))
    .flatMap((number) => (number === undefined ? [] : [hertz(number, hzUnitOf(unit) ?? 'Hz')]))
    .filter((hz) => hz >= 10 && hz <= 40_000);
  return heard.length === 1 ? heard[0] : undefined;
}

/** A head that is nothing but a number: 63, 12. */
export function bareNumber(text: string): number | undefined {
  const figure = figureOf(text);
  return figure && figure.unit === '' && figure.bound === '' ? numberOf(figure.text, undefined) : undefined;
}
