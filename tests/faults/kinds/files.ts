/** Files in the wrong place or by the wrong name. */
import type { Demo, Edit } from '../demo.ts';
import type { FaultKind, Mistake } from '../kind.ts';
import { mentions } from './links.ts';

function moved(demo: Demo, file: string, to: string): Mistake {
  const edits: Edit[] = [
    { file, content: undefined },
    { file: to, content: demo.text(file) },
  ];
  return { what: `${file} moved to ${to}`, edits, places: [{ file: to, lines: [1] }] };
}

/** Kinds of entry that no other entry names. */
const unnamed = /^(plans|sequences|statements|tables)\//;

export const fileKinds: readonly FaultKind[] = [
  {
    name: 'capital letters or a space in a file name',
    rule: 'stray-file',
    shownBy: 'the name cannot stand in an address',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(unnamed).filter((one) => !one.startsWith('sequences/')));
      const [folder = '', name = ''] = file.split('/');
      const wrong = dice.pick([
        name.charAt(0).toUpperCase() + name.slice(1),
        name.replaceAll('-', ' '),
        name.replaceAll('-', '_'),
        name.replace('.', ' (1).'),
      ]);
      return moved(demo, file, `${folder}/${wrong}`);
    },
  },
  {
    name: 'capital letters in the file name of a profile',
    rule: ['stray-file', 'dangling-link'],
    shownBy: 'the name cannot stand in an address, and sheets name the profile',
    mostEchoes: 6,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^profiles\//).filter((one) => /[a-z][^/]*\.yaml$/.test(one)));
      const id = file.slice('profiles/'.length, -'.yaml'.length);
      const to = file.replace(/[^/]*\.yaml$/, (name) => `${name.replace('.yaml', '').toUpperCase()}.yaml`);
      const mistake = moved(demo, file, to);
      return { ...mistake, places: [...mistake.places, ...mentions(demo, id, file)] };
    },
  },
  {
    name: 'wrong ending of a file name',
    rule: 'stray-file',
    shownBy: 'entries of the kind end otherwise',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(unnamed).filter((one) => !one.startsWith('sequences/')));
      return moved(
        demo,
        file,
        file.replace(/\.(yaml|md)$/, dice.pick(['.yml', '.txt', '.markdown', '.yaml.txt', ''])),
      );
    },
  },
  {
    name: 'file in no folder, or in a folder by another name',
    rule: 'stray-file',
    shownBy: 'nothing is read from there',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(unnamed).filter((one) => !one.startsWith('sequences/')));
      const [folder = '', name = ''] = file.split('/');
      return moved(demo, file, dice.pick([name, `${folder.slice(0, -1)}/${name}`, `drafts/${name}`]));
    },
  },
  {
    name: 'spreadsheet beside the sheet',
    rule: 'stray-file',
    shownBy: 'a session has two files, by fixed names',
    make: (dice, demo) => {
      const folder = dice.pick(demo.list(/session\.yaml$/)).replace('session.yaml', '');
      const file =
        folder +
        dice.pick(['readings (1).csv', 'readings.xlsx', 'Readings.csv', 'notes.txt', 'raw/readings.csv']);
      return { what: file, edits: [{ file, content: 'profile,channel\n' }], places: [{ file, lines: [1] }] };
    },
  },
  {
    name: 'entry of one kind in the folder of another',
    rule: ['unknown-key', 'schema', 'stray-file'],
    shownBy: 'it has the fields of its own kind',
    mostEchoes: 16,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^(plans|statements)\//));
      const [folder, name = ''] = file.split('/');
      const to = `${folder === 'plans' ? 'statements' : 'plans'}/${name}`;
      const mistake = moved(demo, file, to);
      return { ...mistake, places: [{ file: to, lines: 'any' }] };
    },
  },
];
