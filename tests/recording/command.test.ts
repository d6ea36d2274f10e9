/** The command as it is run: files in, text or JSON out, exit codes, and what it writes. */
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { sweepResultSchema } from '../../schemas/results/sweep.ts';
import { checkContent } from '../../src/check/index.ts';
import { explainFailure } from '../../src/cli/command.ts';
import { type SweepOptions, sweep } from '../../src/cli/commands/sweep.ts';
import { ContentCopy } from '../content-copy.ts';
import {
  clipAt,
  filtered,
  placedSweep,
  sampleRateHz,
  sweepOf,
  toneOf,
  wavBytes,
  withNoise,
} from './signals.ts';

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command as the program does: failures become messages and exit code 2. */
async function run(
  file: string,
  options: Partial<SweepOptions> & { readonly stimulus: string },
): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const output = {
    out: (text: string) => out.push(text),
    err: (text: string) => err.push(text),
    colour: false,
  };
  let code: number;
  try {
    code = await sweep(file, { content: 'content', ...options }, output);
  } catch (error) {
    code = explainFailure(output, error);
  }
  const plain = (lines: string[]): string =>
    lines.join('\n').replaceAll('\u00a0', ' ').replaceAll(folder, 'FOLDER');
  return { code, out: plain(out), err: plain(err) };
}

let folder: string;
const at = (name: string): string => join(folder, name);
const played = sweepOf(20, 20_000, 2);
const stimulus = 'sweep:20:20000:2';
const highPass = [0.992622542756, -1.98524508551, 0.992622542756, -1.9851906579, 0.985299513128] as const;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'readback-recordings-'));
  const heard = withNoise(filtered(placedSweep(played), highPass), 1e-5);
  const tone = withNoise(toneOf(1000.02, { harmonics: [0.01, 0.003] }), 1e-5);
  const files = {
    'sweep.wav': wavBytes([heard]),
    'stereo.wav': wavBytes(
      [
        heard,
        withNoise(
          heard.map(() => 0),
          1e-4,
        ),
      ],
      '16',
    ),
    'tone.wav': wavBytes([tone], '16'),
    'clipped-sweep.wav': wavBytes([placedSweep(played, { amplitude: 1.2 })], '16'),
    'clipped-tone.wav': wavBytes([clipAt(toneOf(1000, { amplitude: 1.2 }), 1)], '16'),
    'noise.wav': wavBytes([withNoise(new Float64Array(2.5 * sampleRateHz), 0.1)], '16'),
    'notes.txt': new TextEncoder().encode('step 12, front left'),
  };
  for (const [name, bytes] of Object.entries(files)) await writeFile(at(name), bytes);
  await writeFile(at('truncated.wav'), files['sweep.wav'].subarray(0, 100_000));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('figures', () => {
  test('of a sweep, in volts: one object of the published shape', async () => {
    const { code, out, err } = await run(at('sweep.wav'), { stimulus, reference: '1000=2.50', json: true });
    expect([code, err]).toEqual([0, '']);
    const result = sweepResultSchema.parse(JSON.parse(out));
    if (result.kind !== 'sweep') throw new Error('not a sweep');
    expect(result.levelReference).toBe('1 V');
    expect(result.response.find(({ hz }) => hz === 1000)).toEqual({
      hz: 1000,
      levelDb: 7.9588,
      voltsRms: 2.5,
    });
    // The high-pass is 3.01 dB down at 80 Hz; 79.4328 Hz is the exact centre.
    const at80 = result.response.find(({ hz }) => hz === 79.4328);
    expect(at80?.voltsRms).toBeCloseTo(2.5 * 10 ** (-3.072 / 20), 2);
    expect(result.distortion.find(({ hz, order }) => hz === 1000 && order === 3)?.ratio).toBeLessThan(0.001);
    expect(result.thd.find(({ hz }) => hz === 1000)?.ratio).toBeLessThan(0.001);
    // Full scale is twice the sweep's amplitude of 0.5.
    expect(result.fullScaleVoltsRms).toBeCloseTo(5, 2);
  });

  test('of a sweep without volts: relative to 1 kHz, and said to be', async () => {
    const { code, out } = await run(at('sweep.wav'), { stimulus, json: true });
    const result = sweepResultSchema.parse(JSON.parse(out));
    if (result.kind !== 'sweep') throw new Error('not a sweep');
    expect(code).toBe(0);
    expect(result.levelReference).toBe('1 kHz');
    expect(result.response.find(({ hz }) => hz === 1000)).toEqual({ hz: 1000, levelDb: 0 });
    expect(result.fullScaleVoltsRms).toBeUndefined();
  });

  test('of a sweep, for people', async () => {
    const { code, out } = await run(at('stereo.wav'), { stimulus, take: 'left', reference: '1000=1.00' });
    expect(code).toBe(0);
    const lines = out.split('\n');
    expect(lines[0]).toMatch(
      /^Sweep from 20 Hz to 20 kHz in 2 s, left channel, recorded at 48 kHz, \d+ dB above the noise\.$/,
    );
    expect(lines[2]).toMatch(/^ +at +level dBV +V rms +THD % +2nd % +3rd % +4th % +5th %$/);
    expect(lines.find((line) => line.trimStart().startsWith('80 Hz'))).toMatch(/80 Hz +−3\.07 +0\.702\d/);
    expect(out).toMatch(
      /At this input gain a full-scale sine is 2\.000 V rms: --full-scale 2(\.000\d)? for other recordings\./,
    );
  });

  test('of a tone, as JSON', async () => {
    const { code, out, err } = await run(at('tone.wav'), {
      stimulus: 'tone:1000',
      reference: '1000=2.00',
      json: true,
    });
    expect([code, err]).toEqual([0, '']);
    const result = sweepResultSchema.parse(JSON.parse(out));
    if (result.kind !== 'tone') throw new Error('not a tone');
    expect(result.level).toMatchObject({ voltsRms: 2, levelDbv: 6.0206 });
    expect(result.level.levelDbfs).toBeCloseTo(-6.02, 2);
    expect(result.response).toHaveLength(1);
    expect(result.thd[0]?.ratio).toBeCloseTo(Math.hypot(0.01, 0.003), 4);
    expect(result.thdPlusNoise).toBeCloseTo(Math.hypot(0.01, 0.003), 3);
    expect(result.distortion.map(({ order }) => order)).toEqual([2, 3, 4, 5]);
    expect(result.recordedHz).toBeCloseTo(1000.02, 2);
    expect(result.clipped).toBe(false);
  });

  test('of a tone, for people, by the full scale another recording told', async () => {
    const { code, out } = await run(at('tone.wav'), { stimulus: 'tone:1000', fullScale: '4' });
    expect(code).toBe(0);
    expect(out).toContain('Level  2.000 V rms, 6.02 dBV, −6.02 dBFS');
    expect(out).toContain('THD    1.04 % (harmonics 2 to 19)');
    expect(out).toContain('Clipped  no');
  });

  test('of a clipped tone: measured, flagged, and said aloud', async () => {
    const { code, out, err } = await run(at('clipped-tone.wav'), { stimulus: 'tone:1000', json: true });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ kind: 'tone', clipped: true });
    expect(err).toBe(
      'The recording is clipped: these figures are those of its limit, not of the unit.\n→ Turn the input of the interface down, not the unit, and record again with peaks at −6 dBFS or so.',
    );
  });
});

