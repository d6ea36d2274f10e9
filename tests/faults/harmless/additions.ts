/** New entries and new facts, well sourced and true. */
import type { Claim } from '../../../schemas/index.ts';
import { benchSourceId } from '../../../src/base/index.ts';
import { benchSourceText, readingsText, sessionText } from '../../../src/demo/entries.ts';
import { sheetOf } from '../../../src/demo/sheet.ts';
import { type DemoSession, sessions } from '../../../src/demo/world/index.ts';
import type { Demo, Edit } from '../demo.ts';
import type { Dice } from '../dice.ts';
import type { HarmlessEdit, HarmlessKind } from '../harmless.ts';

/** A session of the demo held again on a later day: the same model, other errors of the same instruments. */
function laterSession(dice: Dice, profiles: (session: DemoSession) => readonly string[]): DemoSession {
  const session = dice.pick(sessions);
  const month = 10 + dice.below(3);
  const day = 10 + dice.below(19);
  const date = `2026-${month}-${day}`;
  return { ...session, id: `${date}-${session.bench}`, date, profiles: profiles(session) };
}

function sessionEdits(session: DemoSession, readings = sheetOf(session)): Edit[] {
  return [
    { file: `outputs/${session.id}/session.yaml`, content: sessionText(session) },
    { file: `outputs/${session.id}/readings.csv`, content: readingsText(session, readings) },
    { file: `sources/${benchSourceId(session.id)}.yaml`, content: benchSourceText(session) },
  ];
}

/** A code of a family, of characters that no screen and no eye confuses. */
function newCode(dice: Dice, family: string): string {
  const some = (count: number, from: string): string =>
    Array.from({ length: count }, () => dice.pick([...from])).join('');
  const clear = '347ACFHJKLMNPRTUVWXY';
  if (family === 'brasslight') return `${some(4, clear)}-${some(3, clear)}`;
  if (family === 'dialstone') return `${some(1, '347')}.${some(2, '347')}`;
  if (family === 'glasswick') return `0x${some(3, '347ACF')}`;
  if (family === 'lanternby') return some(6, clear);
  return `${some(2, 'HKMRTX')}${some(3, '347')}-${some(2, clear)}.${dice.pick(['30', '40', '70'])}`;
}

/** A claim that the readings bear out. */
function trueClaim(dice: Dice, demo: Demo): Claim {
  const claims = [...demo.answers.outputs.values()].flatMap(
    ({ profile, characteristics, mutedChannels }): Claim[] => {
      const exact = (name: string) =>
        characteristics.find((one) => one.name === name && one.bound === 'exact');
      const volts = exact('clean-volts');
      const step = exact('highest-clean-step');
      const rear = exact('rear-to-front');
      return [
        ...(volts
          ? [{ profile, trait: 'clean-volts', valueVolts: Number(volts.value.toFixed(1)) } as const]
          : []),
        ...(step ? [{ profile, trait: 'highest-clean-step', valueStep: step.value } as const] : []),
        ...(rear
          ? [{ profile, trait: 'rear-to-front', valueDb: Math.round(rear.value), toleranceDb: 1 } as const]
          : []),
        { profile, trait: 'muted', channel: 'RL', value: mutedChannels.includes('RL') } as const,
      ];
    },
  );
  return dice.pick(claims);
}

/** A line put before the one that matches. */
function before(demo: Demo, file: string, line: RegExp, text: string, what: string): HarmlessEdit {
  const at = demo.lineOf(file, line);
  return {
    what: `${file}: ${what}`,
    edits: [demo.withLine(file, at, `${text}\n${demo.lines(file)[at - 1]}`)],
  };
}

const plainSentences = [
  'Take your time.',
  'Two people see more than one.',
  'The three of them look alike from the seat.',
  'Step 24 is a good place to begin.',
  'We have had this 12 times since 2019, at 3 shops.',
  'Nothing here needs a tool.',
  'See also the page of your family.',
];

