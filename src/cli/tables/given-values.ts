/** What `--input 'clean volts=3.9±0.15'` says: values by the names of a table’s inputs, each of its type. */
import { evaluate } from 'feelin';
import { CannotRun, nearest } from '../../base/index.ts';
import { type FeelType, likeName } from '../../tables/dmn/index.ts';
import { daysOf } from '../../tables/sets/days.ts';

/** An input as far as values for it are read. */
export interface Asked {
  readonly name: string;
  readonly label: string;
  readonly type: FeelType;
}

/** A value, with its expanded uncertainty where one is given. */
export interface GivenValue {
  readonly value: unknown;
  readonly uncertainty: number | undefined;
}

/** By input name. @throws CannotRun where a name is not known or a value not of its type. */
export function givenValues(
  texts: readonly string[],
  inputs: readonly Asked[],
): ReadonlyMap<string, GivenValue> {
  const given = new Map<string, GivenValue>();
  for (const text of texts) {
    const equals = text.indexOf('=');
    if (equals < 1) {
      throw new CannotRun(
        `--input “${text}” does not say which input has which value.`,
        `Write the name, “=” and the value${inputs[0] ? `: --input '${inputs[0].name}=…'` : ''}.`,
      );
    }
    const input = inputNamed(text.slice(0, equals).trim(), inputs);
    if (given.has(input.name)) {
      throw new CannotRun(`“${input.name}” is given twice.`, 'Give each input one value.');
    }
    given.set(input.name, valueOfText(text.slice(equals + 1).trim(), input));
  }
  return given;
}

function inputNamed(name: string, inputs: readonly Asked[]): Asked {
  const wanted = likeName(name);
  const found =
    inputs.find((one) => one.name === name) ??
    inputs.find((one) => likeName(one.name) === wanted) ??
    inputs.find((one) => likeName(one.label) === wanted);
  if (found) return found;
  const alike = nearest(
    wanted,
    inputs.map((one) => likeName(one.name)),
  );
  const guess = inputs.find((one) => likeName(one.name) === alike)?.name;
  const all = inputs.map((one) => `“${one.name}”`).join(', ');
  throw new CannotRun(
    `There is no input “${name}”.`,
    `${guess === undefined ? '' : `Did you mean “${guess}”? `}${all === '' ? 'This decision takes none.' : `The inputs are: ${all}.`}`,
  );
}

/** `null`, or a value of the input’s type. */
function valueOfText(text: string, input: Asked): GivenValue {
  const exact = (value: unknown): GivenValue => ({ value, uncertainty: undefined });
  const { type } = input;
  if (text === '') {
    throw wrong(input, 'nothing', `Write a value after “=”, or null where it is not known.`);
  }
  if (text === 'null') return exact(null);
  switch (type.kind) {
    case 'number':
      return numberValue(text, input, type);
    case 'yes-no':
      if (/^(yes|true)$/i.test(text)) return exact(true);
      if (/^(no|false)$/i.test(text)) return exact(false);
      throw wrong(input, `“${text}”`, 'It is yes or no.');
    case 'date':
      return exact(dateValue(text, input));
    case 'choice': {
      const value = unquotedText(text);
      if (type.values.includes(value)) return exact(value);
      const guess = nearest(value, type.values);
      const all = type.values.map((one) => `“${one}”`).join(', ');
      throw wrong(
        input,
        `“${text}”`,
        `${guess === undefined ? '' : `Did you mean “${guess}”? `}It is one of ${all}.`,
      );
    }
    case 'text':
      return exact(unquotedText(text));
    case 'any':
      return anyValue(text, input);
    case 'structure':
      return exact(partsOf(text, input, type.name));
    default:
      return exact(temporalValue(text, input, type.kind));
  }
}

const number = String.raw`[+\-−]?(?:\d+(?:\.\d+)?|\.\d+)`;
const unitAfter = String.raw`((?![eE][+-]?\d)[^\d\s±+.,].*)?`;
const numberAlone = new RegExp(`^(${number})\\s*${unitAfter}$`);
const numberWithin = new RegExp(`^(${number})\\s*(?:±|\\+\\s*/?\\s*-)\\s*(${number})\\s*${unitAfter}$`);

