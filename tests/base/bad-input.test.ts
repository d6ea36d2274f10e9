/**
 * Bad input, from the sheet to the output: a finding at its place or a partial result that says what is missing,
 * never a wrong number, a crash or silence. The base of the rules’ examples, with one thing wrong in it.
 */
import { mkdir, mkdtemp, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ContentFiles, MemoryFiles } from '../../src/base/index.ts';
import { checkContent } from '../../src/check/index.ts';
import { type Characteristic, formatQuantity, type ProfileOutput } from '../../src/measure/index.ts';
import { exampleFiles } from '../check/example-base.ts';

const sheet = 'outputs/2025-05-shed/readings.csv';
const otherSheet = 'outputs/2026-02-loft/readings.csv';
/** Measured in the shed alone, but for the one profile both sessions measured. */
const profile = 'moorlight/kn-2093';
const shared = 'moorlight/km-4417';

function sheetText(): string {
  return exampleFiles.get(sheet) ?? '';
}

/** The example base with another text for the sheet; other files as said. */
function baseWith(text: string | Uint8Array, others: Readonly<Record<string, string>> = {}): MemoryFiles {
  return new MemoryFiles('example', new Map([...exampleFiles, [sheet, text], ...Object.entries(others)]));
}

interface Checked {
  /** `rule line:column message`, of the sheet alone. */
  readonly faults: readonly string[];
  readonly output: ProfileOutput;
}

async function checked(content: ContentFiles | string, of = profile): Promise<Checked> {
  const { answers, findings } = await checkContent(content);
  const output = answers.outputs.get(of);
  if (!output) throw new Error(`no output of ${of}`);
  const faults = findings
    .filter(({ place }) => place.file === sheet)
    .map(({ rule, place, message }) => `${rule} ${place.line}:${place.column} ${message}`);
  return { faults, output };
}

/** Every figure of an output in words: what a page shows of it. */
function figures(output: ProfileOutput): string[] {
  const shown = (one: Characteristic): string =>
    `${one.name} ${formatQuantity(one)} at ${JSON.stringify(one.conditions)}`;
  return [
    ...[...output.characteristics, ...output.others].map(shown),
    ...output.levelByStep.map(({ step, volts }) => `step ${step}: ${formatQuantity(volts)}`),
    ...output.responses.flatMap(({ step, points }) =>
      points.map(({ hz, level }) => `step ${step}, ${hz} Hz: ${formatQuantity(level)}`),
    ),
    ...output.missing.map(({ name, reason }) => `${name}: ${reason}`),
  ];
}

/** Lines of the sheet of a profile, channel, step and frequency. */
function lineOf(start: string): number {
  const at = sheetText()
    .split('\n')
    .findIndex((line) => line.startsWith(start));
  if (at === -1) throw new Error(`no line begins with ${start}`);
  return at + 1;
}

function withLine(line: number, change: (text: string) => string | undefined): string {
  return sheetText()
    .split('\n')
    .flatMap((text, index) => (index + 1 === line ? (change(text) ?? []) : text))
    .join('\n');
}

function without(matches: RegExp): string {
  return sheetText()
    .split('\n')
    .filter((line) => !matches.test(line))
    .join('\n');
}

test('the base is clean before', async () => {
  expect((await checkContent(baseWith(sheetText()))).findings).toEqual([]);
});

