/** The demo is clean; for each rule, an edit of one line makes it fail at that very place. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkContent } from '../../src/check/index.ts';
import { ContentCopy, placeOf } from '../content-copy.ts';

let copy: ContentCopy;
beforeAll(async () => {
  copy = await ContentCopy.make();
});
afterAll(() => copy.remove());

test('the demo is clean', async () => {
  const { findings } = await checkContent('content');
  expect(findings).toEqual([]);
});

interface Edit {
  readonly rule: string;
  readonly what: string;
  readonly file: string;
  readonly from: string;
  readonly to: string;
  /** The text in the edited file that the finding must point at; its first character is the place. */
  readonly at: string;
  readonly message: string | RegExp;
  readonly help: string | RegExp;
  /** Notes that come with it; 0 where absent. */
  readonly news?: number;
}

const profile = 'profiles/brasslight/8b0s-i5z.yaml';
const session = 'outputs/2024-02-north/session.yaml';
const sheet = 'outputs/2024-02-north/readings.csv';
const sheet11 = 'outputs/2024-11-north/readings.csv';
const sequence = 'sequences/brasslight-two-keys.yaml';
const statement = 'statements/riders-report-ordwick-clean-step.yaml';

const edits: readonly Edit[] = [
  {
    rule: 'schema',
    what: 'a code without quotes that YAML reads as a number',
    file: 'profiles/glasswick/0x5b0.yaml',
    from: 'code: "0x5B0"',
    to: 'code: 0x5B0',
    at: '0x5B0\n',
    message: '“code” is read as a number (1456), not as text.',
    help: 'Put it in quotes: "0x5B0".',
  },
  {
    rule: 'schema',
    what: 'a value outside its bounds',
    file: session,
    from: 'volts: 14.4',
    to: 'volts: 144',
    at: '144',
    message: '“supply”, “volts” must be at most 18 V, and this is 144.',
    help: 'Check the decimal point and the unit.',
  },
  {
    rule: 'schema',
    what: 'a number with its unit',
    file: session,
    from: 'ohms: 4',
    to: 'ohms: 4 Ω',
    at: '4 Ω',
    message: '“load”, “ohms” must be a number, and 4 Ω is text.',
    help: 'Write the number alone (4): the field is in ohms, as its name says.',
  },
  {
    rule: 'schema',
    what: 'a word that is none of the choices',
    file: profile,
    from: 'origin: factory',
    to: 'origin: factori',
    at: 'factori',
    message: '“origin” cannot be "factori".',
    help: 'Did you mean “factory”? It is one of: factory, dealer-update, third-party.',
  },
  {
    rule: 'schema',
    what: 'a missing field',
    file: profile,
    from: 'system: unamplified\n',
    to: '',
    at: 'family: brasslight',
    message: 'This profile lacks the field “system”.',
    help: 'Add a line “system: …” there.',
  },
  {
    rule: 'schema',
    what: 'an action that does not exist',
    file: sequence,
    from: 'kind: wait',
    to: 'kind: wayt',
    at: 'wayt',
    message: '“transitions”, item 4, “action”, “kind” cannot be "wayt".',
    help: /^Did you mean “wait”\?/,
  },
  {
    rule: 'unknown-key',
    what: 'a misspelt field inside a statement’s claim',
    file: statement,
    from: 'toleranceSteps: 1',
    to: 'toleranceStep: 1',
    at: 'toleranceStep',
    message: '“toleranceStep” is not a field of “claims”, item 1.',
    help: 'Did you mean “toleranceSteps”?',
  },
  {
    rule: 'unknown-key',
    what: 'a misspelt column',
    file: sheet,
    from: 'voltsRms',
    to: 'voltRms',
    at: 'voltRms',
    message: 'Column 5 is called “voltRms” where “voltsRms” is expected.',
    help: /^Did you mean “voltsRms”\?/,
  },
  {
    rule: 'dangling-link',
    what: 'a misspelt source',
    file: statement,
    from: 'source: riders-report-ordwick-2025',
    to: 'source: riders-report-ordwik-2025',
    at: 'riders-report-ordwik-2025',
    message: 'There is no source “riders-report-ordwik-2025”.',
    help: 'Did you mean “riders-report-ordwick-2025”?',
  },
  {
    rule: 'dangling-link',
    what: 'a reading of a profile that is not there',
    file: sheet,
    from: 'brasslight/8b0s-i5z,FL,24,1000,7.5905,0.142,1',
    to: 'brasslight/8b0s-i5x,FL,24,1000,7.5905,0.142,1',
    at: 'brasslight/8b0s-i5x',
    message: 'There is no profile “brasslight/8b0s-i5x”.',
    help: /^Did you mean “brasslight\/8b0s-/,
  },
  {
    rule: 'duplicate-code',
    what: 'two profiles with one code, spelt differently',
    file: 'profiles/brasslight/g60d-2zs.yaml',
    from: 'code: "G60D-2ZS"',
    to: 'code: "5s1i b80"',
    at: '"5s1i b80"',
    message: 'The code “5s1i b80” is already that of the profile “brasslight/5s1i-b80” (“5S1I-B80”).',
    help: 'Correct the code here or there; if they are one profile, keep one file.',
  },
  {
    rule: 'unsourced',
    what: 'a session without a source',
    file: session,
    from: 'source: bench-2024-02-north\n',
    to: '',
    at: 'date: 2024-02-13',
    message: 'This bench session names no source.',
    help: 'Add a line “source:” with the id of an entry in sources/.',
  },
  {
    rule: 'unsourced',
    what: 'a statement without a source',
    file: statement,
    from: 'source: riders-report-ordwick-2025\n',
    to: '',
    at: 'quote:',
    message: 'This statement names no source.',
    help: 'Add a line “source:” with the id of an entry in sources/.',
  },
  {
    rule: 'unsourced',
    what: 'readings that cite a bulletin',
    file: session,
    from: 'source: bench-2024-02-north',
    to: 'source: kestrane-bulletin-14-07',
    at: 'kestrane-bulletin-14-07',
    message:
      'These readings cite “kestrane-bulletin-14-07”, which is a service bulletin, not a bench session.',
    help: /^Name the source entry of this bench session/,
  },
  {
    rule: 'stated-versus-computed',
    what: 'a statement the readings contradict',
    file: statement,
    from: 'valueStep: 24',
    to: 'valueStep: 28',
    at: '28',
    message:
      'The statement says highest clean step 28; the readings of “brasslight/8b0s-i5z” come to step\u00a024 ±\u00a01.',
    help: /^If the number was copied wrongly, correct it/,
  },
  {
    rule: 'sessions-disagree',
    what: 'a reading with two digits swapped',
    file: sheet,
    from: 'brasslight/8b0s-i5z,FL,16,1000,1.6400,0.144,1',
    to: 'brasslight/8b0s-i5z,FL,16,1000,1.4600,0.144,1',
    at: '1.4600',
    message:
      /^“brasslight\/8b0s-i5z”, FL, step 16, 1\u00a0kHz: 1\.46\d*\u00a0V ±\u00a0.* here, 1\.6\d*\u00a0V ±\u00a0.* in 202/,
    help: /^Compare both sheets with their originals/,
  },
  {
    rule: 'sessions-disagree',
    what: 'one of three sessions that the other two outvote',
    file: sheet11,
    from: 'glasswick/0x5b0,FL,21,1000,0.5017,0.065,1',
    to: 'glasswick/0x5b0,FL,21,1000,0.5917,0.065,1',
    at: '0.5917',
    message: /^“glasswick\/0x5b0”, FL, step 21, 1\u00a0kHz: 0\.59\d*\u00a0V ±\u00a0.* here, 0\.\d*\u00a0V/,
    help: /^2025-03-van and 2026-09-quay agree with each other\. Compare both sheets/,
  },
  {
    rule: 'impossible-reading',
    what: 'more volts than the supply gives',
    file: sheet,
    from: 'brasslight/8b0s-i5z,FL,23,1000,6.3088,0.142,1',
    to: 'brasslight/8b0s-i5z,FL,23,1000,16.3088,0.142,1',
    at: '16.3088',
    message:
      '16.31 V is more than this output can give: a clean sine is at most the supply over √2, 10.52 V.',
    help: /^Look for a slipped decimal point/,
  },
  {
    rule: 'impossible-reading',
    what: 'distortion below what the analyser can tell',
    file: sheet,
    from: 'brasslight/8b0s-i5z,FL,23,1000,6.3088,0.142,1',
    to: 'brasslight/8b0s-i5z,FL,23,1000,6.3088,0.0042,1',
    at: '0.0042',
    message: 'THD of 0.0042 % is below what the analyser can tell, 0.02 %.',
    help: /^Look for a ratio written for per cent/,
  },
  {
    rule: 'no-way-to-code',
    what: 'the last state shows nothing',
    file: sequence,
    from: 'shows: active-code',
    to: 'shows: nothing',
    at: 'The lower line, from its left edge',
    message: 'The state “active” says where the active code stands but does not show it.',
    help: 'Give both “shows: active-code” and “activeCodeAt: …”, or neither.',
  },
  {
    rule: 'no-way-to-code',
    what: 'a step that leads astray',
    file: sequence,
    from: 'from: dark\n    to: prompt',
    to: 'from: dark\n    to: dark',
    at: 'dark\nstates:',
    message: /^The steps from “dark” never come to a state that shows the active code/,
    help: /^Add the missing step/,
  },
  {
    rule: 'unknown-control',
    what: 'a control the face does not have',
    file: sequence,
    from: 'control: menu',
    to: 'control: menue',
    at: 'menue',
    message: 'The face of “Brasslight” has no control “menue”.',
    help: 'Did you mean “menu”?',
  },
  {
    rule: 'repeated-row',
    what: 'a row with the step of its neighbour',
    file: sheet,
    from: 'brasslight/8b0s-i5z,FL,23,1000,6.3088,0.142,1',
    to: 'brasslight/8b0s-i5z,FL,22,1000,6.3088,0.142,1',
    at: '1\nbrasslight/8b0s-i5z,FL,24,1000,7.5905',
    message:
      'A second row for brasslight/8b0s-i5z, FL, step 22, 1\u00a0kHz, repeat 1: 6.3088 V here, 5.2361 V before.',
    help: /^If it is another repeat, count it on/,
  },
  {
    rule: 'same-output',
    what: 'a profile said to be the same as one it is not',
    file: 'profiles/brasslight/i1l0-s5g.yaml',
    from: 'sameAs: brasslight/8b0s-i5z',
    to: 'sameAs: brasslight/g60d-2zs',
    at: 'brasslight/g60d-2zs',
    message:
      /^“brasslight\/i1l0-s5g” does not put out the same as “brasslight\/g60d-2zs”: they differ most in /,
    help: /^Correct or take out sameAs/,
    news: 1,
  },
  {
    rule: 'syntax',
    what: 'a quote that is not closed',
    file: profile,
    from: 'hint: "First after the hyphen: a letter I with bars, not a figure one."',
    to: 'hint: "First after the hyphen: a letter I with bars, not a figure one.',
    at: '"First after the hyphen',
    message: 'A quote or bracket is opened here and never closed.',
    help: 'Close it at the end of the value.',
  },
  {
    rule: 'syntax',
    what: 'a decimal comma in a sheet',
    file: sheet,
    from: 'brasslight/8b0s-i5z,FL,23,1000,6.3088,0.142,1',
    to: 'brasslight/8b0s-i5z,FL,23,1000,6,3088,0.142,1',
    at: 'brasslight/8b0s-i5z,FL,23,1000,6,3088',
    message: 'This row has 8 cells; the header has 7.',
    help: 'Look for a decimal comma: numbers are written with a point.',
  },
];

