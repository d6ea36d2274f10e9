/** Slips in what people write into a cell that FEEL would read as something else, or would have no words for. */
import { mostTestCharacters } from '../sets/read-test.ts';
import type { ValueType } from '../table.ts';

export interface WordFault {
  readonly message: string;
  readonly help: string;
  readonly unknown?: { readonly name: string; readonly known: readonly string[] };
}

/** A slip in a test as it is written in an entry; undefined where none is seen before FEEL reads it. */
export function wordFault(written: string, type: ValueType): WordFault | undefined {
  const text = written.trim();
  // Longer ones are refused as a whole, by their length.
  if (text === '' || text === '-' || text.length > mostTestCharacters) return undefined;
  if (/[≤≥≠–]/.test(text)) return specialSign(text);
  switch (type.kind) {
    case 'choice':
      return strangeChoice(text, type.values);
    case 'yes-no':
      return neitherYesNorNo(text);
    case 'number':
      return (
        orderInWords(text) ?? decimalComma(text) ?? numberWithUnit(text, type.unit) ?? rangeInWords(text)
      );
    default:
      return undefined;
  }
}

function specialSign(text: string): WordFault {
  const plain = text
    .replaceAll('≤', '<=')
    .replaceAll('≥', '>=')
    .replaceAll('≠', '!=')
    .replace(/\s*–\s*/g, '..');
  return {
    message: `“${text}” has a sign in it that tests do not know.`,
    help: `Write it with the signs of the keyboard: "${plain.includes('..') ? `[${plain}]` : plain}".`,
  };
}

/** Words of a list of values, without quotes and without `not(…)`. */
function wordsOf(text: string): string[] {
  const inner = /^not\s*\((.*)\)$/s.exec(text)?.[1] ?? text;
  return inner.split(',').map((part) => part.trim().replace(/^"(.*)"$/, '$1'));
}

function strangeChoice(text: string, values: readonly string[]): WordFault | undefined {
  const isWord = (word: string): boolean => /^[\p{L}\p{N}][\p{L}\p{N} _/+.-]*$/u.test(word);
  const stranger = wordsOf(text).find((word) => isWord(word) && word !== 'null' && !values.includes(word));
  if (stranger === undefined) return undefined;
  return {
    message: `“${stranger}” is no value of this column.`,
    help: `It can be: ${values.join(', ')}.`,
    unknown: { name: stranger, known: values },
  };
}

function neitherYesNorNo(text: string): WordFault | undefined {
  const known = ['yes', 'no', 'true', 'false', 'null', '-'];
  const stranger = wordsOf(text).find((word) => !known.includes(word.toLowerCase()));
  if (stranger === undefined) return undefined;
  return {
    message: `This column is yes or no, and “${stranger}” is neither.`,
    help: 'Write "yes" or "no", or leave the column out where either will do.',
  };
}

/** `< 4,2` is two tests to FEEL, below 4 or exactly 2. */
function decimalComma(text: string): WordFault | undefined {
  const comma = /(?:[<>=]=?\s*-?\d+|[[(]\s*-?\d+|\.\.\s*-?\d+),\d/.test(text);
  if (!comma) return undefined;
  return {
    message: `The comma in “${text}” parts two tests.`,
    help: `Use a point for decimals: "${text.replace(/(\d),(\d)/g, '$1.$2')}"; where two tests are meant, put a space after the comma.`,
  };
}

function numberWithUnit(text: string, unit: string | undefined): WordFault | undefined {
  const behind = /(\d)\s*((?:[%Ωµ]|\p{L})[\p{L}Ω/%]*)(?=\s*(?:[,)\]]|\.\.|$))/u.exec(text);
  if (!behind || /^\d\s*e\d/i.test(behind[0]) || text.includes('"')) return undefined;
  const plain = text.replace(/(\d)\s*(?:[%Ωµ]|\p{L})[\p{L}Ω/%]*(?=\s*(?:[,)\]]|\.\.|$))/gu, '$1');
  const own = unit === undefined ? '' : `: the column is in ${unit}`;
  return {
    message: `“${text}” has a unit in it, and tests hold numbers only.`,
    help:
      behind[2] === unit || unit === undefined
        ? `Write "${plain}"${own}.`
        : `Write the number alone${own}; if “${behind[2]}” is another unit, convert it first.`,
  };
}

/** `1 to 3`, `1-3`, `1 .. 3` without brackets. */
function rangeInWords(text: string): WordFault | undefined {
  const ends = /^(-?\d+(?:\.\d+)?)\s*(?:to|-|\.\.\.?|…)\s*(-?\d+(?:\.\d+)?)$/.exec(text);
  if (!ends) return undefined;
  return {
    message: `“${text}” cannot be read: a range stands in brackets.`,
    help: `Write "[${ends[1]}..${ends[2]}]"; a round bracket leaves the number beside it out.`,
  };
}

/** Signs and words people use for an order, and how tests write it. */
const orders: readonly (readonly [written: RegExp, sign: string])[] = [
  [/^(?:=<|at most|up to|no more than|not over)/i, '<='],
  [/^(?:=>|at least|from|no less than|not under)/i, '>='],
  [/^(?:under|below|less than|lower than|smaller than)/i, '<'],
  [/^(?:over|above|more than|greater than|higher than|larger than)/i, '>'],
  [/^(?:==|equals?|is)/i, ''],
];

/** `under 1`, `=< 1`, `< 1 or > 3`. */
function orderInWords(text: string): WordFault | undefined {
  if (text.includes('"')) return undefined;
  const parts = text.split(/\s*(?:,|\bor\b|\|\|)\s*/i);
  const plain = parts.map((part) => {
    const order = orders.find(([written]) => written.test(part));
    return order ? `${order[1]} ${part.replace(order[0], '').trim()}`.trim() : part;
  });
  const test = plain.join(', ');
  if (plain.every((part, index) => part === parts[index]) && !/\bor\b|\|\|/i.test(text)) return undefined;
  return {
    message: `“${text}” cannot be read: tests are written with signs.`,
    help: /^[-<>=\d., ]+$/.test(test) ? `Write "${test}".` : 'Write "< 4.2" for under, ">= 1" for at least.',
  };
}
