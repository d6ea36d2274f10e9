import { chmod, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { blankSheetResultSchema, importResultSchema } from '../../schemas/results/import.ts';
import { readBase } from '../../src/base/index.ts';
import { ContentCopy } from '../content-copy.ts';
import { workbook } from '../import/workbook.ts';
import { readback } from './run.ts';

/** What the shed read of KM-4417, read again a twelfth of a per cent higher, as a bench might write it. */
const readings = (await readFile('src/check/example-base/outputs/2025-05-shed/readings.csv', 'utf8'))
  .split('\n')
  .filter((line) => line.startsWith('moorlight/km-4417'))
  .map((line, at) => {
    const [, channel = '', step, hz, volts, thd = '', repeat] = line.split(',');
    const millivolts = (1000.8 * Number(volts)).toFixed(1).replace('.', ',');
    const output = { FL: 'front left', FR: 'front right', RL: 'rear left', RR: 'rear right' }[channel];
    return [
      at === 0 ? 'KM-4417' : '',
      output,
      step,
      hz?.replace('.', ','),
      millivolts,
      thd.replace('.', ','),
      repeat,
    ].join(';');
  });
const sheet = `Bench: Shed; Date: 14.03.2026; Supply: 14,4 V ± 0,1;;;;
;;;;;;
Code;Output;Volume;Freq. (Hz);Level (mV);THD (%);Run
${readings.join('\n')}
`;

let copy: ContentCopy;
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'import-'));
});
beforeEach(async () => {
  copy = await ContentCopy.make('src/check/example-base');
});
afterEach(() => copy.remove());
afterAll(() => rm(folder, { recursive: true }));

async function file(name: string, text: string | Uint8Array): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}
const run = (...argv: string[]) => readback('import', ...argv, '--content', copy.folder);
async function result(...argv: string[]) {
  const { code, out, err } = await run(...argv, '--json');
  expect(err).toBe('');
  return { code, ...importResultSchema.parse(JSON.parse(out)) };
}
/** Every file of the content with its text. */
async function contents(): Promise<Record<string, string>> {
  const names = await readdir(copy.folder, { recursive: true, withFileTypes: true });
  const files = names.filter((one) => one.isFile()).map((one) => join(one.parentPath, one.name));
  return Object.fromEntries(
    await Promise.all(files.sort().map(async (path) => [path, await readFile(path, 'utf8')])),
  );
}

describe('a preview', () => {
  test('shows all of it, writes nothing, and gives the command that writes', async () => {
    const path = await file('march.csv', sheet);
    const before = await contents();
    const { code, out } = await run(path, '--like', '2025-05-shed');
    expect(out).toContain(`${path} → session 2026-03-shed`);
    expect(out).toMatch(/E {2}Level \(mV\) +volts mV +by its name/);
    expect(out).toMatch(/supply\.volts +14\.4 +C1/);
    expect(out).toMatch(/signal\.from +Disc +like 2025-05-shed/);
    expect(out).toMatch(/moorlight\/km-4417 {2}FL \d+, /);
    expect(out).toContain(
      `Nothing was written. To write it:\n  readback import ${path} --content ${copy.folder} --like 2025-05-shed --write`,
    );
    expect(code).toBe(0);
    expect(await contents()).toEqual(before);
  });

  test('says what is missing, field by field, and invents nothing', async () => {
    const { code, ready, missing, command, files } = await result(await file('march.csv', sheet));
    expect({ code, ready, command, files }).toEqual({ code: 1, ready: false, command: null, files: [] });
    expect(missing.map(({ field }) => field)).toEqual(
      expect.arrayContaining([
        'takenBy',
        'instrument',
        'signal',
        'load',
        'method',
        'source.keptAt',
        'source.trust',
      ]),
    );
    expect(missing.find(({ field }) => field === 'takenBy')).toMatchObject({
      words: 'Who took the readings, by role, never by name.',
      help: '--fact "taken by=…"',
    });
  });

  test('facts can be said one by one, whole fields as YAML among them', async () => {
    const facts = [
      'taken by=Bench technician',
      'instrument=Bench multimeter',
      'resolution=0.1 mV',
      'instrument.accuracy=[{ fromHz: 10, toHz: 30000, ofReadingPercent: 0.5, counts: 5 }]',
      'signal.kind=sine',
      'signal level=0 dBFS ±0.05',
      'signal from=Disc',
      'load=4 Ω ±1 %',
      'method=Voltmeter across the load, both leads floating.',
      'kept at=Bench book',
      'trust=high',
      'trust reason=Our own meter.',
      'thd floor=0.02 %',
      'instrument.thdOfReadingPercent=5',
    ];
    const { ready, missing } = await result(
      await file('march.csv', sheet),
      ...facts.flatMap((one) => ['--fact', one]),
    );
    expect(missing).toEqual([]);
    expect(ready).toBe(true);
  });
});

