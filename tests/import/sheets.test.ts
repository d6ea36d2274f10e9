/** Whole sheets as benches keep them, and what becomes of them. */
import { describe, expect, test } from 'vitest';
import { saidFact } from '../../src/import/facts.ts';
import { roleNamed } from '../../src/import/role.ts';
import { base, faultsOf, imported, linesOf, rolesOf } from './sheet-of.ts';

const fact = (text: string) => {
  const one = saidFact(text);
  if (typeof one === 'string') throw new Error(one);
  return one;
};
const role = (text: string) => {
  const one = roleNamed(text);
  if (typeof one === 'string') throw new Error(one);
  return one;
};
const like = base.outputs.get('2025-11-north');

describe('layouts', () => {
  test('the columns of readings.csv itself, in any order', () => {
    const found = imported(
      'repeat,hz,voltsRms,profile,step,thdPercent,channel\n1,1000,7.5905,brasslight/8b0s-i5z,24,0.142,FL\n',
    );
    expect(rolesOf(found).every((one) => one.endsWith('known'))).toBe(true);
    expect(linesOf(found)).toEqual(['brasslight/8b0s-i5z FL 24 1000 7.5905 0.142 1']);
    expect(found.questions).toEqual([]);
  });

  test('a column for each output, and one of distortion beside each', () => {
    const found = imported(
      'Code;Step;Hz;FL (V);FL THD (%);RL (mV);Remarks\n8B0S-I5Z;12;63;1,9;0,2;850;warm\n;13;63;2,1;;910;\n',
    );
    expect(linesOf(found)).toEqual([
      'brasslight/8b0s-i5z FL 12 63 1.9 0.2 1',
      'brasslight/8b0s-i5z RL 12 63 0.85 - 1',
      'brasslight/8b0s-i5z FL 13 63 2.1 - 1',
      'brasslight/8b0s-i5z RL 13 63 0.91 - 1',
    ]);
  });

  test('columns of distortion that do not say of what belong to the volts they stand behind', () => {
    const found = imported('Code,Step,Hz,FL (V),THD %,RL (mV),THD %\n8B0S-I5Z,12,63,1.9,0.2,850,0.3\n');
    expect(linesOf(found)).toEqual([
      'brasslight/8b0s-i5z FL 12 63 1.9 0.2 1',
      'brasslight/8b0s-i5z RL 12 63 0.85 0.3 1',
    ]);
    const before = imported('Code,Step,Hz,THD %,FL (V)\n8B0S-I5Z,12,63,0.2,1.9\n');
    expect(linesOf(before)).toEqual(['brasslight/8b0s-i5z FL 12 63 1.9 0.2 1']);
    const lost = imported('Code,Step,Hz,THD RR (%),FL (V),FR (V)\n8B0S-I5Z,12,63,0.2,1.9,1.9\n');
    expect(lost.questions.map(({ what }) => what)).toEqual([
      'Column D holds distortion, and it is not said of which volts.',
    ]);
  });

  test('a column for each frequency, heads that are only numbers: guessed, as no other column is for it', () => {
    const found = imported('Code,Channel,Step,63,1000\n8B0S-I5Z,FL,12,1.9 V,1200 mV\n');
    expect(rolesOf(found).slice(3)).toEqual(['volts guessed', 'volts guessed']);
    expect(linesOf(found)).toEqual([
      'brasslight/8b0s-i5z FL 12 63 1.9 - 1',
      'brasslight/8b0s-i5z FL 12 1000 1.2 - 1',
    ]);
  });

  test('a column for each volume step', () => {
    const found = imported('Code,Channel,Hz,Step 11 (V),Step 12 (V)\n8B0S-I5Z,FL,1 kHz,1.5,1.7\n');
    expect(linesOf(found)).toEqual([
      'brasslight/8b0s-i5z FL 11 1000 1.5 - 1',
      'brasslight/8b0s-i5z FL 12 1000 1.7 - 1',
    ]);
  });

  test('a row of outputs above the header, and one of units below', () => {
    const found = imported(
      'Code,Step,Hz,Front left,,Rear left,\nCode,Step,Hz,Level,THD,Level,THD\n,,Hz,mV,%,mV,%\n8B0S-I5Z,12,63,1900,0.2,850,0.3\n'.replace(
        'Code,Step,Hz,Front left',
        ',,,Front left',
      ),
    );
    expect(linesOf(found)).toEqual([
      'brasslight/8b0s-i5z FL 12 63 1.9 0.2 1',
      'brasslight/8b0s-i5z RL 12 63 0.85 0.3 1',
    ]);
    expect(rolesOf(found).slice(3)).toEqual(['volts known', 'thd known', 'volts known', 'thd known']);
  });

  test('profiles in blocks, with a line of their own above each', () => {
    const found = imported(
      [
        'Channel,Step,Hz,V',
        'Code: 8B0S-I5Z,,,',
        'FL,12,1000,1.7',
        ',13,1000,1.9',
        '',
        'glasswick/0x7e8,,,',
        'FL,12,1000,1.1',
        'Channel,Step,Hz,V',
        'FL,13,1000,1.2',
      ].join('\n'),
    );
    expect(linesOf(found)).toEqual([
      'brasslight/8b0s-i5z FL 12 1000 1.7 - 1',
      'brasslight/8b0s-i5z FL 13 1000 1.9 - 1',
      'glasswick/0x7e8 FL 12 1000 1.1 - 1',
      'glasswick/0x7e8 FL 13 1000 1.2 - 1',
    ]);
    expect(faultsOf(found)).toEqual([]);
  });

  test('readings below a code that is not known are never those of the block above, even where its line is left out', () => {
    const sheet = 'Channel,Step,Hz,V\n8B0S-I5Z\nFL,12,1000,1.7\n8BOS-I5Z\nFL,12,1000,1.1\n';
    for (const isLeftOut of [() => false, (row: number) => row === 4]) {
      const found = imported(sheet, { isLeftOut });
      expect(linesOf(found)).toEqual(['brasslight/8b0s-i5z FL 12 1000 1.7 - 1']);
      expect(faultsOf(found).at(-1)).toBe('5 has no profile (A4 is not understood)');
    }
    const filled = 'Code,Channel,Step,Hz,V\n8B0S-I5Z,FL,12,1000,1.7\n8BOS-I5Z,FL,12,1000,1.1\n,,13,,1.2\n';
    const found = imported(filled, { isLeftOut: (row) => row === 3 });
    expect(linesOf(found)).toEqual(['brasslight/8b0s-i5z FL 12 1000 1.7 - 1']);
    expect(faultsOf(found)).toEqual(['4 has no profile (A3 is not understood)']);
  });

  test('one profile, output and frequency for the whole sheet, above the header', () => {
    const found = imported('Code:,8B0S-I5Z,Output:,FL\nTest frequency 1 kHz\nStep,Volts\n12,1.7\n13,1.9\n');
    expect(linesOf(found)).toEqual([
      'brasslight/8b0s-i5z FL 12 1000 1.7 - 1',
      'brasslight/8b0s-i5z FL 13 1000 1.9 - 1',
    ]);
  });
});

