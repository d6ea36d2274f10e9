/** Workbooks: read as a spreadsheet shows them, bounded, and nothing in them run or followed. */
import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { readSheet as readByLibrary } from 'read-excel-file/universal';
import { describe, expect, test } from 'vitest';
import { readSheet, UnusableSheet } from '../../src/import/index.ts';
import { faultsOf, imported, linesOf } from './sheet-of.ts';
import { type BookCell, styles, workbook } from './workbook.ts';

const heads = ['Code', 'Channel', 'Step', 'Frequency (Hz)', 'Volts rms (V)', 'THD'];

/** The message of a file that cannot be read. */
function refusal(bytes: Uint8Array, name?: string): string {
  try {
    readSheet(bytes, name);
  } catch (error) {
    if (error instanceof UnusableSheet) return `${error.message} ${error.help}`;
    throw error;
  }
  return 'read';
}

test('merged cells, percentages, dates, formulas with their values, texts within the cell', () => {
  const book = workbook([
    {
      name: 'March',
      merged: ['A3:A5', 'B3:B4'],
      rows: [
        ['Date', { value: 46095, style: styles.ownDate }, 'Supply', { value: 14.4 }],
        heads,
        ['8B0S-I5Z', 'FL', 12, 63, 1.9, { value: 0.00142, style: styles.percent }],
        ['', '', 13, 63, { value: 2.1, formula: 'A1*1.05' }, { value: 0.002, style: styles.ownPercent }],
        [
          '',
          { value: 'RL', type: 'inlineStr' },
          13,
          63,
          { value: '1,05', type: 'str', formula: 'TEXT(1,2)' },
          '',
        ],
      ],
    },
  ]);
  const found = imported(book);
  expect(faultsOf(found)).toEqual([]);
  expect(linesOf(found)).toEqual([
    'brasslight/8b0s-i5z FL 12 63 1.9 0.142 1',
    'brasslight/8b0s-i5z FL 13 63 2.1 0.2 1',
    'brasslight/8b0s-i5z RL 13 63 1.05 - 1',
  ]);
  // Serial day 46095 is the 14th of March 2026: day 1 is the 1st of January 1900, and 1900 counts as a leap year.
  expect(found.session.taken).toContainEqual({ field: 'date', value: '2026-03-14', from: 'B1' });
  expect(found.notes).toContain('2 merged areas count as their first cell, all over.');
});

test('dates counted from 1904 (ISO/IEC 29500-1, 18.17.4.1: 1,462 days later)', () => {
  const rows = [
    ['Date', { value: 46095 - 1462, style: styles.date }],
    heads,
    ['8B0S-I5Z', 'FL', 12, 63, 1.9, ''],
  ];
  const found = imported(workbook([{ name: 'S', rows }], { epoch1904: true }));
  expect(found.session.taken).toContainEqual({ field: 'date', value: '2026-03-14', from: 'B1' });
});

test('cells as another reader reads them', async () => {
  const cell: fc.Arbitrary<BookCell | undefined> = fc.oneof(
    fc.constantFrom('8B0S-I5Z', 'FL', 'a & b < c', 'Ω µ ä', ''),
    fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((value) => Number(value.toPrecision(8)) + 0),
    fc.integer({ min: 0, max: 40_000 }),
    fc.constant(undefined),
    fc.integer({ min: 1, max: 60_000 }).map((value) => ({ value, style: styles.date })),
    fc.constantFrom(
      { value: 'inline', type: 'inlineStr' },
      { value: 12.5, formula: 'B1*2' },
      { value: '1', type: 'b' },
    ),
  );
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.array(cell, { maxLength: 8 }), { minLength: 1, maxLength: 8 }),
      async (rows) => {
        const bytes = workbook([{ name: 'S', rows: [...rows, ['end']] }]);
        const theirs = await readByLibrary(bytes.slice().buffer as ArrayBuffer);
        const own = new Map(readSheet(bytes, undefined).rows.map(({ row, cells }) => [row, cells]));
        theirs.forEach((row, at) => {
          row.forEach((value: unknown, column: number) => {
            const mine = own.get(at + 1)?.[column] ?? '';
            if (value instanceof Date) expect(mine).toBe(value.toISOString().slice(0, 10));
            else if (typeof value === 'boolean') expect(mine).toBe(value ? 'TRUE' : 'FALSE');
            else expect(mine).toBe(value ?? '');
          });
        });
        expect(own.size).toBeGreaterThan(0);
      },
    ),
    { numRuns: 40, seed: 3 },
  );
});

describe('several sheets', () => {
  const rows = [heads, ['8B0S-I5Z', 'FL', 12, 63, 1.9, '']];
  const book = workbook([
    { name: 'March', rows },
    { name: 'April', rows },
    { name: 'Lists', rows: [['x']], state: 'hidden' },
    { name: 'Empty', rows: [] },
  ]);

  test('which is meant is asked', () => {
    expect(refusal(book)).toBe(
      'The workbook has 2 sheets with something in them: “March”, “April”. Say which, one at a time: --sheet "March".',
    );
    expect(refusal(book, 'May')).toMatch(/no sheet “May”.*“March”, “April”, “Lists”, “Empty”/);
    expect(readSheet(book, 'april').rows.length).toBe(2);
  });
});

