/** Holds the data of an entry against its schema and says what is wrong in a contributor's words. */
import type { z } from 'zod';
import { capital, inQuotes, oneOf, sentence } from '../../schemas/index.ts';
import { clipped, fieldLabel, kindOf, wanted } from './field-words.ts';
import type { Finding } from './finding.ts';
import { nearest } from './nearest.ts';
import { accepts, isDateField, knownKeys, unionValues, valueAt } from './schema-walk.ts';
import { unitOfField } from './units.ts';
import { booleanAdvice, dateAdvice, numberAdvice, slipAdvice } from './value-advice.ts';
import type { DataPath, Positions } from './yaml.ts';

type Issue = z.core.$ZodIssue;

/** The validated data, or undefined with at least one finding that says why not. */
export interface Validation<T> {
  readonly data: T | undefined;
  readonly findings: readonly Finding[];
}

/** What every message about an entry is made from. */
interface Entry {
  readonly schema: z.ZodType;
  readonly data: unknown;
  readonly positions: Positions;
  readonly noun: string;
}

/** A message and its help, at the value of the path; of the rule `schema` unless another is named. */
interface Words {
  readonly message: string;
  readonly help: string;
  readonly rule?: string;
}

export function validate<T>(
  schema: z.ZodType<T>,
  data: unknown,
  positions: Positions,
  noun: string,
): Validation<T> {
  const entry: Entry = { schema, data, positions, noun };
  const result = schema.safeParse(data, { reportInput: true });
  const issues = result.success ? [] : result.error.issues;
  const named = new Set(issues.map((issue) => pathKey(issue.path)));
  const odd = positions.oddNumbers.filter((path) => !named.has(pathKey(path)));
  if (result.success && odd.length === 0) return { data: result.data, findings: [] };

  const missing = new Set(
    issues.filter((issue) => valueAt(data, issue.path) === undefined).map((issue) => pathKey(issue.path)),
  );
  const meant = new Map<string, string>();
  for (const issue of issues) {
    if (issue.code !== 'unrecognized_keys') continue;
    for (const key of issue.keys) {
      const guess = meantField(key, issue, entry, missing);
      if (guess) meant.set(pathKey([...issue.path, key]), guess);
    }
  }
  // That a field is missing need not be said where a misspelt one stands for it.
  for (const [path, guess] of meant) {
    const parent = path.slice(0, path.lastIndexOf('/') + 1);
    missing.delete(`${parent}${guess}`);
  }
  const findings = issues
    .filter((issue) => valueAt(data, issue.path) !== undefined || missing.has(pathKey(issue.path)))
    .flatMap((issue) =>
      issue.code === 'unrecognized_keys' ? unknownFields(issue, entry, meant) : [issueFinding(issue, entry)],
    );
  return { data: undefined, findings: [...findings, ...odd.map((path) => oddNumber(path, entry))] };
}

function pathKey(path: DataPath): string {
  return path.map((part) => `/${String(part)}`).join('');
}

/** The known field an unknown one was meant to be: spelt alike, alike but for its unit, or the only one missing. */
function meantField(
  key: string,
  issue: z.core.$ZodIssueUnrecognizedKeys,
  { schema, data }: Entry,
  missing: ReadonlySet<string>,
): string | undefined {
  const known = knownKeys(schema, data, issue.path);
  const spelt = nearest(key, known) ?? [...known].find((one) => isWithoutPrefix(one, key));
  if (spelt !== undefined) return spelt;
  const lacking = [...known].filter((one) => missing.has(pathKey([...issue.path, one])));
  return issue.keys.length === 1 && lacking.length === 1 ? lacking[0] : undefined;
}

const prefixes: readonly (readonly [prefix: string, symbol: string])[] = [
  ['milli', 'm'],
  ['micro', 'µ'],
  ['kilo', 'k'],
];

/** Whether `key` is the name `known` with another unit: `valueMillivolts` for `valueVolts`. */
function isWithoutPrefix(known: string, key: string): boolean {
  return prefixes.some(([prefix]) => {
    const lower = key.toLowerCase();
    return lower.includes(prefix) && lower.replace(prefix, '') === known.toLowerCase();
  });
}

