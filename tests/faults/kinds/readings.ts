/** Mistakes in single readings: what a tired hand at the bench or the keyboard makes of a row. */
import type { Demo, Row } from '../demo.ts';
import { rowText } from '../demo.ts';
import type { Dice } from '../dice.ts';
import type { FaultKind, Mistake } from '../kind.ts';
import { onLine } from '../kind.ts';

/** Rules that know a reading off its place: by another session, by the volume law, by a telling ratio. */
export const offRules = ['unit-slip', 'sessions-disagree', 'level-falls', 'impossible-reading'];

/** A mistake in one row. */
export function onRow(demo: Demo, row: Row, change: Partial<Row>): Mistake {
  return onLine(demo, row.file, row.line, rowText({ ...row, ...change }));
}

/**
 * Rows of the front channel at 1 kHz in the clean region, read once, with clean neighbours on both sides. The
 * volume law alone shows what is off there: a step is 1.2 to 2 dB, so what is off by more than a step and a
 * half falls below a neighbour or rises above one.
 */
export function onScale(demo: Demo, more: (row: Row) => boolean = () => true): Row[] {
  const repeated = new Set(
    demo.rows.filter(({ repeat }) => repeat > 1).map((row) => `${row.session} ${row.profile} ${row.step}`),
  );
  return demo.rows.filter(
    (row) =>
      row.channel === 'FL' &&
      row.hz === 1000 &&
      row.step >= 4 &&
      row.step < demo.cleanStep(row.profile) - 1 &&
      Number(row.volts) > 0.05 &&
      !repeated.has(`${row.session} ${row.profile} ${row.step}`) &&
      more(row),
  );
}

/** Rows of `rows` that another session under like conditions read too. */
export function readTwice(demo: Demo, rows: readonly Row[]): Row[] {
  const read = new Set(demo.rows.map((row) => pointKey(row.session, row)));
  return rows.filter((row) =>
    demo.likeSessions(row.session, row.profile).some((session) => read.has(pointKey(session, row))),
  );
}

function pointKey(session: string, { profile, channel, step, hz }: Row): string {
  return `${session} ${profile} ${channel} ${step} ${hz}`;
}

/** Rows of a response (front left, not 1 kHz), not at its ends, that two sessions read. */
function onResponse(demo: Demo): Row[] {
  return readTwice(
    demo,
    demo.rows.filter(
      (row) =>
        row.channel === 'FL' && row.hz > 30 && row.hz < 15_000 && row.hz !== 1000 && Number(row.volts) > 0.1,
    ),
  );
}

/** The number written with as many decimals as it had. */
export function written(like: string, volts: number): string {
  return volts.toFixed(like.split('.')[1]?.length ?? 0);
}

/** Volts times ten or a tenth. */
function shifted(dice: Dice, { volts }: Row): string {
  return written(volts, Number(volts) * dice.pick([0.1, 10]));
}

const bySession = 'another session read the same point under like conditions';
const byLaw = 'the level at the next steps: it would fall as the volume rises';