describe('a cell that is no reading: a finding at the cell, and the output is that of the sheet without the row', () => {
  const row = 'moorlight/kn-2093,FL,20,1000,0.5278,';
  test.each([
    ['NaN', 'NaN', 'must be a number, and NaN is text.'],
    ['negative volts', '-0.5278', 'must be at least 0 V, and this is -0.5278.'],
    ['a comma decimal in quotation marks', '"0,5278"', 'must be a number, and 0,5278 is text.'],
    ['nothing', '', 'must be a number, and this is empty.'],
    ['infinity', 'Infinity', 'must be a number, and Infinity is text.'],
    ['a unit', '0.5278 V', 'must be a number, and 0.5278 V is text.'],
    ['a hexadecimal number', '0x1F', 'must be a number, and 0x1F is text.'],
  ])('%s', async (_, cell, message) => {
    const line = lineOf(row);
    const broken = withLine(line, (text) => text.replace('0.5278', cell));
    const { faults, output } = await checked(baseWith(broken));
    expect(faults).toEqual([`schema ${line}:30 “voltsRms” ${message}`]);
    const { output: expected } = await checked(baseWith(withLine(line, () => undefined)));
    expect(figures(output)).toHaveLength(figures(expected).length);
    expect(figures(output)).toEqual(figures(expected));
  });

  test('a number too large for any computer', async () => {
    const line = lineOf(row);
    const { faults, output } = await checked(
      baseWith(withLine(line, (text) => text.replace('0.5278', '1e999'))),
    );
    expect(faults).toHaveLength(1);
    expect(faults[0]).toContain(`${line}:30 “voltsRms”`);
    const { output: expected } = await checked(baseWith(withLine(line, () => undefined)));
    expect(figures(output)).toEqual(figures(expected));
  });

  test('a comma decimal without them: the row has a cell too many, and is named', async () => {
    const line = lineOf(row);
    const broken = withLine(line, (text) => text.replace('0.5278', '0,5278'));
    const { findings } = await checkContent(baseWith(broken));
    expect(findings).toMatchObject([
      {
        rule: 'syntax',
        place: { file: sheet, line, column: 1 },
        message: 'This row has 8 cells; the header has 7.',
        help: 'Look for a decimal comma: numbers are written with a point.',
      },
    ]);
    const { output } = await checked(baseWith(broken));
    const { output: expected } = await checked(baseWith(withLine(line, () => undefined)));
    expect(figures(output)).toEqual(figures(expected));
  });

  test('any number of any row replaced by any of these: never a crash, silence or another number', async () => {
    const lines = sheetText().trimEnd().split('\n');
    const bad = [
      'NaN',
      '-1',
      '1,5',
      '"1,5"',
      '0x10',
      '1e999',
      '∞',
      '１',
      'null',
      '1.2.3',
      '--1',
      '1 000',
      '#REF!',
    ];
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 2, max: lines.length }),
        fc.constantFrom(2, 3, 4, 6),
        fc.constantFrom(...bad),
        async (line, column, cell) => {
          const of = (lines[line - 1] ?? '').split(',')[0] ?? '';
          const broken = withLine(line, (text) => text.split(',').with(column, cell).join(','));
          const { faults, output } = await checked(baseWith(broken), of);
          expect(faults.length, broken.split('\n')[line - 1]).toBeGreaterThan(0);
          for (const fault of faults) expect(fault).toMatch(new RegExp(`^(schema|syntax) ${line}:`));
          const { output: expected } = await checked(baseWith(withLine(line, () => undefined)), of);
          expect(figures(output)).toEqual(figures(expected));
        },
      ),
      { numRuns: 40, seed: 20260314 },
    );
  });
});

