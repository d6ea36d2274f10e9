/**
 * The traps of YAML and of typing: each gives one finding, at the place to mend, that says what to write.
 * What YAML makes of each spelling: YAML 1.2.2, chapter 10.3 (core schema); 012 is 10 by YAML 1.1 (octal).
 */
import { describe, expect, test } from 'vitest';
import { readBase } from '../../src/base/index.ts';
import { editedExample, textOf } from '../check/example-base.ts';

const profile = 'profiles/moorlight/km-4417.yaml';
const session = 'outputs/2025-05-shed/session.yaml';
const plan = 'plans/two-channel.yaml';
const family = 'families/moorlight.md';
const statement = 'statements/bulletin-loud-profile.yaml';
const about = 'about: Loud, with bass boost.';
const sources = 'sources: [shed-session]';
const method = 'method: Voltmeter across the load, both leads floating.';

/** Title, file, good, bad, rule, where in `bad` the finding points (“” right after it), message, help. */
type Trap = readonly [
  title: string,
  file: string,
  good: string,
  bad: string,
  rule: string,
  at: string,
  message: string | RegExp,
  help: string | RegExp,
];

// biome-ignore format: a table, one trap a line
const traps: readonly Trap[] = [
  ['no', plan, 'canCorrect: false', 'canCorrect: no', 'schema', 'no', /must be true or false, and no is text/, /^Write false/],
  ['Yes', plan, 'canCorrect: false', 'canCorrect: Yes', 'schema', 'Yes', /and Yes is text/, /^Write true/],
  ['off', plan, 'canCorrect: false', 'canCorrect: off', 'schema', 'off', /and off is text/, /^Write false/],
  ['0 for false', plan, 'canCorrect: false', 'canCorrect: 0', 'schema', '0', /and 0 is a number/, /^Write false/],
  ['"false"', plan, 'canCorrect: false', 'canCorrect: "false"', 'schema', '"false"', /is text/, /^Write false, without quotes/],
  ['true as text', profile, about, 'about: true', 'schema', 'true', '“about” is read as yes/no (true), not as text.', 'Put it in quotes: "true".'],
  ['code 012', profile, 'code: "KM-4417"', 'code: 012', 'schema', '012', /read as a number \(12\)/, 'Put it in quotes: "012".'],
  ['code 0x7E8', profile, 'code: "KM-4417"', 'code: 0x7E8', 'schema', '0x7E8', /read as a number \(2024\)/, 'Put it in quotes: "0x7E8".'],
  ['code 1e3', profile, 'code: "KM-4417"', 'code: 1e3', 'schema', '1e3', /read as a number \(1000\)/, 'Put it in quotes: "1e3".'],
  ['code 1.10', profile, 'code: "KM-4417"', 'code: 1.10', 'schema', '1.10', /read as a number \(1\.1\)/, 'Put it in quotes: "1.10".'],
  ['number 030', family, 'highestStep: 30', 'highestStep: 030', 'schema', '030', /a nought before it, 030/, 'If 30 is meant, write 30.'],
  ['number 0x1E', family, 'highestStep: 30', 'highestStep: 0x1E', 'schema', '0x1E', /0x1E, which is read as the number 30/, 'If 30 is meant, write 30.'],
  ['.inf', session, 'volts: 14.4', 'volts: .inf', 'schema', '.inf', /\.inf is read as infinity/, 'Write the number in figures.'],
  ['.nan', session, 'volts: 14.4', 'volts: .nan', 'schema', '.nan', /“not a number”/, 'Write the number in figures.'],
  ['30_000', session, 'toHz: 30000', 'toHz: 30_000', 'schema', '30_000', /30_000 is text/, 'Write the figures without gaps: 30000.'],
  ['30 000', session, 'toHz: 30000', 'toHz: 30 000', 'schema', '30 000', /30 000 is text/, 'Write the figures without gaps: 30000.'],
  ['30,000 in braces', session, 'toHz: 30000', 'toHz: 30,000', 'syntax', '30,000', /30,000 has a comma in it/, /leave it out: 30000\.$/],
  ['6,300', statement, 'valueVolts: 6.3', 'valueVolts: 6,300', 'schema', '6,300', /6,300 is text/, 'Write the number without a comma: 6300 or, if the comma stands before decimals, 6.300.'],
  ['0,5 in braces', session, 'tolerancePercent: 1 }', 'tolerancePercent: 0,5 }', 'syntax', '0,5', /0,5 has a comma in it/, 'Use a point for the decimals: 0.5.'],
  ['0,0001', session, 'resolutionVolts: 0.0001', 'resolutionVolts: 0,0001', 'schema', '0,0001', /0,0001 is text/, 'Use a point for the decimals: 0.0001.'],
  ['a typographic minus', session, 'levelDbfs: 0', 'levelDbfs: −3', 'schema', '−3', /−3 is text/, 'Write the number with a plain sign: -3.'],
  ['a lost minus', session, 'levelDbfs: 0', 'levelDbfs: 3', 'schema', '3', /at most 0 dBFS, and this is 3/, 'Check the sign: is it -3?'],
  ['±0.1', session, 'toleranceVolts: 0.1', 'toleranceVolts: ±0.1', 'schema', '±0.1', /±0\.1 is text/, 'Write the number alone: 0.1.'],
  ['"14.4"', session, 'volts: 14.4', 'volts: "14.4"', 'schema', '"14.4"', /"14\.4" is text/, 'Take the quotes off: 14.4.'],
  ['14.4 V', session, 'volts: 14.4', 'volts: 14.4 V', 'schema', '14.4 V', /14\.4 V is text/, 'Write the number alone (14.4): the field is in volts, as its name says.'],
  ['14400 mV', session, 'volts: 14.4', 'volts: 14400 mV', 'schema', '14400 mV', /14400 mV is text/, 'Write 14.4: the field is in volts, and 14400 mV is 14.4 V.'],
  ['30 kHz', session, 'toHz: 30000', 'toHz: 30 kHz', 'schema', '30 kHz', /30 kHz is text/, 'Write 30000: the field is in hertz, and 30 kHz is 30000 Hz.'],
  ['14 dBV', session, 'volts: 14.4', 'volts: 14 dBV', 'schema', '14 dBV', /14 dBV is text/, /^Write the number alone, in volts: if “dBV” is another unit/],
  ['mV without a unit', session, 'volts: 14.4', 'volts: 14400', 'schema', '14400', /at most 18 V, and this is 14400/, /If it is in mV, write 14\.4/],
  ['kHz without a unit', session, 'toHz: 30000', 'toHz: 0.03', 'schema', '0.03', /at least 1 Hz/, /If it is in kHz, write 30:/],
  ['a slipped point', session, 'volts: 14.4', 'volts: 144', 'schema', '144', /at most 18 V/, /Perhaps 14\.4 is meant/],
  ['half a step', family, 'highestStep: 30', 'highestStep: 30.5', 'schema', '30.5', /a whole number, and this is 30\.5/, 'Write it without decimals.'],
  ['too many steps', family, 'highestStep: 30', 'highestStep: 300', 'schema', '300', /at most 200, and this is 300/, 'Check the number, figure by figure.'],
  ['a year of two figures', family, 'fromYear: 2015', 'fromYear: 15', 'schema', '15', /at least 1980/, 'Write all four figures of the year, such as 2015.'],
  ['"2015"', family, 'fromYear: 2015', 'fromYear: "2015"', 'schema', '"2015"', /"2015" is text/, 'Take the quotes off: 2015.'],
  ['12.05.2025', session, 'date: 2025-05-12', 'date: 12.05.2025', 'schema', '12.05.2025', /not a date as it is written here/, 'Write 2025-05-12, if the day stands first here.'],
  ['05/12/2025', session, 'date: 2025-05-12', 'date: 05/12/2025', 'schema', '05/12/2025', /not a date/, 'Write year-month-day, such as 2026-03-14.'],
  ['20250512', session, 'date: 2025-05-12', 'date: 20250512', 'schema', '20250512', /read as a number \(20250512\), not as a date/, 'Write 2025-05-12.'],
  ['2025-5-12', session, 'date: 2025-05-12', 'date: 2025-5-12', 'schema', '2025-5-12', /not a date/, 'Write 2025-05-12.'],
  ['2025-02-30', session, 'date: 2025-05-12', 'date: 2025-02-30', 'schema', '2025-02-30', /not a date/, /^There is no such day/],
  ['a date with a time', session, 'date: 2025-05-12', 'date: 2025-05-12T10:00:00', 'schema', '2025-05-12T', /not a date/, 'Write 2025-05-12.'],
  ['a year for a date', session, 'date: 2025-05-12', 'date: 2025', 'schema', '2025', /not as a date/, /^Write the whole date/],
  ['a field twice', profile, 'origin: factory', 'origin: factory\norigin: third-party', 'syntax', 'origin: third', '“origin” stands twice in the same block.', /^Keep one/],
  ['a field twice in braces', session, 'ohms: 4,', 'ohms: 4, ohms: 8,', 'syntax', 'ohms: 8', '“ohms” stands twice in the same block.', /^Keep one/],
  ['a tab', session, '  resolutionVolts', '\tresolutionVolts', 'syntax', '\t', /^A tab stands/, /two spaces/],
  ['a no-break space', profile, 'origin: factory', 'origin:\u00a0factory', 'syntax', '\u00a0', /^A special space/, /type a plain space/],
  ['a no-break space for indent', session, '  resolutionVolts', '\u00a0\u00a0resolutionVolts', 'syntax', '\u00a0', /^A special space/, /type a plain space/],
  ['an anchor', profile, 'origin: factory', 'origin: &o factory', 'syntax', '&o', /taken for a link/, /begins with &, put it in quotes/],
  ['an alias', profile, 'origin: factory', 'origin: *o', 'syntax', '*o', /taken for a link/, /begins with \*, put it in quotes/],
  ['a merge key', profile, 'origin: factory', '<<: *o\norigin: factory', 'syntax', '*o', /taken for a link/, /^Write the value out/],
  ['an alias bomb', profile, 'origin: factory', 'origin: factory\na: &a [x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: [*b,*b,*b,*b,*b,*b,*b]', 'syntax', '&a', /taken for a link/, /^Write the value out/],
  ['*emphasis*', profile, about, 'about: *Loud* profile', 'syntax', '*Loud*', /taken for a link/, /put it in quotes/],
  ['& alone', profile, about, 'about: & loud', 'syntax', '& loud', /taken for a link/, /^Put the whole value in quotes/],
  ['a tag', profile, 'origin: factory', 'origin: !x factory', 'syntax', '!x', /begins with ! is taken/, /^Take it out/],
  ['@', profile, about, 'about: @home', 'syntax', '@home', /the sign @ unless/, /in quotes/],
  ['a colon in text', profile, about, 'about: Loud: with bass boost.', 'syntax', 'Loud: with', /a second colon/, /^Put quotes around the whole value/],
  ['a space missing', profile, 'origin: factory', 'origin:factory', 'syntax', 'origin:f', 'A space is missing after the colon.', /^Write “origin: ”/],
  ['a colon missing', profile, 'origin: factory', 'origin factory', 'syntax', 'origin f', /^A colon is missing/, /^Add the colon/],
  ['a line indented too far', session, '  resolutionVolts', '   resolutionVolts', 'syntax', 'resolutionVolts', 'This line is indented further than its neighbours.', /^Line it up/],
  ['a bracket not closed', profile, sources, 'sources: [shed-session', 'syntax', '[', /opened here and never closed/, /^Close it/],
  ['a backslash in double quotes', family, "'^[A-Z]{2}-[0-9]{4}$'", '"^[A-Z]{2}-\\d{4}$"', 'syntax', '\\d', /and \\d is none/, /single quotes/],
  ['text after a quote', profile, about, 'about: "Loud", with bass', 'syntax', ', with', /the value before it has ended/, /^Look for a quote/],
  ['a list item behind a field', profile, sources, 'sources: - shed-session', 'syntax', '- shed', /^A list item cannot stand here/, /on a line of its own below/],
  ['two entries in a file', profile, 'origin: factory', '---\norigin: factory', 'syntax', '---', /^A second document/, /its own file/],
  ['front matter not closed', family, '---\n\n## How', '\n\n## How', 'syntax', '\u0000', /begins here and does not end/, /^Add a line ---/],
  ['an empty choice', profile, 'origin: factory', 'origin:', 'schema', '', '“origin” is empty.', 'It is one of: factory, dealer-update, third-party.'],
  ['an empty text', session, method, 'method:', 'schema', '', '“method” is empty.', /^Write text there/],
  ['an empty number', session, 'volts: 14.4', 'volts: ""', 'schema', '""', /and this is empty/, 'Fill it in.'],
  ['~', session, method, 'method: ~', 'schema', '~', '“method” is empty.', /^Write text there/],
  ['an empty list of sources', profile, sources, 'sources:', 'unsourced', '', 'This profile names no source.', /in square brackets/],
  ['a comment for a value', 'site.yaml', 'accent: "#5a3a8a"', 'accent: #5a3a8a', 'schema', '#5a', /what follows the sign # is a comment/, 'If it is the value, put it in quotes: "#5a3a8a".'],
  ['a list for a choice', profile, 'origin: factory', 'origin: [factory]', 'schema', '[factory]', '“origin” takes one value, and this is a list.', /: origin: factory$/],
  ['a list for text', profile, 'family: moorlight', 'family:\n  - moorlight', 'schema', '- moorlight', /takes one value/, /: family: moorlight$/],
  ['text for a list', profile, sources, 'sources: shed-session, maker-bulletin', 'schema', 'shed-session', /must be a list/, /: sources: \[shed-session, maker-bulletin\]$/],
  ['a hyphen without space', profile, sources, 'sources:\n  -shed-session', 'schema', '-shed', /must be a list/, 'Put a space after the hyphen: - shed-session'],
  ['a number for a block', session, '{ volts: 14.4, toleranceVolts: 0.1 }', '14.4', 'schema', '14.4', /must be a block/, /Its fields are: toleranceVolts, volts\.$/],
  ['a list for a block', session, '{ volts: 14.4, toleranceVolts: 0.1 }', '[14.4]', 'schema', '[14.4]', /must be a block/, /^Take out the hyphen/],
  ['a block for text', profile, about, 'about:\n  text: Loud', 'schema', 'text: Loud', /must be text, and this is a block/, /put it in quotes/],
  ['a field in another unit', session, '{ volts: 14.4,', '{ millivolts: 14400,', 'unknown-key', 'millivolts', '“millivolts” is not a field of “supply”.', 'Did you mean “volts”? Write 14.4: the field is in volts, and 14400 mV is 14.4 V.'],
  ['a capital in a field', profile, 'origin: factory', 'Origin: factory', 'unknown-key', 'Origin', /^“Origin” is not a field/, 'Did you mean “origin”?'],
  ['another word for a field', profile, 'origin: factory', 'from: factory', 'unknown-key', 'from', /^“from” is not a field/, 'Did you mean “origin”?'],
  ['a capital in a choice', profile, 'origin: factory', 'origin: Factory', 'schema', 'Factory', '“origin” cannot be "Factory".', /^Did you mean “factory”/],
  ['a code of one character', profile, 'code: "KM-4417"', 'code: "K"', 'schema', '"K"', /at least 2 characters/, 'Write all of it.'],
];

describe('each trap gives one finding, at its place, with what to write', () => {
  test.each(traps)('%s', async (_title, file, good, bad, rule, at, message, help) => {
    const files = editedExample([{ file, good, bad }]);
    const { findings } = await readBase(files);
    expect(findings.map((one) => `${one.rule} ${one.place.file}: ${one.message}`)).toHaveLength(1);
    const [finding] = findings;
    expect(finding?.rule).toBe(rule);
    expect(finding?.place.file).toBe(file);
    const text = await textOf(files, file);
    const edit = text.indexOf(bad);
    const offset = at === '\u0000' ? 0 : at === '' ? edit + bad.length : text.indexOf(at, edit);
    const before = text.slice(0, offset);
    expect(`${finding?.place.line}:${finding?.place.column}`).toBe(
      `${before.split('\n').length}:${offset - before.lastIndexOf('\n')}`,
    );
    if (typeof message === 'string') expect(finding?.message).toBe(message);
    else expect(finding?.message).toMatch(message);
    if (typeof help === 'string') expect(finding?.help).toBe(help);
    else expect(finding?.help).toMatch(help);
  });
});

describe('what is odd but says what it means gives no finding', () => {
  test.each([
    ['a date without quotes', session, 'date: 2025-05-12', 'date: "2025-05-12"'],
    ['exponents', session, 'volts: 14.4', 'volts: 1.44e1'],
    ['a plus sign', session, 'volts: 14.4', 'volts: +14.4'],
    ['a whole number with a nought behind the point', family, 'highestStep: 30', 'highestStep: 30.0'],
    [
      'a number that begins with nought point',
      session,
      'ofReadingPercent: 0.5, counts: 5',
      'ofReadingPercent: 0.50, counts: 5',
    ],
    ['a tab after a colon', profile, 'origin: factory', 'origin:\tfactory'],
    ['a comment', profile, 'origin: factory', 'origin: factory   # who put it there'],
    ['other quotes', profile, 'code: "KM-4417"', "code: 'KM-4417'"],
    [
      'a block of lines for braces',
      session,
      'load: { ohms: 4, tolerancePercent: 1 }',
      'load:\n  tolerancePercent: 1\n  ohms: 4',
    ],
    ['folded text', profile, about, 'about: >-\n  Loud: with\n  bass & *boost*.'],
  ])('%s', async (_title, file, good, bad) => {
    const { findings } = await readBase(editedExample([{ file, good, bad }]));
    expect(findings).toEqual([]);
  });
});

test('entries nested too deep are refused within two seconds of the processor', async () => {
  for (const text of [
    '['.repeat(100_000),
    '- '.repeat(50_000),
    'a: '.repeat(50_000),
    '{a: '.repeat(50_000),
  ]) {
    const start = process.cpuUsage();
    const { findings } = await readBase(editedExample([{ file: 'sources/deep.yaml', good: '', bad: text }]));
    expect(findings.map((one) => `${one.rule} ${one.place.file}`)).toEqual(['syntax sources/deep.yaml']);
    // Of the processor: what else runs on the machine does not count.
    const { user, system } = process.cpuUsage(start);
    expect((user + system) / 1000).toBeLessThan(2000);
  }
});