describe('writing', () => {
  test('writes session, readings and source; the same again changes nothing', async () => {
    const path = await file('march.csv', sheet);
    const first = await run(path, '--like', '2025-05-shed', '--write');
    expect(first.out).toContain('Wrote 3 files.');
    expect(first.code).toBe(0);
    const lines = (await copy.read('outputs/2026-03-shed/readings.csv')).split('\n');
    expect(lines.slice(0, 4)).toEqual([
      'profile,channel,step,hz,voltsRms,thdPercent,repeat',
      'moorlight/km-4417,FL,1,1000,0.1189,0.08,1',
      'moorlight/km-4417,FL,2,1000,0.1413,0.08,1',
      'moorlight/km-4417,FL,3,1000,0.1679,0.08,1',
    ]);
    expect(lines.length).toBe(readings.length + 2);
    const { base, findings } = await readBase(copy.folder);
    expect(findings).toEqual([]);
    expect(base.outputs.get('2026-03-shed')?.data).toMatchObject({ date: '2026-03-14', bench: 'shed' });
    const before = await contents();
    for (const argv of [[], ['--write'], ['--like', '2025-05-shed', '--write']]) {
      const again = await run(path, ...argv);
      expect(again.out).toContain('All of it is in 2026-03-shed already. Nothing changed.');
      expect(again.code).toBe(0);
    }
    expect(await contents()).toEqual(before);
  });

  test('a changed sheet shows the difference and is refused until it is to replace', async () => {
    await run(await file('march.csv', sheet), '--like', '2025-05-shed', '--write');
    const comment = '# Kept by hand.\n';
    await copy.write(
      'outputs/2026-03-shed/session.yaml',
      comment + (await copy.read('outputs/2026-03-shed/session.yaml')),
    );
    const before = await contents();
    const changed = await file(
      'changed.csv',
      sheet
        .replace('167,9', '168,1')
        .replace(/^;front left;4;1000;199,5;(.*);1$/m, ';front left;4;1000;199,5;$1;7')
        .replace('14,4 V', '14,3 V'),
    );
    const refused = await run(changed, '--write');
    expect(refused.code).toBe(1);
    for (const line of [
      'supply.volts: 14.4 → 14.3',
      '~ moorlight/km-4417 FL step 3 1000 Hz: 0.1679 V, 0.08 % → 0.1681 V, 0.08 %',
      '+ moorlight/km-4417 FL step 4 1000 Hz repeat 7: 0.1995 V, 0.08 %',
      '− moorlight/km-4417 FL step 4 1000 Hz: 0.1995 V, 0.08 %',
      '1 added, 1 changed, 1 removed.',
      '--replace --write',
    ])
      expect(refused.out).toContain(line);
    expect(await contents()).toEqual(before);
    const replaced = await run(changed, '--replace', '--write', '--despite-findings');
    expect(replaced.code, replaced.out).toBe(0);
    const session = await copy.read('outputs/2026-03-shed/session.yaml');
    expect(session.startsWith(comment)).toBe(true);
    expect(session).toContain('volts: 14.3');
    expect((await run(changed)).out).toContain('Nothing changed.');
  });

  test('guesses have to be confirmed', async () => {
    const path = await file('guess.csv', sheet.replace('Level (mV)', 'Level').replace('Volume', 'Pos'));
    const { out, code } = await run(path, '--like', '2025-05-shed', '--write');
    expect(code).toBe(1);
    expect(out).toContain('guesses are not confirmed');
    expect(out).toContain('--columns "Pos=step,Level=volts mV" --write');
    expect((await result(path, '--like', '2025-05-shed', '--as-shown')).ready).toBe(true);
    const said = await run(path, '--like', '2025-05-shed', '--columns', 'Pos=step,Level=volts mV', '--write');
    expect(said.code, said.out).toBe(0);
  });

  test('not while a row is not understood; rows can be left out by number', async () => {
    const path = await file('ol.csv', sheet.replace('167,9', 'OL'));
    const before = await contents();
    const { code, out } = await run(path, '--like', '2025-05-shed', '--write');
    expect(code).toBe(1);
    expect(out).toContain('E6: “OL” is no number.');
    expect(out).toContain('--leave-out 6');
    expect(await contents()).toEqual(before);
    const { code: written } = await run(path, '--like', '2025-05-shed', '--leave-out', '6', '--write');
    expect(written).toBe(0);
    expect((await copy.read('outputs/2026-03-shed/readings.csv')).split('\n').length).toBe(
      readings.length + 1,
    );
  });

  test('what the check would find is told by the cell of the sheet, and errors stand against writing', async () => {
    const path = await file('slip.csv', sheet.replace('199,5', '1995'));
    const before = await contents();
    const { code, outcome, findings } = await result(path, '--like', '2025-05-shed', '--write');
    expect({ code, outcome }).toEqual({ code: 1, outcome: 'refused' });
    expect(findings?.find(({ severity }) => severity === 'error')).toMatchObject({ place: 'E7' });
    expect(await contents()).toEqual(before);
  });

  test('a new profile is written with the session that read it', async () => {
    const path = await file('new.csv', sheet.replace('KM-4417', 'LM-3080'));
    const { notUnderstood } = await result(path, '--like', '2025-05-shed');
    expect(notUnderstood[0]).toMatchObject({ place: 'A4', help: expect.stringContaining('--new "LM-3080"') });
    const argv = ['--like', '2025-05-shed', '--new', 'LM-3080', '--unit', 'moorlight'];
    const open = await result(path, ...argv);
    expect(open.questions.map(({ what }) => what.split(':')[0])).toEqual([
      'The new profile LM-3080 needs origin',
      'The new profile LM-3080 needs system',
    ]);
    const facts = ['--fact', 'origin=factory', '--fact', 'system=unamplified'];
    const { code, out } = await run(path, ...argv, ...facts, '--write', '--despite-findings');
    expect(code, out).toBe(0);
    expect(await copy.read('profiles/moorlight/lm-3080.yaml')).toContain('code: "LM-3080"');
    expect((await readBase(copy.folder)).findings).toEqual([]);
  });

  test('nothing is left behind where one file cannot be written', async () => {
    if (process.getuid?.() === 0) {
      // Permissions bind no administrator: a file in the way does.
      await rm(join(copy.folder, 'sources'), { recursive: true });
      await copy.write('sources', 'in the way');
    } else await chmod(join(copy.folder, 'sources'), 0o500);
    const before = await contents();
    const { writeAllOrNone } = await import('../../src/cli/commands/whole-files.ts');
    const files = [
      { path: 'outputs/2026-03-shed/session.yaml', text: 'a', before: undefined },
      {
        path: 'outputs/2025-05-shed/session.yaml',
        text: 'b',
        before: await copy.read('outputs/2025-05-shed/session.yaml'),
      },
      { path: 'sources/bench-2026-03-shed.yaml', text: 'c', before: undefined },
    ];
    await expect(writeAllOrNone(copy.folder, files)).rejects.toThrow(/Nothing was written/);
    if (process.getuid?.() !== 0) await chmod(join(copy.folder, 'sources'), 0o700);
    expect(await contents()).toEqual(before);
    expect(await readdir(join(copy.folder, 'outputs'))).not.toContain('2026-03-shed');
  });
});

