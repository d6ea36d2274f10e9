/** Mistakes in what names what: ids, files, sources. */
import type { Demo } from '../demo.ts';
import { type Expected, type FaultKind, onLine } from '../kind.ts';
import { misspelt } from './shape.ts';

/** Every line, outside `except`, that names an id as a whole word. */
export function mentions(demo: Demo, id: string, except: string): Expected[] {
  const pattern = new RegExp(`(^|[^a-z0-9/-])${id}($|[^a-z0-9/-])`);
  return demo
    .linesWhere(/\.(yaml|md|csv)$/, pattern)
    .filter(({ file }) => file !== except)
    .map(({ file, line }) => ({ file, lines: [line] }));
}

export const linkKinds: readonly FaultKind[] = [
  {
    name: 'source misspelt in a list',
    rule: 'dangling-link',
    shownBy: 'there is no such source',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(
        demo.linesWhere(
          /^(profiles|families|guides)\//,
          /^ {2}- ((?:bench|kestrane|telephone|equipment|iec)-[a-z0-9-]+)$/,
        ),
      );
      return onLine(demo, file, line, `  - ${misspelt(match[1] ?? '', (n) => dice.below(n))}`);
    },
  },
  {
    name: 'profile misspelt in a sheet',
    rule: 'dangling-link',
    shownBy: 'there is no such profile',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows);
      const slug = row.profile.split('/')[1] ?? '';
      const wrong = misspelt(slug, (n) => dice.below(n));
      const profile = `${row.profile.split('/')[0]}/${wrong === slug ? `${slug}x` : wrong}`;
      return {
        what: `${row.file}:${row.line} ${row.profile} → ${profile}`,
        edits: [demo.withRows([row], () => ({ profile }))],
        places: [{ file: row.file, lines: [row.line] }],
      };
    },
  },
  {
    name: 'profile misspelt in an entry',
    rule: 'dangling-link',
    shownBy: 'there is no such profile',
    make: (dice, demo) => {
      const { file, line, text, match } = dice.pick(
        demo.linesWhere(/^(profiles|statements)\//, /(?:profile|sameAs|from): [a-z]+\/([a-z0-9-]+)$/),
      );
      const slug = match[1] ?? '';
      const wrong = misspelt(slug, (n) => dice.below(n));
      return onLine(demo, file, line, text.replace(slug, wrong === slug ? `${slug}x` : wrong));
    },
  },
  {
    name: 'family misspelt',
    rule: 'dangling-link',
    shownBy: 'there is no such family',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(demo.linesWhere(/^(profiles|sequences)\//, /^family: (.*)$/));
      return onLine(demo, file, line, `family: ${misspelt(match[1] ?? '', (n) => dice.below(n))}`);
    },
  },
  {
    name: 'source deleted',
    rule: 'dangling-link',
    shownBy: 'entries still name it',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^sources\//));
      const id = file.slice('sources/'.length, -'.yaml'.length);
      return {
        what: `${file} deleted`,
        edits: [{ file, content: undefined }],
        places: mentions(demo, id, file),
      };
    },
  },
  {
    name: 'profile renamed',
    rule: 'dangling-link',
    shownBy: 'sheets still name the old one',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^profiles\//));
      const id = file.slice('profiles/'.length, -'.yaml'.length);
      const to = file.replace(/\.yaml$/, '-old.yaml');
      return {
        what: `${file} renamed to ${to}`,
        edits: [
          { file, content: undefined },
          { file: to, content: demo.text(file) },
        ],
        places: mentions(demo, id, file),
      };
    },
  },
  {
    name: 'profile moved to another family’s folder',
    rule: ['schema', 'dangling-link'],
    shownBy: 'it names the family of its old folder, and sheets name its old place',
    mostEchoes: 4,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^profiles\//));
      const id = file.slice('profiles/'.length, -'.yaml'.length);
      const [family = '', name = ''] = id.split('/');
      const other = dice.pick([...demo.answers.base.families.keys()].filter((one) => one !== family));
      const to = `profiles/${other}/${name}.yaml`;
      return {
        what: `${file} moved to ${to}`,
        edits: [
          { file, content: undefined },
          { file: to, content: demo.text(file) },
        ],
        places: [{ file: to, lines: [demo.lineOf(file, /^family:/)] }, ...mentions(demo, id, file)],
      };
    },
  },
  {
    name: 'profile said to be of another family',
    rule: 'schema',
    shownBy: 'it lies in the folder of its own',
    mostEchoes: 8,
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(demo.linesWhere(/^profiles\//, /^family: (.*)$/));
      const other = dice.pick([...demo.answers.base.families.keys()].filter((one) => one !== match[1]));
      return onLine(demo, file, line, `family: ${other}`);
    },
  },
  {
    name: 'session left without its conditions',
    rule: 'unsourced',
    shownBy: 'a sheet without session.yaml has no source',
    mostEchoes: 6,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/session\.yaml$/));
      return {
        what: `${file} deleted`,
        edits: [{ file, content: undefined }],
        places: [{ file: file.replace('session.yaml', 'readings.csv'), lines: [1] }],
      };
    },
  },
  {
    name: 'session left without its sheet',
    rule: 'schema',
    shownBy: 'a session is nothing without readings',
    mostEchoes: 10,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/readings\.csv$/));
      const session = file.replace('readings.csv', 'session.yaml');
      return {
        what: `${file} deleted`,
        edits: [{ file, content: undefined }],
        places: [{ file: session, lines: 'any' }],
      };
    },
  },
  {
    name: 'said to be the same as each other',
    rule: ['circular-link', 'circular-links'],
    shownBy: 'neither of the two is the first',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(demo.linesWhere(/^profiles\//, /^sameAs: (.*)$/));
      const other = `profiles/${match[1]}.yaml`;
      const id = file.slice('profiles/'.length, -'.yaml'.length);
      const before = demo.lineOf(other, /^about:/);
      return {
        what: `${other} sameAs ${id}, and the other way round`,
        edits: [demo.withLine(other, before, `sameAs: ${id}\n${demo.lines(other)[before - 1]}`)],
        places: [
          { file: other, lines: [before] },
          { file, lines: [line] },
        ],
      };
    },
  },
  {
    name: 'sources that rest on each other',
    rule: ['circular-link', 'source-chain'],
    shownBy: 'neither is first-hand',
    make: (dice, demo) => {
      const files = demo.list(/^sources\/(kestrane|riders|telephone|equipment)/);
      const [a = '', b = ''] = dice.shuffled(files);
      const rests = (file: string, on: string) => ({
        file,
        content: `${demo.text(file)}restsOn: [${on.slice('sources/'.length, -'.yaml'.length)}]\n`,
      });
      return {
        what: `${a} and ${b} rest on each other`,
        edits: [rests(a, b), rests(b, a)],
        places: [a, b].map((file) => ({ file, lines: [demo.lines(file).length] })),
      };
    },
  },
  {
    name: 'sequence deleted',
    rule: 'no-way-to-code',
    shownBy: 'the family has codes and no way to read them',
    make: (dice, demo) => {
      const alone = demo.list(/^sequences\//).filter((file) => !file.includes('northpane'));
      const file = dice.pick(alone);
      const family = /^family: (.*)$/m.exec(demo.text(file))?.[1] ?? '';
      return {
        what: `${file} deleted`,
        edits: [{ file, content: undefined }],
        places: [{ file: `families/${family}.md`, lines: 'any' }],
      };
    },
  },
];