export const readingKinds: readonly FaultKind[] = [
  {
    name: 'shifted decimal, read by another session too',
    rule: offRules,
    shownBy: bySession,
    make: (dice, demo) => {
      const row = dice.pick(readTwice(demo, onScale(demo)));
      return onRow(demo, row, { volts: shifted(dice, row) });
    },
  },
  {
    name: 'shifted decimal, read by one session only',
    rule: offRules,
    shownBy: byLaw,
    make: (dice, demo) => {
      const row = dice.pick(
        onScale(demo, ({ session, profile }) => demo.likeSessions(session, profile).length === 0),
      );
      return onRow(demo, row, { volts: shifted(dice, row) });
    },
  },
  {
    name: 'shifted decimal in a response',
    rule: offRules,
    shownBy: bySession,
    make: (dice, demo) => {
      const row = dice.pick(onResponse(demo));
      return onRow(demo, row, { volts: shifted(dice, row) });
    },
  },
  {
    name: 'two figures swapped',
    rule: offRules,
    shownBy: bySession,
    make: (dice, demo) => {
      const swapped = readTwice(demo, onScale(demo)).flatMap((row) => {
        const volts = row.volts.replace(/([1-9])(\.?)(\d)/, '$3$2$1');
        const ratio = Number(volts) / Number(row.volts);
        // At least 1.6 dB, well past what any two benches differ by.
        return ratio > 1.2 || ratio < 1 / 1.2 ? [{ row, volts }] : [];
      });
      const { row, volts } = dice.pick(swapped);
      return onRow(demo, row, { volts });
    },
  },
  {
    name: 'peak for rms in one row',
    rule: offRules,
    shownBy: `${bySession}, or ${byLaw}`,
    make: (dice, demo) => {
      const row = dice.pick(onScale(demo));
      return onRow(demo, row, { volts: written(row.volts, Number(row.volts) * Math.SQRT2) });
    },
  },
  {
    name: 'peak to peak for rms in one row',
    rule: offRules,
    shownBy: `${bySession}, or ${byLaw}`,
    make: (dice, demo) => {
      const row = dice.pick(onScale(demo));
      return onRow(demo, row, { volts: written(row.volts, Number(row.volts) * 2 * Math.SQRT2) });
    },
  },
  {
    name: 'millivolts for volts in one row',
    rule: [...offRules, 'schema'],
    shownBy: 'no output gives as many volts',
    make: (dice, demo) => {
      const row = dice.pick(onScale(demo));
      return onRow(demo, row, { volts: (Number(row.volts) * 1000).toFixed(1) });
    },
  },
  {
    name: 'decibels for volts in one row',
    rule: offRules,
    shownBy: `${bySession}, or ${byLaw}`,
    make: (dice, demo) => {
      // dBV of more than 1.2 V is positive, and twice the volts or more off what it stands for.
      const row = dice.pick(onScale(demo, ({ volts }) => Number(volts) > 1.4));
      return onRow(demo, row, { volts: (20 * Math.log10(Number(row.volts))).toFixed(2) });
    },
  },
  {
    name: 'more than the supply can give',
    rule: ['impossible-reading', 'unit-slip'],
    shownBy: 'the supply and what kind of output it is',
    make: (dice, demo) => {
      const row = dice.pick(onScale(demo, ({ volts }) => Number(volts) > 1.3));
      return onRow(demo, row, { volts: written(row.volts, Number(row.volts) * 10) });
    },
  },
  {
    name: 'distortion as a ratio, not per cent',
    rule: 'unit-slip',
    shownBy: 'the analyser cannot tell as little',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ thd }) => thd !== '' && Number(thd) < 1));
      return onRow(demo, row, { thd: (Number(row.thd) / 100).toFixed(5) });
    },
  },
  {
    name: 'volts and distortion swapped in a row',
    rule: [...offRules, 'swapped-cells'],
    shownBy: `${bySession}, or ${byLaw}`,
    make: (dice, demo) => {
      const row = dice.pick(onScale(demo, ({ volts, thd }) => thd !== '' && Number(volts) > 3 * Number(thd)));
      return onRow(demo, row, { volts: row.thd, thd: row.volts });
    },
  },
  {
    name: 'step and repeat swapped in a row',
    rule: [...offRules, 'repeated-row'],
    shownBy: 'as many repeats were taken at no step, and the level is not that of step 1',
    make: (dice, demo) => {
      const row = dice.pick(onScale(demo, ({ step }) => step > 8));
      return onRow(demo, row, { step: row.repeat, repeat: row.step });
    },
  },
  {
    name: 'step the unit does not have',
    rule: 'not-of-the-unit',
    shownBy: 'the family says how far the volume goes',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ step }) => step > 4));
      return onRow(demo, row, { step: row.step < 20 ? row.step * 10 : row.step + 30 });
    },
  },
  {
    name: 'frequency outside the meter’s specification',
    rule: ['impossible-reading', 'schema'],
    shownBy: 'the instrument’s accuracy bands',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ hz }) => hz > 5000 || hz < 90));
      return onRow(demo, row, { hz: row.hz > 5000 ? row.hz * 10 : Number((row.hz / 10).toPrecision(6)) });
    },
  },
  {
    name: 'nought lost from a frequency',
    rule: 'repeated-row',
    shownBy: 'the response holds a reading at 100 Hz of that step already',
    make: (dice, demo) => {
      const at100 = new Map(
        demo.rows
          .filter(({ hz }) => hz === 100)
          .map((row) => [pointKey(row.session, { ...row, hz: 1000 }), row]),
      );
      const row = dice.pick(
        demo.rows.filter(
          (one) => one.hz === 1000 && one.repeat === 1 && at100.has(pointKey(one.session, one)),
        ),
      );
      const other = at100.get(pointKey(row.session, row)) ?? row;
      return {
        ...onRow(demo, row, { hz: 100 }),
        places: [{ file: row.file, lines: [row.line, other.line] }],
      };
    },
  },
  {
    name: 'row entered twice',
    rule: 'repeated-row',
    shownBy: 'the same point and repeat stand in the sheet already',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows);
      const after = dice.chance() ? row.line : demo.lines(row.file).length - 1;
      const places = [{ file: row.file, lines: [row.line, after + 1] }];
      return {
        what: `${row.file}:${row.line} again in line ${after + 1}`,
        edits: [demo.withLine(row.file, after, `${demo.lines(row.file)[after - 1]}\n${rowText(row)}`)],
        places,
      };
    },
  },
  {
    name: 'repeat not counted on',
    rule: 'repeated-row',
    shownBy: 'the same point and repeat stand in the sheet already',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ repeat }) => repeat > 1));
      return {
        ...onRow(demo, row, { repeat: row.repeat - 1 }),
        places: [{ file: row.file, lines: [row.line, row.line - 1] }],
      };
    },
  },
  {
    name: 'row copied down, volts not typed over',
    rule: [...offRules, 'misplaced-row'],
    shownBy: `${bySession}; and volts and distortion are those of the row above to the last figure`,
    make: (dice, demo) => {
      const row = dice.pick(readTwice(demo, onScale(demo)));
      const above = demo.rows.find(
        (one) =>
          one.file === row.file &&
          one.profile === row.profile &&
          one.channel === 'FL' &&
          one.hz === 1000 &&
          one.step === row.step - 1,
      );
      if (!above) throw new Error(`no row above ${row.file}:${row.line}`);
      return onRow(demo, row, { volts: above.volts, thd: above.thd });
    },
  },
  {
    name: 'two rows swapped',
    rule: [...offRules, 'misplaced-row'],
    shownBy: byLaw,
    make: (dice, demo) => {
      const rows = onScale(demo);
      const pairs = rows.flatMap((row) => {
        const next = rows.find(
          (one) => one.line === row.line + 1 && one.file === row.file && one.step === row.step + 1,
        );
        return next ? [[row, next] as const] : [];
      });
      const [a, b] = dice.pick(pairs);
      return {
        what: `${a.file}:${a.line} and ${b.line} with each other’s volts`,
        edits: [
          demo.withLines(
            a.file,
            new Map([
              [a.line, rowText({ ...a, volts: b.volts, thd: b.thd })],
              [b.line, rowText({ ...b, volts: a.volts, thd: a.thd })],
            ]),
          ),
        ],
        places: [{ file: a.file, lines: [a.line, b.line] }],
      };
    },
  },
  {
    name: 'slip in one of three repeats',
    rule: [...offRules, 'repeats-disagree'],
    shownBy: 'the other two repeats',
    make: (dice, demo) => {
      const row = dice.pick(
        demo.rows.filter(
          (one) =>
            one.repeat > 1 &&
            one.step >= 4 &&
            one.step < demo.cleanStep(one.profile) &&
            Number(one.volts) > 0.1,
        ),
      );
      return onRow(demo, row, { volts: shifted(dice, row) });
    },
  },
];
