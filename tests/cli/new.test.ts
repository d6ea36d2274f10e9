/** `readback new` as it is used: by flags and at a terminal, in this repository and in a shop’s. */
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { PassThrough } from 'node:stream';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { newResultSchema } from '../../schemas/results/new.ts';
import type { Output } from '../../src/cli/command.ts';
import { type Dialogue, terminalDialogue } from '../../src/cli/new/dialogue.ts';
import { schemaAddress } from '../../src/cli/new/entry-file.ts';
import { run } from '../../src/cli/program.ts';
import { readback } from './run.ts';

let work: string;
let content: string;
beforeAll(async () => {
  work = await mkdtemp(join(tmpdir(), 'readback-new-'));
});
afterAll(() => rm(work, { recursive: true, force: true }));
beforeEach(async () => {
  const shop = join(await mkdtemp(join(work, 'shop-')), 'help');
  await readback('init', shop);
  content = join(shop, 'content');
});

const entry = {
  family: 'moorlight',
  code: 'LT-0042',
  origin: 'factory',
  system: 'unamplified',
  about: 'Listed in the bulletin; not measured yet.',
  sources: 'maker-bulletin',
};

function flags(given: Partial<typeof entry>): string[] {
  return Object.entries(given).flatMap(([name, value]) => [`--${name}`, value]);
}

async function filesIn(folder: string): Promise<string[]> {
  return (await readdir(folder, { recursive: true })).sort();
}

