/** What `readback table export --json` and `readback table import --json` print. */
import { z } from 'zod';

export const tableExportResultSchema = z
  .strictObject({
    format: z.enum(['dmn', 'csv']),
    tables: z.array(z.string()).meta({ description: 'Ids or names of the tables exported.' }),
    file: z.string().nullable().meta({ description: 'The file written; null where the text is given here.' }),
    text: z.string().nullable().meta({ description: 'The text, where no file was asked for.' }),
    notes: z.array(z.string()).meta({ description: 'What the format has no place for.' }),
  })
  .meta({ title: 'Table export result', description: 'Output of readback table export FILE --json.' });

export const tableImportResultSchema = z
  .strictObject({
    table: z.string().meta({ description: 'The decision of a DMN file, or the name of the CSV file.' }),
    file: z
      .string()
      .nullable()
      .meta({ description: 'The entry written; null where the text is given here.' }),
    text: z.string().nullable().meta({ description: 'The text, where no file was asked for.' }),
    rules: z.int().min(1).meta({ description: 'How many rules it has.' }),
    fillIn: z.array(z.string()).meta({ description: 'What has to be filled in by hand.' }),
  })
  .meta({ title: 'Table import result', description: 'Output of readback table import FILE --json.' });

export type TableExportResult = z.infer<typeof tableExportResultSchema>;
export type TableImportResult = z.infer<typeof tableImportResultSchema>;
