/** Finds its way in a Zod schema by the path of a value, so that messages can say what is known there. */
import { z } from 'zod';
import type { DataPath } from './yaml.ts';

/** The field names the schema knows at `path`, following discriminated unions by the data at hand. */
export function knownKeys(schema: z.ZodType, data: unknown, path: DataPath): Set<string> {
  const here = schemaAt(schema, data, path);
  return new Set(here.flatMap((one) => (isObject(one) ? Object.keys(one.def.shape) : [])));
}

/** The values the field `key` may have, which decides what kind of block the one at `path` is. */
export function unionValues(schema: z.ZodType, data: unknown, path: DataPath, key: string): string[] {
  const parent = path.at(-1) === key ? path.slice(0, -1) : path;
  return schemaAt(schema, data, parent, false)
    .flatMap((one) => (isObject(one) ? [one.def.shape[key]] : []))
    .flatMap((one) => (one ? literalValues(one) : []));
}

/** Whether the field at `path` would take `value`. */
export function accepts(schema: z.ZodType, data: unknown, path: DataPath, value: unknown): boolean {
  return schemaAt(schema, data, path).some((one) => z.core.safeParse(one, value).success);
}

/** Whether the field at `path` is a date. */
export function isDateField(schema: z.ZodType, data: unknown, path: DataPath): boolean {
  return schemaAt(schema, data, path).some((one) => (one._zod.def as { format?: string }).format === 'date');
}

/** What stands at `path` in the data; undefined where nothing does. */
export function valueAt(data: unknown, path: DataPath): unknown {
  return path.reduce<unknown>(
    (value, part) =>
      value !== null && typeof value === 'object' && Object.hasOwn(value, part)
        ? (value as Record<PropertyKey, unknown>)[part]
        : undefined,
    data,
  );
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
