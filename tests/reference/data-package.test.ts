/**
 * The descriptor against the Data Package standard, version 2.0 (datapackage.org/standard). Its JSON Schema is not
 * among the installed packages: what is checked are its requirements (frictionlessdata/datapackage,
 * profiles/target/2.0/datapackage.json, read there) and those of the text, whose wording is from memory.
 */
import { expect, test } from 'vitest';
import { dataPackage, dataResources } from '../../src/views/data/package.ts';
import { demoAnswers } from '../views/sample.ts';

const answers = await demoAnswers();
const resources = dataResources(answers);
const address = 'https://shop.example/help/';
const written = new Map(resources.map(({ path }) => [path, { bytes: 12, sha256: 'ab'.repeat(32) }]));
const file = dataPackage(answers, { address, date: '2026-03-01' }, resources, written);
const descriptor = JSON.parse(file.text()) as Record<string, unknown> & {
  readonly resources: readonly Record<string, unknown>[];
};

test('Data Package: $schema of version 2, name, created, licenses and contributors as the text asks', () => {
  expect(descriptor.$schema).toBe('https://datapackage.org/profiles/2.0/datapackage.json');
  // name: “lower-case and contain only alphanumeric characters along with ‘.’, ‘_’ or ‘-’”.
  expect(descriptor.name).toMatch(/^[a-z0-9._-]+$/);
  // created: a datetime string “as per RFC3339”.
  expect(descriptor.created).toBe('2026-03-01T00:00:00Z');
  // licenses: “MUST be an array. Each item MUST be an object … MUST contain a name and/or a path property”.
  expect(descriptor.licenses).toEqual([
    { name: 'MIT', title: 'MIT License', path: 'https://opensource.org/license/mit' },
  ]);
  // contributors: title, path, email, roles (an array of strings in version 2).
  expect(descriptor.contributors).toMatchObject([{ roles: ['publisher'], path: address }]);
  expect(descriptor.homepage).toBe(address);
});

test('Data Resource: name and either path or data, names unique, paths relative POSIX paths below the descriptor', () => {
  const names = descriptor.resources.map(({ name }) => name);
  expect(names.length).toBeGreaterThan(6);
  expect(new Set(names).size).toBe(names.length);
  for (const { name, path, data, type, hash, bytes } of descriptor.resources) {
    expect(name).toMatch(/^[a-z0-9._-]+$/);
    expect(data).toBeUndefined();
    // “/ (absolute path) and ../ (relative parent path) are forbidden”.
    expect(path).toMatch(/^(?!\/)(?!.*\.\.).+\.csv$/);
    expect(type).toBe('table');
    expect(bytes).toBe(12);
    // hash: MD5 unless an algorithm is named before a colon.
    expect(hash).toMatch(/^sha256:[0-9a-f]{64}$/);
  }
});

test('Table Schema: fields with unique names, primary and foreign keys among them', () => {
  const names = descriptor.resources.map(({ name }) => name);
  for (const { schema } of descriptor.resources) {
    const { $schema, fields, primaryKey, foreignKeys } = schema as {
      $schema: string;
      fields: { name: string; type: string; description: string }[];
      primaryKey: string[];
      foreignKeys?: { fields: string[]; reference: { resource: string; fields: string[] } }[];
    };
    expect($schema).toBe('https://datapackage.org/profiles/2.0/tableschema.json');
    const columns = fields.map((field) => field.name);
    expect(new Set(columns).size).toBe(columns.length);
    for (const { description } of fields) expect(description).not.toBe('');
    expect(columns).toEqual(expect.arrayContaining(primaryKey));
    for (const key of foreignKeys ?? []) {
      expect(columns).toEqual(expect.arrayContaining(key.fields));
      expect(names).toContain(key.reference.resource);
    }
  }
});
