import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { jsonSchemaFiles } from '../../schemas/json-schemas.ts';
import { readback } from '../cli/run.ts';
import { validator } from './ajv.ts';

test('schemas/json/ is what the Zod schemas give (npm run schemas writes it)', async () => {
  const files = jsonSchemaFiles();
  expect((await readdir('schemas/json')).sort()).toEqual([...files.keys()].sort());
  for (const [name, text] of files) {
    expect(await readFile(`schemas/json/${name}`, 'utf8'), name).toBe(text);
  }
});

describe('the published JSON Schemas accept what the check accepts (Ajv, JSON Schema 2020-12)', () => {
  const kinds: [string, string][] = [
    ['profiles', 'profile'],
    ['sequences', 'sequence'],
    ['sources', 'source'],
    ['statements', 'statement'],
    ['plans', 'plan'],
    ['outputs', 'session'],
  ];
  test.each(kinds)('%s/', async (folder, name) => {
    const validate = validator(`${name}.schema.json`);
    const files = (await readdir(`content/${folder}`, { recursive: true })).filter((file) =>
      file.endsWith('.yaml'),
    );
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      const data: unknown = parse(await readFile(`content/${folder}/${file}`, 'utf8'));
      expect(validate(data), `${file}: ${JSON.stringify(validate.errors)}`).toBe(true);
    }
  });

  test('and refuse what it refuses', () => {
    const validate = validator('profile.schema.json');
    expect(validate({ family: 'brasslight', code: 2024 })).toBe(false);
  });

  test('the JSON of the commands has the published shape', async () => {
    const results: [string, string[]][] = [
      ['check-result', ['check', '--json']],
      ['rules-result', ['check', '--rules', '--json']],
      ['find-result', ['find', '8B0S-I5Z', '--json']],
      ['plan-result', planArguments],
      ['explain-result', ['explain', '8B0S-I5Z', '--unit', 'brasslight', '--json']],
    ];
    for (const [name, argv] of results) {
      const validate = validator(`${name}.schema.json`);
      const { out } = await readback(...argv);
      expect(validate(JSON.parse(out)), `${name}: ${JSON.stringify(validate.errors)}`).toBe(true);
    }
  });
});

const planArguments = [
  ...['plan', '0x2F6', '--unit', 'glasswick', '--amplifier', 'four-channels-equaliser'],
  ...['--front', 'fairing-coaxial', '--rear', 'lid-speaker', '--json'],
];

test('every field of every entry says what it is', () => {
  const undescribed: string[] = [];
  const walk = (schema: Record<string, unknown>, path: string): void => {
    for (const [key, value] of Object.entries(
      (schema.properties ?? {}) as Record<string, Record<string, unknown>>,
    )) {
      const here = `${path}.${key}`;
      if (!('description' in value) && !('const' in value)) undescribed.push(here);
      walk(value, here);
      if (value.items) walk(value.items as Record<string, unknown>, `${here}[]`);
    }
    for (const option of (schema.oneOf ?? []) as Record<string, unknown>[]) walk(option, path);
  };
  for (const [name, text] of jsonSchemaFiles()) {
    if (!name.includes('-result'))
      walk(JSON.parse(text) as Record<string, unknown>, name.split('.')[0] ?? name);
  }
  expect(undescribed).toEqual([]);
});
