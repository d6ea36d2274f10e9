/** Mistakes in the shape of an entry or a row: types, bounds, choices, names of fields. */
import { rowText } from '../demo.ts';
import { type FaultKind, onLine } from '../kind.ts';

const enumLine = /^( *)(origin|system|trust|feeds|rear|kind|topology): ([a-z-]+)$/;

/** A word with two letters swapped or one left out, as fingers do. */
export function misspelt(word: string, below: (n: number) => number): string {
  const at = 1 + below(word.length - 2);
  const [a = '', b = ''] = [word.charAt(at), word.charAt(at + 1)];
  return a === b || below(2) === 0
    ? word.slice(0, at) + word.slice(at + 1)
    : word.slice(0, at) + b + a + word.slice(at + 2);
}

export const shapeKinds: readonly FaultKind[] = [
  {
    name: 'language without texts',
    rule: 'interface-text',
    shownBy: 'its texts are neither shipped nor in words/',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(/^site\.yaml$/, /^languages: /));
      return onLine(demo, file, line, `languages: [en, ${dice.pick(['nl', 'fr', 'cs', 'pt-BR'])}]`);
    },
  },
  {
    name: 'code without quotes',
    rule: 'schema',
    shownBy: 'YAML reads it as a number',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(
          /^profiles\//,
          /^(code: | {2}- )"(0x[0-9A-F]+|[0-9]+|[0-9]+\.[0-9]*|[0-9]+\.?[0-9]*E[0-9]+)"$/,
        ),
      );
      return onLine(demo, file, line, text.replaceAll('"', ''));
    },
  },
  {
    name: 'choice misspelt',
    rule: 'schema',
    shownBy: 'the word is none of the choices',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(
        demo.linesWhere(/^(profiles|sources|plans|families)\//, enumLine),
      );
      const [, indent = '', key = '', word = ''] = match;
      return onLine(demo, file, line, `${indent}${key}: ${misspelt(word, (n) => dice.below(n))}`);
    },
  },
  {
    name: 'field left out',
    rule: 'schema',
    shownBy: 'the kind of entry requires it',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(
          /^(profiles|sources|plans)\/|session\.yaml$/,
          /^(origin|system|trust|keptAt|feeds|rear|bench|date|takenBy|canCorrect): /,
        ),
      );
      const first = demo.lines(file).findIndex((one) => /^[a-z]/.test(one)) + 1;
      // A missing field is shown where its block begins.
      return {
        what: `${file}:${line} without “${text}”`,
        edits: [demo.withLine(file, line, undefined)],
        places: [{ file, lines: [first, 1] }],
      };
    },
  },
  {
    name: 'number with its unit',
    rule: 'schema',
    shownBy: 'a number is text when a unit follows it',
    make: (dice, demo) => {
      const units: Readonly<Record<string, string>> = {
        Volts: ' V',
        volts: ' V',
        Hz: ' Hz',
        ohms: ' Ω',
        Ohms: ' Ω',
        Db: 'dB',
        Percent: '%',
      };
      const { file, line, text, match } = dice.pick(
        demo.linesWhere(
          /^(statements|plans)\/|session\.yaml$/,
          /^ *[a-zA-Z]*(Volts|volts|Hz|ohms|Db|Percent): -?[0-9.]+$/,
        ),
      );
      return onLine(demo, file, line, text + (units[match[1] ?? ''] ?? ''));
    },
  },
  {
    name: 'decimal comma in an entry',
    rule: 'schema',
    shownBy: 'a number with a comma is text',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^statements\/|session\.yaml$/, /^ *[a-zA-Z]+: -?[0-9]+\.[0-9]+$/),
      );
      return onLine(demo, file, line, text.replace('.', ','));
    },
  },
  {
    name: 'shifted decimal in the supply',
    rule: 'schema',
    shownBy: 'no vehicle supply has as many volts, or as few',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(
        demo.linesWhere(/session\.yaml$/, /^ {2}volts: (14\.4|12\.6)$/),
      );
      const volts = Number(match[1]);
      return onLine(
        demo,
        file,
        line,
        `  volts: ${dice.pick([(volts * 10).toFixed(0), (volts / 10).toFixed(2)])}`,
      );
    },
  },
  {
    name: 'date in another order',
    rule: 'schema',
    shownBy: 'it is no calendar date of ISO 8601',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(
        demo.linesWhere(/^sources\/|session\.yaml$/, /^date: ([0-9]{4})-([0-9]{2})-([0-9]{2})$/),
      );
      const [, year = '', month = '', day = ''] = match;
      const wrong =
        Number(day) > 12
          ? [`${day}.${month}.${year}`, `${year}-${day}-${month}`]
          : [`${day}.${month}.${year}`, `${day}/${month}/${year}`];
      return onLine(demo, file, line, `date: ${dice.pick(wrong)}`);
    },
  },
  {
    name: 'no for false',
    rule: 'schema',
    shownBy: 'YAML 1.2 reads yes and no as text',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^(families|plans)\//, /(touch|canCorrect): (true|false)/),
      );
      return onLine(
        demo,
        file,
        line,
        text.replace(/(touch|canCorrect): true/, '$1: yes').replace(/(touch|canCorrect): false/, '$1: no'),
      );
    },
  },
  {
    name: 'list without its dashes',
    rule: 'schema',
    shownBy: 'a list is required',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^(plans|sequences|guides)\//, /^(sources|cautions): \[[a-z0-9-]+(, [a-z0-9-]+)*\]$/),
      );
      return onLine(demo, file, line, text.replace('[', '').replace(']', ''));
    },
  },
  {
    name: 'colour without quotes',
    rule: 'schema',
    shownBy: 'YAML reads what follows # as a comment',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^site\.yaml$/, /"#[0-9a-f]{6}"/));
      return onLine(demo, file, line, text.replaceAll('"', ''));
    },
  },
  {
    name: 'letter among the figures of a reading',
    rule: 'schema',
    shownBy: 'the cell is no number',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ volts }) => /[015]/.test(volts)));
      const letters: Readonly<Record<string, string>> = { '0': 'O', '1': 'l', '5': 'S' };
      return onLine(
        demo,
        row.file,
        row.line,
        rowText({ ...row, volts: row.volts.replace(/[015]/, (figure) => letters[figure] ?? figure) }),
      );
    },
  },
  {
    name: 'reading with a minus',
    rule: 'schema',
    shownBy: 'volts rms are never negative',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ volts }) => Number(volts) > 0));
      return onLine(demo, row.file, row.line, rowText({ ...row, volts: `-${row.volts}` }));
    },
  },
  {
    name: 'channel by another name',
    rule: 'schema',
    shownBy: 'the outputs are FL, FR, RL and RR',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows);
      const wrong = dice.pick([
        row.channel.toLowerCase(),
        row.channel.split('').reverse().join(''),
        `${row.channel}1`,
      ]);
      return onLine(demo, row.file, row.line, rowText({ ...row, channel: wrong }));
    },
  },
  {
    name: 'step and frequency swapped',
    rule: ['schema', 'impossible-reading'],
    shownBy: 'no unit has a step of that number',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ hz, step }) => hz === 1000 && step > 0));
      return onLine(demo, row.file, row.line, rowText({ ...row, step: row.hz, hz: row.step }));
    },
  },
  {
    name: 'spreadsheet made a date of a number',
    rule: 'schema',
    shownBy: 'the cell is no number',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ step }) => step > 0 && step < 29));
      return onLine(demo, row.file, row.line, rowText(row).replace(`,${row.step},`, `,${row.step}. Mar,`));
    },
  },
  {
    name: 'a line of averages under the sheet',
    rule: 'schema',
    shownBy: 'it has no profile, channel, step',
    mostEchoes: 6,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/readings\.csv$/));
      const line = demo.lines(file).length;
      return {
        what: `${file} with averages in line ${line}`,
        edits: [{ file, content: `${demo.text(file)}average,,,,${dice.between(1, 4).toFixed(4)},,\n` }],
        places: [{ file, lines: [line] }],
      };
    },
  },
  {
    name: 'sheet without its header',
    rule: ['unknown-key', 'schema'],
    shownBy: 'the first line names no columns',
    mostEchoes: 8,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/readings\.csv$/));
      return {
        what: `${file} without its header`,
        edits: [demo.withLine(file, 1, undefined)],
        places: [{ file, lines: [1] }],
      };
    },
  },
  {
    name: 'two columns in another order',
    rule: 'schema',
    shownBy: 'the header has them otherwise',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/readings\.csv$/));
      const [a, b] = dice.pick([
        [2, 3],
        [4, 5],
        [5, 6],
        [1, 2],
      ] as const);
      const content = demo
        .lines(file)
        .map((text) => {
          const cells = text.split(',');
          const [first = '', second = ''] = [cells[a], cells[b]];
          return text === '' ? '' : cells.with(a, second).with(b, first).join(',');
        })
        .join('\n');
      return {
        what: `${file} with columns ${a + 1} and ${b + 1} swapped`,
        edits: [{ file, content }],
        places: [{ file, lines: [1] }],
      };
    },
  },
  {
    name: 'field misspelt',
    rule: 'unknown-key',
    shownBy: 'no entry of the kind has such a field',
    make: (dice, demo) => {
      const { file, line, text, match } = dice.pick(
        demo.linesWhere(
          /^(profiles|plans|sources|statements|sequences|families|guides)\/|\.yaml$/,
          /^ *(?:- )?([a-z][a-zA-Z]{3,}):( |$)/,
        ),
      );
      const key = match[1] ?? '';
      let wrong = misspelt(key, (n) => dice.below(n));
      // “form” for “from” is as good a slip as any; a slip that gives another field’s name is not one.
      if (wrong === key) wrong = `${key}s`;
      return onLine(demo, file, line, text.replace(`${key}:`, `${wrong}:`));
    },
  },
  {
    name: 'field misspelt, in a file with a byte-order mark and other line ends',
    rule: 'unknown-key',
    shownBy: 'no entry of the kind has such a field',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^(profiles|statements|plans)\//, /^(origin|system|source|feeds|canCorrect): /),
      );
      const mistake = onLine(demo, file, line, text.replace(/^([a-zA-Z]+):/, '$1x:'));
      return {
        ...mistake,
        edits: mistake.edits.map((edit) => ({
          ...edit,
          content: `\uFEFF${String(edit.content).replaceAll('\n', '\r\n')}`,
        })),
      };
    },
  },
  {
    name: 'column misspelt',
    rule: 'unknown-key',
    shownBy: 'the columns of a sheet are known',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/readings\.csv$/));
      const column = dice.pick(['profile', 'channel', 'voltsRms', 'thdPercent', 'repeat']);
      const wrong = misspelt(column, (n) => dice.below(n));
      return onLine(demo, file, 1, (demo.lines(file)[0] ?? '').replace(column, wrong));
    },
  },
  {
    name: 'field out of its block',
    rule: ['unknown-key', 'schema'],
    shownBy: 'the block lacks it, and the entry has no such field of its own',
    make: (dice, demo) => {
      const { file, line, text, match } = dice.pick(
        demo.linesWhere(/session\.yaml$/, /^ {2}(tolerancePercent|toleranceVolts|thdOfReadingPercent): /),
      );
      const block = ['load', 'supply', 'instrument'].map((name) =>
        demo.lineOf(file, new RegExp(`^${name}:`)),
      );
      return {
        ...onLine(demo, file, line, text.trimStart()),
        places: [{ file, lines: [line, ...block] }],
        what: `${file}:${line} “${match[1]}” without its indent`,
      };
    },
  },
  {
    name: 'session cut off',
    rule: 'schema',
    shownBy: 'fields are missing that a session requires',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/session\.yaml$/));
      const supply = demo.lineOf(file, /^supply:/);
      const cut = dice.pick([supply, supply + 2]);
      return {
        what: `${file} cut off before line ${cut}`,
        edits: [
          {
            file,
            content: demo
              .lines(file)
              .slice(0, cut - 1)
              .join('\n'),
          },
        ],
        places: [{ file, lines: [2, supply] }],
      };
    },
  },
  {
    name: 'readings set aside without a reason',
    rule: 'schema',
    shownBy: 'setAside requires a reason',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/session\.yaml$/));
      const session = file.split('/')[1] ?? '';
      const profile = dice.pick(demo.answers.base.readings.get(session)?.profiles ?? []);
      const line = demo.lineOf(file, /^method:/);
      const aside = `setAside:\n  - { profiles: [${profile}], by: Bench lead, date: 2026-10-01 }`;
      return {
        ...onLine(demo, file, line, `${aside}\n${demo.lines(file)[line - 1]}`),
        places: [{ file, lines: [line, line + 1] }],
      };
    },
  },
];