function unknownFields(
  issue: z.core.$ZodIssueUnrecognizedKeys,
  { schema, data, positions, noun }: Entry,
  meant: ReadonlyMap<string, string>,
): Finding[] {
  const { path } = issue;
  const known = [...knownKeys(schema, data, path)].sort();
  return issue.keys.map((key) => {
    const guess = meant.get(pathKey([...path, key]));
    const value = valueAt(data, [...path, key]);
    return {
      rule: 'unknown-key',
      severity: 'error',
      place: positions.place([...path, key], 'key'),
      message:
        key === ''
          ? 'A colon stands here without a field’s name before it.'
          : `“${key}” is not a field of ${path.length === 0 ? `a ${noun}` : fieldLabel(path, noun)}.`,
      help: guess
        ? `Did you mean “${guess}”?${otherUnit(key, guess, value)}`
        : `The fields known here are: ${known.join(', ')}.`,
      related: [],
    };
  });
}

/** “ It is in volts: 14400 mV is 14.4.” where the misspelt field names another unit. */
function otherUnit(key: string, guess: string, value: unknown): string {
  const unit = unitOfField(guess);
  const prefix = prefixes.find(([name]) => isWithoutPrefix(guess, key) && key.toLowerCase().includes(name));
  if (!unit || !prefix) return '';
  const symbol = `${prefix[1]}${unit.symbol}`;
  const number = typeof value === 'number' ? ` ${numberAdvice(`${value} ${symbol}`, guess)}` : '';
  return number || ` It is in ${unit.name}.`;
}

function issueFinding(issue: Issue, entry: Entry): Finding {
  const { message, help, rule } = issueWords(issue, entry);
  return {
    rule: rule ?? 'schema',
    severity: 'error',
    place: entry.positions.place(issue.path),
    message,
    help,
    related: [],
  };
}

function issueWords(issue: Issue, entry: Entry): Words {
  const { path } = issue;
  const { noun } = entry;
  const label = fieldLabel(path, noun);
  const input = valueAt(entry.data, path);
  if (input === undefined) return missingWords(path, noun);
  if (input === null) return emptyWords(issue, entry);
  const source = clipped(entry.positions.sourceOf(path) ?? JSON.stringify(input));
  if (issue.code === 'invalid_type') return typeWords(issue, entry, input, source);
  if (issue.code === 'invalid_value' || issue.code === 'invalid_union') {
    const known = issue.code === 'invalid_value' ? issue.values.map(String) : unionChoices(issue, entry);
    if (Array.isArray(input)) return listForOne(label, path, input);
    const guess = nearest(String(input), known);
    return {
      message: input === '' ? `${label} is empty.` : `${label} cannot be ${quoted(input, source)}.`,
      help: `${guess && input !== '' ? `Did you mean “${guess}”? ` : ''}${oneOf(known)}`,
    };
  }
  if (issue.code === 'too_small' || issue.code === 'too_big') return boundWords(issue, entry, input, source);
  if (isDateField(entry.schema, entry.data, path)) {
    return {
      message: `${label} is not a date as it is written here: ${source}.`,
      help: dateAdvice(String(input)),
    };
  }
  return {
    message: `${label} cannot be ${quoted(input, source)}.`,
    help: sentence(issue.message),
  };
}

/** Text stands in quotation marks, whatever the file has round it; anything else as it is written. */
function quoted(input: unknown, source: string): string {
  return typeof input === 'string' ? JSON.stringify(clipped(input)) : source;
}

function unionChoices(issue: z.core.$ZodIssueInvalidUnion, { schema, data }: Entry): string[] {
  const key = 'discriminator' in issue && issue.discriminator ? String(issue.discriminator) : undefined;
  return key ? unionValues(schema, data, issue.path, key) : [];
}

