/** The finding for an answer that changed without a new source: what is one, what is none, and where it stands. */
import { expect, test } from 'vitest';
import { checkContent } from '../../src/check/index.ts';
import { editedExample, exampleFiles, type TextEdit } from '../check/example-base.ts';
import { withVolts } from './edited.ts';

const earlier = { checked: await checkContent(editedExample([])), renames: [] };
const table = 'tables/behind-an-amplifier.yaml';
const sheet = 'outputs/2025-05-shed/readings.csv';
const raised: TextEdit = { file: table, good: '"< 1"', bad: '"< 4"' };
const plan: TextEdit = { file: 'plans/two-channel.yaml', good: 'leastVolts: 1,', bad: 'leastVolts: 4,' };
const quieter: TextEdit = {
  file: sheet,
  good: exampleFiles.get(sheet) ?? '',
  bad: withVolts(
    ([id]) => id === 'moorlight/kn-2093',
    (volts) => volts * 0.4,
  )(exampleFiles.get(sheet) ?? ''),
};

async function found(...edits: TextEdit[]): Promise<string[]> {
  const { findings } = await checkContent(editedExample(edits), { earlier, today: '2026-11-01' });
  return findings.flatMap(({ rule, place, message }) =>
    rule === 'flip-without-source' ? [`${place.file}:${place.line}:${place.column} ${message}`] : [],
  );
}

test('each edit that flips answers is one finding, at what was changed', async () => {
  expect(await found(raised)).toEqual([
    `${table}:26:26 This changes an answer without a new source: “behind-an-amplifier” decided “moorlight/kn-2093” by “plain”, and does by “too-quiet” now.`,
  ]);
  expect(await found(plan)).toEqual([
    'plans/two-channel.yaml:5:22 This changes an answer without a new source: for the plan “two-channel”, “moorlight/kn-2093” goes from keep to reflash.',
  ]);
  const [ofSheet, ...more] = await found(quieter);
  expect(more).toEqual([]);
  const line =
    (exampleFiles.get(sheet) ?? '').split('\n').findIndex((row) => row.startsWith('moorlight/kn-2093')) + 1;
  expect(ofSheet).toContain(`${sheet}:${line}:`);
  expect(ofSheet).toContain(
    'for the plan “two-channel”, “moorlight/kn-2093” goes from keep to reflash, and ',
  );
  expect(await found(raised, plan)).toHaveLength(2);
});

test('without an earlier state nothing is told', async () => {
  const { findings } = await checkContent(editedExample([raised, plan]));
  expect(findings.filter(({ rule }) => rule === 'flip-without-source')).toEqual([]);
});

test('a source that was not cited before, a source edited with it, or further readings speak for it', async () => {
  expect(
    await found(raised, { file: table, good: '[maker-bulletin]', bad: '[maker-bulletin, rider-letter]' }),
  ).toEqual([]);
  // The source of the rule itself will do; that of another rule will not.
  const cite = (say: string): TextEdit => ({
    file: table,
    good: say,
    bad: `${say}\n    sources: [rider-letter]`,
  });
  expect(await found(raised, cite('say: No amplifier of this class can work with so little.'))).toEqual([]);
  expect(await found(raised, cite('say: Take the boost out with the equaliser.'))).toHaveLength(1);
  const bulletin: TextEdit = {
    file: 'sources/maker-bulletin.yaml',
    good: 'keptAt: Binder, tab 7',
    bad: 'keptAt: Binder, tab 7, second edition',
  };
  expect(await found(raised, bulletin)).toEqual([]);
  expect(await found(quieter, bulletin)).toHaveLength(1);
});

test('a new session speaks for what its readings change; so do rows that are added, not rows that are changed', async () => {
  const session = exampleFiles.get('outputs/2026-02-loft/session.yaml') ?? '';
  const [header = '', ...rows] = (exampleFiles.get(sheet) ?? '').split('\n');
  const ofProfile = rows.filter((row) => row.startsWith('moorlight/kn-2093'));
  const again = withVolts(
    () => true,
    (volts) => volts * 0.4,
  )(ofProfile.join('\n'));
  const added = await found(
    { file: 'outputs/2026-03-loft/session.yaml', good: '', bad: session.replace('2026-02-03', '2026-03-01') },
    { file: 'outputs/2026-03-loft/readings.csv', good: '', bad: `${header}\n${again}\n` },
  );
  expect(added).toEqual([]);
  const rear = (row: string): boolean => /^moorlight\/kn-2093,R/.test(row);
  const before = await checkContent(
    editedExample([
      {
        file: sheet,
        good: exampleFiles.get(sheet) ?? '',
        bad: [header, ...rows.filter((row) => !rear(row))].join('\n'),
      },
    ]),
  );
  const whole = await checkContent(editedExample([]), { earlier: { checked: before, renames: [] } });
  expect(whole.findings).toEqual([]);
});

test('wording raises none, whatever it is about', async () => {
  const wording: TextEdit[] = [
    { file: table, good: 'label: Clean volts', bad: 'label: Volts' },
    { file: table, good: 'say: Take the boost out with the equaliser.', bad: 'say: Turn it down.' },
    { file: 'plans/two-channel.yaml', good: 'summary: A small amplifier', bad: 'summary: A tiny amplifier' },
    { file: 'profiles/moorlight/kn-2093.yaml', good: 'about: Quiet and flat', bad: 'about: Flat and quiet' },
    { file: 'equipment/four-channels.yaml', good: 'name: Four channels', bad: 'name: Four' },
    {
      file: 'outputs/2025-05-shed/session.yaml',
      good: 'method: Voltmeter across',
      bad: 'method: A voltmeter across',
    },
    { file: sheet, good: 'moorlight/kn-2093,FL,1,1000,', bad: 'moorlight/kn-2093,FL,1,1000.0,' },
  ];
  for (const one of wording) expect(await found(one), JSON.stringify(one)).toEqual([]);
  expect(await found(...wording)).toEqual([]);
});

test('an exception sets it aside, and is not taken for idle once the change is in', async () => {
  const exception: TextEdit = {
    file: 'exceptions/raised.yaml',
    good: '',
    bad: `rule: flip-without-source\nfile: ${table}\nabout: too-quiet\nreason: A slip of the pen put right.\nby: Bench lead\nuntil: 2026-12-31\n`,
  };
  const about = { ...exception, bad: exception.bad.replace('about: too-quiet', 'about: clean-volts') };
  const checked = await checkContent(editedExample([raised, about]), { earlier, today: '2026-11-01' });
  expect(checked.findings).toEqual([]);
  expect(checked.setAside).toHaveLength(1);
  const later = await checkContent(editedExample([raised, about]), { today: '2026-11-02' });
  expect(later.findings).toEqual([]);
  const expired = await checkContent(editedExample([raised, about]), { today: '2027-01-01' });
  expect(expired.findings.map(({ rule }) => rule)).toEqual(['expired-exception']);
  // One about another text sets nothing aside.
  expect(await found(raised, exception)).toHaveLength(1);
});
