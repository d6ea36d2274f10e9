/** Ajv as it reads the published schemas: strict about words it does not know, save those that are for editors. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { jsonSchemaFiles } from '../../schemas/json-schemas.ts';

const files = jsonSchemaFiles();

/** A validator of the schema in this file below schemas/json/ (JSON Schema 2020-12). */
export function validator(name: string) {
  const ajv = new Ajv2020({ strict: true, strictTypes: false, allErrors: true });
  addFormats.default(ajv);
  ajv.addVocabulary(['errorMessage', 'patternErrorMessage']);
  return ajv.compile(JSON.parse(files.get(name) ?? '') as object);
}