describe('by flags', () => {
  test('the entry is written where it belongs, and the check has nothing against it', async () => {
    const { code, out, err } = await readback('new', 'profile', ...flags(entry), '--content', content);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const file = join(content, 'profiles/moorlight/lt-0042.yaml');
    expect(out).toBe(`Wrote ${file}.\nThe check has nothing against it.`);
    expect(
      await readFile(file, 'utf8'),
    ).toBe(`# yaml-language-server: $schema=../../../.vscode/schemas/profile.schema.json
family: moorlight
code: "LT-0042"
origin: factory
system: unamplified
about: Listed in the bulletin; not measured yet.
sources:
  - maker-bulletin
`);
  });

  test('what is missing is named, flag by flag, and nothing is written', async () => {
    const before = await filesIn(content);
    const { code, out, err } = await readback(
      'new',
      'profile',
      ...flags({ code: 'LT-0042', origin: 'factori' }),
      '--content',
      content,
    );
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(
      'No profile was written.\n  --origin: “origin” cannot be "factori". Did you mean “factory”?',
    );
    const missing = [...err.matchAll(/^ {4}(--\S+)/gm)].map(([, flag]) => flag);
    expect(missing).toEqual(['--family', '--system', '--about', '--sources']);
    expect(await filesIn(content)).toEqual(before);
  });

  test('fields of a block, lists of blocks, and what is missing in one', async () => {
    const plan = [
      '--name',
      'Two',
      '--summary',
      'A pair.',
      '--order',
      '5',
      '--feeds',
      'speakers',
      '--rear',
      'needed',
    ];
    const rest = [
      '--most-bass-boost-db',
      '6',
      '--can-correct',
      'no',
      '--sources',
      'maker-bulletin',
      '--content',
      content,
    ];
    const half = await readback('new', 'plan', ...plan, '--input.least-volts', '1', ...rest);
    expect(half.err).toMatch(/Missing:\n {4}--input\.most-volts <number> {2}Volts rms its input takes/);
    const wrong = await readback(
      'new',
      'plan',
      ...plan,
      '--input.least-volts',
      '1,5',
      '--input.most-volts',
      '8',
      ...rest,
    );
    expect(wrong.err).toContain(
      '--input.least-volts: “input”, “leastVolts” must be a number, and 1,5 is text. Use a point for the decimals: 1.5.',
    );
    const written = await readback(
      'new',
      'plan',
      ...plan,
      '--input.least-volts',
      '1.5',
      '--input.most-volts',
      '8',
      ...rest,
    );
    expect(written).toMatchObject({ code: 0, err: '' });
    expect(await readFile(join(content, 'plans/two.yaml'), 'utf8')).toContain(
      'input:\n  leastVolts: 1.5\n  mostVolts: 8\n',
    );
    const broken = await readback('new', 'statement', '--claims', '{ profile: ', '--content', content);
    expect(broken.err).toContain('What follows --claims cannot be read: { profile: ');
  });

  test('a name that is not there is refused with the one that was meant', async () => {
    const { code, err } = await readback(
      'new',
      'profile',
      ...flags({ ...entry, sources: 'maker-buletin' }),
      '--content',
      content,
    );
    expect(code).toBe(2);
    expect(err).toContain('--sources: There is no source “maker-buletin”. Did you mean “maker-bulletin”?');
  });

  test('nothing is written over, and another name can be given', async () => {
    const existing = join(content, 'profiles/moorlight/km-4417.yaml');
    const before = await readFile(existing, 'utf8');
    const again = flags({ ...entry, code: 'KM-4417' });
    const { code, err } = await readback('new', 'profile', ...again, '--content', content);
    expect(code).toBe(2);
    expect(err).toBe(`${existing} is there already, and is left as it is.\n→ Give another name: --id NAME.`);
    expect(await readFile(existing, 'utf8')).toBe(before);
    const odd = await readback('new', 'profile', ...again, '--id', '../escape', '--content', content);
    expect(odd.err).toContain('“../escape” cannot name an entry');
    const other = await readback('new', 'profile', ...again, '--id', 'km-4417-late', '--content', content);
    // The check has its say: one code, two profiles.
    expect(other.out).toContain('The check now says:');
    expect(other.out).toContain('duplicate-code');
  });

  test('a session is told to need readings; --json says the same in the published shape', async () => {
    const flagsOfSession = [
      '--source',
      'shed-session',
      '--date',
      '2025-06-01',
      '--bench',
      'shed',
      '--taken-by',
      'bench technician',
      '--instrument.name',
      'Bench voltmeter',
      '--instrument.resolution-volts',
      '0.001',
      '--instrument.accuracy',
      '{ fromHz: 10, toHz: 100000, ofReadingPercent: 0.5, counts: 3 }',
      '--signal.kind',
      'sine',
      '--signal.level-dbfs',
      '0',
      '--signal.level-tolerance-db',
      '0.1',
      '--signal.from',
      'A file',
      '--load.ohms',
      '4',
      '--load.tolerance-percent',
      '1',
      '--supply.volts',
      '14.4',
      '--supply.tolerance-volts',
      '0.1',
      '--method',
      'As before.',
    ];
    const { code, out } = await readback('new', 'session', ...flagsOfSession, '--content', content, '--json');
    expect(code).toBe(0);
    const result = newResultSchema.parse(JSON.parse(out));
    expect(result).toMatchObject({
      kind: 'outputs',
      id: '2025-06-01-shed',
      file: 'outputs/2025-06-01-shed/session.yaml',
      schema: '../../../.vscode/schemas/session.schema.json',
    });
    expect(result.findings.map(({ message }) => message)).toContain('This session has no readings.');
    expect(await readFile(join(content, result.file), 'utf8')).toContain(
      '- { fromHz: 10, toHz: 100000, ofReadingPercent: 0.5, counts: 3 }',
    );
  });

  test('a guide is Markdown: its head is written, its text is left to the writer', async () => {
    const head = [
      '--title',
      'Before you wire',
      '--summary',
      'What to do first.',
      '--order',
      '3',
      '--sources',
      'maker-bulletin',
    ];
    const { code, out } = await readback('new', 'guide', ...head, '--cautions', 'fuse', '--content', content);
    expect(code).toBe(0);
    expect(out).toContain('Its text goes below the second line of hyphens.');
    expect(await readFile(join(content, 'guides/before-you-wire.md'), 'utf8')).toBe(
      '---\ntitle: Before you wire\nsummary: What to do first.\norder: 3\ncautions:\n  - fuse\nsources:\n  - maker-bulletin\n---\n',
    );
  });
});

