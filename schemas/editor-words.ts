/**
 * Sentences that check and editor share. JSON Schema has no words of its own for what is wrong; editors that read YAML
 * (yaml-language-server, as VS Code and others use it) take them from `patternErrorMessage` and `errorMessage`.
 */
import type { z } from 'zod';
import { fieldNotes } from './common.ts';

/** For one of several values. */
export function oneOf(values: readonly unknown[]): string {
  return `It is one of: ${values.map(String).join(', ')}.`;
}

/** For a number that is written as something else. */
export const inFigures = 'Write a number, in figures.';

/** For yes and no. */
export const trueOrFalse = 'Write true or false, without quotes.';

/** For a text that YAML would take for a number; what it is follows. */
export const inQuotes = 'Put it in quotes';

/** The text with its first letter a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A message of a schema as the sentence the check makes of it. */
export function sentence(message: string): string {
  return `${capital(message)}${message.endsWith('.') ? '' : '.'}`;
}

/** Puts the words for a value into its JSON Schema, where they can be the same whatever stands there. */
export function addEditorWords({
  zodSchema,
  jsonSchema,
}: {
  readonly zodSchema: z.core.$ZodType;
  readonly jsonSchema: z.core.JSONSchema.BaseSchema;
}): void {
  const { type } = zodSchema._zod.def;
  if (type === 'enum' && jsonSchema.enum) jsonSchema.errorMessage = oneOf(jsonSchema.enum);
  if (type === 'number') jsonSchema.errorMessage = inFigures;
  if (type === 'boolean') jsonSchema.errorMessage = trueOrFalse;
  if (type !== 'string') return;
  const message = formatMessage(zodSchema as z.ZodType);
  if (jsonSchema.pattern !== undefined && message !== undefined) {
    jsonSchema.patternErrorMessage = sentence(message);
  }
  if (fieldNotes.get(zodSchema)?.inQuotes) jsonSchema.errorMessage = `${inQuotes}.`;
}

/** What a schema says of a text that has not its form; undefined where that was left to the library. */
function formatMessage(schema: z.ZodType): string | undefined {
  // No form that an entry asks for allows a text of control characters.
  const issues = schema.safeParse('\u0001').error?.issues ?? [];
  const message = issues.find(({ code }) => code === 'invalid_format')?.message;
  return message?.startsWith('Invalid ') ? undefined : message;
}
