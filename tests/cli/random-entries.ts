/** Entries of any kind that keep to its schema, drawn at random: every field, every bound, odd texts. */
import fc from 'fast-check';
import { z } from 'zod';
import { fieldNotes } from '../../schemas/index.ts';

interface Def {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly element?: z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly options?: readonly z.ZodType[];
  readonly valueType?: z.ZodType;
  readonly values?: readonly unknown[];
  readonly entries?: Readonly<Record<string, string>>;
}
/** What a JSON Schema says of a value. */
interface Bounds {
  readonly type?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly format?: string;
  readonly pattern?: string;
}

/** What YAML, a shell or a hurried reader may take for something else. */
const oddTexts = [
  ...[
    '0x7E8',
    '1.10',
    '012',
    'yes',
    'null',
    '~',
    'true',
    '2026-03-14',
    '.5',
    '1e3',
    '-',
    '- a',
    '? b',
    'a: b',
  ],
  ...[
    'a #b',
    '# c',
    '"q"',
    "it's",
    '"half',
    '[1..3]',
    '{a}',
    '&x',
    '*x',
    '!x',
    '%x',
    '@x',
    '`x`',
    '|',
    '>',
    ': ',
  ],
  ...[
    '---',
    '...',
    'a\nb',
    'a\n\nb\n  c',
    'ends in \\',
    'tab\there',
    '“”’…±Ω',
    'x'.repeat(200),
    `${'word '.repeat(30)}end`,
  ],
];

/** A text without spaces at its ends, for typed ones lose them. @param onOneLine leaves line breaks out. */
function text(least: number, most: number, onOneLine: boolean): fc.Arbitrary<string> {
  return fc
    .oneof(
      fc.string({ unit: 'grapheme', minLength: least, maxLength: Math.min(most, 40) }),
      fc.constantFrom(...oddTexts),
    )
    .map((one) => (onOneLine ? one.replaceAll(/\s/g, ' ') : one).trim())
    .filter((one) => one.length >= Math.max(1, least) && one.length <= most);
}

/** @param onOneLine only what can be typed as an answer. */
export function randomEntry(schema: z.ZodType, onOneLine = false): fc.Arbitrary<unknown> {
  const def = schema._zod.def as unknown as Def;
  const bounds: Bounds = ['string', 'number', 'array'].includes(def.type)
    ? (z.toJSONSchema(schema, { io: 'input' }) as Bounds)
    : {};
  const of = (inner: z.ZodType | undefined): fc.Arbitrary<unknown> => {
    if (!inner) throw new Error('a schema without an inner one');
    return randomEntry(inner, onOneLine);
  };
  if (def.innerType) return fc.option(of(def.innerType), { nil: undefined });
  switch (def.type) {
    case 'string': {
      const { entriesIn, inQuotes } = fieldNotes.get(schema) ?? {};
      if (entriesIn !== undefined) return fc.stringMatching(/^[a-z0-9]{1,8}(-[a-z0-9]{1,8}){0,2}$/);
      if (bounds.format === 'date')
        return fc
          .date({ min: new Date('1990-01-01'), max: new Date('2090-01-01'), noInvalidDate: true })
          .map((one) => one.toISOString().slice(0, 10));
      if (bounds.pattern !== undefined)
        return fc
          .stringMatching(new RegExp(bounds.pattern), { maxLength: 30 })
          .filter((one) => schema.safeParse(one).success);
      const drawn = text(bounds.minLength ?? 0, bounds.maxLength ?? 2000, onOneLine);
      // What is typed in quotes is meant without them: codes, and values of tables.
      return inQuotes || onOneLine ? drawn.filter((one) => !/^".*"$/.test(one)) : drawn;
    }
    case 'number': {
      const { minimum = -1000, maximum = 1000, exclusiveMinimum } = bounds;
      const least = exclusiveMinimum ?? minimum;
      const number =
        bounds.type === 'integer'
          ? fc.integer({ min: minimum, max: maximum })
          : fc.double({ min: least, max: maximum, noNaN: true }).map((one) => Number(one.toFixed(4)));
      return number.map((one) => (one === 0 ? 0 : one)).filter((one) => schema.safeParse(one).success);
    }
    case 'boolean':
      return fc.boolean();
    case 'enum':
    case 'literal':
      return fc.constantFrom(...(def.values ?? Object.values(def.entries ?? {})));
    case 'array':
      return fc.array(of(def.element), {
        minLength: bounds.minItems ?? 0,
        maxLength: (bounds.minItems ?? 0) + 2,
      });
    case 'object':
      return fc
        .record(Object.fromEntries(Object.entries(def.shape ?? {}).map(([name, field]) => [name, of(field)])))
        .map((block) => Object.fromEntries(Object.entries(block).filter(([, value]) => value !== undefined)));
    case 'record':
      return fc.dictionary(fc.stringMatching(/^[a-z]{1,8}$/), of(def.valueType), { maxKeys: 3 });
    case 'union':
      return fc.oneof(...(def.options ?? []).map((option) => of(option)));
  }
  throw new Error(`no “${def.type}” is drawn`);
}
