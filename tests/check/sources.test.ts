import { describe, expect, test } from 'vitest';
import { add, edit, told } from './told.ts';

const loft = 'outputs/2026-02-loft/session.yaml';
const bench = (date: string) =>
  `kind: bench-session\ntitle: A session\ndate: ${date}\nkeptAt: Bench book\ntrust: high\ntrustReason: Our own.\n`;

describe('a session and its source', () => {
  test('may be written up within a month, not before the readings nor long after', async () => {
    const dated = (date: string) =>
      told(edit('sources/loft-session.yaml', 'date: 2026-02-03', `date: ${date}`));
    expect(await dated('2026-02-04')).toEqual([]);
    expect(await dated('2026-03-06')).toEqual([]);
    expect(await dated('2026-03-07')).toEqual([
      'source-too-old sources/loft-session.yaml: The source “loft-session” is dated 2026-03-07, 32 days after the readings of “2026-02-loft” were taken (2026-02-03).',
    ]);
    expect(await dated('2026-02-02')).toEqual([
      'source-too-old outputs/2026-02-loft/session.yaml: The readings of “2026-02-loft” were taken on 2026-02-03, after their source “loft-session” was made (2026-02-02).',
    ]);
  });

  test('the date that does not go with the name of the folder is the one pointed at', async () => {
    const [finding] = await told(edit(loft, 'date: 2026-02-03', 'date: 2027-02-03'));
    expect(finding).toMatch(/^source-too-old outputs\/2026-02-loft\/session.yaml: /);
    const [other] = await told(edit('sources/loft-session.yaml', 'date: 2026-02-03', 'date: 2027-02-03'));
    expect(other).toMatch(/^source-too-old sources\/loft-session.yaml: /);
  });

  test('two sessions may cite one source', async () => {
    const twoDays = [
      edit(loft, 'source: loft-session\ndate: 2026-02-03', 'source: shed-session\ndate: 2025-05-11'),
      add('sources/unused.yaml', bench('2020-01-01')),
    ];
    expect((await told(...twoDays)).filter((finding) => !finding.startsWith('orphaned-entry'))).toEqual([]);
  });

  test('readings are not set aside before they are taken', async () => {
    const aside = (date: string) =>
      told(
        edit(
          loft,
          'method: Voltmeter',
          `setAside:\n  - { reason: Loose lead., by: Bench lead, date: ${date} }\nmethod: Voltmeter`,
        ),
      );
    expect(await aside('2026-02-03')).toEqual([]);
    expect(await aside('2026-02-02')).toEqual([
      `source-too-old ${loft}: These readings were set aside on 2026-02-02, before they were taken (2026-02-03).`,
    ]);
  });
});

describe('what is cited for a unit', () => {
  const firstYear = (year: number) =>
    edit('families/fellside.md', 'fromYear: 2010, toYear: 2014', `fromYear: ${year}, toYear: 2030`);

  // The bulletin is of April 2023: the model year 2024 is built from 2023 on (common practice, no source).
  test('may be from the year before its first model year, not from earlier', async () => {
    const tooOld = (findings: readonly string[]) =>
      findings.filter((one) => one.startsWith('source-too-old'));
    expect(tooOld(await told(firstYear(2024)))).toEqual([]);
    expect(tooOld(await told(firstYear(2025)))).toEqual([
      'source-too-old families/fellside.md: All that is cited for the Fellside, first of model year 2025, was made before there was one; the newest is of 2023-04-18.',
    ]);
  });

  test('a younger source for the family leaves the profile and the statement to be named', async () => {
    const findings = await told(
      firstYear(2025),
      edit('families/fellside.md', 'sources: [maker-bulletin]', 'sources: [rider-letter]'),
      add(
        'statements/bulletin-fellside.yaml',
        'source: maker-bulletin\nquote: Profile 310 gives 2 V.\nclaims:\n  - { profile: fellside/310, trait: clean-volts, valueVolts: 2 }\n',
      ),
    );
    expect(findings.filter((one) => one.startsWith('source-too-old'))).toEqual([
      'source-too-old profiles/fellside/310.yaml: All sources of this profile were made before there was the Fellside, first of model year 2025.',
      'source-too-old statements/bulletin-fellside.yaml: “maker-bulletin” is of 2023-04-18; it cannot tell of the Fellside, first of model year 2025.',
    ]);
  });

  test('a published standard is not asked for its date', async () => {
    const findings = await told(
      firstYear(2025),
      edit('sources/maker-bulletin.yaml', 'kind: service-bulletin', 'kind: published-standard'),
    );
    expect(findings.filter((one) => one.startsWith('source-too-old'))).toEqual([]);
  });
});

