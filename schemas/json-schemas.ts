/** The JSON Schema 2020-12 files, made from the Zod schemas: for editors, and for those who read our JSON. */
import { z } from 'zod';
import { addEditorWords } from './editor-words.ts';
import { readingSchema } from './entries/reading.ts';
import { entrySchemas, type Kind } from './kinds.ts';
import { buildResultSchema } from './results/build.ts';
import { checkResultSchema } from './results/check.ts';
import { explainResultSchema } from './results/explain.ts';
import { findResultSchema } from './results/find.ts';
import { identifyResultSchema } from './results/identify.ts';
import { impactResultSchema } from './results/impact.ts';
import { blankSheetResultSchema, importResultSchema } from './results/import.ts';
import { initResultSchema } from './results/init.ts';
import { newResultSchema } from './results/new.ts';
import { planResultSchema } from './results/plan.ts';
import { rulesResultSchema } from './results/rules.ts';
import { serveResultSchema } from './results/serve.ts';
import { sweepResultSchema } from './results/sweep.ts';
import { tableCheckResultSchema } from './results/table-check.ts';
import { tableDecideResultSchema } from './results/table-decide.ts';
import { tableExportResultSchema, tableImportResultSchema } from './results/table-files.ts';
import { wordsResultSchema } from './results/words.ts';

/** The file below schemas/json/ that describes an entry of each kind. */
export const entrySchemaFiles = {
  site: 'site.schema.json',
  families: 'family.schema.json',
  sequences: 'sequence.schema.json',
  profiles: 'profile.schema.json',
  outputs: 'session.schema.json',
  sources: 'source.schema.json',
  statements: 'statement.schema.json',
  guides: 'guide.schema.json',
  plans: 'plan.schema.json',
  equipment: 'equipment.schema.json',
  tables: 'table.schema.json',
  exceptions: 'exception.schema.json',
  words: 'words.schema.json',
} as const satisfies Record<Kind, string>;

const kinds = Object.keys(entrySchemaFiles) as Kind[];

/** File name below schemas/json/ → schema. */
const published: Readonly<Record<string, z.ZodType>> = {
  ...Object.fromEntries(kinds.map((kind) => [entrySchemaFiles[kind], entrySchemas[kind]])),
  'reading.schema.json': readingSchema,
  'check-result.schema.json': checkResultSchema,
  'rules-result.schema.json': rulesResultSchema,
  'find-result.schema.json': findResultSchema,
  'explain-result.schema.json': explainResultSchema,
  'build-result.schema.json': buildResultSchema,
  'serve-result.schema.json': serveResultSchema,
  'sweep-result.schema.json': sweepResultSchema,
  'identify-result.schema.json': identifyResultSchema,
  'impact-result.schema.json': impactResultSchema,
  'import-result.schema.json': importResultSchema,
  'blank-sheet-result.schema.json': blankSheetResultSchema,
  'init-result.schema.json': initResultSchema,
  'new-result.schema.json': newResultSchema,
  'plan-result.schema.json': planResultSchema,
  'table-check-result.schema.json': tableCheckResultSchema,
  'table-decide-result.schema.json': tableDecideResultSchema,
  'table-export-result.schema.json': tableExportResultSchema,
  'table-import-result.schema.json': tableImportResultSchema,
  'words-result.schema.json': wordsResultSchema,
};

/** The text of each JSON Schema file by name, as it is written to schemas/json/. */
export function jsonSchemaFiles(): Map<string, string> {
  const isResult = (name: string): boolean => name.endsWith('-result.schema.json');
  return new Map(
    Object.entries(published).map(([name, schema]) => [
      name,
      `${JSON.stringify(
        isResult(name)
          ? z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'output' })
          : z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input', override: addEditorWords }),
        undefined,
        2,
      )}\n`,
    ]),
  );
}
