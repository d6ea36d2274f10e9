/** Reads a unary test (DMN 1.3, 7.3.14) into the set of values it lets through, on the tree of the FEEL library. */
import { parseUnaryTests } from 'feelin';
import type { ValueType } from '../table.ts';
import { daysOf } from './days.ts';
import {
  complement,
  everything,
  interval,
  nothing,
  oneValue,
  onlyMissing,
  union,
  type ValueSet,
} from './value-set.ts';

type Node = ReturnType<typeof parseUnaryTests>['topNode'];

export type ReadTest =
  /** A simple unary test of S-FEEL. */
  | { readonly set: ValueSet; readonly fault?: undefined; readonly beyond?: undefined }
  /** Sound FEEL, but more than a simple test: it can be evaluated only. */
  | { readonly beyond: string; readonly set?: undefined; readonly fault?: undefined }
  | {
      readonly fault: { readonly message: string; readonly help: string };
      readonly set?: undefined;
      readonly beyond?: undefined;
    };

/** Thrown within this file only, where a test is no simple one or makes no sense. */
class NotSimple extends Error {}
class Wrong extends Error {
  readonly help: string;
  constructor(message: string, help: string) {
    super(message);
    this.help = help;
  }
}

/** Longer tests are not read: nobody could, and the time it takes grows faster than they do. */
export const mostTestCharacters = 1000;

/** What a cell of a column of this type lets through. */
export function readTest(text: string, type: ValueType): ReadTest {
  if (text.length > mostTestCharacters) {
    const message = `This test has ${text.length} characters; the most is ${mostTestCharacters}.`;
    return { fault: { message, help: 'Ask for ranges, or make several rules of this one.' } };
  }
  const tree = parseUnaryTests(text, {}, undefined);
  const broken = brokenAt(tree.topNode);
  if (broken !== undefined) return { fault: notFeel(text, broken) };
  const read = new TestReader(text, type);
  try {
    return { set: read.tests(tree.topNode) };
  } catch (error) {
    if (error instanceof NotSimple) return { beyond: error.message };
    if (error instanceof Wrong) return { fault: { message: error.message, help: error.help } };
    throw error;
  }
}

/** How a test may be written, for messages. */
export const testForms =
  'A test is “-” for any value, a value, “< 4.2”, “>= 1”, a range such as “[1..3]” or “(1..3)”, several of them with commas, or “not(…)”.';

function brokenAt(top: Node): number | undefined {
  const cursor = top.cursor();
  do {
    if (cursor.type.isError) return cursor.from;
  } while (cursor.next());
  return undefined;
}

function notFeel(text: string, from: number): { message: string; help: string } {
  const rest = text.slice(from).trim();
  const message =
    text.trim() === ''
      ? 'This test is empty.'
      : rest === ''
        ? `“${text}” ends too early.`
        : `“${text}” cannot be read from “${rest}” on.`;
  return { message, help: testForms };
}

class TestReader {
  readonly #text: string;
  readonly #type: ValueType;

  constructor(text: string, type: ValueType) {
    this.#text = text;
    this.#type = type;
  }