describe('forms of the file', () => {
  const clean = async () => figures((await checked(baseWith(sheetText()))).output);
  test.each([
    ['a byte-order mark', `\uFEFF${sheetText()}`],
    ['CRLF line ends', sheetText().replaceAll('\n', '\r\n')],
    ['both', `\uFEFF${sheetText().replaceAll('\n', '\r\n')}`],
    ['no line end at the end', sheetText().trimEnd()],
  ])('%s: read as without, to the last figure', async (_, text) => {
    const { faults, output } = await checked(baseWith(text));
    expect(faults).toEqual([]);
    expect(figures(output)).toEqual(await clean());
  });

  test('with CRLF and a byte-order mark places are those a person counts', async () => {
    const line = lineOf('moorlight/kn-2093,FL,20,1000,0.5278,');
    const broken = withLine(line, (text) => text.replace('0.5278', 'NaN'));
    const { faults } = await checked(baseWith(`\uFEFF${broken.replaceAll('\n', '\r\n')}`));
    expect(faults).toEqual([`schema ${line}:30 “voltsRms” must be a number, and NaN is text.`]);
  });

  test.each([
    ['line ends of very old programs', sheetText().replaceAll('\n', '\r'), 'syntax 1:51 A line ends here'],
    [
      'semicolons and comma decimals',
      sheetText().replaceAll(',', ';').replaceAll('.', ','),
      'syntax 1:1 The cells of this sheet are separated by semicolons, not commas.',
    ],
    ['UTF-16', new Uint8Array([0xff, 0xfe, 0x70, 0x00]), 'syntax 1:1 This file is not UTF-8 text.'],
    ['nothing in it', '', 'syntax 1:1 This sheet is empty.'],
    [
      'a header alone, misspelt',
      'profile,channel,stp,hz,voltsRms,thdPercent,repeat\n',
      'Column 3 is called “stp”',
    ],
  ])('%s: a finding, and no figure is taken from it', async (_, text, message) => {
    const { faults, output } = await checked(baseWith(text));
    expect(faults.join('\n')).toContain(message);
    expect(output.characteristics).toEqual([]);
    expect(output.levelByStep).toEqual([]);
    expect(output.missing.length).toBeGreaterThan(15);
  });
});

test('columns swapped in the header: findings at both, and no volts are taken for THD', async () => {
  const swapped = sheetText().replace('voltsRms,thdPercent', 'thdPercent,voltsRms');
  const { faults, output } = await checked(baseWith(swapped));
  expect(faults).toEqual([
    'schema 1:25 Column 5 is called “thdPercent” where “voltsRms” is expected.',
    'schema 1:36 Column 6 is called “voltsRms” where “thdPercent” is expected.',
  ]);
  expect(output.characteristics).toEqual([]);
});

