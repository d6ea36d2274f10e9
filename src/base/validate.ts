/** Holds the data of an entry against its schema and says what is wrong in a contributor's words. */
import type { z } from 'zod';
import type { Finding } from './finding.ts';
import { nearest } from './nearest.ts';
import type { DataPath, Positions } from './yaml.ts';

type Issue = z.core.$ZodIssue;

/** The validated data, or undefined with at least one finding that says why not. */
export interface Validation<T> {
  readonly data: T | undefined;
  readonly findings: readonly Finding[];
}

export function validate<T>(
  schema: z.ZodType<T>,
  data: unknown,
  positions: Positions,
  noun: string,
): Validation<T> {
  const result = schema.safeParse(data, { reportInput: true });
  if (result.success) return { data: result.data, findings: [] };
  const { issues } = result.error;
  const misspelt = new Set(issues.flatMap((issue) => misspeltFields(issue, data, schema)));
  const findings = issues
    .filter((issue) => !misspelt.has(pathKey(issue.path)))
    .flatMap((issue) => issueFindings(issue, data, positions, noun, schema));
  return { data: undefined, findings };
}

/** The known fields that unknown ones were meant to be: that they are missing need not be said as well. */
function misspeltFields(issue: Issue, data: unknown, schema: z.ZodType): string[] {
  if (issue.code !== 'unrecognized_keys') return [];
  const known = knownKeys(schema, data, issue.path);
  return issue.keys.flatMap((key) => {
    const meant = nearest(key, known);
    const isMissing = meant !== undefined && valueAt(data, [...issue.path, meant]) === undefined;
    return isMissing ? [pathKey([...issue.path, meant])] : [];
  });
}

function pathKey(path: DataPath): string {
  return path.map(String).join('/');
}

function issueFindings(
  issue: Issue,
  data: unknown,
  positions: Positions,
  noun: string,
  schema: z.ZodType,
): Finding[] {
  const path = issue.path;
  const at = (message: string, help: string, rule = 'schema', part: 'key' | 'value' = 'value'): Finding => ({
    rule,
    severity: 'error',
    place: positions.place(path, part),
    message,
    help,
    related: [],
  });
  const label = fieldLabel(path, noun);
  const input = valueAt(data, path);

  if (issue.code === 'unrecognized_keys') {
    const known = knownKeys(schema, data, path);
    return issue.keys.map((key) => {
      const guess = nearest(key, known);
      return {
        rule: 'unknown-key',
        severity: 'error',
        place: positions.place([...path, key], 'key'),
        message: `“${key}” is not a field of ${path.length === 0 ? `a ${noun}` : label}.`,
        help: guess
          ? `Did you mean “${guess}”?`
          : `The fields known here are: ${[...known].sort().join(', ')}.`,
        related: [],
      };
    });
  }
  if (input === undefined) return [missing(path, at, noun)];
  if (issue.code === 'invalid_type') {
    const source = positions.sourceOf(path) ?? JSON.stringify(input);
    if (input === '') {
      return [at(`${label} must be ${wanted(issue.expected)}, and this is empty.`, 'Fill it in.')];
    }
    if (issue.expected === 'string' && typeof input !== 'object') {
      return [
        at(
          `${label} is read as ${kindOf(input)} (${JSON.stringify(input)}), not as text.`,
          `Put it in quotes: "${source}".`,
        ),
      ];
    }
    if ((issue.expected === 'number' || issue.expected === 'int') && typeof input === 'string') {
      return [at(`${label} must be a number, and ${source} is text.`, numberHelp(input))];
    }
    if (issue.expected === 'int' && typeof input === 'number') {
      return [at(`${label} must be a whole number, and this is ${source}.`, 'Write it without decimals.')];
    }
    return [
      at(
        `${label} must be ${wanted(issue.expected)}, and this is ${kindOf(input)}.`,
        'See the field reference.',
      ),
    ];
  }
  if (issue.code === 'invalid_value') {
    const known = issue.values.map(String);
    const guess = typeof input === 'string' ? nearest(input, known) : undefined;
    return [
      at(
        `${label} cannot be ${JSON.stringify(input)}.`,
        `${guess ? `Did you mean “${guess}”? ` : ''}It is one of: ${known.join(', ')}.`,
      ),
    ];
  }
  if (issue.code === 'invalid_union') {
    const key = 'discriminator' in issue && issue.discriminator ? String(issue.discriminator) : undefined;
    const known = key ? unionValues(schema, data, path, key) : [];
    const guess = typeof input === 'string' ? nearest(input, known) : undefined;
    return [
      at(
        `${label} cannot be ${JSON.stringify(input)}.`,
        `${guess ? `Did you mean “${guess}”? ` : ''}It is one of: ${known.join(', ')}.`,
      ),
    ];
  }
  if (issue.code === 'too_small' || issue.code === 'too_big') {
    const bound = issue.code === 'too_small' ? issue.minimum : issue.maximum;
    const side = issue.code === 'too_small' ? 'at least' : 'at most';
    const unit = unitOf(path);
    if (issue.origin === 'string') {
      if (issue.code === 'too_small')
        return [at(`${label} is empty.`, 'Write something there, or take the line out.')];
      return [at(`${label} is longer than ${bound} characters.`, 'Say it in fewer words.')];
    }
    if (issue.origin === 'array') {
      const rule = path.at(-1) === 'sources' ? 'unsourced' : 'schema';
      return [
        at(
          `${label} needs ${side} ${bound} of these.`,
          'Add one below it, on a line that begins with “- ”.',
          rule,
        ),
      ];
    }
    const strict =
      issue.inclusive === false ? (issue.code === 'too_small' ? 'more than' : 'less than') : side;
    return [
      at(
        `${label} must be ${strict} ${String(bound)}${unit}, and this is ${positions.sourceOf(path) ?? String(input)}.`,
        'Check the decimal point and the unit.',
      ),
    ];
  }
  return [at(`${label}: ${issue.message}.`, 'Correct the value; the field reference has an example.')];
}

