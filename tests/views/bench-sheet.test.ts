/** The sheet of wanted readings: what stands in it, and that its file is one a session can be entered with. */
import { describe, expect, test } from 'vitest';
import { readingColumns } from '../../schemas/index.ts';
import { readAnswers } from '../../src/answers.ts';
import { benchSheets } from '../../src/views/coverage/bench-sheet.ts';
import { openAnswers } from '../../src/views/coverage/open-answers.ts';
import { type Wanted, wantedOf } from '../../src/views/coverage/wanted.ts';
import { readingsFor } from '../../src/views/coverage/wanted-readings.ts';
import { ContentCopy } from '../content-copy.ts';
import { faultsOf, imported, linesOf, rolesOf } from '../import/sheet-of.ts';
import { demoAnswers } from './sample.ts';

const answers = await demoAnswers();
const wanted = wantedOf(answers);
const sheets = benchSheets(answers, wanted);

const missing = (profile: string, characteristic: Wanted['characteristic']): Wanted => ({
  profile,
  characteristic,
  state: 'missing',
  settles: [],
  hasASay: [],
});

test('the file has the columns of a sheet of readings, volts and THD empty, and the rows of the printed sheet', () => {
  expect(sheets.length).toBeGreaterThan(0);
  for (const { csv, count, blocks } of sheets) {
    const [head, ...rows] = csv.trimEnd().split('\n');
    expect(head).toBe(readingColumns.join(','));
    expect(rows.length).toBe(count);
    for (const row of rows) expect(row).toMatch(/^[^,]+\/[^,]+,(?:FL|FR|RL|RR),\d+,[\d.]+,,,\d+$/);
    expect(new Set(rows).size).toBe(rows.length);
    const printed = blocks.flatMap((block) => block.rows.map(({ repeats }) => repeats));
    expect(printed.reduce((sum, one) => sum + one, 0)).toBe(count);
  }
});

test('filled in, the file is imported as it is', () => {
  const { csv, count } = sheets[0] ?? { csv: '', count: 0 };
  expect(rolesOf(imported(csv)).every((role) => role.endsWith('known'))).toBe(true);
  expect(imported(csv).rows).toMatchObject({ readings: [], notFilledIn: count });
  const volts = (at: number): string => (1 + at / 1000).toFixed(3);
  const filled = csv
    .trimEnd()
    .split('\n')
    .map((row, at) => (at === 0 ? row : row.split(',').with(4, volts(at)).with(5, '0.1').join(',')));
  const found = imported(filled.join('\r\n'));
  expect(faultsOf(found)).toEqual([]);
  expect(found.questions).toEqual([]);
  expect(linesOf(found).map((line) => line.replaceAll(' ', ','))).toEqual(
    filled.slice(1).map((row) => row.replace(/(\.\d+?)0+(?=,|$)/g, '$1')),
  );
});

test('a value near a limit is read again where it was read, three times over', () => {
  const rear = wanted.find(({ characteristic }) => characteristic === 'rear-to-front');
  if (!rear) throw new Error('the demo has no rear output near a limit');
  const value = answers.outputs
    .get(rear.profile)
    ?.characteristics.find(({ name }) => name === 'rear-to-front');
  const readings = readingsFor(answers, rear);
  expect([...new Set(readings.map(({ step }) => step))]).toEqual([value?.conditions.step]);
  expect([...new Set(readings.map(({ channel }) => channel))]).toEqual(['FL', 'RL', 'RR']);
  expect(readings.length).toBe(9);
});

test('a boost near a limit is read again at every step at which it may be greatest, about its frequency', () => {
  const boosts = wanted.filter(({ characteristic }) => characteristic === 'bass-boost');
  expect(boosts.length).toBeGreaterThan(0);
  for (const boost of boosts) {
    const output = answers.outputs.get(boost.profile);
    const all = [...(output?.characteristics ?? []), ...(output?.others ?? [])].filter(
      ({ name, conditions }) =>
        name === 'bass-boost' &&
        conditions.loadOhms === output?.conditions?.loadOhms &&
        conditions.signalDbfs === 0,
    );
    const greatest = all.reduce((most, one) => (one.value > most.value ? one : most));
    const near = all.filter(
      (one) => one.value + one.expandedUncertainty >= greatest.value - greatest.expandedUncertainty,
    );
    const readings = readingsFor(answers, boost);
    expect(new Set(readings.map(({ step }) => step))).toEqual(
      new Set(near.map(({ conditions }) => conditions.step)),
    );
    for (const { hz } of readings) {
      const octaves = Math.abs(Math.log2(hz / (greatest.conditions.hz ?? 0)));
      expect(hz === 1000 || octaves < 0.9, `${hz} Hz`).toBe(true);
    }
  }
});

