/** The tests of entries → FEEL. People write `fixed, fading` and `yes`; FEEL wants `"fixed","fading"` and `true`. */
import { mostTestCharacters } from '../sets/read-test.ts';
import type { ValueType } from '../table.ts';

/** A test as written in an entry, as FEEL has it; what is FEEL already stays as it is. */
export function feelTest(written: string | number | boolean, type: ValueType): string {
  const text = String(written).trim();
  if (text.length > mostTestCharacters) return text;
  if (type.kind === 'choice') return quotedWords(text, type.values);
  if (type.kind === 'yes-no') return text.replace(/\byes\b/gi, 'true').replace(/\bno\b/gi, 'false');
  if (type.kind === 'date') {
    return text.replace(/(?<!["\d-])\d{4}-\d{2}-\d{2}(?!["\d-])/g, (date) => `date("${date}")`);
  }
  return text;
}

/** Puts quotes round each value of the choice that stands between commas or brackets without them. */
function quotedWords(text: string, values: readonly string[]): string {
  const list = /^not\s*\((.*)\)$/s.exec(text);
  if (list) return `not(${quotedWords(list[1] ?? '', values)})`;
  return text
    .split(',')
    .map((part) => part.trim())
    .map((part) => (values.includes(part) && part !== '-' ? JSON.stringify(part) : part))
    .join(', ');
}