describe('recordings that cannot be used: exit code 1, what and what next', () => {
  test.each([
    ['clipped-sweep.wav', stimulus, 'clipped', 'The recording is clipped: '],
    ['tone.wav', stimulus, 'wrong-stimulus', 'The recording holds a steady tone of about 1 kHz'],
    ['sweep.wav', 'sweep:20:20000:10', 'wrong-stimulus', 'The recording holds a sweep from about 20'],
    ['sweep.wav', 'sweep:50:15000:2', 'wrong-stimulus', 'The recording holds a sweep from about 20'],
    ['sweep.wav', 'tone:1000', 'wrong-stimulus', 'The recording holds a sweep from about 20'],
    ['sweep.wav', 'sweep:20:30000:2', 'sample-rate', 'The sample rate of 48 kHz is too low'],
    ['noise.wav', stimulus, 'wrong-stimulus', 'No sweep from 20 Hz to 20 kHz in 2 s stands out'],
    ['stereo.wav', stimulus, 'two-channels', 'The file has two channels'],
    ['notes.txt', stimulus, 'not-a-wav', 'This is not a WAV file.'],
    [
      'truncated.wav',
      stimulus,
      'truncated',
      'The file is truncated: its header announces 2.80 s, and 0.69 s of sound are there.',
    ],
  ])('%s as %s', async (name, named, reason, message) => {
    const { code, out, err } = await run(at(name), { stimulus: named, json: true });
    expect(code).toBe(1);
    const result = sweepResultSchema.parse(JSON.parse(out));
    if (result.kind !== 'unusable') throw new Error('was measured');
    expect(result.reason).toBe(reason);
    expect(result.message.replaceAll('\u00a0', ' ')).toContain(message);
    expect(err).toMatch(new RegExp(`^FOLDER/${name}: .+\n→ .{10,}`));
    // Without --json nothing is mistaken for figures.
    if (reason === 'not-a-wav')
      expect(await run(at(name), { stimulus: named })).toEqual({ code: 1, out: '', err });
  });
});

