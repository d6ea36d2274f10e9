/** Mistakes in where things come from. */
import { type FaultKind, onLine } from '../kind.ts';

/** The later machines: nothing written before 2014 can speak of them. */
const laterProfile = /(northpane)\//;

export const sourceKinds: readonly FaultKind[] = [
  {
    name: 'source line deleted',
    rule: 'unsourced',
    shownBy: 'a measurement or statement names no source',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(/^statements\/|session\.yaml$/, /^source: /));
      return {
        what: `${file} without its source`,
        edits: [demo.withLine(file, line, undefined)],
        places: [{ file, lines: [line] }],
      };
    },
  },
  {
    name: 'list of sources emptied',
    rule: 'unsourced',
    shownBy: 'the entry rests on nothing',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(/^(plans|sequences)\//, /^sources: \[/));
      return onLine(demo, file, line, 'sources: []');
    },
  },
  {
    name: 'profile cut off before its sources',
    rule: 'unsourced',
    shownBy: 'the entry rests on nothing',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(/^profiles\//, /^sources:$/));
      return {
        what: `${file} cut off before line ${line}`,
        edits: [
          {
            file,
            content: `${demo
              .lines(file)
              .slice(0, line - 1)
              .join('\n')}\n`,
          },
        ],
        places: [{ file, lines: [1, 2] }],
      };
    },
  },
  {
    name: 'readings that cite a bulletin',
    rule: 'unsourced',
    shownBy: 'a bench session is its own source, of that kind',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(/session\.yaml$/, /^source: /));
      const other = dice.pick([
        'kestrane-bulletin-14-07',
        'kestrane-unit-data-sheet',
        'telephone-notes-2026',
      ]);
      return onLine(demo, file, line, `source: ${other}`);
    },
  },
  {
    name: 'statement that cites a bench session',
    rule: 'unsourced',
    shownBy: 'what the bench found is computed, not stated',
    make: (dice, demo) => {
      const { file, line } = dice.pick(demo.linesWhere(/^statements\//, /^source: /));
      const bench = dice.pick(demo.list(/^sources\/bench-/)).slice('sources/'.length, -'.yaml'.length);
      return onLine(demo, file, line, `source: ${bench}`);
    },
  },
  {
    name: 'statement given to a bulletin from before the machine',
    rule: 'source-too-old',
    shownBy: 'the bulletin is of 2014, the family of 2019',
    make: (dice, demo) => {
      const { file, line } = dice.pick(
        demo
          .linesWhere(/^statements\//, /^source: kestrane-bulletin-22-03$/)
          .filter((one) => laterProfile.test(demo.text(one.file))),
      );
      return {
        ...onLine(demo, file, line, 'source: kestrane-bulletin-14-07'),
        // The claim about the later machine may be named in its place.
        places: [
          {
            file,
            lines: [line, ...demo.linesWhere(new RegExp(`^${file}$`), laterProfile).map((one) => one.line)],
          },
        ],
      };
    },
  },
  {
    name: 'profile given to a bulletin from before the machine',
    rule: 'source-too-old',
    shownBy: 'the bulletin is of 2014, the family of 2019 or later',
    make: (dice, demo) => {
      const { file, line } = dice.pick(
        demo.linesWhere(
          /^profiles\/(northpane|lanternby)\//,
          /^ {2}- kestrane-(bulletin-22-03|unit-data-sheet)$/,
        ),
      );
      return onLine(demo, file, line, '  - kestrane-bulletin-14-07');
    },
  },
  {
    name: 'wrong year of a bulletin',
    rule: 'source-too-old',
    shownBy: 'machines it speaks of came years later',
    mostEchoes: 10,
    make: (dice, demo) => {
      const file = 'sources/kestrane-bulletin-22-03.yaml';
      const line = demo.lineOf(file, /^date:/);
      const year = dice.pick([2002, 2012, 2013]);
      return {
        ...onLine(demo, file, line, `date: ${year}-03-28`),
        places: [
          { file, lines: [line] },
          ...demo
            .list(/^(statements|profiles|families|sequences|guides)\//)
            .map((one) => ({ file: one, lines: 'any' as const })),
        ],
      };
    },
  },
  {
    name: 'wrong year of a session',
    rule: ['source-too-old', 'source-chain', 'dates-disagree', 'unsourced'],
    shownBy: 'its source entry is dated otherwise',
    mostEchoes: 10,
    make: (dice, demo) => {
      const { file, line, text, match } = dice.pick(demo.linesWhere(/session\.yaml$/, /^date: ([0-9]{4})/));
      const year = Number(match[1]);
      const wrong = dice.pick([year - 1, year - 10, year + 1]);
      const source = `sources/bench-${file.split('/')[1]}.yaml`;
      return {
        ...onLine(demo, file, line, text.replace(String(year), String(wrong))),
        places: [
          { file, lines: [line, demo.lineOf(file, /^source:/)] },
          { file: source, lines: 'any' },
        ],
      };
    },
  },
  {
    name: 'profile that cites a session which did not measure it',
    rule: ['source-chain', 'unsourced', 'unmeasured'],
    shownBy: 'the sheet of that session has no row of it',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(demo.linesWhere(/^profiles\//, /^ {2}- bench-(.*)$/));
      const id = file.slice('profiles/'.length, -'.yaml'.length);
      const others = [...demo.answers.base.readings.values()]
        .filter(({ session, profiles }) => session !== match[1] && !profiles.includes(id))
        .map(({ session }) => session);
      return onLine(demo, file, line, `  - bench-${dice.pick(others)}`);
    },
  },
];
