/** The documents for other programs: of the described shape, with the values of the pages, leading to each other. */
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { expect, test } from 'vitest';
import type { ProfileDocument } from '../../../schemas/api/profile.ts';
import { apiFiles } from '../../../src/views/api/files.ts';
import { apiProfilePath, dataPackagePath } from '../../../src/views/paths.ts';
import { allViews, demoAnswers } from '../sample.ts';

const answers = await demoAnswers();
const published = { address: 'https://shop.example/help/', date: '2026-03-01' };
const files = apiFiles(answers, published, new Map([['what-to-buy-first', ['dmn', 'csv']]]));
const texts = new Map(files.map(({ path, text }) => [path, text()]));
const documentAt = (path: string) => JSON.parse(texts.get(path) ?? 'null') as unknown;

interface Described {
  readonly paths: Readonly<Record<string, { readonly get: Operation }>>;
}
interface Operation {
  readonly responses: {
    readonly 200: {
      readonly content: { readonly 'application/json': { readonly schema: { readonly $ref: string } } };
    };
  };
}

/** The schema that openapi.json gives for a path, with the braces of the description filled in. */
function validatorFor(path: string, described: Described, ajv: Ajv2020): ValidateFunction | undefined {
  const found = Object.entries(described.paths).find(([template]) =>
    new RegExp(`^${template.replaceAll('.', '\\.').replace(/\{[^}]+\}/g, '[^/]+')}$`).test(path),
  );
  const ref = found?.[1].get.responses[200].content['application/json'].schema.$ref;
  return ref === undefined ? undefined : ajv.getSchema(`openapi.json${ref}`);
}

test('every document but the description itself has the shape openapi.json gives (Ajv, JSON Schema 2020-12)', () => {
  const described = documentAt('api/v1/openapi.json') as Described;
  const ajv = new Ajv2020({ strict: true, strictTypes: false, strictTuples: false, allErrors: true });
  addFormats.default(ajv);
  ajv.addVocabulary(['openapi', 'info', 'jsonSchemaDialect', 'servers', 'paths', 'components']);
  ajv.addSchema(described, 'openapi.json');
  let checked = 0;
  for (const path of texts.keys()) {
    if (path === 'api/v1/openapi.json') continue;
    const validate = validatorFor(path.slice('api/v1'.length), described, ajv);
    expect(validate, `${path} is not described`).toBeDefined();
    expect(validate?.(documentAt(path)), `${path}: ${JSON.stringify(validate?.errors)}`).toBe(true);
    checked += 1;
  }
  expect(checked).toBe(
    3 + answers.base.families.size + answers.base.tables.size + answers.base.profiles.size,
  );
  const refused = validatorFor('/answers.json', described, ajv);
  expect(refused?.({ units: {}, profiles: { 'a/b': { code: 'X' } } })).toBe(false);
});

test('the values of a profile are those of its page, to the last digit shown', async () => {
  for (const page of await allViews(answers, 'profilePages')) {
    const document = documentAt(apiProfilePath(page.id)) as ProfileDocument;
    const texts = document.characteristics.map(({ text }) => text);
    expect([...page.values, ...page.moreValues].map(({ value }) => value).sort()).toEqual([...texts].sort());
    expect(document.otherConditions.map(({ text }) => text)).toEqual(
      page.otherValues.map(({ value }) => value),
    );
    expect(document.sentence).toBe(page.description);
    expect(document.plans.map(({ verdict, sentence }) => [verdict, sentence])).toEqual(
      page.plans.map(({ verdict, sentence }) => [verdict, sentence]),
    );
    expect(document.tables.map(({ answer }) => answer ?? '')).toEqual(
      page.tables.map(({ answer }) => answer),
    );
    expect(document.twins.length).toBe(page.twins.length);
    expect(document.sources).toEqual(page.sources.map(({ id }) => id));
    const output = answers.outputs.get(page.id);
    expect(
      document.characteristics.map(({ value, expandedUncertainty }) => [value, expandedUncertainty]),
    ).toEqual(output?.characteristics.map(({ value, expandedUncertainty }) => [value, expandedUncertainty]));
  }
});

test('from the index every document is reached, by addresses relative to the one they stand in', () => {
  const reached = new Set<string>();
  const queue = ['api/v1/index.json'];
  const others = new Set<string>();
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    if (reached.has(path)) continue;
    reached.add(path);
    for (const link of linksOf(documentAt(path))) {
      const target = new URL(link, `https://shop.example/help/${path}`).href.slice(published.address.length);
      if (texts.has(target)) queue.push(target);
      else others.add(target);
    }
  }
  expect([...reached].sort()).toEqual([...texts.keys()].sort());
  expect([...others].sort()).toEqual(['changes.atom', dataPackagePath]);
});

/** What the fields that hold addresses of documents say. */
function linksOf(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(linksOf);
  if (typeof value !== 'object' || value === null) return [];
  const names = new Set(['document', 'openapi', 'answers', 'sources', 'dataPackage', 'changes']);
  return Object.entries(value).flatMap(([key, inner]) =>
    names.has(key) && typeof inner === 'string' && inner.length > 6 ? [inner] : linksOf(inner),
  );
}

test('the same content gives the same bytes, and none of them is the whole base', () => {
  const again = apiFiles(answers, published, new Map([['what-to-buy-first', ['dmn', 'csv']]]));
  for (const { path, text } of again) expect(text(), path).toBe(texts.get(path));
  const whole = [...texts.values()].reduce((sum, text) => sum + text.length, 0);
  for (const [path, text] of texts) expect(text.length / whole, path).toBeLessThan(0.1);
});
