/** The fields of a kind of entry, as its schema has them: what is asked for, and what flags there are. */
import type { z } from 'zod';
import { entrySchemas, fieldNotes, type Kind } from '../../../schemas/index.ts';

/** A single value, as a person types it. */
export interface ValueShape {
  readonly is: 'value';
  /** `cell`: a text, a number, true or false, whichever it looks like. */
  readonly holds: 'text' | 'number' | 'yes-no' | 'cell';
  /** What it may be; empty where it is free. */
  readonly choices: readonly string[];
  /** The kind of entry it names. */
  readonly entriesIn: Exclude<Kind, 'site'> | undefined;
  readonly inQuotes: boolean;
}

export interface BlockShape {
  readonly is: 'block';
  readonly fields: readonly Field[];
}

/** A block of one of several kinds; the field `key` says which. */
export interface UnionShape {
  readonly is: 'union';
  readonly key: string;
  readonly members: readonly { readonly values: readonly string[]; readonly block: BlockShape }[];
}

export interface ListShape {
  readonly is: 'list';
  readonly of: Shape;
  /** How many it needs. */
  readonly least: number;
}

/** Values by names the writer chooses. */
export interface RecordShape {
  readonly is: 'record';
  readonly of: ValueShape;
}

export type Shape = ValueShape | BlockShape | UnionShape | ListShape | RecordShape;

export interface Field {
  readonly name: string;
  /** What belongs in it, from the schema. */
  readonly about: string;
  readonly needed: boolean;
  readonly shape: Shape;
}

/** The shape of an entry of a kind. */
export function shapeOfKind(kind: Kind): BlockShape | UnionShape {
  const shape = shapeOf(entrySchemas[kind]);
  if (shape.is === 'block' || shape.is === 'union') return shape;
  throw new Error(`an entry of ${kind} is no block of fields`);
}

/** What of a Zod schema is looked at here. */
interface Def {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly element?: z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly options?: readonly z.ZodType[];
  readonly discriminator?: string;
  readonly valueType?: z.ZodType;
  readonly values?: readonly unknown[];
  readonly entries?: Readonly<Record<string, string>>;
  readonly checks?: readonly {
    readonly _zod: { readonly def: { readonly check: string; readonly minimum?: number } };
  }[];
}

function defOf(schema: z.ZodType): Def {
  return schema._zod.def as unknown as Def;
}

function shapeOf(schema: z.ZodType): Shape {
  const def = defOf(schema);
  const { entriesIn, inQuotes = false } = fieldNotes.get(schema) ?? {};
  const value = (holds: ValueShape['holds'], choices: readonly string[] = []): ValueShape => ({
    is: 'value',
    holds,
    choices,
    entriesIn: entriesIn as ValueShape['entriesIn'],
    inQuotes,
  });
  if (def.innerType) return shapeOf(def.innerType);
  switch (def.type) {
    case 'string':
      return value('text');
    case 'enum':
    case 'literal':
      return value('text', choicesOf(schema));
    case 'number':
      return value('number');
    case 'boolean':
      return value('yes-no');
    case 'object':
      return blockOf(def.shape ?? {});
    case 'array':
      if (!def.element) break;
      return { is: 'list', of: shapeOf(def.element), least: leastOf(schema) };
    case 'record': {
      const of = def.valueType && shapeOf(def.valueType);
      if (of?.is !== 'value') break;
      return { is: 'record', of };
    }
    case 'union':
      return def.discriminator === undefined ? value('cell') : unionOf(def.options ?? [], def.discriminator);
  }
  throw new Error(`nothing is known of asking for “${def.type}”`);
}

function blockOf(shape: Readonly<Record<string, z.ZodType>>): BlockShape {
  return {
    is: 'block',
    fields: Object.entries(shape).map(([name, schema]) => ({
      name,
      about: aboutOf(schema),
      needed: schema.safeParse(undefined).error !== undefined,
      shape: shapeOf(schema),
    })),
  };
}

function unionOf(options: readonly z.ZodType[], key: string): UnionShape {
  return {
    is: 'union',
    key,
    members: options.map((option) => {
      const { shape = {} } = defOf(option);
      const field = shape[key];
      if (!field) throw new Error(`a member of a union has no field ${key}`);
      return { values: choicesOf(field), block: blockOf(shape) };
    }),
  };
}

function choicesOf(schema: z.ZodType): string[] {
  const { values, entries } = defOf(schema);
  return (values ?? Object.values(entries ?? {})).map(String);
}

/** The description of a field, or of what it holds where it may be left out. */
function aboutOf(schema: z.ZodType): string {
  const inner = defOf(schema).innerType;
  return schema.meta()?.description ?? (inner ? aboutOf(inner) : '');
}

function leastOf(schema: z.ZodType): number {
  return defOf(schema).checks?.find(({ _zod }) => _zod.def.check === 'min_length')?._zod.def.minimum ?? 0;
}