function missing(
  path: DataPath,
  at: (message: string, help: string, rule?: string, part?: 'key' | 'value') => Finding,
  noun: string,
): Finding {
  const key = String(path.at(-1));
  const parent = fieldLabel(path.slice(0, -1), noun);
  if (key === 'source' || key === 'sources') {
    return at(
      `${capital(path.length === 1 ? `this ${noun}` : parent)} names no source.`,
      `Add a line “${key}:” with the id of an entry in sources/.`,
      'unsourced',
    );
  }
  return at(
    `${capital(path.length === 1 ? `this ${noun}` : parent)} lacks the field “${key}”.`,
    `Add a line “${key}: …” there.`,
  );
}

/** “claims, item 2, valueDb”: a path as a person would say it. */
function fieldLabel(path: DataPath, noun: string): string {
  if (path.length === 0) return `this ${noun}`;
  return path.map((part) => (typeof part === 'number' ? `item ${part + 1}` : `“${String(part)}”`)).join(', ');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function valueAt(data: unknown, path: DataPath): unknown {
  return path.reduce<unknown>(
    (value, part) =>
      value !== null && typeof value === 'object' ? (value as Record<PropertyKey, unknown>)[part] : undefined,
    data,
  );
}

function kindOf(value: unknown): string {
  if (value === null) return 'empty';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a block of fields';
  if (typeof value === 'boolean') return 'yes/no';
  return typeof value === 'number' ? 'a number' : 'text';
}

function wanted(expected: string): string {
  const words: Readonly<Record<string, string>> = {
    object: 'a block of “name: value” lines',
    array: 'a list, each item on a line that begins with “- ”',
    boolean: 'true or false',
    string: 'text',
    number: 'a number',
    int: 'a whole number',
  };
  return words[expected] ?? expected;
}

function numberHelp(input: string): string {
  if (/^-?\d+,\d+$/.test(input)) return `Use a point for the decimals: ${input.replace(',', '.')}.`;
  if (/^-?\d+(\.\d+)?$/.test(input)) return `Take the quotes off: ${input}.`;
  const number = /^-?\d+(?:[.,]\d+)?/.exec(input)?.[0];
  return number
    ? `Write the number alone (${number.replace(',', '.')}): the unit is part of the field’s name.`
    : 'Write a number.';
}

/** The unit a field's name ends in, with a space before it. */
function unitOf(path: DataPath): string {
  const key = String(path.at(-1)).toLowerCase();
  const units: readonly (readonly [ending: string, unit: string])[] = [
    ['volts', ' V'],
    ['voltsrms', ' V'],
    ['ohms', ' Ω'],
    ['percent', ' %'],
    ['seconds', ' s'],
    ['dbfs', ' dBFS'],
    ['db', ' dB'],
    ['hz', ' Hz'],
    ['mm', ' mm'],
  ];
  return units.find(([ending]) => key.endsWith(ending))?.[1] ?? '';
}

/** The field names the schema knows at `path`, following discriminated unions by the data at hand. */
function knownKeys(schema: z.ZodType, data: unknown, path: DataPath): Set<string> {
  const here = schemaAt(schema, data, path);
  return new Set(here.flatMap((one) => (isObject(one) ? Object.keys(one.def.shape) : [])));
}

function unionValues(schema: z.ZodType, data: unknown, path: DataPath, key: string): string[] {
  const parent = path.at(-1) === key ? path.slice(0, -1) : path;
  return schemaAt(schema, data, parent, false)
    .flatMap((one) => (isObject(one) ? [one.def.shape[key]] : []))
    .flatMap((one) => (one ? literalValues(one as z.core.$ZodType) : []));
}

function literalValues(schema: z.core.$ZodType): string[] {
  const def = schema._zod.def as { type: string; values?: unknown[]; entries?: Record<string, unknown> };
  if (def.type === 'literal') return (def.values ?? []).map(String);
  if (def.type === 'enum') return Object.values(def.entries ?? {}).map(String);
  return [];
}

interface ObjectSchema {
  readonly def: { readonly shape: Readonly<Record<string, z.core.$ZodType>> };
}

function isObject(schema: unknown): schema is ObjectSchema {
  return (schema as { _zod?: { def?: { type?: string } } })._zod?.def?.type === 'object';
}

/** The schema or schemas that may hold at `path`; `narrow` picks the union member the data belongs to. */
function schemaAt(schema: z.core.$ZodType, data: unknown, path: DataPath, narrow = true): z.core.$ZodType[] {
  const def = schema._zod.def as {
    type: string;
    innerType?: z.core.$ZodType;
    element?: z.core.$ZodType;
    shape?: Record<string, z.core.$ZodType>;
    options?: z.core.$ZodType[];
    discriminator?: string;
  };
  if (def.innerType) return schemaAt(def.innerType, data, path, narrow);
  if (def.type === 'union' && def.options) {
    const key = def.discriminator;
    const value = key ? String(valueAt(data, [key])) : undefined;
    const members = def.options.filter((option) => {
      if (!key || (path.length === 0 && !narrow)) return true;
      const field = isObject(option) ? option.def.shape[key] : undefined;
      return field ? literalValues(field).includes(value ?? '') : false;
    });
    return members.flatMap((option) => schemaAt(option, data, path, narrow));
  }
  const [first, ...rest] = path;
  if (first === undefined) return [schema];
  const child = def.type === 'array' ? def.element : def.shape?.[String(first)];
  return child ? schemaAt(child, valueAt(data, [first]), rest, narrow) : [];
}