describe('of a profile not measured', () => {
  const id = 'brasslight/8b0s-15z';

  test('the level is read at every step of the scale, at 1 kHz', () => {
    const readings = readingsFor(answers, missing(id, 'clean-volts'));
    expect(readings.map(({ step }) => step)).toEqual(Array.from({ length: 31 }, (_, step) => step));
    expect(new Set(readings.map(({ hz }) => hz))).toEqual(new Set([1000]));
  });

  test('bass is read at two steps, at the third octaves of 20 to 250 Hz and at 1 kHz (IEC 61260-1:2014)', () => {
    const readings = readingsFor(answers, missing(id, 'bass-boost'));
    expect(new Set(readings.map(({ step }) => step)).size).toBe(2);
    // Exact centres, 1000·10^(k/10), to six digits.
    expect([...new Set(readings.map(({ hz }) => hz))]).toEqual([
      19.9526, 25.1189, 31.6228, 39.8107, 50.1187, 63.0957, 79.4328, 100, 125.893, 158.489, 199.526, 251.189,
      1000,
    ]);
  });

  test('the resistance of an output is read into two loads, so there are two sheets', () => {
    const two = benchSheets(answers, [missing(id, 'source-resistance')]);
    expect(two.map(({ load }) => load)).toEqual(['4\u00a0Ω', '8\u00a0Ω']);
    expect(two.map(({ id: name }) => name)).toEqual(['4-ohm', '8-ohm']);
  });

  test('nothing wanted, no sheet', () => {
    expect(benchSheets(answers, [])).toEqual([]);
  });
});

test('filled in by a finer bench and entered as a session, it settles what it was for', async () => {
  const rear = wanted.find(({ characteristic }) => characteristic === 'rear-to-front');
  const sheet = sheets.find(({ csv }) => csv.includes(rear?.profile ?? 'none'));
  if (!rear || !sheet) throw new Error('the demo has no rear output near a limit');
  const session = '2026-10-fine';
  // The rear 3.05 dB down: within what was known of it, and clear of the limit at 3 dB for a meter of this class.
  const rows = sheet.csv.split('\n').filter((row) => row.startsWith(`${rear.profile},`));
  const front = answers.outputs.get(rear.profile)?.characteristics.find(({ name }) => name === 'clean-volts');
  const rearDb = -3.05;
  const filled = rows.map((row, at) => {
    const cells = row.split(',');
    const volts = (front?.value ?? 0) * (cells[1] === 'FL' ? 1 : 10 ** (rearDb / 20)) * (1 + (at % 3) * 1e-5);
    return cells.with(4, volts.toFixed(5)).with(5, '0.100').join(',');
  });
  const copy = await ContentCopy.make();
  const north = await copy.read('outputs/2024-02-north/session.yaml');
  await copy.write(`outputs/${session}/readings.csv`, `${readingColumns.join(',')}\n${filled.join('\n')}\n`);
  await copy.write(
    `outputs/${session}/session.yaml`,
    north
      .replace(/^date: .*$/m, 'date: 2026-10-02')
      .replaceAll(/ofReadingPercent: [\d.]+/g, 'ofReadingPercent: 0.02')
      .replace(/resolutionVolts: [\d.]+/, 'resolutionVolts: 0.00001'),
  );
  const again = await readAnswers(copy.folder);
  await copy.remove();
  expect(again.findings).toEqual([]);
  const before = openAnswers(answers).filter(({ profile }) => profile === rear.profile);
  const after = openAnswers(again.answers).filter(({ profile }) => profile === rear.profile);
  expect(before.length).toBe(rear.settles.length);
  expect(after).toEqual([]);
});