test('a workbook is imported like a sheet', async () => {
  const rows = [
    ['Date', '2026-03-14', 'Bench', 'Shed'],
    ['Code', 'Channel', 'Step', 'Hz', 'Volts', 'THD %', 'Run'],
    ...readings.map((line) =>
      line.split(';').map((cell, at) => (at > 1 && cell !== '' ? Number(cell.replace(',', '.')) : cell)),
    ),
  ].map((row) => row.map((cell, at) => (at === 4 && typeof cell === 'number' ? cell / 1000 : cell)));
  const { ready, readings: counts } = await result(
    await file('march.xlsx', workbook([{ name: 'S', rows }])),
    '--like',
    '2025-05-shed',
  );
  expect(ready).toBe(true);
  expect(counts.reduce((sum, { count }) => sum + count, 0)).toBe(readings.length);
});

describe('a blank sheet', () => {
  test('filled in, it is imported as it is', async () => {
    const path = join(folder, 'blank.csv');
    const { out } = await run('--blank-sheet', path, '--profile', 'moorlight/km-4417', '--json');
    const { rows } = blankSheetResultSchema.parse(JSON.parse(out));
    // 31 steps, three of them three times over; 30 third octaves beside 1 kHz; three other outputs.
    expect(rows).toBe(31 + 6 + 30 + 3);
    const text = await readFile(path, 'utf8');
    let at = 0;
    const filled = text
      .replace('Date,', 'Date,14/03/2026')
      .replace('Bench,', 'Bench,Shed')
      .replace('Supply (V),', 'Supply (V),14.4')
      .replaceAll(/^(Moorlight,KM-4417,.*,),,(\d+,)$/gm, (_, start: string, end: string) => {
        at += 1;
        return `${start}${(1 + at / 1000).toFixed(3)},0.10,${end}`.replace(/,,(\d\.)/, ',$1');
      });
    expect(at).toBe(rows);
    const { notUnderstood, missing, questions, readings, columns } = await result(
      await file('filled.csv', filled),
      '--like',
      '2025-05-shed',
    );
    expect({ notUnderstood, missing, questions }).toEqual({ notUnderstood: [], missing: [], questions: [] });
    expect(columns.every(({ certainty }) => certainty === 'known')).toBe(true);
    expect(readings.map(({ channel, count }) => `${channel} ${count}`)).toEqual([
      'FL 67',
      'FR 1',
      'RL 1',
      'RR 1',
    ]);
    const before = filled.split('\r\n').filter((line) => line.startsWith('Moorlight'));
    await run(join(folder, 'filled.csv'), '--like', '2025-05-shed', '--write', '--despite-findings');
    const written = (await copy.read('outputs/2026-03-shed/readings.csv')).trimEnd().split('\n').slice(1);
    expect(
      written.map((line) =>
        line
          .split(',')
          .slice(1)
          .map((cell, column) => (column === 0 ? cell : Number(cell))),
      ),
    ).toEqual(
      before.map((line) =>
        line
          .split(',')
          .slice(2, 8)
          .map((cell, column) => (column === 0 ? cell : Number(cell))),
      ),
    );
  });

  test('without a profile it has empty rows, and nothing is written over', async () => {
    const path = join(folder, 'general.csv');
    expect((await run('--blank-sheet', path)).out).toContain('60 rows to fill in');
    expect((await run('--blank-sheet', path)).err).toMatch(/there already/);
    const { rows: _, ...found } = await result(path).then((one) => ({ ...one, rows: 0 }));
    expect(found.notUnderstood).toEqual([]);
  });
});

