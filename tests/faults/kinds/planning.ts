/** Mistakes in what plans are made of: classes of equipment, and the table that decides plans. */
import type { Demo, LineMatch } from '../demo.ts';
import type { Dice } from '../dice.ts';
import { type FaultKind, onLine } from '../kind.ts';
import { misspelt } from './shape.ts';

const equipment = /^equipment\//;

function amplifierLine(dice: Dice, demo: Demo, pattern: RegExp): LineMatch {
  return dice.pick(
    demo.linesWhere(equipment, pattern).filter(({ file }) => demo.text(file).includes('is: amplifier')),
  );
}

export const planningKinds: readonly FaultKind[] = [
  {
    name: 'the ends of an amplifier’s input range exchanged',
    rule: 'range-reversed',
    shownBy: 'no input lies in it',
    make: (dice, demo) => {
      const { file, line, match } = amplifierLine(dice, demo, /^leastVolts: (.*)$/);
      const most = /^mostVolts: (.*)$/m.exec(demo.text(file))?.[1] ?? '';
      const content = demo
        .text(file)
        .replace(/^leastVolts: .*$/m, `leastVolts: ${most}`)
        .replace(/^mostVolts: .*$/m, `mostVolts: ${match[1]}`);
      return {
        what: `${file}: leastVolts and mostVolts exchanged`,
        edits: [{ file, content }],
        places: [{ file, lines: [line, line + 1] }],
      };
    },
  },
  {
    name: 'a least load above the rated one',
    rule: 'range-reversed',
    shownBy: 'an amplifier may drive the load it is rated into',
    make: (dice, demo) => {
      const { file, line } = amplifierLine(dice, demo, /^leastOhms: /);
      return onLine(demo, file, line, 'leastOhms: 8');
    },
  },
  {
    name: 'a unit typed into a number of equipment',
    rule: 'schema',
    shownBy: 'the field holds a number',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(equipment, /^ratedWatts: /));
      return onLine(demo, file, line, `${text} W`);
    },
  },
  {
    name: 'a place of a speaker misspelt',
    rule: 'schema',
    shownBy: 'there is no such place',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(demo.linesWhere(equipment, /^place: (.*)$/));
      const slip = misspelt(match[1] ?? '', (n) => dice.below(n));
      return onLine(demo, file, line, `place: ${slip}`);
    },
  },
  {
    name: 'a number with its unit in the words of equipment',
    rule: 'bare-value',
    shownBy: 'a number in prose goes stale',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(equipment, /^name: /));
      return onLine(demo, file, line, `${text}, ${dice.below(90) + 10} W`);
    },
  },
  {
    name: 'a second table that decides plans',
    rule: 'plan-table',
    shownBy: 'another table decides them already',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo
          .linesWhere(/^tables\//, /^hit: /)
          .filter((one) => !demo.text(one.file).includes('decides: plan')),
      );
      const [own] = demo.list(/^tables\//).filter((one) => demo.text(one).includes('decides: plan'));
      const { what, edits } = onLine(demo, file, line, `${text}\ndecides: plan`);
      // It is told of the table that comes second.
      return { what, edits, places: [file, own ?? ''].map((one) => ({ file: one, lines: 'any' as const })) };
    },
  },
  {
    name: 'a verdict misspelt wherever it stands',
    rule: 'plan-table',
    shownBy: 'the planner knows no such verdict',
    make: (dice, demo) => {
      const [file = ''] = demo.list(/^tables\//).filter((one) => demo.text(one).includes('decides: plan'));
      const slip = misspelt('keep-and-correct', (n) => dice.below(n));
      const content = demo.text(file).replaceAll('keep-and-correct', slip);
      const lines = content.split('\n').flatMap((text, at) => (text.includes('values:') ? [at + 1] : []));
      return { what: `${file}: “${slip}”`, edits: [{ file, content }], places: [{ file, lines }] };
    },
  },
];
