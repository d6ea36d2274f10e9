/** Other ways to write the same: line ends, comments, quotes, order where none is meant. */
import { type Document, isMap, isScalar, isSeq, type Pair, parseDocument, Scalar, visit } from 'yaml';
import { type Demo, type Edit, rowText } from '../demo.ts';
import type { Dice } from '../dice.ts';
import type { HarmlessEdit, HarmlessKind } from '../harmless.ts';

const yamlFile = /\.yaml$/;
const markdownFile = /\.md$/;
const sheet = /readings\.csv$/;

function changed(file: string, how: string, content: string): HarmlessEdit {
  return { what: `${file}: ${how}`, edits: [{ file, content }] };
}

/** A file with its YAML (the whole, or the front matter) rewritten. */
function rewritten(demo: Demo, file: string, change: (document: Document) => void): Edit {
  const text = demo.text(file);
  const [, open = '', front = text, rest = ''] = /^(---\n)([\s\S]*?\n)(---\n[\s\S]*)$/.exec(text) ?? [];
  const document = parseDocument(front);
  change(document);
  return { file, content: open + document.toString({ lineWidth: 100 }) + rest };
}

function rewriting(
  how: string,
  files: RegExp,
  change: (document: Document, dice: Dice) => void,
): HarmlessKind {
  return {
    name: how,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(files));
      return {
        what: `${file}: ${how}`,
        edits: [rewritten(demo, file, (document) => change(document, dice))],
      };
    },
  };
}

/** Changes the lines of a file that match, each with a chance of one half. */
function someLines(
  how: string,
  files: RegExp,
  lines: RegExp,
  change: (text: string, dice: Dice) => string,
): HarmlessKind {
  return {
    name: how,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(files));
      const content = demo
        .lines(file)
        .map((text) => (lines.test(text) && dice.chance() ? change(text, dice) : text))
        .join('\n');
      return changed(file, how, content);
    },
  };
}

function wholeFile(how: string, files: RegExp, change: (text: string) => string): HarmlessKind {
  return {
    name: how,
    make: (dice, demo) => {
      const file = dice.pick(demo.list(files));
      return changed(file, how, change(demo.text(file)));
    },
  };
}