describe('an edit of one line', () => {
  test.each(edits)('$rule: $what', async (edit) => {
    const undo = await copy.edit(edit.file, edit.from, edit.to);
    try {
      const all = (await checkContent(copy.folder)).findings;
      const findings = all.filter((one) => one.severity !== 'note');
      expect(all.length - findings.length).toBe(edit.news ?? 0);
      const [first] = findings;
      const expected = placeOf(await copy.read(edit.file), edit.at);
      expect(
        findings.map(
          ({ rule, place, message }) => `${rule} ${place.file}:${place.line}:${place.column} ${message}`,
        ),
      ).toHaveLength(1);
      expect(first?.rule).toBe(edit.rule);
      expect(`${first?.place.file}:${first?.place.line}:${first?.place.column}`).toBe(
        `${edit.file}:${expected.line}:${expected.column}`,
      );
      expect(first?.message).toMatch(edit.message);
      expect(first?.help).toMatch(edit.help);
    } finally {
      await undo();
    }
  });
});

test('twins that no entry declares are news, and do not fail the check', async () => {
  const undo = await copy.edit('profiles/brasslight/i1l0-s5g.yaml', 'sameAs: brasslight/8b0s-i5z\n', '');
  try {
    const { findings } = await checkContent(copy.folder);
    expect(findings.map(({ rule, severity, message }) => `${severity} ${rule}: ${message}`)).toEqual([
      'note same-output: “brasslight/i1l0-s5g” puts out the same as “brasslight/8b0s-i5z”, within the uncertainty of their readings.',
    ]);
  } finally {
    await undo();
  }
});

test('readings set aside with a reason contradict nothing; without one they still do', async () => {
  const undoReading = await copy.edit(
    sheet,
    'brasslight/8b0s-i5z,FL,16,1000,1.6400,0.144,1',
    'brasslight/8b0s-i5z,FL,16,1000,1.4600,0.144,1',
  );
  const aside = (entry: string) => copy.edit(session, 'method: >-', `setAside:\n  - ${entry}\nmethod: >-`);
  try {
    const undoAside = await aside(
      '{ profiles: [brasslight/8b0s-i5z], reason: The lead was loose., by: Bench lead, date: 2026-10-01 }',
    );
    expect((await checkContent(copy.folder)).findings).toEqual([]);
    await undoAside();
    const undoNameless = await aside('{ profiles: [brasslight/8b0s-i5z], by: Bench lead, date: 2026-10-01 }');
    expect((await checkContent(copy.folder)).findings[0]?.message).toBe(
      '“setAside”, item 1 lacks the field “reason”.',
    );
    await undoNameless();
    expect((await checkContent(copy.folder)).findings.map((one) => one.rule)).toEqual(['sessions-disagree']);
  } finally {
    await undoReading();
  }
});
