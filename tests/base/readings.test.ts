import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextFile } from '../../src/base/index.ts';
import { readReadings } from '../../src/base/readings.ts';

const header = 'profile,channel,step,hz,voltsRms,thdPercent,repeat';
const row = 'dialstone/1-10,FL,12,1000,0.512,0.12,1';

function read(text: string) {
  return readReadings(new TextFile('outputs/s/readings.csv', text), 's');
}

/** Findings as `line:column message`. */
function faults(text: string): string[] {
  return read(text).findings.map(({ place, message }) => `${place.line}:${place.column} ${message}`);
}

test('a row becomes a reading that knows its line', () => {
  const { table, findings } = read(`${header}\n${row}\ndialstone/1-10,RL,12,62.5,0.001,,2\n`);
  expect(findings).toEqual([]);
  expect(table.length).toBe(2);
  expect(table.readingsOf('dialstone/1-10')).toMatchObject([
    {
      id: 's:2',
      session: 's',
      profile: 'dialstone/1-10',
      channel: 'FL',
      step: 12,
      hz: 1000,
      voltsRms: 0.512,
      thdPercent: 0.12,
      repeat: 1,
    },
    {
      id: 's:3',
      session: 's',
      profile: 'dialstone/1-10',
      channel: 'RL',
      step: 12,
      hz: 62.5,
      voltsRms: 0.001,
      thdPercent: null,
      repeat: 2,
    },
  ]);
  expect(table.place('s:3', 'hz')).toMatchObject({ line: 3, column: 22, endColumn: 26 });
});

test.each([
  ['CRLF line ends', `${header}\r\n${row}\r\n`],
  ['a byte-order mark', `\uFEFF${header}\n${row}\n`],
  ['no line end at the end', `${header}\n${row}`],
  ['blank lines and spaces about cells', `${header}\n\n dialstone/1-10 , FL,12,1000,0.512,0.12,1\n\n`],
  ['quoted cells', `${header}\n"dialstone/1-10",FL,12,1000,"0.512",0.12,1\n`],
])('reads a sheet with %s', (_, text) => {
  const { table, findings } = read(text);
  expect(findings).toEqual([]);
  expect(table.readingsOf('dialstone/1-10')[0]?.voltsRms).toBe(0.512);
});