describe('what cannot be run: exit code 2', () => {
  test.each([
    ['missing.wav', { stimulus }, 'There is no file FOLDER/missing.wav.'],
    ['', { stimulus }, 'FOLDER is a folder.'],
    ['sweep.wav', { stimulus: 'sweep' }, '“sweep” is not a stimulus.'],
    ['sweep.wav', { stimulus, take: 'both' }, '--take both names no channel.'],
    ['sweep.wav', { stimulus, reference: '1.00' }, '--reference 1.00 is not a frequency and a voltage.'],
    [
      'sweep.wav',
      { stimulus, reference: '1000=0' },
      '--reference 1000=0 is not a voltage above 0 V, up to 1000 V.',
    ],
    [
      'sweep.wav',
      { stimulus, reference: '1000=1,00' },
      '--reference 1000=1,00 is not a voltage above 0 V, up to 1000 V.',
    ],
    [
      'sweep.wav',
      { stimulus, reference: '10=1' },
      'The reference is at 10 Hz, where the sweep from 20 Hz to 20 kHz in 2 s does not play.',
    ],
    [
      'tone.wav',
      { stimulus: 'tone:100', reference: '1000=1' },
      'The reference is at 1 kHz, where the tone of 100 Hz does not play.',
    ],
    ['sweep.wav', { stimulus, reference: '1000=1', fullScale: '2' }, 'Both --reference and --full-scale say'],
    ['sweep.wav', { stimulus, fullScale: '-2' }, '--full-scale -2 is not a voltage above 0 V, up to 1000 V.'],
    ['sweep.wav', { stimulus, step: '3' }, '--step belongs to a session, and none is named.'],
  ])('%s with %o', async (name, options, message) => {
    const { code, out, err } = await run(join(folder, name), options);
    expect([code, out]).toEqual([2, '']);
    expect(err.split('\n→ ')[0]?.startsWith(message), err).toBe(true);
    expect(err).toMatch(/\n→ .{10,}/);
  });
});

test('whatever bytes a file holds, the command says something and ends', async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 2000 }), fc.boolean(), async (bytes, asWav) => {
      // As samples of a real file, or as the file itself.
      const file = asWav
        ? wavBytes(
            [Float64Array.from({ length: 20_000 }, (_, n) => (bytes[n % bytes.length] ?? 128) / 128 - 1)],
            '16',
          )
        : bytes;
      await writeFile(at('any.wav'), file);
      for (const named of ['tone:1000', 'sweep:100:8000:1']) {
        const { code, out, err } = await run(at('any.wav'), { stimulus: named });
        expect([0, 1]).toContain(code);
        expect(out.length + err.length).toBeGreaterThan(20);
      }
    }),
    { numRuns: 40 },
  );
});

