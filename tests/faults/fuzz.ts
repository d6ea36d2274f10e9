/** Malformed files of every kind, and what must hold whatever they are: no crash, no hang, places in the file. */
import fc from 'fast-check';
import { type Finding, MemoryFiles, type Place } from '../../src/base/index.ts';
import {
  checkContent,
  githubReport,
  htmlReport,
  jsonReport,
  rules,
  sarifReport,
  textReport,
} from '../../src/check/index.ts';
import { exampleFiles } from '../check/example-base.ts';

/** One file of each kind, by its path in the example base; its bytes are replaced. */
export const fuzzedFiles: readonly string[] = [
  'site.yaml',
  'families/moorlight.md',
  'guides/reading-a-code.md',
  'sequences/moorlight-menu.yaml',
  'profiles/moorlight/km-4417.yaml',
  'outputs/2025-05-shed/session.yaml',
  'outputs/2025-05-shed/readings.csv',
  'sources/maker-bulletin.yaml',
  'statements/bulletin-loud-profile.yaml',
  'plans/two-channel.yaml',
  'tables/behind-an-amplifier.yaml',
  'tables/rear-speakers.yaml',
];

export interface FuzzCase {
  readonly file: string;
  readonly bytes: Uint8Array;
}

const encoder = new TextEncoder();

/** Pieces that break readers: of numbers, nesting, aliases, directives, quotes, line ends, bytes. */
const nasty: readonly Uint8Array[] = [
  ...[
    '\0',
    '\u0007',
    '\u001b[31m',
    '\u0085',
    '\u2028',
    '\uFEFF',
    '\r',
    '\t',
    '🏍',
    'e\u0301\u0301\u0301',
    '1e309',
    '-0',
    '.inf',
    '.nan',
    '0x7fffffffffffffff',
    '9'.repeat(400),
    '0.'.repeat(50),
    '2026-02-30',
    '[',
    '{',
    '- '.repeat(300),
    '['.repeat(3000),
    '{a: '.repeat(1000),
    '> '.repeat(500),
    'x'.repeat(100_000),
    'a,'.repeat(20_000),
    '"',
    "'",
    '"\n',
    '""',
    ',,,,,,,',
    '? ',
    ': ',
    '!!binary ',
    '!!set {a, b}',
    '!<tag:x> ',
    '%YAML 1.1\n---\n',
    '---\n',
    '...\n',
    '<<: ',
    '&a ',
    '*a ',
    `a: &a [x,x]\n${[...'bcdefghijklm'].map((c, at) => `${c}: &${c} [*${'abcdefghijkl'[at]},*${'abcdefghijkl'[at]}]`).join('\n')}\n`,
    '__proto__: 1\n',
    'constructor: { prototype: 1 }\n',
    ':value[',
    ':value[moorlight/km-4417]{',
    '::::\n',
    '[x](javascript:alert(1))',
    '[x](',
    '![',
    '<script>',
    '"< 1, not(< 2)"',
    '"[1..',
    '"]1..3["',
    `"${'('.repeat(900)}"`,
    `"${'not('.repeat(200)}"`,
    `"${'if '.repeat(300)}"`,
    `"${'[1..2],'.repeat(140)}"`,
    `"${'9'.repeat(400)}.5"`,
    `"< ${'1 + '.repeat(240)}1"`,
    '"1e5"',
    '"date(\\"2026-02-30\\")"',
    '"some x in y satisfies x"',
    'null',
    '<!--',
    '```\n',
    '|a|\n|-|\n',
    '[^1]',
    '#'.repeat(20),
    '*'.repeat(2000),
    '[a]('.repeat(500),
    '__a'.repeat(500),
    '\n'.repeat(5000),
    ' '.repeat(5000),
  ].map((text) => encoder.encode(text)),
  // A lone surrogate, an overlong form, a cut-off sequence, a byte that never occurs.
  Uint8Array.of(0xed, 0xa0, 0x80),
  Uint8Array.of(0xc0, 0xaf),
  Uint8Array.of(0xe2, 0x82),
  Uint8Array.of(0xff),
];

/** One change of a file; `at` and `length` are shares of it. */
type Mutation = (bytes: Uint8Array) => Uint8Array;

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return Uint8Array.from(parts.flatMap((part) => [...part]));
}

const share = fc.double({ min: 0, max: 1, noNaN: true });

