/** The data package: every row fits its table schema, keys hold, and the readings are those of the sheets. */
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { csvText } from '../../../src/views/data/csv-text.ts';
import { dataResources } from '../../../src/views/data/package.ts';
import { columnsOf, type Field } from '../../../src/views/data/table-schemas.ts';
import { demoAnswers } from '../sample.ts';

const answers = await demoAnswers();
const resources = dataResources(answers);
/** Read by the CSV library, which knows nothing of how they were written. */
const tables = new Map(
  resources.map((one) => {
    const rows = parse(one.text(), { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];
    return [one.name, { ...one, rows }] as const;
  }),
);

/** Lexical forms of Table Schema 2.0, section “Field types”, of the types used here. */
const forms: Readonly<Record<Field['type'], RegExp>> = {
  string: /^/,
  number: /^-?\d+(\.\d+)?(e[-+]?\d+)?$/i,
  integer: /^-?\d+$/,
  boolean: /^(true|false)$/,
  date: /^\d{4}-\d{2}-\d{2}$/,
};

test('cells have the types and keep the constraints their fields say', () => {
  let cells = 0;
  for (const { name, rows, schema } of tables.values()) {
    expect(Object.keys(rows[0] ?? {}), name).toEqual(columnsOf(schema));
    for (const row of rows) {
      for (const { name: column, type, constraints } of schema.fields) {
        const text = row[column] ?? '';
        if (text === '') {
          if (constraints?.required) throw new Error(`${name}: ${column} is empty: ${JSON.stringify(row)}`);
          continue;
        }
        cells += 1;
        if (!forms[type].test(text)) throw new Error(`${name}: ${column} is “${text}”, no ${type}`);
        if (constraints?.enum && !constraints.enum.includes(text))
          throw new Error(`${name}: ${column} is “${text}”`);
        if (constraints?.minimum !== undefined && Number(text) < constraints.minimum)
          throw new Error(`${name}: ${column} is ${text}`);
      }
    }
  }
  expect(cells).toBeGreaterThan(10_000);
});

test('primary keys are unique, and foreign keys lead to rows', () => {
  for (const { name, rows, schema } of tables.values()) {
    const keys = rows.map((row) => schema.primaryKey.map((column) => row[column]).join('\u0000'));
    expect(new Set(keys).size, name).toBe(rows.length);
    // “the fields cannot be null”: Table Schema, primaryKey.
    for (const column of schema.primaryKey) expect(rows.every((row) => row[column] !== '')).toBe(true);
    for (const { fields, reference } of schema.foreignKeys ?? []) {
      const known = new Set(
        tables.get(reference.resource)?.rows.map((row) => row[reference.fields[0] ?? '']),
      );
      expect(known.size, reference.resource).toBeGreaterThan(0);
      expect(
        rows.filter((row) => !known.has(row[fields[0] ?? ''] ?? '')),
        `${name} → ${reference.resource}`,
      ).toEqual([]);
    }
  }
});

test('the readings are the rows of the sheets', () => {
  for (const [id, sheet] of answers.base.readings) {
    const written = parse(sheet.source.text, { columns: true, comment: '#' }) as Record<string, string>[];
    const rows = tables.get(`readings-${id}`)?.rows ?? [];
    expect(rows.length).toBe(written.length);
    for (const [at, row] of rows.entries()) {
      const from = written[at];
      expect([row.profile, row.channel]).toEqual([from?.profile, from?.channel]);
      for (const column of ['step', 'hz', 'voltsRms', 'repeat']) {
        expect(Number(row[column])).toBe(Number(from?.[column]));
      }
    }
  }
});

test('the values are those of the outputs', () => {
  const rows = tables.get('characteristics')?.rows ?? [];
  const first = [...answers.outputs].find(([, output]) => output.characteristics.length > 5);
  const of = rows.filter((row) => row.profile === first?.[0] && row.headline === 'true');
  expect(of.map((row) => [row.name, Number(row.value), Number(row.expandedUncertainty), row.unit])).toEqual(
    first?.[1].characteristics.map((one) => [one.name, one.value, one.expandedUncertainty, one.unit]),
  );
});

test('cells that need quotes get them (RFC 4180, section 2)', () => {
  const rows = [
    ['a,b', 'say "x"', 'two\r\nlines'],
    ['', null, ' padded'],
  ];
  expect(csvText(['one', 'two', 'three'], rows)).toBe(
    'one,two,three\r\n"a,b","say ""x""","two\r\nlines"\r\n,," padded"\r\n',
  );
});
