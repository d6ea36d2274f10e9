/** Values as FEEL writes them, and the values a column may hold as unary tests. */
import { parseExpression } from 'feelin';
import { daysOf } from '../sets/days.ts';
import type { Value, ValueType } from '../table.ts';

/** A value as a FEEL literal. A number is written in full: FEEL has no exponents. */
export function feelLiteral(value: Value, type: ValueType): string {
  if (value === null) return 'null';
  if (typeof value === 'number') return inFull(value);
  if (typeof value === 'boolean') return String(value);
  return type.kind === 'date' ? `date(${quoted(value)})` : quoted(value);
}

function quoted(text: string): string {
  return JSON.stringify(text);
}

function inFull(value: number): string {
  const text = String(value);
  const parts = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(text);
  if (!parts) return text;
  const [, sign = '', first = '', more = '', exponent = '0'] = parts;
  const digits = first + more;
  const point = 1 + Number(exponent);
  if (point <= 0) return `${sign}0.${'0'.repeat(-point)}${digits}`;
  return sign + digits.padEnd(point, '0');
}

/** The values a type allows, as unary tests; undefined where every value of the type will do. */
export function allowedText(type: ValueType): string | undefined {
  if (type.kind === 'choice') return type.values.map(quoted).join(', ');
  if (type.kind !== 'number' && type.kind !== 'date') return undefined;
  const { least, most } = type;
  const written = (value: Value): string => feelLiteral(value, type);
  if (least !== undefined && most !== undefined) return `[${written(least)}..${written(most)}]`;
  if (least !== undefined) return `>= ${written(least)}`;
  return most === undefined ? undefined : `<= ${written(most)}`;
}

/** The value a FEEL text writes out; undefined where it is no literal of a number, text, date, yes or no, or null. */
export function literalOf(text: string): Value | undefined {
  const trimmed = text.trim();
  if (trimmed === 'null') return null;
  if (trimmed === 'true' || trimmed === 'false') return trimmed === 'true';
  if (/^-?\s*(\d+(\.\d+)?|\.\d+)$/.test(trimmed)) return Number(trimmed.replace(/\s/g, ''));
  const date = /^(?:date\s*\(\s*|@)("[^"]*")\s*\)?$/.exec(trimmed)?.[1];
  if (date !== undefined) return daysOf(date.slice(1, -1)) === undefined ? undefined : date.slice(1, -1);
  return /^"(?:[^"\\]|\\.)*"$/s.test(trimmed) ? unquoted(trimmed) : undefined;
}

/** The text a FEEL string literal stands for (DMN 1.3, 10.3.1.2, rule 33). */
export function unquoted(literal: string): string {
  const escapes: Readonly<Record<string, string>> = { n: '\n', t: '\t', r: '\r', b: '\b', f: '\f' };
  return literal
    .slice(1, -1)
    .replace(/\\(?:u([0-9a-fA-F]{4})|U([0-9a-fA-F]{6})|(.))/gs, (_, short, long, one: string | undefined) =>
      one === undefined
        ? String.fromCodePoint(Number.parseInt((short ?? long) as string, 16))
        : (escapes[one] ?? one),
    );
}

/** The members of a list of literals such as `"low", "high"`; undefined where one is no literal. */
export function literalsOf(text: string): Value[] | undefined {
  const members = text.match(/"(?:[^"\\]|\\.)*"|@"[^"]*"|\w+\s*\([^)]*\)|[^,\s][^,]*/gs) ?? [];
  const left = text.replace(/"(?:[^"\\]|\\.)*"|@"[^"]*"|\w+\s*\([^)]*\)|[^,\s][^,]*/gs, '');
  if (!/^[\s,]*$/.test(left)) return undefined;
  const values = members.map(literalOf);
  return values.every((one) => one !== undefined) ? values : undefined;
}

/** From where on a FEEL expression cannot be read; undefined where it can. Names it may use are keys of `context`. */
export function unreadableFrom(text: string, context: Readonly<Record<string, unknown>>): number | undefined {
  const cursor = parseExpression(text, context, undefined).topNode.cursor();
  do {
    if (cursor.type.isError) return cursor.from;
  } while (cursor.next());
  return undefined;
}
