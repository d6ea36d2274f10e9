/** What `readback import SHEET --json` prints. */
import { z } from 'zod';
import { readingSchema } from '../entries/reading.ts';

const question = z.strictObject({
  what: z.string().meta({ description: 'What is open.' }),
  help: z.string().meta({ description: 'What to do or say.' }),
});

const row = readingSchema.meta({ description: 'A reading, as readings.csv has it.' });

export const importResultSchema = z
  .strictObject({
    outcome: z.enum(['preview', 'written', 'unchanged', 'refused']).meta({
      description:
        'preview: nothing was to be written; written; unchanged: all of it is there already; refused: it was to be written, and something stands against it.',
    }),
    ready: z
      .boolean()
      .meta({ description: 'Whether nothing stands against writing it, or nothing is left to write.' }),
    sheet: z.string().meta({ description: 'The file, as given.' }),
    session: z.string().nullable().meta({ description: 'The session it is entered as.' }),
    columns: z
      .array(
        z.strictObject({
          column: z.string().meta({ description: 'Its letter.' }),
          head: z.string(),
          holds: z
            .string()
            .meta({ description: 'What it holds, as --columns takes it; note: nothing of it.' }),
          certainty: z.enum(['said', 'known', 'guessed']).meta({
            description: 'said by --columns, known by name and unit, or guessed, and to be confirmed.',
          }),
          why: z.string(),
        }),
      )
      .meta({ description: 'Every column of the sheet.' }),
    decimals: z
      .enum(['point', 'comma'])
      .nullable()
      .meta({ description: 'The sign before decimals, where it is known.' }),
    conditions: z
      .array(z.strictObject({ field: z.string(), value: z.string(), from: z.string() }))
      .meta({ description: 'Fields of the session and its source, and where each was taken from.' }),
    readings: z
      .array(z.strictObject({ profile: z.string(), channel: z.string(), count: z.int() }))
      .meta({ description: 'How many readings each output of each profile has.' }),
    notes: z.array(z.string()).meta({ description: 'What was taken for what, and left out.' }),
    notUnderstood: z
      .array(
        z.strictObject({
          place: z.string().meta({ description: 'The cell, or the number of the row.' }),
          row: z.int(),
          line: z.int().meta({ description: 'The line of the file.' }),
          text: z.string().meta({ description: 'What stands there.' }),
          problem: z.string(),
          help: z.string(),
        }),
      )
      .meta({ description: 'Every row or cell that is not understood, up to ten thousand.' }),
    notUnderstoodCount: z.int(),
    questions: z.array(question).meta({ description: 'What only a person can say.' }),
    missing: z
      .array(z.strictObject({ field: z.string(), words: z.string(), help: z.string() }))
      .meta({ description: 'Fields the session still needs.' }),
    findings: z
      .array(
        z.strictObject({
          rule: z.string(),
          severity: z.enum(['error', 'warning', 'note']),
          place: z.string().meta({ description: 'The cell of the sheet, or the line of the entry.' }),
          message: z.string(),
          help: z.string(),
        }),
      )
      .nullable()
      .meta({
        description: 'What the check would find with these entries and not without; null: not looked yet.',
      }),
    difference: z
      .strictObject({
        added: z.array(row),
        removed: z.array(row),
        changed: z.array(z.strictObject({ before: row, now: row })),
        fields: z.array(z.strictObject({ field: z.string(), before: z.string(), now: z.string() })),
      })
      .nullable()
      .meta({ description: 'What differs from the session of that name; null where there is none.' }),
    files: z
      .array(
        z.strictObject({
          file: z.string().meta({ description: 'Path below the content folder.' }),
          bytes: z.int(),
          is: z.enum(['new', 'changed', 'unchanged']),
        }),
      )
      .meta({ description: 'The files of the entries; empty while anything is missing.' }),
    command: z.string().nullable().meta({ description: 'The command that writes it, where one will do.' }),
  })
  .meta({ title: 'Import result', description: 'Output of readback import SHEET --json.' });

export const blankSheetResultSchema = z
  .strictObject({
    file: z.string().meta({ description: 'The sheet written.' }),
    rows: z.int().meta({ description: 'Rows to fill in.' }),
  })
  .meta({ title: 'Blank sheet result', description: 'Output of readback import --blank-sheet FILE --json.' });

export type ImportResult = z.infer<typeof importResultSchema>;
export type BlankSheetResult = z.infer<typeof blankSheetResultSchema>;