function typeWords(issue: z.core.$ZodIssueInvalidType, entry: Entry, input: unknown, source: string): Words {
  const { path } = issue;
  const { expected } = issue;
  const label = fieldLabel(path, entry.noun);
  const key = String(path.findLast((part) => typeof part === 'string') ?? '');
  if (input === '') {
    return { message: `${label} must be ${wanted(expected)}, and this is empty.`, help: 'Fill it in.' };
  }
  if (expected === 'string' && typeof input !== 'object') {
    const isDate = isDateField(entry.schema, entry.data, path);
    return {
      message: `${label} is read as ${kindOf(input)} (${JSON.stringify(input)}), not as ${isDate ? 'a date' : 'text'}.`,
      help: isDate ? dateAdvice(source) : `${inQuotes}: "${source}".`,
    };
  }
  if (expected === 'boolean' && typeof input !== 'object') {
    return {
      message: `${label} must be true or false, and ${source} is ${kindOf(input)}.`,
      help: booleanAdvice(input),
    };
  }
  if (expected === 'number' || expected === 'int') {
    if (typeof input === 'string') {
      return {
        message: `${label} must be ${wanted(expected)}, and ${source} is text.`,
        help: numberAdvice(input, key),
      };
    }
    if (typeof input === 'number' && !Number.isFinite(input)) {
      return {
        message: `${label} must be a number, and ${source} is read as ${Number.isNaN(input) ? '“not a number”' : 'infinity'}.`,
        help: 'Write the number in figures.',
      };
    }
    if (typeof input === 'number') {
      return {
        message: `${label} must be a whole number, and this is ${source}.`,
        help: 'Write it without decimals.',
      };
    }
  }
  if (Array.isArray(input)) return listForOne(label, path, input, expected);
  return {
    message: `${label} must be ${wanted(expected)}, and this is ${kindOf(input)}.`,
    help: shapeAdvice(expected, path, input, [...knownKeys(entry.schema, entry.data, path)]),
  };
}

/** A list where one value is meant. */
function listForOne(label: string, path: DataPath, input: readonly unknown[], expected = 'string'): Words {
  const [only, ...more] = input;
  const name = String(path.at(-1));
  if (typeof only === 'string' && more.length === 0 && /^[-\d.]+\.\.[-\d.]+$/.test(only)) {
    return {
      message: `${label} takes one test, and square brackets without quotes make it a list.`,
      help: `Put the range in quotes: ${name}: "[${only}]"`,
    };
  }
  // The tests of a rule of a decision table.
  if (path.at(-2) === 'when' && input.length > 0 && input.every((one) => typeof one !== 'object')) {
    return {
      message: `${label} takes one text, and square brackets without quotes make it a list.`,
      help: `Put the values in quotes, with commas between them: ${name}: "${clipped(input.join(', '))}"`,
    };
  }
  const isShort = more.length === 0 && (typeof only === 'string' || typeof only === 'number');
  if (expected === 'object' || expected === 'record') {
    return {
      message: `${label} must be ${wanted(expected)}, and this is a list.`,
      help: 'Take out the hyphen or the square brackets, and write “name: value” lines, indented by two spaces.',
    };
  }
  return {
    message: `${label} takes one value, and this is a list.`,
    help:
      isShort && typeof path.at(-1) === 'string'
        ? `Take out the hyphen or the square brackets: ${name}: ${only}`
        : 'Keep one value and take out the rest, with the hyphens or square brackets.',
  };
}

/** What to write where a block, a list or a text is wanted and another of them stands. */
function shapeAdvice(expected: string, path: DataPath, input: unknown, known: readonly string[]): string {
  const name = String(path.at(-1));
  if (expected === 'array') {
    if (typeof input === 'string' && /^-\S/.test(input)) {
      return `Put a space after the hyphen: - ${clipped(input.slice(1))}`;
    }
    if (typeof input === 'object')
      return 'Put “- ” before the first line of it, and indent the others to match.';
    const items = String(input)
      .split(/\s*[,;]\s*/)
      .filter(Boolean);
    return `Put square brackets round it: ${name}: [${clipped(items.join(', '))}]`;
  }
  if (expected === 'object' || expected === 'record') {
    const fields = known.length > 0 ? ` Its fields are: ${[...known].sort().join(', ')}.` : '';
    return `Write its fields below it, one a line, indented by two spaces.${fields}`;
  }
  return expected === 'string'
    ? 'Write one text; where it contains a colon, put it in quotes.'
    : 'Write one value, on the same line.';
}

