import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { identifyResultSchema } from '../../schemas/results/identify.ts';
import { CannotRun } from '../../src/base/index.ts';
import { type IdentifyOptions, identify, identifyResult } from '../../src/cli/commands/identify.ts';
import { ContentCopy } from '../content-copy.ts';
import { answers } from './riders.ts';

async function run(options: Omit<IdentifyOptions, 'content'> & { content?: string }): Promise<{
  code: number;
  out: string;
}> {
  const out: string[] = [];
  const code = await identify(
    { content: 'content', ...options },
    {
      out: (text) => out.push(text),
      err: (text) => out.push(`stderr: ${text}`),
      colour: false,
    },
  );
  return { code, out: out.join('\n') };
}

/** What a command line is refused with. */
function refusal(act: () => unknown): CannotRun {
  try {
    act();
  } catch (error) {
    if (error instanceof CannotRun) return error;
    throw error;
  }
  throw new Error('CannotRun was expected');
}

/** True levels of 8B0S-I5Z, played 2 dB below full scale. */
const known = [
  'step=12,hz=63,volts=1.57',
  'step=20,hz=1000,volts=2.85',
  'step=18,hz=63,channel=RL,volts=2.96',
];

describe('readback identify', () => {
  test('says which it is, that its twin cannot be told from it, and the cautions', async () => {
    const { code, out } = await run({ unit: 'brasslight', reading: known });
    expect(code).toBe(0);
    const [first, second] = out.split('\n');
    expect(first).toBe(
      'Sure: it is 8B0S-I5Z or I1L0-S5G. These cannot be told apart by measuring: same output.',
    );
    expect(second).toMatch(/^ {2}8B0S-I5Z +\d\d % {2}\(brasslight\/8b0s-i5z\) {2}same output as I1L0-S5G$/);
    for (const words of [
      /parked/,
      /never run the engine indoors/i,
      /no ground side/,
      /hearing/,
      /true-rms/,
    ]) {
      expect(out).toMatch(words);
    }
    expect(out).toMatch(/Local law and codes/);
  });

  test('asks for one more reading, in a sentence to be read out', () => {
    const { next } = identifyResult(answers, { unit: 'brasslight', reading: ['step=12,hz=1000,volts=0.44'] });
    expect(next).toMatch(
      /^Take one more reading: step \d+, \d+\u00a0k?Hz, (front|rear) left: expect \d+\.\d+\u00a0V if .+, \d+\.\d+\u00a0V if .+\.$/,
    );
  });

  test('without a reading it names the one to begin with', () => {
    const { result, next } = identifyResult(answers, { unit: 'glasswick' });
    expect(result.conclusion).toBe('Nothing read yet.');
    expect(next).toMatch(/^Begin with step \d+, .*: expect for a full-scale tone /);
  });

  test('readings of no profile: exit code 1, as one JSON object of the published shape', async () => {
    const { code, out } = await run({
      unit: 'Brasslight',
      reading: ['step=5,hz=1000,volts=8.0', 'step=20,hz=1000,volts=0.10', 'step=12,hz=63,volts=2.0'],
      json: true,
    });
    expect(code).toBe(1);
    const result = identifyResultSchema.parse(JSON.parse(out));
    expect(result).toMatchObject({ unit: 'brasslight', levelKnown: false, sureness: 'none-of-these' });
    expect(result.conclusion).toMatch(/^None of these, it seems: .*Look again which unit it is/);
  });

  test('the result: readings as they were taken, probabilities that make one, cautions', () => {
    const { result } = identifyResult(answers, { unit: 'brasslight', reading: known, accuracy: '4' });
    expect(result.sureness).toBe('sure');
    expect(result.readings.map((one) => one.accuracyPercent)).toEqual([4, 4, 4]);
    expect(result.candidates[0]).toMatchObject({ code: '8B0S-I5Z', twins: ['brasslight/i1l0-s5g'] });
    const total = result.candidates.reduce((sum, one) => sum + one.probability, result.noneOfThese);
    expect(total).toBeCloseTo(1, 9);
    expect(result.cautions.length).toBeGreaterThanOrEqual(5);
    const beginning = identifyResult(answers, { unit: 'brasslight', levelKnown: true }).result;
    expect(identifyResultSchema.parse(beginning)).toEqual(beginning);
    expect(beginning.levelKnown).toBe(true);
    expect(beginning.nextReading?.expect.length).toBe(7);
  });

  test('every field of the published shape says what it is, or its name does', () => {
    const schema = z.toJSONSchema(identifyResultSchema) as { properties: Record<string, object> };
    for (const [name, field] of Object.entries(schema.properties)) {
      expect('description' in field, name).toBe(true);
    }
  });

  test.each([
    [{ unit: 'braslight' }, 'There is no unit “braslight”.', /--unit brasslight/],
    [
      { unit: 'brasslight', reading: ['step=12,herz=60,volts=1'] },
      '“herz” is not known in a reading.',
      /Did you mean hz/,
    ],
    [
      { unit: 'brasslight', reading: ['step=31,hz=60,volts=1'] },
      '“Brasslight” has no volume step 31.',
      /from 0 to 30/,
    ],
    [
      { unit: 'brasslight', reading: ['step=12,hz=15,volts=1'] },
      'No profile of “Brasslight” was measured at 15\u00a0Hz.',
      /between 20\u00a0Hz and 20\u00a0kHz/,
    ],
    [{ unit: 'brasslight', reading: ['step=12,hz=60,volts=0'] }, '“volts=0” is not above zero.', /0\.001/],
    [{ unit: 'brasslight', accuracy: 'good' }, /“--accuracy good” is no limit of error/, /per cent/],
  ] as const)('%j: a message and what to do', (options, message, help) => {
    const failure = refusal(() => identifyResult(answers, options));
    expect(failure.message).toMatch(message);
    expect(failure.help).toMatch(help);
  });
});