const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  fc.tuple(share, fc.nat(7)).map(
    ([at, bit]): Mutation =>
      (bytes) => {
        const index = Math.floor(at * bytes.length);
        return bytes.map((byte, here) => (here === index ? byte ^ (1 << bit) : byte));
      },
  ),
  share.map(
    (at): Mutation =>
      (bytes) =>
        bytes.slice(0, Math.floor(at * bytes.length)),
  ),
  fc.tuple(share, share, fc.integer({ min: 2, max: 40 })).map(
    ([a, b, times]): Mutation =>
      (bytes) => {
        const [from, to] = [a, b].sort((x, y) => x - y).map((at) => Math.floor(at * bytes.length));
        const chunk = bytes.slice(from, Math.min(to ?? 0, (from ?? 0) + 500));
        return joined(bytes.slice(0, from), ...Array.from({ length: times }, () => chunk), bytes.slice(from));
      },
  ),
  fc.tuple(share, share).map(
    ([a, b]): Mutation =>
      (bytes) => {
        const [from, to] = [a, b].sort((x, y) => x - y).map((at) => Math.floor(at * bytes.length));
        return joined(bytes.slice(0, from), bytes.slice(to));
      },
  ),
  fc.tuple(share, fc.constantFrom(...nasty)).map(
    ([at, piece]): Mutation =>
      (bytes) => {
        const index = Math.floor(at * bytes.length);
        return joined(bytes.slice(0, index), piece, bytes.slice(index));
      },
  ),
  // In place of a value, where a reader expects a number or a word.
  fc.tuple(fc.nat(200), fc.constantFrom(...nasty)).map(
    ([nth, piece]): Mutation =>
      (bytes) => {
        const text = new TextDecoder('latin1').decode(bytes);
        const values = [...text.matchAll(/(?<=[:,] ?)[a-zA-Z0-9."-]+/g)];
        const value = values[nth % Math.max(1, values.length)];
        if (!value) return bytes;
        return joined(bytes.slice(0, value.index), piece, bytes.slice(value.index + value[0].length));
      },
  ),
);

/** Text of the signs that mean something to YAML, Markdown or CSV. */
const signs = fc
  .array(
    fc.constantFrom(
      ...[
        'a',
        'b: ',
        'c:\n  ',
        '- ',
        '\n',
        '  ',
        '\t',
        ' ',
        '"',
        "'",
        '[',
        ']',
        '{',
        '}',
        ',',
        ':',
        '#',
        '&x ',
        '*x ',
        '|\n',
        '>\n',
      ],
      ...[
        '---\n',
        '1',
        '1.5',
        '~',
        'true',
        '!!int ',
        '? ',
        '%',
        '@',
        '`',
        '**',
        '_',
        '# ',
        '> ',
        '](',
        ':value[',
        '\\',
        '\r\n',
        '\u00e9',
      ],
      ...[
        'family',
        'code',
        'sources',
        'profile,channel,step,hz,voltsRms,thdPercent,repeat\n',
        'when: { ',
        'give: { ',
        'hit: unique\n',
        '"< 1"',
        'FL',
        '1000',
        '0.5',
      ],
    ),
    { maxLength: 60 },
  )
  .map((parts) => encoder.encode(parts.join('')));

export const fuzzCase: fc.Arbitrary<FuzzCase> = fc.constantFrom(...fuzzedFiles).chain((file) =>
  fc
    .oneof(
      { weight: 1, arbitrary: fc.uint8Array({ maxLength: 400 }) },
      {
        weight: 1,
        arbitrary: fc.string({ unit: 'binary', maxLength: 300 }).map((text) => encoder.encode(text)),
      },
      { weight: 2, arbitrary: signs },
      {
        weight: 6,
        arbitrary: fc
          .array(mutation, { minLength: 1, maxLength: 5 })
          .map((changes) => changes.reduce<Uint8Array>((bytes, change) => change(bytes), original(file))),
      },
    )
    .map((bytes) => ({ file, bytes })),
);

function original(file: string): Uint8Array {
  const text = exampleFiles.get(file);
  if (text === undefined) throw new Error(`the example base has no file ${file}`);
  return encoder.encode(text);
}

/** A case may take this much of the processor’s time, seconds. */
export const mostSeconds = 2;

/** Checks one case; gives what is wrong with the answer, or nothing. */
export async function faultsOfAnswer({ file, bytes }: FuzzCase): Promise<string[]> {
  const files = new Map<string, string | Uint8Array>(exampleFiles).set(file, bytes);
  const content = new MemoryFiles('example', files);
  const before = process.cpuUsage();
  const { findings, sourceOf } = await checkContent(content);
  const told = { findings, folder: 'example', sourceOf, setAside: 0 };
  textReport(told, true);
  githubReport(told);
  htmlReport(told, rules);
  JSON.stringify([jsonReport(told), sarifReport(told, rules)]);
  const { user, system } = process.cpuUsage(before);
  const seconds = (user + system) / 1e6;
  return [
    ...(seconds > mostSeconds ? [`took ${seconds.toFixed(1)} s`] : []),
    ...findings.flatMap(({ message, help }) =>
      /^\s*at .*:\d+:\d+|node_modules|\bundefined\b|\[object |\bNaN\b/m.test(`${message} ${help}`)
        ? [`leaks its inside: ${message} ${help}`]
        : [],
    ),
    ...findings.flatMap((finding) => misplaced(content, files, finding)),
  ];
}

function misplaced(content: MemoryFiles, files: ReadonlyMap<string, unknown>, finding: Finding): string[] {
  return [finding.place, ...finding.related.map((one) => one.place)]
    .filter((place) => !isInFile(content, files, place))
    .map((place) => `${finding.rule} points to ${JSON.stringify(place)}`);
}

/** Whether a place is a stretch of its file, the end not before the beginning. */
function isInFile(content: MemoryFiles, files: ReadonlyMap<string, unknown>, place: Place): boolean {
  if (!files.has(place.file)) return false;
  const { source } = content.read(place.file);
  const inside = (line: number, column: number): boolean =>
    line >= 1 &&
    line <= source.lineCount &&
    column >= 1 &&
    // One beyond the text is its end; a line end of two characters is one more.
    column <= source.lineText(line).length + 2;
  return (
    inside(place.line, place.column) &&
    inside(place.endLine, place.endColumn) &&
    (place.endLine > place.line || (place.endLine === place.line && place.endColumn >= place.column))
  );
}

/** Runs `count` cases and fails at the first whose answer is wrong, made as small as it goes. */
export async function fuzz(count: number, seed: number): Promise<void> {
  await fc.assert(
    fc.asyncProperty(fuzzCase, async (one) => {
      const faults = await faultsOfAnswer(one);
      if (faults.length > 0) throw new Error(`${one.file}: ${faults.slice(0, 3).join('; ')}`);
    }),
    {
      numRuns: count,
      seed,
      examples: fuzzedFiles.map((file): [FuzzCase] => [{ file, bytes: new Uint8Array() }]),
    },
  );
}
