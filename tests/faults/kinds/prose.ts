/** Mistakes in Markdown bodies and in plans. */
import type { Demo, LineMatch } from '../demo.ts';
import { type FaultKind, onLine } from '../kind.ts';

const prose = /^(guides|families)\//;

/** Lines of body text that are plain sentences. */
function sentences(demo: Demo): LineMatch[] {
  return demo
    .linesWhere(prose, /^[A-Z][a-z].*$/)
    .filter(({ file, line }) => line > demo.lines(file).indexOf('---', 1) + 1);
}

export const proseKinds: readonly FaultKind[] = [
  {
    name: 'number with its unit in prose',
    rule: 'bare-value',
    shownBy: 'values in prose are drawn from the readings',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(sentences(demo));
      const value = dice.pick(['7.6 V', '4 Ω', '60 Hz', '14.4 volts', '6 dB', '350 mV', '2 kHz', '50 W']);
      return onLine(demo, file, line, `${text} That is about ${value} here.`);
    },
  },
  {
    name: 'number with its unit in a table of a guide',
    rule: 'bare-value',
    shownBy: 'values in prose are drawn from the readings',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/^guides\//));
      const lines = demo.lines(file).length;
      const table = `\n| Family | Clean |\n|---|---|\n| Brasslight | ${dice.pick(['7.6 V', '10 dBu', '1.2 V'])} |\n`;
      return {
        what: `${file} with a table of volts`,
        edits: [{ file, content: `${demo.text(file)}${table}` }],
        places: [{ file, lines: [lines + 3] }],
      };
    },
  },
  {
    name: 'value drawn from nothing',
    rule: ['dangling-value', 'dangling-link'],
    shownBy: 'there is no such profile',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(sentences(demo));
      return onLine(demo, file, line, `${text} Here :value[brasslight/8b0s-i5x clean-volts] were read.`);
    },
  },
  {
    name: 'link in prose to a page that is not there',
    rule: ['prose-links', 'dangling-link', 'prose-link'],
    shownBy: 'there is no such page',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(sentences(demo));
      const to = dice.pick([
        '/guides/no-such-guide/',
        '/guides/read-the-activ-code/',
        '/units/brasslite/',
        '/plans/',
      ]);
      return onLine(demo, file, line, `${text} See [the other page](${to === '/plans/' ? '/plan/' : to}).`);
    },
  },
  {
    name: 'heading that skips a level',
    rule: ['prose-links', 'prose-headings', 'headings'],
    shownBy: 'a page’s headings go down one level at a time',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(demo.linesWhere(prose, /^## /));
      return onLine(demo, file, line, text.replace('## ', dice.pick(['# ', '#### '])));
    },
  },
  {
    name: 'input range of a plan the wrong way round',
    rule: 'range-reversed',
    shownBy: 'the least is more than the most',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(
        demo.linesWhere(/^plans\//, /^input: \{ leastVolts: ([0-9.]+), mostVolts: ([0-9.]+) \}$/),
      );
      return onLine(demo, file, line, `input: { leastVolts: ${match[2]}, mostVolts: ${match[1]} }`);
    },
  },
];