describe('a bench session', () => {
  let content: ContentCopy;
  beforeAll(async () => {
    content = await ContentCopy.make();
  });
  afterAll(() => content.remove());

  const slot = { profile: 'brasslight/8b0s-i5z', channel: 'FL', step: '12' } as const;
  const inVolts = { stimulus, reference: '1000=1.00' } as const;
  const write = (options: Partial<SweepOptions>, name = 'sweep.wav'): Promise<Ran> =>
    run(at(name), { ...inVolts, ...slot, content: content.folder, ...options });
  const filesOf = (session: string): Promise<string[]> => readdir(join(content.folder, 'outputs', session));

  test('is written with a session.yaml to fill in, which the check then asks for', async () => {
    const { code, err } = await write({ session: '2026-05-sweeps' });
    expect([code, err]).toEqual([0, '']);
    expect(await filesOf('2026-05-sweeps')).toEqual(['readings.csv', 'session.yaml']);
    const sheet = await content.read('outputs/2026-05-sweeps/readings.csv');
    const lines = sheet.trimEnd().split('\n');
    expect(lines[0]).toBe('profile,channel,step,hz,voltsRms,thdPercent,repeat');
    expect(lines).toHaveLength(31);
    expect(lines.some((line) => /^brasslight\/8b0s-i5z,FL,12,1000,1,0\.\d+,1$/.test(line))).toBe(true);
    // Above f2/3 no third harmonic lies within the sweep, and no THD is told.
    expect(lines.at(-1)).toMatch(/^brasslight\/8b0s-i5z,FL,12,19952\.6,[\d.]+,,1$/);

    const template = await content.read('outputs/2026-05-sweeps/session.yaml');
    expect(parse(template)).toMatchObject({ source: null, signal: { kind: 'sweep', levelDbfs: null } });
    const { findings } = await checkContent(content.folder);
    const files = new Set(
      findings.filter(({ severity }) => severity === 'error').map(({ place }) => place.file),
    );
    expect([...files]).toEqual(['outputs/2026-05-sweeps/session.yaml']);
  });

  test('is never written over', async () => {
    const before = await content.read('outputs/2026-05-sweeps/readings.csv');
    const { code, err } = await write({ session: '2026-05-sweeps', step: '13' });
    expect(code).toBe(2);
    expect(err).toContain('readings.csv is there already, and nothing is written over it.');
    expect(await content.read('outputs/2026-05-sweeps/readings.csv')).toBe(before);
  });

  test('takes further readings below those it has, but none twice', async () => {
    const before = await content.read('outputs/2026-05-sweeps/readings.csv');
    expect((await write({ session: '2026-05-sweeps', step: '13', append: true })).code).toBe(0);
    const after = await content.read('outputs/2026-05-sweeps/readings.csv');
    expect(after.startsWith(before)).toBe(true);
    expect(after.trimEnd().split('\n')).toHaveLength(61);
    const again = await write({ session: '2026-05-sweeps', step: '13', append: true });
    expect(again.code).toBe(2);
    expect(again.err).toContain('has readings of brasslight/8b0s-i5z, FL, step 13, repeat 1 already.');
    expect(await content.read('outputs/2026-05-sweeps/readings.csv')).toBe(after);
  });

  test('with its conditions already there keeps them', async () => {
    const conditions = await content.read('outputs/2026-09-quay/session.yaml');
    await content.write('outputs/2026-06-quay/session.yaml', conditions);
    const { code } = await write({ session: '2026-06-quay', stimulus: 'tone:1000', step: '5' }, 'tone.wav');
    expect(code).toBe(0);
    expect(await content.read('outputs/2026-06-quay/session.yaml')).toBe(conditions);
    expect(await content.read('outputs/2026-06-quay/readings.csv')).toBe(
      'profile,channel,step,hz,voltsRms,thdPercent,repeat\nbrasslight/8b0s-i5z,FL,5,1000,1,1.04,1\n',
    );
    const mixed = await write({ session: '2026-06-quay', append: true });
    expect(mixed.code).toBe(2);
    expect(mixed.err).toContain(
      'The session 2026-06-quay was taken with the signal “sine”, this recording with “sweep”.',
    );
  });

  test.each([
    [{ session: 'fresh', profile: 'brasslight/8b0s-15x' }, 2, 'There is no profile “brasslight/8b0s-15x”'],
    [{ session: 'fresh', channel: 'SUB' }, 2, 'The unit has no output “SUB”.'],
    [{ session: 'fresh', step: '99' }, 2, '--step 99 is no volume step of this unit.'],
    [{ session: 'fresh', repeat: '0' }, 2, '--repeat 0 is no number of a repeat.'],
    [{ session: 'Not A Name' }, 2, '“Not A Name” cannot name a session.'],
    [{ session: 'fresh', stimulus: 'sweep:20:20000:10' }, 1, 'The recording holds a sweep'],
  ] as [Partial<SweepOptions>, number, string][])(
    '%o: nothing is left behind',
    async (options, expected, message) => {
      const { code, err } = await write(options);
      expect(code).toBe(expected);
      expect(err).toContain(message);
      expect(await readdir(join(content.folder, 'outputs'))).not.toContain('fresh');
    },
  );

  test('needs volts, a profile, a channel and a step', async () => {
    const noVolts = await run(at('sweep.wav'), {
      stimulus,
      ...slot,
      session: 'fresh',
      content: content.folder,
    });
    expect(noVolts.err).toContain('A session holds volts, and nothing says how many');
    const noSlot = await run(at('sweep.wav'), { ...inVolts, session: 'fresh', content: content.folder });
    expect(noSlot.err).toContain('A reading needs a profile, a channel and a volume step.');
    expect([noVolts.code, noSlot.code]).toEqual([2, 2]);
  });

  test('a clipped tone is no reading', async () => {
    const { code, err } = await write({ session: 'fresh', stimulus: 'tone:1000' }, 'clipped-tone.wav');
    expect(code).toBe(1);
    expect(err).toContain('The recording is clipped, so it is no reading for a session.');
  });

  test('where its folder cannot be made, nothing is begun', async () => {
    await writeFile(at('a-file'), '');
    const { code, err } = await write({ session: join(at('a-file'), 'fresh') });
    expect(code).toBe(2);
    expect(err).toMatch(/^FOLDER\/a-file\/fresh.* cannot be (written|read) \(ENOTDIR\)\./);
    expect(await readFile(at('a-file'), 'utf8')).toBe('');
  });
});