describe('a fault is placed at its cell', () => {
  test.each([
    [
      `${header}\ndialstone/1-10,FL,12,1000,-0.5,0.12,1\n`,
      '2:27 “voltsRms” must be at least 0 V, and this is -0.5.',
    ],
    [
      `${header}\ndialstone/1-10,FL,12,1000,NaN,0.12,1\n`,
      '2:27 “voltsRms” must be a number, and NaN is text.',
    ],
    [
      `${header}\ndialstone/1-10,FL,12,1000,0.5 V,0.12,1\n`,
      '2:27 “voltsRms” must be a number, and 0.5 V is text.',
    ],
    [
      `${header}\ndialstone/1-10,FL,12,1000,,0.12,1\n`,
      '2:27 “voltsRms” must be a number, and this is empty.',
    ],
    [
      `${header}\ndialstone/1-10,FL,12.5,1000,0.5,0.12,1\n`,
      '2:19 “step” must be a whole number, and this is 12.5.',
    ],
    [`${header}\ndialstone/1-10,LF,12,1000,0.5,0.12,1\n`, '2:16 “channel” cannot be "LF".'],
    [`${header}\n"dialstone/1-10",FL,12,0,0.5,0.12,1\n`, '2:24 “hz” must be at least 1 Hz, and this is 0.'],
    [`${header}\ndialstone/1-10,FL,12,1000,0,512,0.12,1\n`, '2:1 This row has 8 cells; the header has 7.'],
    [`${header}\ndialstone/1-10,FL,12\n`, '2:1 This row has 3 cells; the header has 7.'],
    ['', '1:1 This sheet is empty.'],
    [`profile;channel\n${row}\n`, '1:1 The cells of this sheet are separated by semicolons, not by commas.'],
    [
      `${header.replaceAll(',', '\t')}\n`,
      '1:1 The cells of this sheet are separated by tabs, not by commas.',
    ],
    [
      `profil,channel,step,hz,voltsRms,thdPercent,repeat\n`,
      '1:1 Column 1 is called “profil” where “profile” is expected.',
    ],
    [`${header},notes\n${row},dry\n`, '1:52 Column 8, “notes”, is none of a sheet.'],
    [`${header},x,y,z\n${row}\n`, '1:52 Column 8, “x”, is none of a sheet, nor are the 2 behind it.'],
    [`profile,chanel\n${row}\n`, '1:9 Column 2 is called “chanel” where “channel” is expected.'],
  ])('%j', (text, expected) => {
    expect(faults(text)[0]).toBe(expected);
  });

  test.each([
    [
      `${header}\n${row}\n`.replaceAll(',', ';'),
      '1:1 The cells of this sheet are separated by semicolons, not by commas.',
    ],
    [`${row}\n${row}\n`, '1:1 This line does not name the columns.'],
  ])('a sheet without a header that can be read is one fault, not one for each row: %j', (text, expected) => {
    expect(faults(text)).toEqual([expected]);
  });

  test('columns in another order are named once each, and the rows under them left alone', () => {
    const swapped = (line: string) => {
      const [profile, channel, step, ...rest] = line.split(',');
      return [profile, step, channel, ...rest].join(',');
    };
    expect(faults(`${swapped(header)}\n${swapped(row)}\n`)).toEqual([
      '1:9 Column 2 is called “step” where “channel” is expected.',
      '1:14 Column 3 is called “channel” where “step” is expected.',
    ]);
  });

  test('a quotation mark out of place is named with its line, and the rows before it are kept', () => {
    const { table, findings } = read(`${header}\n${row}\ndialstone/1-10,F"L,12,1000,0.5,,1\n`);
    expect(findings).toMatchObject([{ rule: 'syntax', place: { line: 3 } }]);
    expect(table.length).toBe(1);
  });

  test('one bad row leaves the others', () => {
    const { table, findings } = read(`${header}\n${row}\ndialstone/1-10,FL,x,1000,0.5,,1\n${row}\n`);
    expect(findings).toHaveLength(1);
    expect(table.length).toBe(2);
  });
});

describe('a header that does not name the columns in their places', () => {
  test.each([
    ['volts and THD swapped', header.replace('voltsRms,thdPercent', 'thdPercent,voltsRms'), 2],
    ['a column too many', `${header},notes`, 1],
    ['a column missing', header.replace('thdPercent,', ''), 2],
    ['semicolons', header.replaceAll(',', ';'), 1],
    ['no header at all', row, 1],
  ])('%s: every fault in it is named, and no row is read', (_, first, faultCount) => {
    const { table, findings } = read(`${first}\n${row}\n${row}\n`);
    expect(table.length).toBe(0);
    expect(findings).toHaveLength(faultCount);
    for (const { place } of findings) expect(place.line).toBe(1);
  });
  test('a name misspelt alone: its place is plain, and the rows are read', () => {
    const { table, findings } = read(`${header.replace('voltsRms', 'voltRms')}\n${row}\n`);
    expect(findings).toHaveLength(1);
    expect(table.readingsOf('dialstone/1-10')[0]?.voltsRms).toBe(0.512);
  });
});

test('any text gives rows or findings inside the file, and never throws', () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(...'a1,.\n\r"\' -;\t\uFEFF\u0000é') }), (body) => {
      const text = `${header}\n${body}`;
      const { table, findings } = read(text);
      const lines = text.split('\n').length;
      for (const { place } of findings) expect(place.line).toBeLessThanOrEqual(lines);
      expect(table.length + findings.length >= 0).toBe(true);
    }),
    { numRuns: 1000, seed: 20260314 },
  );
});
