/** A session.yaml to fill in, made from its schema: every field with what belongs in it. */
import { z } from 'zod';
import { sessionSchema } from '../../../schemas/index.ts';

/**
 * The text of a session.yaml in which everything but the kind of signal is left for the person who took the
 * readings: `readback check` names each field that is still empty.
 */
export function sessionTemplate({ signal }: { readonly signal: 'sine' | 'sweep' }): string {
  const head = [
    '# Conditions of this session. Fill in what follows each colon, then run: readback check',
    '# Fields that may be left out stand behind a number sign.',
  ];
  return `${[...head, ...fieldsOf(sessionSchema.shape, '', { kind: signal })].join('\n')}\n`;
}

function fieldsOf(
  shape: Readonly<Record<string, z.ZodType>>,
  indent: string,
  known: Readonly<Record<string, string>>,
): string[] {
  return Object.entries(shape).flatMap(([name, field]) => {
    const inner = field instanceof z.ZodOptional ? field.unwrap() : field;
    const about =
      field.meta()?.description ?? (inner instanceof z.ZodType ? inner.meta()?.description : undefined);
    const lines = about === undefined ? [] : [`${indent}# ${about}`];
    if (inner instanceof z.ZodObject) {
      return [...lines, `${indent}${name}:`, ...fieldsOf(inner.shape, `${indent}  `, known)];
    }
    if (inner instanceof z.ZodArray && inner.element instanceof z.ZodObject) {
      const [first = '', ...rest] = fieldsOf(inner.element.shape, `${indent}    `, known);
      return [...lines, `${indent}${name}:`, `${indent}  -`, first, ...rest];
    }
    const value = known[name] ?? '';
    return [...lines, `${indent}${field instanceof z.ZodOptional ? '# ' : ''}${name}: ${value}`.trimEnd()];
  });
}
