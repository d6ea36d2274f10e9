/** FEEL expressions and tests of a file, evaluated by the FEEL library, with their faults in words. */
import { evaluate, FeelDate, FeelDateTime, FeelDuration, FeelTime, toFeel, unaryTest } from 'feelin';
import { UnusableFile } from '../file-fault.ts';
import type { Value } from '../table.ts';
import type { FeelText } from './model.ts';

/** What FEEL knows by name. */
export type Context = Readonly<Record<string, unknown>>;

/** A FEEL value as JSON: dates, times and durations are their ISO 8601 texts. */
export type PlainValue = Value | readonly PlainValue[] | { readonly [name: string]: PlainValue };

interface Warning {
  readonly type: string;
  readonly message: string;
  readonly position?: { readonly from: number; readonly to: number } | undefined;
}

/**
 * The value of an expression; what the library warns of goes to `notes`.
 * @throws UnusableFile where it cannot be read, or names something that is not there.
 */
export function evaluated(expression: FeelText, context: Context, notes: Set<string>): unknown {
  return guarded(expression, notes, () => evaluate(expression.text, { ...context }));
}

/**
 * Whether a value passes a unary test.
 * @throws UnusableFile where the test cannot be read, or names something that is not there.
 */
export function passes(test: FeelText, value: unknown, context: Context, notes: Set<string>): boolean {
  if (test.text === '-') return true;
  return guarded(test, notes, () => unaryTest(test.text, { ...context, '?': value })) === true;
}

function guarded(
  { text, span }: FeelText,
  notes: Set<string>,
  run: () => { readonly value: unknown; readonly warnings: readonly Warning[] },
): unknown {
  let result: ReturnType<typeof run>;
  try {
    result = run();
  } catch (error) {
    if (error instanceof RangeError) {
      throw new UnusableFile(span, `“${shortened(text)}” lies too deep in brackets.`, 'Write it in parts.');
    }
    // The library throws where its grammar ends.
    throw new UnusableFile(span, `“${shortened(text)}” is no FEEL that can be read.`, feelHelp(text));
  }
  for (const warning of result.warnings) {
    if (warning.type === 'NO_VARIABLE_FOUND' || warning.type === 'NO_FUNCTION_FOUND') {
      const name = text.slice(warning.position?.from ?? 0, warning.position?.to ?? text.length);
      throw new UnusableFile(
        span,
        `“${shortened(text)}” names “${shortened(name)}”, which is not known here.`,
        'Write texts in double quotes, and names as the inputs and decisions it requires are called.',
      );
    }
    notes.add(
      result.value === null
        ? `“${shortened(text)}” comes to nothing (null): a value it uses is not known, or of another kind.`
        : `“${shortened(text)}”: ${warning.message}.`,
    );
  }
  return result.value;
}

function feelHelp(text: string): string {
  if (/[“”„‘’]/.test(text)) return 'Write texts in straight double quotes: "fixed".';
  if (/\d,\d/.test(text)) return 'Write numbers with a point: 3.9.';
  return 'Check brackets, quotes and operators.';
}

function shortened(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > 60 ? `${line.slice(0, 57)}…` : line;
}

/** @throws UnusableFile where the value is none that can be shown, such as a function. */
export function plainValue(value: unknown, of: FeelText): PlainValue {
  if (value === null || value === undefined) return null;
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value;
  if (
    value instanceof FeelDate ||
    value instanceof FeelTime ||
    value instanceof FeelDateTime ||
    value instanceof FeelDuration
  ) {
    return JSON.parse(JSON.stringify(value)) as string;
  }
  if (Array.isArray(value)) return value.map((one) => plainValue(one, of));
  if (Object.getPrototypeOf(value) === Object.prototype) {
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, plainValue(one, of)]));
  }
  throw new UnusableFile(
    of.span,
    `“${shortened(of.text)}” gives ${shortened(String(toFeel(value)))}, which is no answer.`,
    'Let it give a number, a text, a date, yes or no, or a list of such.',
  );
}