describe('where a chain ends', () => {
  test('high trust needs more than riders’ reports at its ends', async () => {
    const trusted = edit('sources/rider-letter.yaml', 'trust: low', 'trust: high');
    expect(await told(trusted)).toEqual([]);
    const hearsay = edit('sources/maker-bulletin.yaml', 'kind: service-bulletin', 'kind: riders-report');
    expect(await told(trusted, hearsay)).toEqual([
      'source-chain sources/rider-letter.yaml: This source is trusted highly, but all it comes from are riders’ reports: “maker-bulletin”.',
    ]);
    expect(await told(hearsay)).toEqual([]);
  });

  test('a bench session that nothing cites is an orphan, not a broken chain', async () => {
    expect(await told(add('sources/attic-session.yaml', bench('2024-03-01')))).toEqual([
      'orphaned-entry sources/attic-session.yaml: No entry cites the source “attic-session”.',
    ]);
  });

  test('a session that cites another day’s source is named once', async () => {
    const findings = await told(edit(loft, 'source: loft-session', 'source: shed-session'));
    expect(findings.filter((finding) => !finding.startsWith('orphaned-entry'))).toEqual([
      `unsourced ${loft}: These readings of 2026-02-03 cite “shed-session”, which is of 2025-05-12; the source of that day, “loft-session”, is cited by no session.`,
    ]);
  });
});

describe('an empty or missing source', () => {
  const files = [
    ['families/fellside.md', 'sources: [maker-bulletin]'],
    ['profiles/fellside/310.yaml', 'sources: [maker-bulletin]'],
    ['sequences/fellside-touch.yaml', 'sources: [maker-bulletin]'],
    ['plans/two-channel.yaml', 'sources: [maker-bulletin]'],
    ['guides/reading-a-code.md', 'sources: [maker-bulletin]'],
    ['statements/letter-rear.yaml', 'source: rider-letter\n'],
    [loft, 'source: loft-session\n'],
  ] as const;

  test.each(files)('in %s', async (file, good) => {
    const gone = await told(edit(file, good, ''));
    expect(gone[0]).toMatch(new RegExp(`^unsourced ${file}: .* names no source\\.$`));
    if (!good.startsWith('sources')) return;
    const empty = await told(edit(file, good, 'sources: []'));
    expect(empty[0]).toMatch(new RegExp(`^unsourced ${file}: “sources” needs at least 1 of these\\.$`));
  });

  test('a sheet that could not be read in full is not said to lack readings', async () => {
    const findings = await told(
      edit(loft, 'source: loft-session', 'source: loft-sesion'),
      edit(
        'profiles/fellside/310.yaml',
        'sources: [maker-bulletin]',
        'sources: [maker-bulletin, shed-session]',
      ),
    );
    expect(findings).toEqual([`dangling-link ${loft}: There is no source “loft-sesion”.`]);
  });
});

describe('a claim with one source', () => {
  const claim = (source: string) =>
    add(
      `statements/${source}-fellside.yaml`,
      `source: ${source}\nquote: Profile 310 gives 2 V.\nclaims:\n  - { profile: fellside/310, trait: clean-volts, valueVolts: 2 }\n  - { profile: fellside/310, trait: bass-boost, valueDb: 3 }\n`,
    );

  test('is told once for a profile, with all that is claimed', async () => {
    expect(await told(claim('maker-bulletin'))).toEqual([
      'single-source statements/maker-bulletin-fellside.yaml: Only “maker-bulletin” says this of “fellside/310” (clean volts, bass boost), and no bench session measured it.',
    ]);
  });

  test('is borne out by a second source, unless that one was taken from the first', async () => {
    const both = [claim('maker-bulletin'), claim('rider-letter')];
    expect(await told(...both)).toHaveLength(2);
    expect(await told(...both, edit('sources/rider-letter.yaml', 'restsOn: [maker-bulletin]\n', ''))).toEqual(
      [],
    );
  });
});
