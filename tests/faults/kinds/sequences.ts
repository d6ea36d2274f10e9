/** Mistakes in the way to the code. */
import type { Demo, LineMatch } from '../demo.ts';
import { type FaultKind, onLine } from '../kind.ts';
import { misspelt } from './shape.ts';

const sequences = /^sequences\//;

/** The lines of the list item that begins at `line`, up to the next of its indent. */
function block(demo: Demo, file: string, line: number): { from: number; to: number; text: string } {
  const lines = demo.lines(file);
  const indent = /^ */.exec(lines[line - 1] ?? '')?.[0].length ?? 0;
  let to = line;
  while (to < lines.length && /^ */.exec(lines[to] ?? '')?.[0].length !== undefined) {
    const text = lines[to] ?? '';
    if (text === '' || (/^ */.exec(text)?.[0].length ?? 0) <= indent) break;
    to += 1;
  }
  return { from: line, to, text: lines.slice(line - 1, to).join('\n') };
}

/** Transitions of all sequences: their “- from:” lines. */
function transitions(demo: Demo): LineMatch[] {
  return demo.linesWhere(sequences, /^ {2}- from: (.*)$/);
}

function without(demo: Demo, file: string, ...blocks: { from: number; to: number }[]) {
  const gone = new Map<number, undefined>();
  for (const { from, to } of blocks) for (let line = from; line <= to; line += 1) gone.set(line, undefined);
  return demo.withLines(file, gone);
}

