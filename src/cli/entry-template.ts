/** A YAML entry written from its schema: every field with what belongs in it, as a comment above it. */
import { z } from 'zod';

/** What stands in a field, named by the way to it, such as `signal.kind`. */
export interface FieldText {
  /** The value as YAML has it; nothing where it is left to be filled in. */
  valueOf(path: string): string;
  /** Whether a field that may be left out stands behind a number sign. */
  isLeftOut(path: string): boolean;
}

type Shape = Readonly<Record<string, z.ZodType>>;

/** The lines of an entry. The comments are the descriptions of the schema, so that they cannot say other things. */
export function entryTemplate(shape: Shape, text: FieldText, path = '', indent = ''): string[] {
  return Object.entries(shape).flatMap(([name, field]) => {
    const here = `${path}${name}`;
    const inner = field instanceof z.ZodOptional ? field.unwrap() : field;
    const about =
      field.meta()?.description ?? (inner instanceof z.ZodType ? inner.meta()?.description : undefined);
    const comment = about === undefined ? [] : [`${indent}# ${about}`];
    const lines = linesOf(name, inner, text, here, indent);
    const leftOut = field instanceof z.ZodOptional && text.isLeftOut(here);
    return [...comment, ...(leftOut ? lines.map((line) => behindSign(line, indent)) : lines)];
  });
}

function linesOf(name: string, field: unknown, text: FieldText, here: string, indent: string): string[] {
  if (field instanceof z.ZodObject) {
    return [`${indent}${name}:`, ...entryTemplate(field.shape, text, `${here}.`, `${indent}  `)];
  }
  if (field instanceof z.ZodArray && field.element instanceof z.ZodObject) {
    const fields = entryTemplate(field.element.shape, text, `${here}.`, `${indent}    `);
    return [`${indent}${name}:`, `${indent}  -`, ...fields];
  }
  return [`${indent}${name}: ${text.valueOf(here)}`.trimEnd()];
}

/** A comment within stays a comment when the sign is taken away again. */
function behindSign(line: string, indent: string): string {
  return `${indent}# ${line.slice(indent.length)}`;
}
