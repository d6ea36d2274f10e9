/** Mistakes in codes. */
import type { Demo } from '../demo.ts';
import { type FaultKind, onLine } from '../kind.ts';

/** Pairs a dot-matrix screen and the eye confuse (the demo’s own families say so). */
const lookAlikes: Readonly<Record<string, string>> = {
  '0': 'O',
  O: '0',
  '1': 'I',
  I: '1',
  '5': 'S',
  S: '5',
  '8': 'B',
  B: '8',
  '2': 'Z',
  Z: '2',
  '6': 'G',
  G: '6',
};

interface CodeOf {
  readonly file: string;
  readonly family: string;
  readonly code: string;
  readonly line: number;
  readonly pattern: RegExp;
}

function codes(demo: Demo): CodeOf[] {
  return demo.linesWhere(/^profiles\//, /^code: "(.*)"$/).map(({ file, line, match }) => {
    const family = file.split('/')[1] ?? '';
    const pattern = demo.answers.base.families.get(family)?.data.code.pattern ?? '';
    return { file, family, code: match[1] ?? '', line, pattern: new RegExp(pattern) };
  });
}

export const codeKinds: readonly FaultKind[] = [
  {
    name: 'code of another profile',
    // Where the victim has other spellings, those are no longer its code written another way.
    rule: ['duplicate-code', 'code-pattern'],
    shownBy: 'two profiles of the family have it',
    make: (dice, demo) => {
      const all = codes(demo);
      const one = dice.pick(all);
      const other = dice.pick(all.filter(({ family, file }) => family === one.family && file !== one.file));
      return {
        ...onLine(demo, one.file, one.line, `code: "${other.code}"`),
        places: [
          { file: one.file, lines: [one.line, one.line + 2, one.line + 3] },
          { file: other.file, lines: [other.line] },
        ],
      };
    },
  },
  {
    name: 'other spelling that is another profile’s code',
    // In small letters it is no code of the family, to begin with.
    rule: ['duplicate-code', 'code-pattern'],
    shownBy: 'two profiles of the family are found by it',
    make: (dice, demo) => {
      const all = codes(demo);
      const one = dice.pick(all.filter(({ file }) => !demo.text(file).includes('otherSpellings')));
      const other = dice.pick(all.filter(({ family, file }) => family === one.family && file !== one.file));
      const spelling = dice.pick([other.code, other.code.toLowerCase(), other.code.replaceAll(/[-.]/g, ' ')]);
      return {
        ...onLine(
          demo,
          one.file,
          one.line,
          `${demo.lines(one.file)[one.line - 1]}\notherSpellings: ["${spelling}"]`,
        ),
        places: [
          { file: one.file, lines: [one.line + 1] },
          { file: other.file, lines: [other.line] },
        ],
      };
    },
  },
  {
    name: 'profile copied and not renamed inside',
    // The copy also cites bench sessions that have no reading of it.
    rule: ['duplicate-code', 'unsourced'],
    shownBy: 'two profiles have one code',
    make: (dice, demo) => {
      const one = dice.pick(codes(demo));
      const file = one.file.replace('.yaml', '-copy.yaml');
      const spellings = demo.text(one.file).includes('otherSpellings') ? [one.line + 2] : [];
      return {
        what: `${one.file} copied to ${file}`,
        edits: [{ file, content: demo.text(one.file) }],
        places: [
          { file, lines: 'any' },
          { file: one.file, lines: [one.line, ...spellings] },
        ],
      };
    },
  },
  {
    name: 'code that does not fit its family',
    rule: 'code-pattern',
    shownBy: 'the family says what a code looks like',
    make: (dice, demo) => {
      const one = dice.pick(codes(demo));
      const wrong = [
        one.code.replaceAll(/[-.]/g, ''),
        `${one.code}0`,
        one.code.slice(0, -1),
        one.code.toLowerCase(),
        `“${one.code}”`,
        one.code.replace('0x', ''),
      ].filter((code) => code !== one.code && code.length > 1 && !one.pattern.test(code));
      return onLine(demo, one.file, one.line, `code: "${dice.pick(wrong)}"`);
    },
  },
  {
    name: 'letter for a figure where the family has none',
    rule: 'code-pattern',
    shownBy: 'the family says which characters a place can hold',
    make: (dice, demo) => {
      const wrong = codes(demo).flatMap((one) =>
        [...one.code].flatMap((character, index) => {
          const other = lookAlikes[character];
          const code = one.code.slice(0, index) + (other ?? '') + one.code.slice(index + 1);
          return other && !one.pattern.test(code) ? [{ ...one, code }] : [];
        }),
      );
      const { file, line, code } = dice.pick(wrong);
      return onLine(demo, file, line, `code: "${code}"`);
    },
  },
  {
    name: 'look-alike code without a hint',
    rule: 'look-alike-codes',
    shownBy: 'on that screen the two differ in nothing a rider can tell',
    make: (dice, demo) => {
      const all = codes(demo);
      const alike = all.flatMap((one) =>
        [...one.code].flatMap((character, index) => {
          const other = lookAlikes[character];
          const code = one.code.slice(0, index) + (other ?? '') + one.code.slice(index + 1);
          return other && one.pattern.test(code) && !all.some((known) => known.code === code)
            ? [{ ...one, code }]
            : [];
        }),
      );
      const { file: like, line: at, family, code } = dice.pick(alike);
      const victim = dice.pick(
        all.filter(
          (one) =>
            one.family === family &&
            one.file !== like &&
            !/tellApart|otherSpellings/.test(demo.text(one.file)),
        ),
      );
      return {
        ...onLine(demo, victim.file, victim.line, `code: "${code}"`),
        places: [
          { file: victim.file, lines: [victim.line] },
          { file: like, lines: [at] },
        ],
      };
    },
  },
  {
    name: 'hint between look-alike codes deleted',
    rule: 'look-alike-codes',
    shownBy: '8B0S-I5Z and 8B0S-15Z differ in an I and a 1',
    make: (dice, demo) => {
      const files = demo.list(/^profiles\/brasslight\/8b0s-/);
      // One of the two may stay where the other’s hint has gone to an unrelated profile.
      const without = (file: string) => ({
        file,
        content: demo.text(file).replace(/^tellApart:\n {2}- from:.*\n {4}hint:.*\n/m, ''),
      });
      const order = dice.shuffled(files);
      return {
        what: `no tellApart in ${order.join(' and ')}`,
        edits: order.map(without),
        places: files.map((file) => ({ file, lines: [demo.lineOf(file, /^code:/)] })),
      };
    },
  },
  {
    name: 'pattern of a family that is no regular expression',
    rule: ['code-pattern', 'schema'],
    shownBy: 'a bracket in it is never closed',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^families\//, /^ {2}pattern: /));
      return onLine(demo, file, line, text.replace(']', ''));
    },
  },
  {
    name: 'pattern of a family that its codes do not fit',
    rule: 'code-pattern',
    shownBy: 'every profile of the family has another code',
    mostEchoes: 2,
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(/^families\//, /^ {2}pattern: .*\{[0-9]\}/));
      const family = file.slice('families/'.length, -'.md'.length);
      return {
        ...onLine(
          demo,
          file,
          line,
          text.replace(/\{([0-9])\}/, (_, count: string) => `{${Number(count) + 1}}`),
        ),
        places: [
          { file, lines: [line] },
          ...codes(demo)
            .filter((one) => one.family === family)
            .map((one) => ({ file: one.file, lines: [one.line] })),
        ],
      };
    },
  },
];