describe('the schema an entry names for editors is there', () => {
  test.each([
    ['profiles', 'profiles/brasslight/x.yaml', '../../../schemas/json/profile.schema.json'],
    ['sources', 'sources/x.yaml', '../../schemas/json/source.schema.json'],
  ] as const)('in this repository, %s', async (kind, file, address) => {
    expect(schemaAddress('content', kind, file)).toBe(address);
    const neighbour =
      kind === 'profiles' ? 'profiles/brasslight/8b0s-i5z.yaml' : 'sources/bench-2024-02-north.yaml';
    expect(await readFile(join('content', neighbour), 'utf8')).toContain(`$schema=${address}\n`);
  });

  test('elsewhere, the program’s own', async () => {
    const bare = await mkdtemp(join(work, 'bare-'));
    const address = schemaAddress(bare, 'plans', 'plans/x.yaml');
    expect(resolve(bare, 'plans', address)).toBe(resolve('schemas/json/plan.schema.json'));
    expect((await stat(resolve(bare, 'plans', address))).isFile()).toBe(true);
  });
});

describe('at a terminal', () => {
  /** Runs the command with a person who types these lines, and then stops it. */
  async function asked(kind: string, typed: readonly string[]) {
    const lines = [...typed];
    const said: string[] = [];
    const out: string[] = [];
    const err: string[] = [];
    const terminal = Object.assign(new PassThrough(), { isTTY: true });
    const input = new PassThrough();
    terminal.on('data', (chunk: Buffer) => {
      const text = chunk.toString();
      said.push(text);
      if (text.includes('\n> ') || text.endsWith('> '))
        setImmediate(() => input.write(lines.length > 0 ? `${lines.shift()}\r` : '\x03'));
    });
    const output: Output = {
      out: (text) => out.push(text),
      err: (text) => err.push(text),
      colour: false,
      dialogue: (): Dialogue => terminalDialogue(input, terminal),
    };
    const code = await run(['new', kind, '--content', content], output);
    return { code, out: out.join('\n'), err: err.join('\n'), said: said.join(''), left: lines };
  }

  const answers = [
    'moorlight',
    '"LT-0042"',
    '',
    '',
    'factory',
    'unamplified',
    '',
    '',
    '',
    '',
    'Listed.',
    'maker-bulletin',
    '',
  ];

  test('each field is asked for, a wrong answer at once again, and the entry is that of the answers', async () => {
    const mistaken = [...answers.slice(0, 4), 'factori', ...answers.slice(4)];
    const { code, out, err, said, left } = await asked('profile', mistaken);
    expect({ code, err, left }).toEqual({ code: 0, err: '', left: [] });
    expect(out).toContain(`Wrote ${join(content, 'profiles/moorlight/lt-0042.yaml')}.`);
    expect(said).toContain('code: The code exactly as the screen shows it, in quotes.');
    expect(said).toContain('“origin” cannot be "factori".');
    expect(said).toContain('Did you mean “factory”?');
    const written = await readFile(join(content, 'profiles/moorlight/lt-0042.yaml'), 'utf8');
    expect(written).toContain('code: "LT-0042"\norigin: factory\n');
    expect(written).not.toContain('soldAs');
  });

  test('a name that is taken is said as soon as it is known', async () => {
    const { said } = await asked('profile', ['moorlight', 'KM-4417', '', 'km-4417-late']);
    expect(said).toContain(
      `${join(content, 'profiles/moorlight/km-4417.yaml')} is there already. Another name:`,
    );
  });

  test.each([1, 5, answers.length - 1])('Ctrl-C after %i answers writes nothing', async (count) => {
    const before = await filesIn(dirname(content));
    const { code, out, err } = await asked('profile', answers.slice(0, count));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe('Stopped. Nothing was written.\n→ Run the command again to begin anew.');
    expect(await filesIn(dirname(content))).toEqual(before);
  });

  test('the end of the input stops it too', async () => {
    const input = new PassThrough();
    const dialogue = terminalDialogue(input, new PassThrough());
    const answer = dialogue.ask('family?');
    input.end();
    await expect(answer).rejects.toThrow('Stopped. Nothing was written.');
    dialogue.close();
  });
});

test('an entry the check cannot go with is written all the same, and the check says so', async () => {
  await writeFile(join(content, 'stray.txt'), 'x');
  const { code, out } = await readback(
    'new',
    'profile',
    ...flags({ ...entry, code: 'QQQQ' }),
    '--content',
    content,
  );
  expect(code).toBe(0);
  expect(out).toContain('code-pattern');
  // What was wrong before is not put down to the new entry.
  expect(out).not.toContain('stray');
});