/** Codes and other texts that a number or a word of YAML would be read from stay in quotes. */
const inQuotesOnly = /^[0-9.+-]|^(true|false|null|on|off|yes|no|~)$|[:#]|^[-?*&!|>'"%@`{[]/i;

export const styleKinds: readonly HarmlessKind[] = [
  rewriting('fields in another order', yamlFile, (document, dice) => {
    if (isMap(document.contents)) document.contents.items = dice.shuffled(document.contents.items);
  }),
  rewriting('fields of the front matter in another order', markdownFile, (document, dice) => {
    if (isMap(document.contents)) document.contents.items = dice.shuffled(document.contents.items);
  }),
  rewriting('fields of inner blocks in another order', yamlFile, (document, dice) => {
    visit(document, {
      Map: (_, map) => {
        map.items = dice.shuffled(map.items as Pair[]);
      },
    });
  }),
  rewriting('sources in another order', /^(profiles|families|guides|plans|sequences)\//, (document, dice) => {
    const sources = document.get('sources');
    if (isSeq(sources)) sources.items = dice.shuffled(sources.items);
  }),
  rewriting('text in double quotes', yamlFile, (document, dice) => {
    visit(document, {
      Scalar: (key, scalar) => {
        if (key === 'value' && typeof scalar.value === 'string' && dice.chance())
          scalar.type = Scalar.QUOTE_DOUBLE;
      },
    });
  }),
  rewriting('text in single quotes', yamlFile, (document, dice) => {
    visit(document, {
      Scalar: (key, scalar) => {
        if (key === 'value' && typeof scalar.value === 'string' && dice.chance())
          scalar.type = Scalar.QUOTE_SINGLE;
      },
    });
  }),
  rewriting('quotes taken off where none are needed', yamlFile, (document) => {
    visit(document, {
      Scalar: (key, scalar) => {
        if (key !== 'value' || typeof scalar.value !== 'string') return;
        if (!inQuotesOnly.test(scalar.value)) scalar.type = Scalar.PLAIN;
      },
    });
  }),
  rewriting('folded text on one line', yamlFile, (document) => {
    visit(document, {
      Scalar: (_, scalar) => {
        if (scalar.type === Scalar.BLOCK_FOLDED) scalar.type = Scalar.QUOTE_DOUBLE;
      },
    });
  }),
  rewriting('text as a literal block', /^(profiles|statements|sources|plans)\//, (document) => {
    visit(document, {
      Scalar: (_, scalar) => {
        if (scalar.type === Scalar.BLOCK_FOLDED) scalar.type = Scalar.BLOCK_LITERAL;
      },
    });
  }),
  rewriting('lists and blocks in brackets', /^(profiles|statements|plans)\//, (document) => {
    if (!isMap(document.contents)) return;
    for (const { value } of document.contents.items) if (isMap(value) || isSeq(value)) value.flow = true;
  }),
  rewriting('lists and blocks over several lines', yamlFile, (document) => {
    visit(document, {
      Collection: (_, node) => {
        node.flow = false;
      },
    });
  }),
  {
    name: 'an entry as JSON',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(yamlFile));
      return changed(file, 'as JSON', `${JSON.stringify(parseDocument(demo.text(file)).toJS(), null, 2)}\n`);
    },
  },
  rewriting('numbers written otherwise', /session\.yaml$|^plans\//, (document, dice) => {
    visit(document, {
      Scalar: (key, scalar) => {
        if (key !== 'value' || typeof scalar.value !== 'number' || !isScalar(scalar)) return;
        if (dice.chance()) scalar.format = 'EXP';
        else scalar.minFractionDigits = 3;
      },
    });
  }),
  someLines(
    'comments between the lines',
    yamlFile,
    /^[a-z]/,
    (text) => `# checked against the original\n${text}`,
  ),
  someLines(
    'comments behind the values',
    yamlFile,
    /^ *[a-zA-Z]+: [a-z0-9.-]+$/,
    (text) => `${text}   # as agreed`,
  ),
  someLines('blank lines', yamlFile, /^[a-z]/, (text) => `\n${text}`),
  someLines('spaces at line ends', /\.(yaml|md)$/, /^[a-z][a-zA-Z]*: \S/, (text) => `${text}  `),
  wholeFile('without the comment at its top', yamlFile, (text) => text.replace(/^#.*\n/, '')),
  wholeFile('CRLF line ends in an entry', /\.(yaml|md)$/, (text) => text.replaceAll('\n', '\r\n')),
  wholeFile('CRLF line ends in a sheet', sheet, (text) => text.replaceAll('\n', '\r\n')),
  wholeFile('a byte-order mark', /\.(yaml|md|csv)$/, (text) => `\uFEFF${text}`),
  wholeFile(
    'a byte-order mark and CRLF line ends',
    /\.(yaml|md|csv)$/,
    (text) => `\uFEFF${text.replaceAll('\n', '\r\n')}`,
  ),
  wholeFile('no line end at the end', /\.(yaml|md|csv)$/, (text) => text.trimEnd()),
  wholeFile('blank lines at the end', /\.(yaml|md|csv)$/, (text) => `${text}\n\n`),
  wholeFile('a document marker at the top', yamlFile, (text) => `---\n${text}`),
  someLines('blank lines in a sheet', sheet, /,12,/, (text) => `${text}\n`),
  someLines('cells in quotes', sheet, /^[a-z]+\//, (text) => text.replace(/^([^,]+),([^,]+),/, '"$1","$2",')),
  someLines('spaces about cells', sheet, /^[a-z]+\//, (text) => text.replaceAll(',', ', ')),
  someLines('frequencies with decimals', sheet, /,1000,/, (text) => text.replace(',1000,', ',1000.0,')),
  {
    name: 'rows in another order',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(sheet));
      const rows = demo.rows.filter((row) => row.file === file).map(rowText);
      return changed(
        file,
        'rows in another order',
        `${[demo.lines(file)[0], ...dice.shuffled(rows)].join('\n')}\n`,
      );
    },
  },
  {
    name: 'a hidden file',
    make: (dice) => {
      const file = dice.pick([
        '.DS_Store',
        'profiles/.gitkeep',
        'outputs/.cache/readings.csv',
        'guides/.draft.md.swp',
      ]);
      return changed(file, 'added', 'anything');
    },
  },
];