describe('gaps and repeats', () => {
  test('an empty cell means the one above, and with another profile everything begins anew', () => {
    const found = imported(
      'Code,Channel,Step,Hz,V\n8B0S-I5Z,FL,12,63,1.9\n,,,125,1.8\n0x7E8,FL,12,63,1.2\n,,,125,1.1\n0x2F6,,12,63,1\n',
    );
    expect(linesOf(found).length).toBe(4);
    expect(faultsOf(found)).toEqual(['6 has no output']);
    expect(found.notes.find((note) => note.startsWith('Empty'))).toBe(
      'Empty cells mean the same as above: 2 of code, 2 of output, 2 of step.',
    );
  });

  test('below a cell that is not understood nothing is taken from further above', () => {
    const found = imported('Code,Channel,Step,Hz,V\n8B0S-I5Z,FL,12,63,1.9\n,XY,12,125,1.8\n,,13,125,1.8\n');
    expect(linesOf(found).length).toBe(1);
    expect(faultsOf(found)).toEqual([
      'B3 names none of the four outputs',
      '4 has no output (B3 is not understood)',
    ]);
  });

  test('the same again is a repeat, numbered where it is not', () => {
    const found = imported('Code,Channel,Step,Hz,V,Run\n8B0S-I5Z,FL,12,63,1.9,2\n,,,,1.91,\n,,,,1.92,\n');
    expect(linesOf(found).map((line) => line.slice(-1))).toEqual(['2', '1', '3']);
  });

  test('rows of averages are left out, and rows not filled in are counted', () => {
    const found = imported(
      'Code,Channel,Step,Hz,V\n8B0S-I5Z,FL,12,63,1.9\n,,13,63,\n,,14,63,n/a\nAverage,,,,1.9\n',
    );
    expect(linesOf(found).length).toBe(1);
    expect(faultsOf(found)).toEqual([]);
    expect(found.rows?.notFilledIn).toBe(2);
    expect(found.rows?.leftOut).toEqual([{ row: 5, why: 'it says “Average”: no reading, but made of some' }]);
  });
});

