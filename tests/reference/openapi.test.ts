/**
 * The description of the API against the OpenAPI Specification 3.1.0. Its JSON Schema is not among the installed
 * packages: what is checked are the fields required by it (OAI/OpenAPI-Specification, schemas/v3.1/schema.json, read
 * there) and by the text, whose wording is from memory.
 */
import { expect, test } from 'vitest';
import { openApiDocument } from '../../schemas/api/openapi.ts';

const server = 'https://shop.example/help/api/v1/';
const licence = { title: 'MIT License', address: 'https://opensource.org/license/mit' };

interface Described {
  readonly openapi: string;
  readonly info: Readonly<Record<string, unknown>>;
  readonly servers: readonly { readonly url: string }[];
  readonly paths: Readonly<Record<string, { readonly get: Operation }>>;
  readonly components: { readonly schemas: Readonly<Record<string, object>> };
}
interface Operation {
  readonly operationId: string;
  readonly parameters?: readonly Readonly<Record<string, unknown>>[];
  readonly responses: Readonly<Record<string, { readonly description?: string }>>;
}

const described = openApiDocument({
  title: 'A shop',
  description: 'What it measured.',
  server,
  licence,
}) as Described;

test('OpenAPI Object, Info Object and License Object have their required fields', () => {
  expect(described.openapi).toBe('3.1.0');
  expect(described.info).toMatchObject({ title: 'A shop', version: '1.0.0' });
  // License Object: name is required; url and identifier exclude each other.
  expect(described.info.license).toEqual({ name: licence.title, url: licence.address });
  expect(described.servers).toEqual([{ url: 'https://shop.example/help/api/v1' }]);
});

test('paths begin with a slash, and every expression of a template has its required path parameter', () => {
  const names: string[] = [];
  for (const [path, { get }] of Object.entries(described.paths)) {
    // Paths Object: “The field name MUST begin with a forward slash”.
    expect(path).toMatch(/^\//);
    names.push(get.operationId);
    const expressions = [...path.matchAll(/\{([^}]+)\}/g)].map(([, name]) => name);
    expect((get.parameters ?? []).map(({ name }) => name)).toEqual(expressions);
    for (const parameter of get.parameters ?? []) {
      // Parameter Object: in path, “required … its value MUST be true”; schema or content.
      expect(parameter).toMatchObject({ in: 'path', required: true, schema: { type: 'string' } });
    }
    // Response Object: description is required.
    for (const response of Object.values(get.responses)) expect(response.description).toBeTruthy();
  }
  // Operation Object: “The id MUST be unique among all operations described in the API”.
  expect(new Set(names).size).toBe(names.length);
});

test('references lead to components, whose names are allowed', () => {
  const text = JSON.stringify(described);
  const references = [...text.matchAll(/"\$ref":"#\/components\/schemas\/([^"/]+)"/g)].map(
    ([, name]) => name,
  );
  expect(references.length).toBeGreaterThan(4);
  // Components Object: “All the fixed fields … keys that match the regular expression ^[a-zA-Z0-9\.\-_]+$”.
  for (const name of Object.keys(described.components.schemas)) expect(name).toMatch(/^[a-zA-Z0-9.\-_]+$/);
  expect([...new Set(references)].sort()).toEqual(Object.keys(described.components.schemas).sort());
});
