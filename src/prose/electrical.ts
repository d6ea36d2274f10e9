/** Finds numbers with electrical units in plain text. */

export interface ElectricalNumber {
  /** UTF-16 offsets into the text, the end exclusive. */
  readonly start: number;
  readonly end: number;
  /** As written, with its unit: `4.2 V`, `3–5 kHz`, `half a volt`. */
  readonly text: string;
}

// Every part is bounded, so that no text takes more than a fixed number of tries at each place.
const blank = '\\s{0,3}';
const digits = "(?:\\d[\\d.,'’\\u00a0\\u202f]{0,14}\\d|\\d)";
const number = `(?:[.,]?${digits}(?:[½⅓⅔¼¾]|/\\d{1,3}(?!\\d))?(?:[eE][-+−]?\\d{1,3}|\\s?[×x·]\\s?10(?:\\^[-+−]?\\d{1,3}|[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]{1,4}))?|[½⅓⅔¼¾⅛⅜⅝⅞])`;
const joiner = `${blank}(?:–|—|-|−|‐|‑|…|\\.{2,3}|to|up to|or|through|till|until|±|\\+/-|/|x|×)${blank}`;
/** Not the tail of a word, a code or another number. */
const beginning = '(?<![\\p{L}\\p{N}_])(?<![\\p{L}\\p{N}][-‐‑.,])';
const ending = '(?![\\p{L}\\p{N}])';
const quality =
  '(?:(?:clean|full|real|true|honest|good|more|further|peak|rms|root-mean-square|dc|ac|direct|alternating)\\s)?';

const symbols = [
  '[nµμumkM]?V(?:\\s?(?:rms|RMS|r\\.m\\.s\\.|pp|p-p|pk-pk|pk|peak|AC|DC|ac|dc))?',
  '[nµμumkM]?W(?:h|\\s?(?:rms|RMS))?',
  '[nµμumk]?A(?:h|rms|RMS)?',
  '[kM]?VA',
  '[mkM]?[\u03a9\u2126]',
  '[dD][Bb](?:FS|fs|SPL|[A-Za-z]|\\([A-Za-z]\\))?',
  '[mkKMG]?[Hh][Zz]',
  '[%‰]',
  '[pnµμum]?F',
  '[nµμum]H',
].join('|');
const words = [
  '(?:micro|milli|kilo)?-?(?:volts?|watts?|amperes?|ampères?)',
  '(?:milli|micro)?amps?',
  '(?:milli|kilo|mega)?-?ohms?|[kM]ohms?',
  '(?:volt|watt|ampere|amp)-?hours?',
  'decibels?',
  '(?:kilo|mega)?-?hertz',
  'per\\s?cent|pct',
  '(?:micro|nano|pico)?farads?',
  '(?:micro|milli)?henr(?:y|ies|ys)',
].join('|');
/** Written-out numbers count with written-out units. “Amp” is left out there: it is short for amplifier as well. */
const wordsAfterWords = words.replace('(?:milli|micro)?amps?|', '(?:milli|micro)amps?|');
const numeral =
  '(?:zero|nought|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|million|dozen|half|quarter|third|tenths?|hundredths?)';
const numerals = `${numeral}(?:[\\s-](?:(?:and|to|or|point|a)[\\s-])?${numeral}){0,6}`;

const range = `(?:[-−+±]\\s?)?${number}(?:${joiner}${number}){0,3}`;
const patterns: readonly RegExp[] = [
  new RegExp(`${beginning}${range}(?:${blank}|[-‐‑])(?:${symbols})${ending}`, 'gu'),
  // “12v”, “50w”: only where nothing stands between.
  new RegExp(`${beginning}${range}[mk]?[vw]${ending}`, 'gu'),
  new RegExp(`${beginning}${range}(?:${blank}|[-‐‑])${quality}(?:${words})${ending}`, 'giu'),
  new RegExp(
    `${beginning}${numerals}(?:\\s(?:of\\s)?an?)?[\\s-]${quality}(?:${wordsAfterWords})${ending}`,
    'giu',
  ),
];

/** One look for all of them together, whatever the case: most texts have none. */
const any = new RegExp(patterns.map(({ source }) => source).join('|'), 'iu');

/** Every number with an electrical unit, in the order of the text; a range counts as one. */
export function electricalNumbers(text: string): ElectricalNumber[] {
  if (!any.test(text)) return [];
  const found = patterns
    .flatMap((pattern) =>
      [...text.matchAll(pattern)].map((match) => ({
        start: match.index,
        end: match.index + match[0].length,
        text: match[0],
      })),
    )
    .sort((a, b) => a.start - b.start || b.end - a.end);
  let last = 0;
  return found.filter(({ start, end }) => {
    if (start < last) return false;
    last = end;
    return true;
  });
}

const unitAlone = new RegExp(`^(?:${symbols}|${words})$`, 'u');
const unitAtEnd = new RegExp(`(?:[([,/]|\\sin)\\s?(?:${symbols}|${words})\\s?[)\\]]?$`, 'u');

/** Whether a column heading says that its numbers carry an electrical unit: “V”, “Level (dB)”, “level in volts”. */
export function isElectricalUnit(heading: string): boolean {
  const text = heading.trim();
  return unitAlone.test(text) || unitAlone.test(text.toLowerCase()) || unitAtEnd.test(text);
}
