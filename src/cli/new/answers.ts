/** What was typed, as values of an entry, and what the check would say of them. */
import { entrySchemas, type Kind, kindNouns } from '../../../schemas/index.ts';
import {
  type Base,
  type DataPath,
  noSuchEntry,
  type Positions,
  validate,
  valueAt,
} from '../../base/index.ts';
import type { BlockShape, Shape, UnionShape, ValueShape } from './fields.ts';

/** The data of an entry as far as it is known. */
export type EntryAnswers = { [name: string]: unknown };

export interface Fault {
  readonly path: DataPath;
  readonly message: string;
  readonly help: string;
}

/** A text as the value its field holds. What is no such value stays the text, so that the check says why not. */
export function typedValue({ holds, inQuotes }: ValueShape, text: string): unknown {
  const typed = text.trim();
  const isNumber = holds === 'number' || holds === 'cell';
  if (isNumber && /^-?\d+(?:\.\d+)?$/.test(typed)) return Number(typed);
  if (holds === 'yes-no' && /^(?:yes|no)$/.test(typed)) return typed === 'yes';
  if (holds === 'cell' || holds === 'yes-no') {
    if (typed === 'true' || typed === 'false') return typed === 'true';
  }
  // Codes and tests are shown in quotes, and so typed in quotes.
  return inQuotes && /^"[^"]*"$/.test(typed) ? typed.slice(1, -1) : typed;
}

/** Everything the schema has against the answers, in the words of the check, and each entry they name in vain. */
export function faultsOf(kind: Kind, shape: Shape, answers: EntryAnswers, base: Base): readonly Fault[] {
  const places: DataPath[] = [];
  const positions: Positions = {
    // The line is the number of the path: a finding that comes back says by it what it is about.
    place: (path) => {
      const line = places.push(path);
      return { file: '', line, column: 1, endLine: line, endColumn: 1 };
    },
    sourceOf: (path) => {
      const value = valueAt(answers, path);
      return value === undefined || (typeof value === 'object' && value !== null) ? undefined : String(value);
    },
    restOfLine: () => '',
    oddNumbers: [],
  };
  const { findings } = validate<object>(entrySchemas[kind], answers, positions, kindNouns[kind]);
  const faults = findings.map(({ place, message, help }) => ({
    path: places[place.line - 1] ?? [],
    message,
    help,
  }));
  return [...faults, ...danglingNames(shape, answers, base, [])];
}

function danglingNames(shape: Shape, value: unknown, base: Base, path: DataPath): Fault[] {
  switch (shape.is) {
    case 'value': {
      const { entriesIn } = shape;
      if (!entriesIn || typeof value !== 'string' || value === '' || base[entriesIn].has(value)) return [];
      return [{ path, ...noSuchEntry(base, entriesIn, value) }];
    }
    case 'list':
      return Array.isArray(value)
        ? value.flatMap((one: unknown, index) => danglingNames(shape.of, one, base, [...path, index]))
        : [];
    case 'record':
      return [];
    default: {
      const block = blockFor(shape, value);
      const of = (value ?? {}) as EntryAnswers;
      return (block?.fields ?? []).flatMap(({ name, shape: inner }) =>
        danglingNames(inner, of[name], base, [...path, name]),
      );
    }
  }
}

/** The fields of a block; of a block of several kinds, those of the kind its data says it is. */
export function blockFor(shape: BlockShape | UnionShape, value: unknown): BlockShape | undefined {
  if (shape.is === 'block') return shape;
  const key = String((value as EntryAnswers | undefined)?.[shape.key]);
  return shape.members.find(({ values }) => values.includes(key))?.block;
}

/** Whether `path` is `above`, or lies in it. */
export function isWithin(path: DataPath, above: DataPath): boolean {
  return above.every((part, index) => path[index] === part);
}