describe('what is not understood is named by its cell', () => {
  const row = (volts: string, thd = '') =>
    imported(`Code,Channel,Step,Hz,V,THD %\n8B0S-I5Z,FL,12,63,"${volts}","${thd}"\n,,13,63,1.90,0.20\n`);

  test.each([
    ['OL', '', 'E2 is no number'],
    ['<0.1', '', 'E2 is a bound (<), not a reading'],
    ["=cmd|' /C calc'!A0", '', 'E2 is a formula; it is taken as text and never worked out'],
    ['#DIV/0!', '', 'E2 is a formula that went wrong'],
    ['1.5 W', '', 'E2 is not in volts: watts are no volts'],
    ['1.5 furlongs', '', 'E2 has a unit that is not known, “furlongs”'],
    ['1,5', '', undefined],
    ['-1.5', '', 'E2 is below zero, and volts rms are not'],
    ['1.5', 'high', 'F2 is no number'],
    ['', '0.2', 'F2 has no volts beside it'],
    ['200000', '', 'E2 “voltsRms” must be at most 100000 V'],
    ['1.5', '101', 'F2 “thdPercent” must be at most 100 %'],
  ])('volts “%s”, distortion “%s”', (volts, thd, fault) => {
    const found = row(volts, thd);
    if (fault === undefined) expect(found.questions[0]?.what).toMatch(/^Decimals are written both ways/);
    else expect(faultsOf(found)[0]?.startsWith(fault), faultsOf(found)[0]).toBe(true);
    expect(linesOf(found)).toContain('brasslight/8b0s-i5z FL 13 63 1.9 0.2 1');
  });

  test('an apostrophe that kept a cell from being run is taken off', () => {
    expect(faultsOf(row("'=1+1"))).toEqual(['E2 is a formula; it is taken as text and never worked out']);
  });

  test('steps beyond the schema', () => {
    const found = imported('Code,Channel,Step,Hz,V\n8B0S-I5Z,FL,300,63,1.9\n8B0S-I5Z,FL,12,0.5,1.9\n');
    expect(faultsOf(found).map((fault) => fault.split(' ')[0])).toEqual(['C2', 'D3']);
  });

  test('peaks only of a sine', () => {
    const sheet = 'Code,Channel,Step,Hz,Level (Vpp)\n8B0S-I5Z,FL,12,63,2.828427\n';
    expect(faultsOf(imported(sheet))).toEqual(['E2 is a peak value, and nothing says the tone was a sine']);
    expect(linesOf(imported(sheet, { facts: [fact('signal.kind=sine')] }))).toEqual([
      'brasslight/8b0s-i5z FL 12 63 1 - 1',
    ]);
    expect(faultsOf(imported(sheet, { facts: [fact('signal.kind=noise')] }))[0]).toMatch(/no sine/);
  });

  test('a point of thousands among decimal commas is no thousand volts', () => {
    const found = imported('Code;Channel;Step;Hz;V\n8B0S-I5Z;FL;12;1.000;7,59\n;;13;1.000;7.812\n');
    expect(linesOf(found)).toEqual(['brasslight/8b0s-i5z FL 12 1000 7.59 - 1']);
    expect(faultsOf(found)).toEqual(['E3 would be 7812 V, as the rest of the sheet has its decimals']);
  });

  test('cells over several lines do not put rows out of count', () => {
    const found = imported('Code,Channel,Step,Hz,"Volts\nrms (V)"\n8B0S-I5Z,FL,12,63,OL\n');
    expect(found.rows?.faults[0]).toMatchObject({ place: 'E2', row: 2, line: 3 });
  });
});

