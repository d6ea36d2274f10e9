/** FEEL tests → as people write them in entries: the reverse of feel-test.ts. */
import type { ValueType } from '../table.ts';

/** `"silent", "none"` → `silent, none`; `true` → `yes`. */
export function writtenTest(test: string, type: ValueType): string {
  switch (type.kind) {
    case 'choice':
      // A value with a comma or a bracket in it keeps its quotes.
      return test.replace(/"((?:[^"\\]|\\.)*)"/g, (whole, value: string) =>
        type.values.includes(value) && !/[,()"\\]/.test(value) ? value : whole,
      );
    case 'yes-no':
      return test.replace(/\btrue\b/g, 'yes').replace(/\bfalse\b/g, 'no');
    case 'date':
      return test.replace(/date\("([^"]*)"\)/g, '$1');
    default:
      return test;
  }
}