export const sequenceKinds: readonly FaultKind[] = [
  {
    name: 'step to a state that is not there',
    rule: 'no-way-to-code',
    shownBy: 'the sequence has no such state',
    make: (dice, demo) => {
      const { file, line, text, match } = dice.pick(
        demo.linesWhere(sequences, /^(?: {2}- from| {4}to| {8}goTo|start): (.*)$/),
      );
      const id = match[1] ?? '';
      return onLine(
        demo,
        file,
        line,
        text.replace(
          id,
          misspelt(id, (n) => dice.below(n)),
        ),
      );
    },
  },
  {
    name: 'state given twice',
    rule: 'no-way-to-code',
    shownBy: 'two states have one id',
    mostEchoes: 5,
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(sequences, /^ {2}- id: (?!dark)/));
      const ids = demo.linesWhere(new RegExp(`^${file}$`), /^ {2}- id: /).filter((one) => one.line < line);
      const other = dice.pick(ids);
      return { ...onLine(demo, file, line, other.text), places: [{ file, lines: 'any' }] };
    },
  },
  {
    name: 'control the face does not have',
    rule: ['unknown-control', 'no-way-to-code'],
    shownBy: 'the face has no such control',
    make: (dice, demo) => {
      const { file, line, text, match } = dice.pick(demo.linesWhere(sequences, /controls?: \[?([a-z0-9-]+)/));
      return onLine(
        demo,
        file,
        line,
        text.replace(match[1] ?? '', dice.pick(['eject', 'menue', 'preset-9', 'volum', 'infomation'])),
      );
    },
  },
  {
    name: 'tap on a key',
    rule: ['unknown-control', 'no-way-to-code', 'wrong-control'],
    shownBy: 'the face has a key there, and no touch area',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(sequences, /kind: (press|tap), control: /));
      return onLine(
        demo,
        file,
        line,
        text.replace(/kind: (press|tap)/, (_, kind: string) => `kind: ${kind === 'tap' ? 'press' : 'tap'}`),
      );
    },
  },
  {
    name: 'sequence given to another family',
    rule: ['unknown-control', 'no-way-to-code', 'orphaned-entry'],
    shownBy: 'its controls are not on that face, and its own family has no way left',
    mostEchoes: 6,
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(demo.linesWhere(sequences, /^family: (.*)$/));
      const other = dice.pick([...demo.answers.base.families.keys()].filter((one) => one !== match[1]));
      return {
        ...onLine(demo, file, line, `family: ${other}`),
        places: [
          { file, lines: 'any' },
          { file: `families/${match[1]}.md`, lines: 'any' },
        ],
      };
    },
  },
  {
    name: 'state nothing leads to',
    rule: ['sequence-unreachable', 'unreachable-state'],
    shownBy: 'no step leads there any more',
    make: (dice, demo) => {
      // The list of these two is entered by one step, and the code is reached without it.
      const found = dice.pick(
        demo
          .linesWhere(/^sequences\/(brasslight|dialstone)/, /^ {2}- from: (list-loading|version)$/)
          .filter(({ file, line }) => demo.lines(file)[line] === '    to: list'),
      );
      const list = demo.lineOf(found.file, /^ {2}- id: list$/);
      const step = block(demo, found.file, found.line);
      return {
        what: `${found.file}: the step to “list” deleted`,
        edits: [without(demo, found.file, step)],
        places: [
          {
            file: found.file,
            lines: Array.from({ length: block(demo, found.file, list).to - list + 1 }, (_, at) => list + at),
          },
        ],
      };
    },
  },
  {
    name: 'state with no way on',
    rule: ['sequence-dead-end', 'list-shown-as-code'],
    shownBy: 'no step and no recovery leads out of it',
    make: (dice, demo) => {
      const found = dice.pick(demo.linesWhere(/^sequences\/(brasslight|dialstone)/, /^ {2}- from: list$/));
      const { file } = found;
      const list = demo.lineOf(file, /^ {2}- id: list$/);
      const state = block(demo, file, list);
      const recovery = demo.lines(file).findIndex((text, at) => at >= list && text === '    recovery:') + 1;
      return {
        what: `${file}: no step and no recovery from “list”`,
        edits: [without(demo, file, block(demo, file, found.line), { from: recovery, to: state.to })],
        places: [{ file, lines: Array.from({ length: recovery - list }, (_, at) => list + at) }],
      };
    },
  },
  {
    name: 'step that leads astray',
    rule: ['no-way-to-code', 'sequence-unreachable', 'sequence-dead-end'],
    shownBy: 'no chain of steps comes to the active code',
    mostEchoes: 5,
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(
        transitions(demo).filter((one) => /glasswick|lanternby|northpane/.test(one.file)),
      );
      return { ...onLine(demo, file, line + 1, `    to: ${match[1]}`), places: [{ file, lines: 'any' }] };
    },
  },
  {
    name: 'one action, two outcomes',
    rule: ['sequence-ambiguous', 'ambiguous-step'],
    shownBy: 'from one state the same action leads to two others',
    make: (dice, demo) => {
      const found = dice.pick(
        transitions(demo).filter(({ file, line }) => !demo.lines(file)[line]?.includes('dark')),
      );
      const { file } = found;
      const step = block(demo, file, found.line);
      const to = /to: (.*)/.exec(step.text)?.[1] ?? '';
      const others = demo
        .linesWhere(new RegExp(`^${file}$`), /^ {2}- id: (.*)$/)
        .map(({ match }) => match[1] ?? '')
        .filter((id) => id !== to && id !== found.match[1]);
      const copy = step.text.replace(`to: ${to}`, `to: ${dice.pick(others)}`);
      const length = step.to - step.from + 1;
      return {
        what: `${file}:${step.to + 1} a second outcome of the step to “${to}”`,
        edits: [demo.withLine(file, step.to, `${demo.lines(file)[step.to - 1]}\n${copy}`)],
        places: [{ file, lines: Array.from({ length: 2 * length }, (_, at) => step.from + at) }],
      };
    },
  },
  {
    name: 'hold that may end at once',
    rule: 'endless-hold',
    shownBy: 'neither a moment nor a time says when to let go',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(sequences, /^ {6}end: /));
      const changes = new Map([
        [line, text.replace(/end: .*/, 'end: any-time')],
        [line + 1, '      leastSeconds: 0'],
      ]);
      return {
        what: `${file}:${line} end: any-time, leastSeconds: 0`,
        edits: [demo.withLines(file, changes)],
        places: [{ file, lines: [line, line + 1] }],
      };
    },
  },
  {
    name: 'hold with a figure too many in its seconds',
    rule: 'endless-hold',
    shownBy: 'nobody holds a key for minutes',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(sequences, /^ {6}mostSeconds: /));
      return onLine(demo, file, line, `${text}0`);
    },
  },
  {
    name: 'hold that ends before it begins, or as it does',
    rule: 'endless-hold',
    shownBy: 'the moments of a start follow one another',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(
        demo.linesWhere(sequences, /^ {6}begin: (with-ignition|prompt-shown)$/),
      );
      const ends = match[1] === 'prompt-shown' ? ['with-ignition', 'prompt-shown'] : ['with-ignition'];
      return {
        ...onLine(demo, file, line + 1, `      end: ${dice.pick(ends)}`),
        places: [{ file, lines: [line, line + 1] }],
      };
    },
  },
  {
    name: 'hold shorter at most than at least',
    rule: ['endless-hold', 'schema', 'broken-hold', 'no-way-to-code'],
    shownBy: 'the two times contradict each other',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(
        demo.linesWhere(sequences, /leastSeconds: (\d+)(?:, mostSeconds: (\d+))?/),
      );
      const [, least = '', inline] = match;
      const most = inline ?? /(\d+)/.exec(demo.lines(file)[line] ?? '')?.[1] ?? '';
      const text = (demo.lines(file)[line - 1] ?? '').replace(
        `leastSeconds: ${least}`,
        `leastSeconds: ${most}`,
      );
      const edits = inline
        ? [demo.withLine(file, line, text.replace(`mostSeconds: ${most}`, `mostSeconds: ${least}`))]
        : [
            demo.withLines(
              file,
              new Map([
                [line, text],
                [line + 1, `      mostSeconds: ${least}`],
              ]),
            ),
          ];
      return {
        what: `${file}:${line} least ${most} s, most ${least} s`,
        edits,
        places: [{ file, lines: [line, line + 1] }],
      };
    },
  },
  {
    name: 'end of a hold deleted',
    rule: ['schema', 'endless-hold'],
    shownBy: 'a hold requires it',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(sequences, /^ {6}(end|mostSeconds): /));
      const action = demo.lines(file).findLastIndex((text, at) => at < line && text === '    action:') + 1;
      return {
        what: `${file}:${line} deleted`,
        edits: [demo.withLine(file, line, undefined)],
        places: [{ file, lines: [action, action + 1] }],
      };
    },
  },
  {
    name: 'list taken for the active code',
    rule: 'list-shown-as-code',
    shownBy: 'the state’s own notes say its codes are not the active one',
    mostEchoes: 4,
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(sequences, /^ {4}shows: profile-list$/));
      return {
        ...onLine(demo, file, line, '    shows: active-code\n    activeCodeAt: The first line of the list.'),
        places: [{ file, lines: Array.from({ length: 12 }, (_, at) => line - 3 + at) }],
      };
    },
  },
  {
    name: 'last state said to show the list',
    rule: ['no-way-to-code', 'list-shown-as-code'],
    shownBy: 'no state is left that shows the active code',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(sequences, /^ {4}shows: active-code$/));
      return { ...onLine(demo, file, line, '    shows: profile-list'), places: [{ file, lines: 'any' }] };
    },
  },
  {
    name: 'caution missing from a sequence',
    rule: 'missing-caution',
    shownBy: 'the ignition is on and the rider in a service screen',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(sequences, /^cautions: \[/));
      const lost = dice.pick(['parked, ', 'engine-off-indoors, ', 'look-only, ']);
      return { ...onLine(demo, file, line, text.replace(lost, '')), places: [{ file, lines: 'any' }] };
    },
  },
];