export const additionKinds: readonly HarmlessKind[] = [
  {
    name: 'a new session of the same benches',
    make: (dice) => {
      const session = laterSession(dice, ({ profiles }) => dice.shuffled(profiles).slice(0, 2));
      return { what: `${session.id}: ${session.profiles.join(', ')}`, edits: sessionEdits(session) };
    },
  },
  {
    name: 'a new session, cited by what it measured',
    make: (dice, demo) => {
      const session = laterSession(dice, ({ profiles }) => dice.shuffled(profiles).slice(0, 1));
      const [profile = ''] = session.profiles;
      const cited = before(
        demo,
        `profiles/${profile}.yaml`,
        /^ {2}- bench-/,
        `  - ${benchSourceId(session.id)}`,
        '',
      );
      return { what: `${session.id}: ${profile}`, edits: [...sessionEdits(session), ...cited.edits] };
    },
  },
  {
    name: 'a new profile with readings of its own',
    make: (dice) => {
      const session = laterSession(dice, ({ profiles }) => dice.shuffled(profiles).slice(0, 1));
      const [like = ''] = session.profiles;
      const family = like.split('/')[0] ?? '';
      const code = newCode(dice, family);
      const id = `${family}/${code.toLowerCase().replaceAll('.', '-')}`;
      const readings = sheetOf(session).map((reading) => ({ ...reading, profile: id }));
      const text = [
        `family: ${family}`,
        `code: "${code}"`,
        'origin: third-party',
        'system: unamplified',
        'soldAs: [Marrow Lane Open]',
        ...(dice.chance() ? [`sameAs: ${like}`] : []),
        'about: Sold as a tuning of its own.',
        `sources: [${benchSourceId(session.id)}, telephone-notes-2026]`,
        '',
      ].join('\n');
      return {
        what: `${id}, electrically ${like}, measured in ${session.id}`,
        edits: [...sessionEdits(session, readings), { file: `profiles/${id}.yaml`, content: text }],
      };
    },
  },
  {
    name: 'a new source and a statement the readings bear out',
    make: (dice, demo) => {
      const claim = trueClaim(dice, demo);
      const number = 100 + dice.below(900);
      const source = `letter-${number}`;
      const fields = Object.entries(claim).map(([key, value]) => `${key}: ${value}`);
      return {
        what: `${source}: ${fields.join(', ')}`,
        edits: [
          {
            file: `sources/${source}.yaml`,
            content: `kind: riders-report\ntitle: Letter of a rider, number ${number}\ndate: 2026-08-0${1 + dice.below(9)}\nkeptAt: Letter folder 2026\ntrust: low\ntrustReason: One rider, by ear.\n`,
          },
          {
            file: `statements/letter-${number}.yaml`,
            content: `source: ${source}\nquote: As the rider wrote.\nclaims:\n  - ${fields.join('\n    ')}\n`,
          },
        ],
      };
    },
  },
  {
    name: 'one more claim in a statement',
    make: (dice, demo) => {
      const claim = trueClaim(dice, demo);
      const file = dice.pick(demo.list(/^statements\/(telephone|riders)/));
      const fields = Object.entries(claim).map(([key, value]) => `${key}: ${value}`);
      return {
        what: `${file}: ${fields.join(', ')}`,
        edits: [{ file, content: `${demo.text(file)}  - ${fields.join('\n    ')}\n` }],
      };
    },
  },
  {
    name: 'another spelling of a code',
    make: (dice, demo) => {
      const { file, match } = dice.pick(
        demo
          .linesWhere(/^profiles\//, /^code: "(.*)"$/)
          .filter((one) => !demo.text(one.file).includes('otherSpellings')),
      );
      const code = match[1] ?? '';
      const spelling = dice.pick([code.toLowerCase(), code.replaceAll(/[-.]/g, ' '), `${code} `]);
      return before(demo, file, /^origin:/, `otherSpellings: ["${spelling}"]`, `also written “${spelling}”`);
    },
  },
  {
    name: 'another name a profile is sold under',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^profiles\//).filter((one) => !demo.text(one).includes('soldAs')));
      return before(demo, file, /^about:/, 'soldAs: [Marrow Lane Wide, "Stage 3: open"]', 'two names');
    },
  },
  {
    name: 'a hint between two codes',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^profiles\//).filter((one) => !demo.text(one).includes('tellApart')));
      const own = file.slice('profiles/'.length, -'.yaml'.length);
      const others = (demo.answers.base.profilesOfFamily.get(own.split('/')[0] ?? '') ?? []).filter(
        ({ id }) => id !== own,
      );
      const hint = `tellApart:\n  - from: ${dice.pick(others).id}\n    hint: Look at the last character again.`;
      return before(demo, file, /^about:/, hint, 'a hint');
    },
  },
  {
    name: 'one more source of a profile',
    make: (dice, demo) => {
      const file = dice.pick(
        demo.list(/^profiles\//).filter((one) => !demo.text(one).includes('telephone-notes')),
      );
      return {
        what: `${file}: telephone notes`,
        edits: [{ file, content: `${demo.text(file)}  - telephone-notes-2026\n` }],
      };
    },
  },
  {
    name: 'a source that rests on an older one',
    make: (dice, demo) => {
      const file = dice.pick([
        'sources/telephone-notes-2026.yaml',
        'sources/riders-report-ordwick-2025.yaml',
        'sources/equipment-classes.yaml',
      ]);
      const on = dice.pick([
        'kestrane-bulletin-14-07',
        'kestrane-unit-data-sheet',
        'kestrane-bulletin-22-03',
      ]);
      return {
        what: `${file} rests on ${on}`,
        edits: [{ file, content: `${demo.text(file)}restsOn: [${on}]\n` }],
      };
    },
  },
  {
    name: 'another name of a family',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^families\//));
      return before(demo, file, /^maker:/, '  - The one from the brochure', 'another name');
    },
  },
  {
    name: 'one more thing to know a family by',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^families\//));
      return before(
        demo,
        file,
        /^face:/,
        '  - feature: A narrow groove runs round the whole face.',
        'a feature',
      );
    },
  },
  {
    name: 'another model line',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^families\//));
      return before(
        demo,
        file,
        /^identify:/,
        '  - { model: Harrowgate, fromYear: 2019, toYear: 2021 }',
        'fitted to Harrowgate',
      );
    },
  },
  {
    name: 'one more recovery in a sequence',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^sequences\//, /^ {4}recovery:$/));
      const more =
        '      - seen: Nothing at all.\n        advice: Turn the ignition off and begin again.\n        goTo: dark';
      return {
        what: `${file}:${line} one more recovery`,
        edits: [demo.withLine(file, line, `${text}\n${more}`)],
      };
    },
  },
  {
    name: 'one more caution',
    make: (dice, demo) => {
      const more = demo
        .linesWhere(/^(guides|sequences)\//, /^cautions: \[/)
        .flatMap((one) =>
          ['hearing', 'fuse', 'bridged-outputs', 'disconnect-battery']
            .filter((caution) => !one.text.includes(caution))
            .map((caution) => ({ ...one, changed: one.text.replace(']', `, ${caution}]`) })),
        );
      const { file, line, changed } = dice.pick(more);
      return { what: `${file}:${line} ${changed}`, edits: [demo.withLine(file, line, changed)] };
    },
  },
  {
    name: 'a new plan',
    make: (dice) => {
      const file = `plans/one-speaker-${dice.below(100)}.yaml`;
      const least = dice.pick([0.5, 1, 1.5]);
      return {
        what: file,
        edits: [
          {
            file,
            content: `name: One amplifier for one speaker\nsummary: A small set-up that some riders ask for.\norder: ${70 + dice.below(30)}\nfeeds: aftermarket-amplifier\ninput: { leastVolts: ${least}, mostVolts: ${least * 8} }\nrear: not-needed\nmostBassBoostDb: 4\ncanCorrect: ${dice.chance()}\nsources: [equipment-classes]\n`,
          },
        ],
      };
    },
  },
  {
    name: 'a new guide',
    make: (dice) => {
      const file = `guides/before-you-call-${dice.below(100)}.md`;
      const body = dice.shuffled(plainSentences).slice(0, 3).join(' ');
      return {
        what: file,
        edits: [
          {
            file,
            content: `---\ntitle: Before you call\nsummary: What to have at hand.\norder: ${80 + dice.below(20)}\ncautions: [parked]\nsources: [telephone-notes-2026]\n---\n\n## At hand\n\n${body}\n\n## On the telephone\n\nRead the code out letter by letter.\n`,
          },
        ],
      };
    },
  },
  {
    name: 'one more sentence in prose',
    make: (dice, demo) => {
      const lines = demo
        .linesWhere(/^(guides|families)\//, /^[A-Z][a-z].*\.$/)
        .filter(({ file, line }) => line > demo.lines(file).indexOf('---', 1) + 1);
      const { file, line, text } = dice.pick(lines);
      const sentence = dice.pick(plainSentences);
      return {
        what: `${file}:${line} “${sentence}”`,
        edits: [demo.withLine(file, line, `${text} ${sentence}`)],
      };
    },
  },
  {
    name: 'one more paragraph and a list in prose',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^(guides|families)\//));
      const more = `\n## One more thing\n\n${dice.pick(plainSentences)}\n\n- *Look* twice.\n- **Ask** once.\n`;
      return { what: `${file}: a section`, edits: [{ file, content: demo.text(file) + more }] };
    },
  },
  {
    name: 'shop details changed',
    make: (dice, demo) => {
      const [line, text] = dice.pick([
        [/^ {2}hours:/, '  hours: "Monday to Friday, 8 to 16 h"'],
        [/^tagline:/, 'tagline: What your head unit really puts out'],
        [/^ {2}accent:/, "  accent: '#224466'"],
        [/^address:/, 'address: https://other.quillhaven.example/help'],
      ] as const);
      const at = demo.lineOf('site.yaml', line);
      return { what: `site.yaml:${at} ${text}`, edits: [demo.withLine('site.yaml', at, text)] };
    },
  },
];