describe('hostile and damaged workbooks', () => {
  const rows = [heads, ['8B0S-I5Z', 'FL', 12, 63, 1.9, '']];
  const whole = workbook([{ name: 'S', rows }]);
  const withSheet = (xml: string): Uint8Array => {
    const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
    return workbook([{ name: 'S', rows }], {
      extra: { 'xl/worksheets/sheet1.xml': xml.replace('<worksheet', `<worksheet ${main}`) },
    });
  };

  test('a row or column far out does not make the reader fill up to it', () => {
    const far = (row: string, cell: string) =>
      withSheet(
        `<worksheet><sheetData><row r="${row}"><c r="${cell}"><v>1</v></c></row></sheetData></worksheet>`,
      );
    expect(refusal(far('2000000000', 'A2000000000'))).toMatch(/larger than a bench sheet/);
    expect(refusal(far('1', 'XFD1'))).toMatch(/larger than a bench sheet/);
    expect(refusal(far('1', 'ZZZZ1'))).toMatch(/damaged/);
    expect(refusal(far('1048576', 'A1048576'))).toBe('read');
  });

  test('merged areas over everything are refused', () => {
    const cells = '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>';
    const areas = `<mergeCells>${'<mergeCell ref="A1:SF1048576"/>'.repeat(50)}</mergeCells>`;
    expect(refusal(withSheet(`<worksheet>${cells}${areas}</worksheet>`))).toMatch(
      /larger than a bench sheet/,
    );
  });

  test('what unpacks to more than the bounds is not unpacked', () => {
    const bomb = Buffer.from(workbook([{ name: 'S', rows }]));
    const entry = bomb.indexOf(Buffer.from([0x50, 0x4b, 0x01, 0x02]));
    bomb.writeUInt32LE(300 * 1024 ** 2, entry + 24);
    expect(refusal(bomb)).toMatch(/unpacks to/);
  });

  test('a part that unpacks to more than its directory says is damaged', () => {
    const lying = Buffer.from(zipSync({ 'xl/workbook.xml': strToU8('x'.repeat(100_000)) }));
    const entry = lying.indexOf(Buffer.from([0x50, 0x4b, 0x01, 0x02]));
    lying.writeUInt32LE(10, entry + 24);
    expect(refusal(lying)).toMatch(/damaged/);
  });

  test('document types, and entities that swell, are refused unread', () => {
    const lol = '<!DOCTYPE lolz [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]>';
    const book = workbook([{ name: 'S', rows }], {
      extra: { 'xl/sharedStrings.xml': `${lol}<sst><si><t>&b;</t></si></sst>` },
    });
    expect(refusal(book)).toMatch(/DOCTYPE/);
  });

  test('macros and links outside are not looked at', () => {
    const book = workbook([{ name: 'S', rows }], {
      extra: {
        'xl/vbaProject.bin': 'Sub Auto_Open()',
        'xl/externalLinks/externalLink1.xml': '<externalLink xmlns:r="x" r:id="rId1"/>',
        'xl/externalLinks/_rels/externalLink1.xml.rels':
          '<Relationships><Relationship Target="http://127.0.0.1:1/x" TargetMode="External"/></Relationships>',
      },
    });
    expect(linesOf(imported(book))).toEqual(['brasslight/8b0s-i5z FL 12 63 1.9 - 1']);
  });

  test('a formula without a value is told, never worked out', () => {
    const book = workbook([
      {
        name: 'S',
        rows: [heads, ['8B0S-I5Z', 'FL', 12, 63, { formula: 'WEBSERVICE("http://127.0.0.1:1")' }, '']],
      },
    ]);
    const found = imported(book);
    expect(linesOf(found)).toEqual([]);
    expect(found.notes.join(' ')).toMatch(/1 formulas? hold.*no value \(E2\)/);
  });

  test('cut off at any place, or with any byte changed, it is read or refused, and nothing else', () => {
    for (let length = 0; length < whole.length; length += 331) {
      expect(refusal(whole.slice(0, length)), String(length)).toMatch(/read|damaged|empty|UTF|NUL/);
    }
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(255), (at, byte) => {
        const bytes = whole.slice();
        bytes[at] = byte;
        refusal(bytes);
      }),
      { numRuns: 150, seed: 8 },
    );
  });

  test('old workbooks and locked ones are told how to be saved', () => {
    expect(refusal(new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]))).toMatch(
      /\.xls.*save it as \.xlsx/,
    );
    const locked = Buffer.from(whole);
    const entry = locked.indexOf(Buffer.from([0x50, 0x4b, 0x01, 0x02]));
    locked.writeUInt16LE(locked.readUInt16LE(entry + 8) | 1, entry + 8);
    expect(refusal(locked)).toMatch(/password/);
  });
});