/** A field with nothing behind its colon. */
function emptyWords(issue: Issue, { schema, data, positions, noun }: Entry): Words {
  const { path } = issue;
  const key = String(path.at(-1));
  if (key === 'source' || key === 'sources') return missingWords(path, noun, true);
  const label = fieldLabel(path, noun);
  const comment = /^[ \t]*(#\S.*)$/.exec(positions.restOfLine(path))?.[1];
  if (comment !== undefined && positions.sourceOf(path) === '') {
    return {
      message: `${label} is empty: what follows the sign # is a comment.`,
      help: `If it is the value, put it in quotes: "${clipped(comment.trim())}".`,
    };
  }
  const values = issue.code === 'invalid_value' ? issue.values.map(String) : [];
  if (values.length > 0) return { message: `${label} is empty.`, help: oneOf(values) };
  const expected = issue.code === 'invalid_type' ? issue.expected : undefined;
  const known = [...knownKeys(schema, data, path)].sort();
  if (path.at(-2) === 'when' || path.at(-2) === 'give') {
    return {
      message: `${label} is empty.`,
      help: `Write the ${path.at(-2) === 'when' ? 'test' : 'answer'} behind its colon; if “${key}” belongs to the value before it, put that in quotes as a whole, for a comma begins a new field.`,
    };
  }
  return {
    message: `${label} is empty.`,
    help:
      known.length > 0
        ? `Write its fields below it, one a line, indented by two spaces: ${known.join(', ')}.`
        : `Write ${expected ? wanted(expected) : 'a value'} there.`,
  };
}

function boundWords(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  { schema, data, noun }: Entry,
  input: unknown,
  source: string,
): Words {
  const { path } = issue;
  const label = fieldLabel(path, noun);
  const isSmall = issue.code === 'too_small';
  const bound = isSmall ? issue.minimum : issue.maximum;
  const side = isSmall ? 'at least' : 'at most';
  if (issue.origin === 'string') {
    if (!isSmall)
      return { message: `${label} is longer than ${bound} characters.`, help: 'Say it in fewer words.' };
    return String(input).trim() === ''
      ? { message: `${label} is empty.`, help: 'Write something there, or take the line out.' }
      : {
          message: `${label} must have at least ${bound} characters, and this is ${source}.`,
          help: 'Write all of it.',
        };
  }
  if (issue.origin === 'array') {
    const isSources = path.at(-1) === 'sources';
    return {
      message: `${label} needs ${side} ${bound} of these.`,
      help: isSmall
        ? `Add one below it, on a line that begins with “- ”${isSources ? ': the id of an entry in sources/' : ''}.`
        : 'Take out those that matter least.',
      ...(isSources && { rule: 'unsourced' }),
    };
  }
  const key = String(path.findLast((part) => typeof part === 'string') ?? '');
  const unit = unitOfField(key);
  const strict = issue.inclusive === false ? (isSmall ? 'more than' : 'less than') : side;
  const fits = (other: number): boolean => accepts(schema, data, path, other);
  const isWhole = !fits(Number(bound) + (isSmall ? 0.5 : -0.5));
  return {
    message: `${label} must be ${strict} ${String(bound)}${unit ? ` ${unit.symbol}` : ''}, and this is ${source}.`,
    help: slipAdvice(Number(input), key, isWhole, fits),
  };
}

function missingWords(path: DataPath, noun: string, isEmpty = false): Words {
  const key = String(path.at(-1));
  const where = capital(path.length === 1 ? `this ${noun}` : fieldLabel(path.slice(0, -1), noun));
  if (key === 'source' || key === 'sources') {
    return {
      message: `${where} names no source.`,
      help: isEmpty
        ? `Write the id of an entry in sources/ after “${key}:”${key === 'sources' ? ', in square brackets' : ''}.`
        : `Add a line “${key}:” with the id of an entry in sources/.`,
      rule: 'unsourced',
    };
  }
  return { message: `${where} lacks the field “${key}”.`, help: `Add a line “${key}: …” there.` };
}

/** A number in a notation that not every reader of YAML takes for the same number. */
function oddNumber(path: DataPath, { data, positions, noun }: Entry): Finding {
  const source = positions.sourceOf(path) ?? '';
  const value = String(valueAt(data, path));
  const isPadded = /^[-+]?0[0-9]/.test(source);
  return {
    rule: 'schema',
    severity: 'error',
    place: positions.place(path),
    message: isPadded
      ? `${fieldLabel(path, noun)} is written with a nought before it, ${source}, which some programs read as another number.`
      : `${fieldLabel(path, noun)} is written ${source}, which is read as the number ${value}.`,
    help: `If ${value} is meant, write ${value}.`,
    related: [],
  };
}
