/** Mistakes in families: years, steps, outputs, controls, cautions. */
import type { Demo, Row } from '../demo.ts';
import { type Expected, type FaultKind, onLine } from '../kind.ts';

interface Fitment {
  readonly file: string;
  readonly line: number;
  readonly text: string;
  readonly model: string;
  readonly from: number;
  readonly to: number;
}

function fitments(demo: Demo): Fitment[] {
  return demo
    .linesWhere(/^families\//, /model: (\w+), fromYear: (\d+), toYear: (\d+)/)
    .map(({ file, line, text, match: [, model = '', from, to] }) => ({
      file,
      line,
      text,
      model,
      from: Number(from),
      to: Number(to),
    }));
}

/** The fitment that follows on `one` in its model line. */
function next(demo: Demo, one: Fitment): Fitment | undefined {
  return fitments(demo).find(({ model, from }) => model === one.model && from === one.to + 1);
}

function rowPlaces(rows: readonly Row[]): Expected[] {
  return [...new Set(rows.map(({ file }) => file))].map((file) => ({
    file,
    lines: rows.filter((row) => row.file === file).map(({ line }) => line),
  }));
}

export const familyKinds: readonly FaultKind[] = [
  {
    name: 'gap in the years of a model',
    rule: 'fitment-gap',
    shownBy: 'the model line has units before and after',
    make: (dice, demo) => {
      const one = dice.pick(fitments(demo).filter((fitment) => next(demo, fitment)));
      const after = next(demo, one) ?? one;
      const years = 1 + dice.below(2);
      const [victim, text] = dice.chance()
        ? [one, one.text.replace(`toYear: ${one.to}`, `toYear: ${one.to - years}`)]
        : [after, after.text.replace(`fromYear: ${after.from}`, `fromYear: ${after.from + years}`)];
      return {
        ...onLine(demo, victim.file, victim.line, text),
        places: [one, after].map(({ file, line }) => ({ file, lines: [line] })),
      };
    },
  },
  {
    name: 'years the wrong way round',
    rule: 'fitment-range',
    shownBy: 'the last year lies before the first',
    make: (dice, demo) => {
      const { file, line, text, from, to } = dice.pick(fitments(demo));
      return onLine(
        demo,
        file,
        line,
        text.replace(`${from}`, 'x').replace(`${to}`, `${from}`).replace('x', `${to}`),
      );
    },
  },
  {
    name: 'years that overlap, with the same things to see',
    rule: 'fitment-undecided',
    shownBy: 'two families of one model and year say the same of their looks',
    mostEchoes: 4,
    make: (dice, demo) => {
      const one = dice.pick(fitments(demo).filter((fitment) => next(demo, fitment)));
      const after = next(demo, one) ?? one;
      const identify = /^identify:\n([\s\S]*?)^face:/m;
      const features = (identify.exec(demo.text(after.file))?.[1] ?? '').replaceAll(
        /^ {4}control:.*\n/gm,
        '',
      );
      const content = demo
        .text(one.file)
        .replace(one.text, one.text.replace(`toYear: ${one.to}`, `toYear: ${one.to + 2}`))
        .replace(identify, `identify:\n${features}face:`);
      return {
        what: `${one.file}: ${one.model} to ${one.to + 2}, identified as ${after.file}`,
        edits: [{ file: one.file, content }],
        places: [one.file, after.file].map((file) => ({ file, lines: 'any' })),
      };
    },
  },
  {
    name: 'digit slip in the highest step',
    rule: 'not-of-the-unit',
    shownBy: 'sheets hold readings at higher steps',
    make: (dice, demo) => {
      const { file, line, text, match } = dice.pick(demo.linesWhere(/^families\//, /highestStep: (\d+)/));
      const highest = Number(match[1]);
      const wrong = dice.pick([Math.floor(highest / 10), highest - 10]);
      const family = file.slice('families/'.length, -'.md'.length);
      return {
        ...onLine(demo, file, line, text.replace(`highestStep: ${highest}`, `highestStep: ${wrong}`)),
        places: [
          { file, lines: [line] },
          ...rowPlaces(demo.rows.filter((row) => row.profile.startsWith(`${family}/`) && row.step > wrong)),
        ],
      };
    },
  },
  {
    name: 'lowest and highest step swapped',
    rule: 'range-reversed',
    shownBy: 'the lowest lies above the highest',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(
        demo.linesWhere(/^families\//, /^volume: \{ lowestStep: (\d+), highestStep: (\d+) \}$/),
      );
      const family = file.slice('families/'.length, -'.md'.length);
      const low = Math.max(1, Number(match[1]));
      return {
        ...onLine(demo, file, line, `volume: { lowestStep: ${match[2]}, highestStep: ${low} }`),
        places: [
          { file, lines: [line] },
          ...rowPlaces(demo.rows.filter((row) => row.profile.startsWith(`${family}/`))),
        ],
      };
    },
  },
  {
    name: 'output left out of a family',
    rule: 'not-of-the-unit',
    shownBy: 'sheets hold readings of it',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(/^families\//, /^ {2}channels: \[FL, FR, RL, RR\]$/));
      const family = file.slice('families/'.length, -'.md'.length);
      const lost = dice.pick(['FL', 'FR', 'RL', 'RR']);
      const left = ['FL', 'FR', 'RL', 'RR'].filter((one) => one !== lost);
      return {
        ...onLine(demo, file, line, `  channels: [${left.join(', ')}]`),
        places: [
          { file, lines: [line] },
          ...rowPlaces(
            demo.rows.filter((row) => row.profile.startsWith(`${family}/`) && row.channel === lost),
          ),
        ],
      };
    },
  },
  {
    name: 'feature that points to a control the face lacks',
    rule: ['unknown-control', 'dangling-link'],
    shownBy: 'the face has no such control',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(/^families\//, /^ {4}control: /));
      return onLine(
        demo,
        file,
        line,
        `    control: ${dice.pick(['eject', 'preset-9', 'volumes', 'knob-3'])}`,
      );
    },
  },
  {
    name: 'control drawn outside the face',
    rule: 'off-the-face',
    shownBy: 'the face is not as wide',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^families\//, /^ {4}- \{ id: .* xMm: [0-9]{2,3},/),
      );
      return onLine(
        demo,
        file,
        line,
        text.replace(
          /xMm: ([0-9]+)/,
          (_, mm: string) => `xMm: ${mm.length > 2 ? `9${mm.slice(1)}` : `${mm}0`}`,
        ),
      );
    },
  },
  {
    name: 'bridged outputs without their caution',
    rule: 'missing-caution',
    shownBy: 'the family says its outputs are bridged',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(/^families\//, /^ {2}- bridged-outputs$/));
      return {
        what: `${file} without the caution bridged-outputs`,
        edits: [demo.withLine(file, line, undefined)],
        places: [{ file, lines: 'any' }],
      };
    },
  },
];