function numberValue(text: string, input: Asked, type: FeelType & { kind: 'number' }): GivenValue {
  const within = numberWithin.exec(text);
  const [, estimate, uncertaintyText, withinUnit] = within ?? [];
  const [, alone, aloneUnit] = within ? [] : (numberAlone.exec(text) ?? []);
  const written = estimate ?? alone;
  if (written === undefined) {
    const comma = /^[+-]?\d+,\d+$/.exec(text)?.[0];
    throw wrong(
      input,
      `“${text}”`,
      comma === undefined
        ? `It is a number${type.unit === undefined ? '' : ` in ${type.unit}`}: ${input.name}=3.9, or ${input.name}=3.9±0.15.`
        : `Write the number with a point: ${comma.replace(',', '.')}.`,
    );
  }
  const unit = (withinUnit ?? aloneUnit)?.trim();
  if (unit !== undefined && unit !== type.unit) {
    throw wrong(
      input,
      `“${text}”`,
      type.unit === undefined ? 'Write the number alone.' : `It is in ${type.unit}: convert it.`,
    );
  }
  const value = numberOf(written);
  const uncertainty = uncertaintyText === undefined ? undefined : numberOf(uncertaintyText);
  if (uncertainty !== undefined && uncertainty < 0) {
    throw wrong(input, `“${text}”`, 'What follows ± is the half-width: it is not below zero.');
  }
  const { least, most } = type;
  if ((least !== undefined && value < least) || (most !== undefined && value > most)) {
    const range =
      least === undefined
        ? `at most ${most}`
        : most === undefined
          ? `at least ${least}`
          : `${least} to ${most}`;
    throw wrong(input, `“${text}”`, `It is ${range}.`);
  }
  if (type.whole) {
    const [low, high] = [value - (uncertainty ?? 0), value + (uncertainty ?? 0)];
    if (Math.floor(high) < Math.ceil(low)) throw wrong(input, `“${text}”`, 'It is a whole number.');
  }
  return { value, uncertainty };
}

function numberOf(text: string): number {
  return Number(text.replace('−', '-').replace('+', ''));
}

function dateValue(text: string, input: Asked): unknown {
  const date = /^(?:date\(\s*)?"?(\d{4}-\d{2}-\d{2})"?\)?$/.exec(text)?.[1];
  if (date !== undefined && daysOf(date) !== undefined) return date;
  throw wrong(input, `“${text}”`, 'It is a date, written year-month-day: 2026-03-14.');
}

/** An input that says no type: what it looks like. Texts that look like something else stand in quotes. */
function anyValue(text: string, input: Asked): GivenValue {
  if (numberWithin.test(text)) return numberValue(text, input, { kind: 'number' });
  if (new RegExp(`^${number}$`).test(text)) return { value: numberOf(text), uncertainty: undefined };
  if (/^(true|false|yes|no)$/i.test(text))
    return { value: /^(true|yes)$/i.test(text), uncertainty: undefined };
  if (/^[[{].*[\]}]$/s.test(text)) return { value: partsOf(text, input, undefined), uncertainty: undefined };
  if (daysOf(text) !== undefined) return { value: evaluate(`date("${text}")`).value, uncertainty: undefined };
  return { value: unquotedText(text), uncertainty: undefined };
}

/** A value made of parts, written as FEEL or JSON has it: `{age: 5, "name": "x"}`, `[1, 2]`. */
function partsOf(text: string, input: Asked, type: string | undefined): unknown {
  const help = `Write its parts in braces: '${input.name}={age: 40, name: "x"}'.`;
  try {
    const { value, warnings } = evaluate(text);
    if (value !== null && typeof value === 'object' && warnings.length === 0) return value;
  } catch {
    // Not FEEL: told below, in words.
  }
  throw wrong(input, `“${text}”`, type === undefined ? help : `It is made of parts (${type}). ${help}`);
}

function temporalValue(text: string, input: Asked, kind: 'time' | 'date and time' | 'duration'): unknown {
  const examples = { time: '14:30:00', 'date and time': '2026-03-14T14:30:00', duration: 'P1DT2H' };
  const { value } = evaluate(`${kind}(${JSON.stringify(unquotedText(text))})`);
  if (value !== null) return value;
  throw wrong(input, `“${text}”`, `It is a ${kind}: ${examples[kind]}.`);
}

function unquotedText(text: string): string {
  return /^"[^"]*"$|^'[^']*'$/.test(text) ? text.slice(1, -1) : text;
}

function wrong(input: Asked, what: string, help: string): CannotRun {
  return new CannotRun(`“${input.name}” cannot be ${what}.`, help);
}
