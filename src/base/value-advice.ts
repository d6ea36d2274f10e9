/** What to write instead: advice on numbers, dates and true/false that are not as a field wants them. */
import { dateForm, inFigures, trueOrFalse } from '../../schemas/index.ts';
import { factorTo, tidy, unitOfField } from './units.ts';

const isYes = /^(?:yes|y|on|true|1)$/i;
const isNo = /^(?:no|n|off|false|0)$/i;

/** For a field that must be true or false. */
export function booleanAdvice(input: unknown): string {
  const word = String(input).trim();
  if (isYes.test(word)) return `Write true, without quotes; ${clippedWord(input)} does not count as it.`;
  if (isNo.test(word)) return `Write false, without quotes; ${clippedWord(input)} does not count as it.`;
  return trueOrFalse;
}

function clippedWord(input: unknown): string {
  return typeof input === 'string' ? `“${input.slice(0, 20)}”` : String(input);
}

/** For a field that must be a number and holds text: what number, if it can be told. */
export function numberAdvice(text: string, key: string): string {
  const plain = text
    .normalize('NFKC')
    .replace(/[\u2212\u2012-\u2014]/g, '-')
    .trim();
  if (plain === '') return 'Fill it in.';
  if (/^[-+]?\d+(?:\.\d+)?$/.test(plain)) {
    return plain === text.trim()
      ? `Take the quotes off: ${plain}.`
      : `Write the number with a plain sign: ${plain}.`;
  }
  if (/^-?\d{1,3}(?:,\d{3})+$/.test(plain)) {
    const asThousands = plain.replaceAll(',', '');
    const commas = plain.split(',').length - 1;
    if (commas > 1 || !/^-?0/.test(plain)) {
      const asDecimal =
        commas === 1 ? ` or, if the comma stands before decimals, ${plain.replace(',', '.')}` : '';
      return `Write the number without a comma: ${asThousands}${asDecimal}.`;
    }
  }
  if (/^-?\d+,\d+$/.test(plain)) return `Use a point for the decimals: ${plain.replace(',', '.')}.`;
  if (/^-?\d{1,3}(?:[ _'’]\d{3})+(?:\.\d+)?$/.test(plain)) {
    return `Write the figures without gaps: ${plain.replace(/[ _'’]/g, '')}.`;
  }
  const parts = /^[±~≈<>≤≥]?\s*(-?\d+(?:[.,]\d+)?)\s*(.*)$/su.exec(plain);
  if (!parts?.[1]) return inFigures;
  const number = parts[1].replace(',', '.');
  return unitAdvice(number, parts[2] ?? '', key);
}

function unitAdvice(number: string, written: string, key: string): string {
  const unit = unitOfField(key);
  if (written === '') return `Write the number alone: ${number}.`;
  if (!unit) return `Write the number alone: ${number}.`;
  const factor = factorTo(unit, written);
  if (factor === 1)
    return `Write the number alone (${number}): the field is in ${unit.name}, as its name says.`;
  if (factor !== undefined) {
    const converted = tidy(Number(number) * factor);
    return `Write ${converted}: the field is in ${unit.name}, and ${number} ${written} is ${converted} ${unit.symbol}.`;
  }
  return `Write the number alone, in ${unit.name}: if “${written.slice(0, 20)}” is another unit, convert it first.`;
}

/**
 * For a number outside the bounds of its field: the value a common slip was made from, if `fits` takes it.
 * Slips: a lost minus sign, another unit, a year of two figures, a decimal point off by one place.
 */
export function slipAdvice(
  value: number,
  key: string,
  isWhole: boolean,
  fits: (value: number) => boolean,
): string {
  if (/year$/i.test(key) && value >= 0 && value < 100) {
    return `Write all four figures of the year, such as ${(value < 70 ? 2000 : 1900) + value}.`;
  }
  if (value > 0 && fits(-value)) return `Check the sign: is it -${value}?`;
  if (isWhole) return 'Check the number, figure by figure.';
  const check = 'Check the decimal point and the unit.';
  const shifted = [tidy(value / 10), tidy(value * 10)].find(fits);
  if (shifted !== undefined) return `${check} Perhaps ${shifted} is meant.`;
  const unit = unitOfField(key);
  const [other, factor] = Object.entries(unit?.others ?? {})[0] ?? [];
  if (unit && other && factor) {
    const converted = tidy(value * factor);
    if (fits(converted))
      return `${check} If it is in ${other}, write ${converted}: the field is in ${unit.name}.`;
  }
  return check;
}

/** For a field that must be a date: what date, if it can be told. */
export function dateAdvice(written: string): string {
  const text = written.trim();
  const day = (year: string, month: string, dayOfMonth: string): string =>
    `${year}-${month.padStart(2, '0')}-${dayOfMonth.padStart(2, '0')}`;
  const compact = /^(\d{4})(\d{2})(\d{2})$/.exec(text);
  const yearFirst = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})(?:$|[T ])/.exec(text);
  const [, year, month, dayOfMonth] = compact ?? yearFirst ?? [];
  if (year && month && dayOfMonth) {
    const iso = day(year, month, dayOfMonth);
    return isDay(iso) ? `Write ${iso}.` : `There is no such day in the calendar; write ${dateForm}.`;
  }
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text);
  if (dotted?.[1] && dotted[2] && dotted[3]) {
    const iso = day(dotted[3], dotted[2], dotted[1]);
    if (isDay(iso)) return `Write ${iso}, if the day stands first here.`;
  }
  return /^\d{4}(?:-\d{1,2})?$/.test(text) ? `Write the whole date: ${dateForm}.` : `Write ${dateForm}.`;
}

function isDay(iso: string): boolean {
  const time = Date.parse(`${iso}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(iso);
}