describe('codes', () => {
  const one = (code: string, said = {}) => imported(`Code,Channel,Step,Hz,V\n${code},FL,12,63,1.9\n`, said);

  test('capitals and separators are no matter', () => {
    for (const code of ['8B0S-I5Z', '8b0s i5z', '8b0s_i5z', 'brasslight/8b0s-i5z']) {
      expect(linesOf(one(code)), code).toEqual(['brasslight/8b0s-i5z FL 12 63 1.9 - 1']);
    }
  });

  test('a misread code is proposed, never guessed', () => {
    const found = one('8BOS-I5Z');
    expect(linesOf(found)).toEqual([]);
    expect(found.rows?.faults[0]).toMatchObject({
      place: 'A2',
      problem: 'No profile has the code 8BOS-I5Z.',
      help: expect.stringContaining('--code "8BOS-I5Z=brasslight/8b0s-i5z"'),
    });
    expect(linesOf(one('8BOS-I5Z', { codes: new Map([['8bos-i5z', 'brasslight/8b0s-i5z']]) })).length).toBe(
      1,
    );
  });

  test('a code the spreadsheet made a number or a date of', () => {
    expect(one('1.1').rows?.faults[0]?.problem).not.toMatch(/Spreadsheets/);
    expect(one('2026-08-05').rows?.faults[0]?.problem).toMatch(
      /Spreadsheets make numbers and dates of codes/,
    );
  });

  test('a new profile needs its unit, fits its codes, and says what it is', () => {
    expect(one('5S1I-B8Z', { fresh: ['5S1I-B8Z'] }).rows?.faults[0]?.help).toMatch(/--unit/);
    expect(one('XX', { fresh: ['XX'], family: 'brasslight' }).rows?.faults[0]?.problem).toMatch(
      /no code of brasslight/,
    );
    const found = one('5S1I-B8Z', {
      fresh: ['5S1I-B8Z'],
      family: 'brasslight',
      like,
      facts: [fact('date=2026-03-14')],
    });
    expect(found.questions.map(({ help }) => help)).toEqual([
      '--fact origin=… with one of: factory, dealer-update, third-party.',
      '--fact system=… with one of: amplified, unamplified.',
    ]);
    const facts = ['date=2026-03-14', 'origin=factory', 'system=unamplified'].map(fact);
    const whole = one('5S1I-B8Z', { fresh: ['5S1I-B8Z'], family: 'brasslight', like, facts });
    expect(whole.questions).toEqual([]);
    expect(whole.newProfiles[0]).toMatchObject({
      id: 'brasslight/5s1i-b8z',
      data: { code: '5S1I-B8Z', sources: ['bench-2026-03-north'] },
    });
  });
});

describe('conditions above the header', () => {
  const sheet = (above: string) =>
    imported(`${above}\nCode;Kanal;Stufe;Hz;V\n8B0S-I5Z;VL;12;63;1,9\n`, { like });
  const taken = (above: string) =>
    Object.fromEntries(
      sheet(above).session.taken.map(({ field, value, from }) => [field, `${value} (${from})`]),
    );

  test('in one line or in cells of their own, in three languages', () => {
    expect(taken('Bench: North; Date 14.03.2026; Supply 14,4 V ± 0,1')).toMatchObject({
      bench: 'north-bench (A1)',
      date: '2026-03-14 (B1)',
      'supply.volts': '14.4 (C1)',
      'supply.toleranceVolts': '0.1 (C1)',
    });
    expect(taken('Datum:;14. März 2026;Last;4 Ω ± 1 %')).toMatchObject({
      date: '2026-03-14 (B1)',
      'load.ohms': '4 (D1)',
      'load.tolerancePercent': '1 (D1)',
    });
    expect(taken('Fecha;14/03/2026;;;\nAlimentación (V);13,8;;;')).toMatchObject({
      date: '2026-03-14 (B1)',
      'supply.volts': '13.8 (B2)',
    });
  });

  test('names of persons are not taken over, and what is not known is told', () => {
    const { notes } = sheet('Technician: J. Somebody;Moon: full');
    expect(notes).toContain('A1 names a person, and is not taken over: entries name roles.');
    expect(notes).toContain('B1 “Moon: full” is not taken over.');
    expect(JSON.stringify(notes)).not.toContain('Somebody');
  });

  test('a label with nothing beside it says nothing', () => {
    expect(sheet('Bench;;Date;14.03.2026').session.taken.find(({ field }) => field === 'bench')?.from).toBe(
      'like 2025-11-north',
    );
  });
});

describe('columns that are said', () => {
  test('by head or by letter, before any guess', () => {
    const columns = new Map([
      ['level', role('volts mV')],
      ['b', role('step')],
    ]);
    const found = imported('Code,Pos,Ch,Hz,Level\n8B0S-I5Z,12,FL,63,1900\n', { columns });
    expect(rolesOf(found)).toEqual(['profile known', 'step said', 'channel known', 'hz known', 'volts said']);
    expect(linesOf(found)).toEqual(['brasslight/8b0s-i5z FL 12 63 1.9 - 1']);
  });

  test('a name the sheet has not is told', () => {
    const found = imported('Code,Ch,Step,Hz,V\n8B0S-I5Z,FL,12,63,1.9\n', {
      columns: new Map([['levle', role('volts V')]]),
    });
    expect(found.questions[0]?.what).toBe('--columns names “levle”, and there is no such column.');
  });

  test('without a column of volts, or a header, that is asked', () => {
    expect(imported('Code,Ch,Step,Hz\n8B0S-I5Z,FL,12,63\n').questions[0]?.what).toBe(
      'No column holds volts.',
    );
    expect(imported('a,b\n1,2\n').questions[0]?.what).toBe('No row was found that names the columns.');
  });
});
