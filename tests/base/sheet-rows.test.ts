import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readingColumns, readingSchema } from '../../schemas/index.ts';
import { CheckedRows, rowData } from '../../src/base/checked-cells.ts';
import { eachRow, eachRowByLibrary } from '../../src/base/sheet-rows.ts';

type Rows = [line: number, ...cells: string[]][];

function rowsBy(each: typeof eachRow, text: string): Rows {
  const rows: Rows = [];
  each(text, (cells, line) => rows.push([line, ...cells]));
  return rows;
}

test('a row without quotes is what stands between commas and line ends', () => {
  expect(rowsBy(eachRow, 'a,b\r\n\n c ,,\td \n\t\n,\ne')).toEqual([
    [1, 'a', 'b'],
    [3, 'c', '', 'd'],
    [5, '', ''],
    [6, 'e'],
  ]);
});

test('random sheets give the same cells at the same lines as by the CSV library', () => {
  const piece = fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom(',', '\n', '\r\n', ' ', '\t', '0', '1.5', 'FL', "'", '#', '\\') },
    { weight: 1, arbitrary: fc.string({ unit: 'grapheme-ascii' }).map((text) => text.replaceAll('"', '')) },
    { weight: 1, arbitrary: fc.constantFrom('\v', '\f', '\u00a0', '\u2003', '\ufeff', 'Ω', '"x"', '"x,y"') },
  );
  let plain = 0;
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
      const text = pieces.join('');
      if (/^[\t\n\r !#-~]*$/.test(text)) plain += 1;
      const outcome = (each: typeof eachRow): Rows | string => {
        try {
          return rowsBy(each, text);
        } catch (error) {
          return String(error);
        }
      };
      expect(outcome(eachRow)).toEqual(outcome(eachRowByLibrary));
    }),
    { numRuns: 3000, seed: 11 },
  );
  expect(plain).toBeGreaterThan(500);
});

test('a row is a reading just where the schema of readings takes it', () => {
  const checked = new CheckedRows();
  const cell = fc.constantFrom(
    ...[
      'unit/a',
      'FL',
      'RR',
      'XX',
      '',
      '0',
      '1',
      '12',
      '-1',
      '200',
      '201',
      '1.5',
      '1000',
      '1001',
      '1e3',
      '1e9',
    ],
    ...['20000', '200000', '200001', '100', '100000.1', '0x10', ' 1', '1,5', '.5', '5.', 'NaN', 'Infinity'],
  );
  const good = ['unit/a', 'FL', '12', '1000', '1.5', '', '1'];
  let right = 0;
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 0, max: readingColumns.length - 1 }), cell), { maxLength: 3 }),
      (changes) => {
        const cells = [...good];
        for (const [column, text] of changes) cells[column] = text;
        const { data } = readingSchema.safeParse(rowData(cells));
        if (data) right += 1;
        expect(checked.reading(cells)).toEqual(data);
        // A cell that is known by now is judged as when it was new.
        expect(checked.reading(cells)).toEqual(data);
      },
    ),
    { numRuns: 3000, seed: 12 },
  );
  expect(right).toBeGreaterThan(300);
});
