/** The description of the published API (OpenAPI 3.1.0), made from the schemas its documents are typed by. */
import { z } from 'zod';
import { answersDocumentSchema } from './answers.ts';
import { indexDocumentSchema } from './index-document.ts';
import { profileDocumentSchema } from './profile.ts';
import { sourcesDocumentSchema } from './sources.ts';
import { tableDocumentSchema } from './table.ts';
import { unitDocumentSchema } from './unit.ts';

interface DocumentKind {
  /** Name among the components. */
  readonly name: string;
  readonly operation: string;
  readonly summary: string;
  readonly schema: z.ZodType;
  readonly parameters?: Readonly<Record<string, string>>;
}

/** Path below the API → what is there. Braces stand for one segment each. */
const kinds: Readonly<Record<string, DocumentKind>> = {
  '/index.json': {
    name: 'Index',
    operation: 'getIndex',
    summary: 'Where everything else is',
    schema: indexDocumentSchema,
  },
  '/units/{family}.json': {
    name: 'Unit',
    operation: 'getUnit',
    summary: 'A head-unit family and the list of its profiles',
    schema: unitDocumentSchema,
    parameters: { family: 'Family id.' },
  },
  '/profiles/{family}/{slug}.json': {
    name: 'Profile',
    operation: 'getProfile',
    summary: 'Values with uncertainty, answers to plans and tables, and what they rest on',
    schema: profileDocumentSchema,
    parameters: { family: 'Family id.', slug: 'The part of the profile id after the family.' },
  },
  '/tables/{table}.json': {
    name: 'DecisionTable',
    operation: 'getTable',
    summary: 'A decision table',
    schema: tableDocumentSchema,
    parameters: { table: 'Table id.' },
  },
  '/sources.json': {
    name: 'Sources',
    operation: 'getSources',
    summary: 'Every source, and how far to trust it',
    schema: sourcesDocumentSchema,
  },
  '/answers.json': {
    name: 'Answers',
    operation: 'getAnswers',
    summary: 'Verdicts and headline values of every profile, to be compared over time',
    schema: answersDocumentSchema,
  },
};

export interface ApiTitle {
  readonly title: string;
  readonly description: string;
  /** Address of the API itself, with a slash at the end. */
  readonly server: string;
  readonly licence?: { readonly title: string; readonly address: string } | undefined;
}

/** The OpenAPI document as plain data. */
export function openApiDocument({ title, description, server, licence }: ApiTitle): object {
  return {
    openapi: '3.1.0',
    info: {
      title,
      description,
      version: '1.0.0',
      ...(licence ? { license: { name: licence.title, url: licence.address } } : {}),
    },
    jsonSchemaDialect: 'https://json-schema.org/draft/2020-12/schema',
    servers: [{ url: server.replace(/\/$/, '') }],
    paths: Object.fromEntries(Object.entries(kinds).map(([path, kind]) => [path, { get: operation(kind) }])),
    components: {
      schemas: Object.fromEntries(
        Object.values(kinds).map(({ name, schema }) => [name, plainSchema(schema)]),
      ),
    },
  };
}

function operation({ name, operation, summary, parameters = {} }: DocumentKind): object {
  const named = Object.entries(parameters).map(([parameter, description]) => ({
    name: parameter,
    in: 'path',
    required: true,
    description,
    schema: { type: 'string' },
  }));
  return {
    operationId: operation,
    summary,
    ...(named.length > 0 ? { parameters: named } : {}),
    responses: {
      200: {
        description: summary,
        content: { 'application/json': { schema: { $ref: `#/components/schemas/${name}` } } },
      },
      404: { description: 'There is no such document.' },
    },
  };
}

function plainSchema(schema: z.ZodType): object {
  // The dialect is said once, for the whole document.
  const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'output' });
  return rest;
}
