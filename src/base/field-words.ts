/** Fields, values and types in the words of someone who has never programmed. */
import type { DataPath } from './yaml.ts';

/** “claims”, item 2, “valueDb”: a path as a person would say it. */
export function fieldLabel(path: DataPath, noun: string): string {
  if (path.length === 0) return `this ${noun}`;
  return path.map((part) => (typeof part === 'number' ? `item ${part + 1}` : `“${String(part)}”`)).join(', ');
}

/** What YAML read a value as. */
export function kindOf(value: unknown): string {
  if (value === null) return 'empty';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a block of fields';
  if (typeof value === 'boolean') return 'yes/no';
  return typeof value === 'number' ? 'a number' : 'text';
}

/** What a schema wants, by Zod's name of the type. */
export function wanted(expected: string): string {
  const words: Readonly<Record<string, string>> = {
    object: 'a block of “name: value” lines',
    record: 'a block of “name: value” lines',
    array: 'a list, each item on a line that begins with “- ”',
    boolean: 'true or false',
    string: 'text',
    number: 'a number',
    int: 'a whole number',
  };
  return words[expected] ?? expected;
}

/** A value as it is written, cut where it is long. */
export function clipped(text: string): string {
  const line = text.split('\n', 1)[0] ?? '';
  return line.length > 60 || line.length < text.trimEnd().length ? `${line.slice(0, 60)}…` : line;
}