describe('a content folder with less in it', () => {
  let copy: ContentCopy;
  beforeAll(async () => {
    copy = await ContentCopy.make();
  });
  afterAll(() => copy.remove());

  test('a unit of which nothing was measured', async () => {
    const header = 'profile,channel,step,hz,voltsRms,thdPercent,repeat\n';
    await copy.write('outputs/2025-11-north/readings.csv', header);
    await copy.write('outputs/2026-09-quay/readings.csv', header);
    const failure = await run({ unit: 'lanternby', content: copy.folder }).catch((error: unknown) => error);
    if (!(failure instanceof CannotRun)) throw new Error('CannotRun was expected');
    expect(failure.message).toBe('No profile of “Lanternby” has been measured yet.');
    expect(failure.help).toMatch(/readback find/);
  });

  test('a profile measured at 1 kHz alone is still ranked, and one not measured is named', async () => {
    const sheet = await copy.read('outputs/2024-02-north/readings.csv');
    const kept = sheet
      .split('\n')
      .filter(
        (line) =>
          !line.startsWith('brasslight/g60d-2zs') && (line.startsWith('profile') || line.includes(',1000,')),
      );
    await copy.write('outputs/2024-02-north/readings.csv', `${kept.join('\n')}\n`);
    for (const session of ['2025-03-van', '2026-04-van']) {
      await copy.write(
        `outputs/${session}/readings.csv`,
        'profile,channel,step,hz,voltsRms,thdPercent,repeat\n',
      );
    }
    const { out } = await run({
      unit: 'brasslight',
      content: copy.folder,
      levelKnown: true,
      reading: ['step=12,hz=1000,volts=0.73', 'step=20,hz=1000,volts=3.59', 'step=6,hz=1000,volts=0.202'],
    });
    expect(out).toMatch(/^Sure: it is 8B0S-I5Z or I1L0-S5G\./);
    expect(out).toContain('Not measured yet, and so among none of these: G60D-2ZS.');
    const failure = await run({
      unit: 'brasslight',
      content: copy.folder,
      reading: ['step=12,hz=60,volts=1'],
    }).catch((error: unknown) => error);
    if (!(failure instanceof CannotRun)) throw new Error('CannotRun was expected');
    expect(failure.help).toBe('Play a tone of 1\u00a0kHz.');
  });
});