  tests(top: Node): ValueSet {
    const [first, ...rest] = children(top);
    if (first?.name === 'Wildcard') return everything;
    const positive = [first, ...rest].find((one) => one?.name === 'PositiveUnaryTests');
    if (!positive) throw new NotSimple(this.#text);
    const set = children(positive)
      .map((one) => this.#test(one))
      .reduce(union, nothing);
    return first?.name === 'not' ? complement(set, this.#isOrdered) : set;
  }

  get #isOrdered(): boolean {
    return this.#type.kind === 'number' || this.#type.kind === 'date';
  }

  #test(node: Node): ValueSet {
    const [inner] = children(node);
    if (!inner) throw new NotSimple(this.#text);
    if (inner.name === 'null') return onlyMissing;
    if (inner.name === 'SimplePositiveUnaryTest') return this.#simple(inner);
    return oneValue(this.#checked(this.#literal(inner)));
  }

  #simple(node: Node): ValueSet {
    const [first, second] = children(node);
    if (first?.name === 'Interval') return this.#range(first);
    if (first?.name !== 'CompareOp' || !second) throw new NotSimple(this.#text);
    const operator = this.#of(first).trim();
    if (second.name === 'null') {
      if (operator === '=') return onlyMissing;
      if (operator === '!=') return complement(onlyMissing, this.#isOrdered);
      throw new NotSimple(this.#text);
    }
    const value = this.#checked(this.#literal(second));
    if (operator === '=') return oneValue(value);
    // FEEL: null is unequal to every value.
    if (operator === '!=') return complement(oneValue(value), this.#isOrdered);
    if (typeof value !== 'number') {
      throw new Wrong(`“${this.#text}” asks for an order, but this column has none.`, testForms);
    }
    const inf = Number.POSITIVE_INFINITY;
    if (operator === '<') return interval(-inf, false, value, false);
    if (operator === '<=') return interval(-inf, false, value, true);
    if (operator === '>') return interval(value, false, inf, false);
    return interval(value, true, inf, false);
  }

  #range(node: Node): ValueSet {
    const parts = children(node);
    const [open, close] = [parts[0], parts.at(-1)];
    const ends = parts
      .filter((one) => /Literal$/.test(one.name))
      .map((one) => this.#checked(this.#literal(one)));
    const [low, high] = ends;
    if (!open || !close || typeof low !== 'number' || typeof high !== 'number')
      throw new NotSimple(this.#text);
    const set = interval(low, this.#of(open) === '[', high, this.#of(close) === ']');
    if (set === nothing) {
      const help =
        low > high ? 'Write the lower end first.' : 'Write closed ends: “[3..3]”, or the value alone.';
      throw new Wrong(`No value lies in “${this.#of(node)}”.`, help);
    }
    return set;
  }

  #literal(node: Node): number | string | boolean {
    const text = this.#of(node);
    if (node.name === 'NumericLiteral') {
      const number = Number(text.replace(/\s/g, ''));
      // FEEL has no exponents; the library reads “1e3” as something that equals nothing.
      if (!/^-?\s*(\d+(\.\d+)?|\.\d+)$/.test(text)) {
        throw new Wrong(`“${text}” is no number as tables write them.`, `Write it in full: ${number}.`);
      }
      return number;
    }
    if (node.name === 'StringLiteral') return unquoted(text);
    if (node.name === 'BooleanLiteral') return text === 'true';
    if (node.name === 'DateTimeLiteral') {
      const date = /^(?:date\s*\(\s*|@)("(?:[^"\\]|\\.)*")\s*\)?$/.exec(text)?.[1];
      if (date === undefined) throw new NotSimple(text);
      const days = daysOf(unquoted(date));
      if (days === undefined) throw new Wrong(`${text} is no date.`, 'Write date("2026-03-14").');
      if (this.#type.kind !== 'date')
        throw new Wrong(`${text} is a date, but this column holds ${heldBy(this.#type)}.`, testForms);
      return days;
    }
    throw new NotSimple(text);
  }

  #checked(value: number | string | boolean): number | string | boolean {
    const { kind } = this.#type;
    const fits =
      kind === 'number' || kind === 'date'
        ? typeof value === 'number'
        : kind === 'yes-no'
          ? typeof value === 'boolean'
          : typeof value === 'string';
    if (!fits) {
      throw new Wrong(
        `“${this.#text}” does not fit this column: it holds ${heldBy(this.#type)}.`,
        hintFor(this.#type),
      );
    }
    return value;
  }

  #of(node: Node): string {
    return this.#text.slice(node.from, node.to);
  }
}

function children(node: Node): Node[] {
  const all: Node[] = [];
  for (let one = node.firstChild; one; one = one.nextSibling) all.push(one);
  return all;
}

function unquoted(text: string): string {
  return text.slice(1, -1).replace(/\\(.)/g, (_, one: string) => ({ n: '\n', t: '\t', r: '\r' })[one] ?? one);
}

/** What a column holds, in words. */
export function heldBy(type: ValueType): string {
  switch (type.kind) {
    case 'number':
      return type.unit === undefined ? 'numbers' : `numbers in ${type.unit}`;
    case 'date':
      return 'dates';
    case 'choice':
      return `one of ${type.values.map((one) => `“${one}”`).join(', ')}`;
    case 'text':
      return 'texts';
    case 'yes-no':
      return 'yes or no';
  }
}

function hintFor(type: ValueType): string {
  switch (type.kind) {
    case 'number':
      return 'Write a number without its unit: “< 4.2”, “[1..3]”.';
    case 'date':
      return 'Write dates as date("2026-03-14").';
    case 'yes-no':
      return 'Write true, false or “-”.';
    default:
      return 'Write texts in double quotes: "fixed", "fading".';
  }
}