test('what cannot run says why and exits 2', async () => {
  const path = await file('march.csv', sheet);
  const failures: [string[], RegExp][] = [
    [[], /No sheet is named/],
    [[join(folder, 'none.csv')], /There is no file/],
    [[await file('binary.csv', Buffer.from([1, 0, 2, 0, 0, 0, 0, 3, 0, 0, 0, 9]))], /NUL|UTF/],
    [[await file('empty.csv', '')], /is empty/],
    [[path, '--like', '2025-05-shde'], /Did you mean --like 2025-05-shed/],
    [[path, '--fact', 'suply=14'], /did you mean “supply=…”/],
    [[path, '--columns', 'Level=loudness'], /says nothing of what a column holds/],
    [[path, '--code', 'X=moorlight/km-4471'], /Did you mean “moorlight\/km-4417”/],
    [[path, '--channel', 'A=XX'], /names no output/],
    [[path, '--leave-out', 'B7'], /no number of a row/],
    [[path, '--session', '../up'], /cannot name a session/],
    [[path, '--sheet', 'March'], /this file is none/],
    [['--blank-sheet', join(folder, 'x.csv'), '--profile', 'moorlight/km-441'], /Did you mean --profile/],
  ];
  for (const [argv, message] of failures) {
    const { code, err } = await run(...argv);
    expect(code, argv.join(' ')).toBe(2);
    expect(err).toMatch(message);
    expect(err).not.toMatch(/\n\s+at /);
  }
});
