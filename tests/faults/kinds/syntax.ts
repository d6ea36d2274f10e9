/** Mistakes that keep a file from being read: YAML, front matter, CSV, encoding. */
import { rowText } from '../demo.ts';
import { type FaultKind, onLine } from '../kind.ts';

const entries = /^(profiles|plans|sequences|sources|statements)\/|session\.yaml$/;

export const syntaxKinds: readonly FaultKind[] = [
  {
    name: 'quotation mark not closed',
    rule: 'syntax',
    shownBy: 'YAML has no end for it',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(entries, /^( *- )?[a-zA-Z]*:? ?"[^"]*"$/));
      return onLine(demo, file, line, text.slice(0, -1));
    },
  },
  {
    name: 'tab for indent',
    rule: 'syntax',
    shownBy: 'YAML allows no tab there',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/session\.yaml$/, /^ {2}(ohms|volts|kind|levelDbfs|toleranceVolts): /),
      );
      return onLine(demo, file, line, `\t${text.trimStart()}`);
    },
  },
  {
    name: 'field written twice',
    rule: 'syntax',
    shownBy: 'a key stands twice in one block',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(entries, /^(origin|system|kind|trust|date|bench|takenBy|feeds|rear|start): /),
      );
      return { ...onLine(demo, file, line, `${text}\n${text}`), places: [{ file, lines: [line, line + 1] }] };
    },
  },
  {
    name: 'no space after a colon',
    rule: 'syntax',
    shownBy: 'the line is no “name: value”',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^(profiles|plans|sources)\//, /^(origin|system|kind|trust|feeds|rear): /),
      );
      return onLine(demo, file, line, text.replace(': ', ':'));
    },
  },
  {
    name: 'text with a colon, without quotes',
    // In a list it is a block of fields as far as YAML goes, and only the schema knows better.
    rule: ['syntax', 'schema'],
    shownBy: 'a second “: ” on the line',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^(sources|sequences)\//, /^ *(- |title: |see: )"[^"]*: [^"]*"$/),
      );
      return onLine(demo, file, line, text.replaceAll('"', ''));
    },
  },
  {
    name: 'line out of its indent',
    rule: 'syntax',
    shownBy: 'the neighbours are indented otherwise',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/session\.yaml$/, /^ {2}(toleranceVolts|tolerancePercent|levelToleranceDb): /),
      );
      return onLine(demo, file, line, ` ${text}`);
    },
  },
  {
    name: 'bracket not closed',
    rule: 'syntax',
    shownBy: 'YAML has no end for it',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^(sequences|plans|families)\//, /[a-z]: \[[^\]]*\]$/),
      );
      return onLine(demo, file, line, text.slice(0, -1));
    },
  },
  {
    name: 'anchor and alias',
    rule: 'syntax',
    shownBy: 'entries hold no aliases',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^(profiles|statements|sources)\//, /^(family|source|kind): /),
      );
      return onLine(demo, file, line, text.replace(': ', ': &it '));
    },
  },
  {
    name: 'conflict markers of a merge in an entry',
    rule: 'syntax',
    shownBy: 'no line of an entry begins with <<<<<<<',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^(profiles|plans|sources)\//, /^(origin|system|trust|feeds|order): /),
      );
      const mess = `<<<<<<< HEAD\n${text}\n=======\n${text}\n>>>>>>> other`;
      return {
        ...onLine(demo, file, line, mess),
        places: [{ file, lines: [line, line + 1, line + 2, line + 3, line + 4] }],
      };
    },
  },
  {
    name: 'conflict markers of a merge in a sheet',
    rule: 'syntax',
    shownBy: 'a row has seven cells',
    mostEchoes: 4,
    make: (dice, demo) => {
      const row = dice.pick(demo.rows);
      const text = rowText(row);
      return {
        ...onLine(demo, row.file, row.line, `<<<<<<< HEAD\n${text}\n=======\n${text}\n>>>>>>> other`),
        places: [{ file: row.file, lines: [0, 1, 2, 3, 4].map((below) => row.line + below) }],
      };
    },
  },
  {
    name: 'front matter not begun',
    rule: 'syntax',
    shownBy: 'the file has no --- at its top',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^(families|guides)\//));
      return {
        what: `${file} without its first ---`,
        edits: [demo.withLine(file, 1, undefined)],
        places: [{ file, lines: [1] }],
      };
    },
  },
  {
    name: 'front matter not ended',
    rule: 'syntax',
    shownBy: 'the file has no second ---',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^(families|guides)\//));
      const end = demo.lines(file).indexOf('---', 1) + 1;
      return {
        what: `${file} without its second ---`,
        edits: [demo.withLine(file, end, undefined)],
        places: [{ file, lines: [1] }],
      };
    },
  },
  {
    name: 'saved in an old encoding',
    rule: 'syntax',
    shownBy: 'the bytes are not UTF-8',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/\.(yaml|md)$/).filter((one) => /[’“”]/.test(demo.text(one))));
      const windows: Readonly<Record<string, number>> = {
        '’': 0x92,
        '“': 0x93,
        '”': 0x94,
        '—': 0x97,
        '−': 0x2d,
      };
      const content = Uint8Array.from(
        [...demo.text(file)].map((one) => windows[one] ?? one.charCodeAt(0) & 0xff),
      );
      const bad = demo.lines(file).findIndex((text) => /[’“”]/.test(text)) + 1;
      return {
        what: `${file} as Windows-1252`,
        edits: [{ file, content }],
        places: [{ file, lines: [1, bad] }],
      };
    },
  },
  {
    name: 'decimal comma in a sheet',
    rule: 'syntax',
    shownBy: 'the row has a cell too many',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows);
      return onLine(demo, row.file, row.line, rowText({ ...row, volts: row.volts.replace('.', ',') }));
    },
  },
  {
    name: 'thousands comma in a sheet',
    rule: 'syntax',
    shownBy: 'the row has a cell too many',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ hz }) => hz === 1000));
      return onLine(demo, row.file, row.line, rowText(row).replace(',1000,', ',1,000,'));
    },
  },
  {
    name: 'stray quotation mark in a sheet',
    rule: 'syntax',
    shownBy: 'CSV has no end for it',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows);
      return onLine(demo, row.file, row.line, `"${rowText(row)}`);
    },
  },
  {
    name: 'cell lost from a row',
    rule: 'syntax',
    shownBy: 'the row has a cell too few',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows);
      const cells = rowText(row).split(',');
      cells.splice(dice.below(cells.length), 1);
      return onLine(demo, row.file, row.line, cells.join(','));
    },
  },
  {
    name: 'sheet cut off in the middle of a row',
    rule: 'syntax',
    shownBy: 'the last row has too few cells',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ line }) => line > 10));
      // The cut falls within the first cells, so that at least one is lost.
      const left = rowText(row).slice(0, 3 + dice.below(row.profile.length));
      const content = [...demo.lines(row.file).slice(0, row.line - 1), left].join('\n');
      return {
        what: `${row.file} cut off in line ${row.line}: “${left}”`,
        edits: [{ file: row.file, content }],
        places: [{ file: row.file, lines: [row.line] }],
      };
    },
  },
  {
    name: 'sequence cut off in the middle of an action',
    rule: 'syntax',
    shownBy: 'a bracket stays open',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^sequences\//, /action: \{/));
      const left = text.slice(0, text.indexOf('{') + 3 + dice.below(8));
      const content = [...demo.lines(file).slice(0, line - 1), left].join('\n');
      return {
        what: `${file} cut off in line ${line}`,
        edits: [{ file, content }],
        places: [{ file, lines: [line] }],
      };
    },
  },
  {
    name: 'other line ends, and a decimal comma',
    rule: 'syntax',
    shownBy: 'the row has a cell too many',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows);
      const mistake = onLine(
        demo,
        row.file,
        row.line,
        rowText({ ...row, volts: row.volts.replace('.', ',') }),
      );
      return {
        ...mistake,
        edits: mistake.edits.map(({ file, content }) => ({
          file,
          content: String(content).replaceAll('\n', '\r\n'),
        })),
      };
    },
  },
  {
    name: 'semicolons for commas in a whole sheet',
    rule: ['syntax', 'schema', 'unknown-key'],
    shownBy: 'the header is not the known one',
    mostEchoes: 8,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/readings\.csv$/));
      return {
        what: `${file} with semicolons`,
        edits: [{ file, content: demo.text(file).replaceAll(',', ';') }],
        places: [{ file, lines: [1] }],
      };
    },
  },
];
