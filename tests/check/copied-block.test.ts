/** Blocks of rows under two profiles: what is a copy, and what is chance, silence or a declared twin. */
import { expect, test } from 'vitest';
import { MemoryFiles } from '../../src/base/index.ts';
import { checkContent } from '../../src/check/index.ts';
import { chanceOfSame } from '../../src/check/readings/chance-of-same.ts';
import { randomStream } from '../../src/demo/random.ts';
import { type Sheet, type SimulatedBase, simulatedBase } from './simulated-sheets.ts';

const [from, to] = ['moorlight/km-4417', 'moorlight/kn-2093'];

/** Writes the volts of one profile under another, row by row, where `isIn` says so. */
function paste(source: Sheet, target: Sheet, isIn: (row: Sheet['rows'][number]) => boolean): void {
  target.rows = target.rows.map((row) => {
    if (row.profile !== to || !isIn(row)) return row;
    const same = source.rows.find(
      ({ profile, channel, step, hz, repeat }) =>
        profile === from &&
        channel === row.channel &&
        step === row.step &&
        hz === row.hz &&
        repeat === row.repeat,
    );
    return { ...row, voltsRms: same?.voltsRms ?? row.voltsRms };
  });
}

async function copiesIn(files: MemoryFiles): Promise<string[]> {
  const { findings } = await checkContent(files);
  return findings
    .filter(({ rule }) => rule === 'copied-block')
    .map(({ place, message }) => `${place.file.split('/')[1]} ${message}`);
}

function based(sessions: number): SimulatedBase & { first: Sheet; last: Sheet } {
  const base = simulatedBase(11, 'pasted', sessions);
  const [first, last] = [base.sheets[0], base.sheets.at(-1)];
  if (!first || !last) throw new Error('no sheet');
  return { ...base, first, last };
}

const isScale = ({ channel, hz }: Sheet['rows'][number]): boolean => channel === 'FL' && hz === 1000;

test('the copy is the one that other sessions of its profile contradict', async () => {
  const { files, last } = based(2);
  paste(last, last, isScale);
  const [only, ...more] = await copiesIn(files());
  expect(only).toMatch(
    /^2026-02-bench “moorlight\/kn-2093”, .* reads: pasted .* Other sessions bear the other profile out/,
  );
  expect(more).toEqual([]);
});

test('without other sessions it is the one whose rows beside the block do not fit', async () => {
  const { files, last } = based(1);
  paste(last, last, (row) => isScale(row) && row.step > 8 && row.step < 24);
  const [only] = await copiesIn(files());
  expect(only).toMatch(/“moorlight\/kn-2093”, from FL, step 9, .* The rows beside them fit the other/);
});

test('a block of another session is named with it', async () => {
  const { files, first, last } = based(2);
  paste(first, last, isScale);
  expect(await copiesIn(files())).toEqual([
    expect.stringMatching(/^2026-02-bench .*“moorlight\/km-4417” reads in 2026-01-bench: pasted/),
  ]);
});

test('a block of a profile of another family, measured in the same session', async () => {
  const { files, last } = based(1);
  const pasted = last.rows.filter(
    (row) => row.profile === from && isScale(row) && row.step >= 4 && row.step <= 20,
  );
  last.rows = [...last.rows, ...pasted.map((row) => ({ ...row, profile: 'fellside/310' }))];
  expect(await copiesIn(files())).toEqual([
    expect.stringMatching(/“fellside\/310”, from FL, step 4, .*“moorlight\/km-4417” reads: pasted/),
  ]);
});

test('three rows the same are no block, however many digits they have', async () => {
  const { files, last } = based(1);
  paste(last, last, (row) => isScale(row) && row.step > 20 && row.step < 24);
  expect(await copiesIn(files())).toEqual([]);
});

test('profiles said to be one may share their readings, over other profiles too', async () => {
  const shared = (twins: Record<string, string>) => {
    const { files, last } = based(1);
    paste(last, last, () => true);
    const texts = new Map<string, string>();
    for (const file of files().list().files) {
      const { text } = files().read(file).source;
      const sameAs = twins[file.replace(/^profiles\/|\.yaml$/g, '')];
      texts.set(file, sameAs === undefined ? text : `${text}sameAs: ${sameAs}\n`);
    }
    return copiesIn(new MemoryFiles('twins', texts));
  };
  expect(await shared({})).toHaveLength(1);
  expect(await shared({ 'moorlight/kn-2093': 'moorlight/km-4417' })).toEqual([]);
  expect(
    await shared({
      'moorlight/kn-2093': 'moorlight/rt-5561',
      'moorlight/rt-5561': 'moorlight/km-4417',
    }),
  ).toEqual([]);
});

test('on a coarse meter the same rows may be chance: two digits tell nothing', async () => {
  const sameIn = async (digits: number): Promise<string[]> => {
    const { files, last } = based(1);
    paste(last, last, isScale);
    const resolution = 10 ** -digits;
    last.rows = last.rows.map((row) => ({ ...row, voltsRms: Number(row.voltsRms.toFixed(digits)) }));
    last.entry = last.entry.replace(/resolutionVolts: .*/, `resolutionVolts: ${resolution}`);
    return copiesIn(files());
  };
  expect(await sameIn(3)).toHaveLength(1);
  expect(await sameIn(1)).toEqual([]);
});

test('silent rows prove nothing', async () => {
  const { files, last } = based(1);
  last.rows = last.rows.map((row) => (row.channel === 'FL' ? row : { ...row, voltsRms: 0 }));
  expect(await copiesIn(files())).toEqual([]);
});

test('the chance of the same last digit is above what draws give, and not ten times so', () => {
  const random = randomStream(20260701, 'same digits');
  const [resolution, scatter, volts] = [0.001, 0.002, 2];
  const read = (): number =>
    Math.round((volts * (1 + scatter * random.gaussian())) / resolution) * resolution;
  const repeats = Array.from({ length: 60 }, (_, at) => ({
    channel: 'FL' as const,
    step: Math.floor(at / 3),
    hz: 1000,
    voltsRms: read(),
  }));
  const chanceAt = chanceOfSame([repeats], resolution);
  const chance = chanceAt(volts * 1.2);
  let same = 0;
  for (let draw = 0; draw < 20_000; draw += 1) {
    const first = read();
    if (read() === first) same += 1;
  }
  expect(chance).toBeGreaterThan(same / 20_000);
  expect(chance).toBeLessThan((10 * same) / 20_000);
  // Quieter than every repeat: what any bench scatters by is all that is known, and 0.2 mV is below the last digit.
  expect(chanceAt(volts / 2)).toBe(1);
});