describe('a file of 200 MB', () => {
  async function onDisk<T>(use: (folder: string) => Promise<T>): Promise<T> {
    const folder = await mkdtemp(join(tmpdir(), 'readback-large-'));
    try {
      for (const [file, text] of exampleFiles) {
        await mkdir(dirname(join(folder, file)), { recursive: true });
        await writeFile(join(folder, file), text);
      }
      return await use(folder);
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  }

  test('a sheet that goes on and on: refused by its size, unread, and the other sheets are measured as before', async () => {
    await onDisk(async (folder) => {
      await truncate(join(folder, sheet), 200 * 1024 ** 2);
      const before = process.memoryUsage().rss;
      const { faults, output } = await checked(folder, shared);
      expect(faults).toEqual(['syntax 1:1 This file is 200 MB; the most is 64 MB.']);
      expect(process.memoryUsage().rss - before).toBeLessThan(150 * 1024 ** 2);
      expect(output.sessions).toEqual(['2026-02-loft']);
      const alone = new Map(exampleFiles);
      alone.delete(sheet);
      const { output: expected } = await checked(new MemoryFiles('example', alone), shared);
      expect(figures(output)).toEqual(figures(expected));
      // A profile that no other sheet holds has no figure at all.
      expect((await checked(folder, profile)).output.characteristics).toEqual([]);
    });
  });

  test('in place of an entry: refused by its size', async () => {
    await onDisk(async (folder) => {
      await truncate(join(folder, 'profiles/moorlight/kn-2093.yaml'), 200 * 1024 ** 2);
      const { findings } = await checkContent(folder);
      expect(findings[0]).toMatchObject({
        rule: 'syntax',
        place: { file: expect.stringContaining('.yaml') },
      });
      expect(findings.map(({ message }) => message)).toContain('This file is 200 MB; the most is 1 MB.');
    });
  });
});

describe('too few readings: what can be told is, and what is missing is said', () => {
  const namesOf = (output: ProfileOutput): string[] => output.characteristics.map(({ name }) => name);
  const missingOf = (output: ProfileOutput): string[] => output.missing.map(({ name }) => name);

  test('no reading at 1 kHz at the step of the response: no response, and every figure from it is missing', async () => {
    const { faults, output } = await checked(baseWith(without(/^moorlight\/kn-2093,FL,14,1000,/)));
    expect(faults).toEqual([]);
    expect(output.responses).toEqual([]);
    for (const name of ['bass-boost', 'lower-corner', 'upper-corner', 'boosted-clean-step'] as const) {
      expect(namesOf(output)).not.toContain(name);
      expect(missingOf(output)).toContain(name);
    }
    expect(output.missing.find(({ name }) => name === 'bass-boost')?.reason).toBe(
      'needs readings of front left at 20–250 Hz and at 1 kHz at one clean step',
    );
    expect(namesOf(output)).toContain('clean-volts');
  });

  test('no reading at 1 kHz at all: no figure, and each is missing', async () => {
    const { output } = await checked(baseWith(without(/^moorlight\/kn-2093,..,\d+,1000,/)));
    expect(namesOf(output)).toEqual([]);
    expect(output.others).toEqual([]);
    expect(output.levelByStep).toEqual([]);
    expect(missingOf(output)).toContain('clean-volts');
    expect(output.missing.every(({ reason }) => reason.startsWith('needs '))).toBe(true);
  });

  test('one step only: no clean step is made up of it, and the level that was read is kept', async () => {
    const { faults, output } = await checked(baseWith(without(/^moorlight\/kn-2093,..,(?!14,)\d+,/)));
    expect(faults).toEqual([]);
    for (const name of ['clean-volts', 'highest-clean-step', 'limiter-onset', 'step-size'] as const) {
      expect(namesOf(output)).not.toContain(name);
      expect(missingOf(output)).toContain(name);
    }
    expect(output.levelByStep).toHaveLength(1);
    expect(output.levelByStep[0]).toMatchObject({ step: 14, clean: false });
  });

  test('no THD read: the clean step is told by compression, or not at all, never by an empty cell', async () => {
    const { output } = await checked(baseWith(sheetText().replaceAll(/,[\d.]+,(\d)$/gm, ',,$1')));
    const step = output.characteristics.find(({ name }) => name === 'highest-clean-step');
    // Compressed by more than 0.3 dB from step 29 on, as its THD of 3.2 % there says too.
    expect(step).toMatchObject({ value: 28, bound: 'exact' });
  });

  test('no reading of the profile: nothing, and all of it missing', async () => {
    const { output } = await checked(baseWith(without(/^moorlight\/kn-2093/)));
    expect(output.conditions).toBeUndefined();
    expect(namesOf(output)).toEqual([]);
    expect(output.missing).toHaveLength(18);
  });
});

describe('rows that contradict each other', () => {
  test('a repeat number given twice with other volts: a finding that names both rows', async () => {
    const line = lineOf('moorlight/kn-2093,FL,20,1000,0.5278,0.080,3');
    const broken = withLine(line, () => 'moorlight/kn-2093,FL,20,1000,0.6278,0.080,2');
    const { findings } = await checkContent(baseWith(broken));
    expect(findings).toMatchObject([
      {
        rule: 'repeated-row',
        place: { file: sheet, line },
        related: [{ place: { file: sheet, line: lineOf('moorlight/kn-2093,FL,20,1000,0.5279,0.080,2') } }],
      },
    ]);
    expect(findings[0]?.message).toContain('0.6278 V here, 0.5279 V before');
  });

  test('their difference is in the uncertainty: neither row stands alone, and U covers both', async () => {
    const line = lineOf('moorlight/kn-2093,FL,20,1000,0.5278,0.080,3');
    const broken = withLine(line, () => 'moorlight/kn-2093,FL,20,1000,0.6278,0.080,2');
    const { output } = await checked(baseWith(broken));
    const volts = output.levelByStep.find(({ step }) => step === 20)?.volts;
    const { output: before } = await checked(baseWith(sheetText()));
    const wasVolts = before.levelByStep.find(({ step }) => step === 20)?.volts;
    expect(volts?.value).toBeCloseTo((0.5278 + 0.5279 + 0.6278) / 3, 10);
    expect(volts?.expandedUncertainty).toBeGreaterThan(20 * (wasVolts?.expandedUncertainty ?? 1));
    expect((volts?.value ?? 0) - (volts?.expandedUncertainty ?? 0)).toBeLessThan(0.5278);
    expect((volts?.value ?? 0) + (volts?.expandedUncertainty ?? 0)).toBeGreaterThan(0.6278);
  });
});

describe('mixed loads', () => {
  const ofOther = 'outputs/2026-02-loft/session.yaml';
  const loadOf = (ohms: string): Readonly<Record<string, string>> => ({
    [ofOther]: (exampleFiles.get(ofOther) ?? '').replace('ohms: 4', `ohms: ${ohms}`),
  });

  test('a session into 2 Ω beside one into the rated 4 Ω: values of each under its own load, none mixed', async () => {
    const { output } = await checked(baseWith(sheetText(), loadOf('2')), shared);
    const volts = [...output.characteristics, ...output.others].filter(({ name }) => name === 'clean-volts');
    expect(volts.map(({ conditions, readings }) => [conditions.loadOhms, readings.map(sessionOf)])).toEqual([
      [4, ['2025-05-shed']],
      [2, ['2026-02-loft']],
    ]);
    const mixed = [...output.characteristics, ...output.others].filter(
      ({ name, readings }) => name !== 'source-resistance' && new Set(readings.map(sessionOf)).size > 1,
    );
    expect(mixed).toEqual([]);
  });

  test('4 Ω and 4.3 Ω are one load, within a tenth; 4 Ω and 4.5 Ω are two', async () => {
    const sessionsIn = async (ohms: string): Promise<string[]> => {
      const { output } = await checked(baseWith(sheetText(), loadOf(ohms)), shared);
      const volts = output.characteristics.find(({ name }) => name === 'clean-volts');
      return [...new Set(volts?.readings.map(sessionOf))];
    };
    expect(await sessionsIn('4.3')).toEqual(['2025-05-shed', '2026-02-loft']);
    expect(await sessionsIn('4.5')).toEqual(['2025-05-shed']);
  });

  test('no session at the rated load: the nearest stands, and says its load', async () => {
    const { output } = await checked(
      new MemoryFiles(
        'example',
        new Map([...exampleFiles, [otherSheet, sheetText()], ...Object.entries(loadOf('2'))]),
      ),
      profile,
    );
    expect(output.conditions?.loadOhms).toBe(4);
    const alone = new Map([...exampleFiles, ...Object.entries(loadOf('2'))]);
    alone.delete(sheet);
    alone.delete('outputs/2025-05-shed/session.yaml');
    const { output: only } = await checked(new MemoryFiles('example', alone), shared);
    expect(only.conditions?.loadOhms).toBe(2);
    expect(only.characteristics.every(({ conditions }) => conditions.loadOhms === 2)).toBe(true);
  });

  test('a load of 0 Ω is no load: a finding, and the session is left out', async () => {
    const { answers, findings } = await checkContent(baseWith(sheetText(), loadOf('0')));
    expect(findings[0]).toMatchObject({ rule: 'schema', place: { file: ofOther } });
    expect(answers.outputs.get(shared)?.sessions).toEqual(['2025-05-shed']);
  });
});

function sessionOf(readingId: string): string {
  return readingId.slice(0, readingId.lastIndexOf(':'));
}
