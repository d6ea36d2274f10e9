/** Changes of value that lie within what is not known anyway. */
import type { Demo, Row } from '../demo.ts';
import { type Edit, rowText } from '../demo.ts';
import type { Dice } from '../dice.ts';
import type { HarmlessKind } from '../harmless.ts';
import { written } from '../kinds/readings.ts';

/** Rows of one sheet loud enough that half a millivolt is within the meter’s own counts. */
function loudRows(dice: Dice, demo: Demo): Row[] {
  const file = dice.pick(demo.list(/readings\.csv$/));
  return demo.rows.filter((row) => row.file === file && Number(row.volts) > 1);
}

function fieldOf(
  demo: Demo,
  dice: Dice,
  files: RegExp,
  line: RegExp,
  change: (text: string) => string,
): { what: string; edits: Edit[] } {
  const { file, line: at, text } = dice.pick(demo.linesWhere(files, line));
  return {
    what: `${file}:${at} “${text}” → “${change(text)}”`,
    edits: [demo.withLine(file, at, change(text))],
  };
}

export const valueKinds: readonly HarmlessKind[] = [
  {
    name: 'readings rounded to the millivolt',
    make: (dice, demo) => {
      const rows = loudRows(dice, demo);
      return {
        what: `${rows[0]?.file}: ${rows.length} readings rounded`,
        edits: [demo.withRows(rows, ({ volts }) => ({ volts: Number(volts).toFixed(3) }))],
      };
    },
  },
  {
    name: 'a reading off by a count',
    make: (dice, demo) => {
      const row = dice.pick(loudRows(dice, demo));
      const { resolutionVolts } = demo.session(row.session).instrument;
      const volts = written(row.volts, Number(row.volts) + dice.pick([-1, 1]) * resolutionVolts);
      return {
        what: `${row.file}:${row.line} ${row.volts} → ${volts}`,
        edits: [demo.withRows([row], () => ({ volts }))],
      };
    },
  },
  {
    name: 'distortion rounded',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ thd }) => thd !== '' && Number(thd) > 0.1));
      const thd = Number(row.thd).toFixed(2);
      return {
        what: `${row.file}:${row.line} ${row.thd} → ${thd}`,
        edits: [demo.withRows([row], () => ({ thd }))],
      };
    },
  },
  {
    name: 'one more repeat',
    make: (dice, demo) => {
      const row = dice.pick(demo.rows.filter(({ repeat, volts }) => repeat === 3 && Number(volts) > 0.5));
      const again = rowText({
        ...row,
        repeat: 4,
        volts: written(row.volts, Number(row.volts) * dice.between(0.9995, 1.0005)),
      });
      return {
        what: `${row.file}: a fourth repeat after line ${row.line}`,
        edits: [demo.withLine(row.file, row.line, `${rowText(row)}\n${again}`)],
      };
    },
  },
  {
    name: 'readings set aside with a reason',
    make: (dice, demo) => {
      const choices = [...demo.answers.base.readings.values()].flatMap(({ session, profiles }) =>
        profiles
          .filter((profile) => demo.likeSessions(session, profile).length > 0)
          .map((profile) => ({ session, profile })),
      );
      const { session, profile } = dice.pick(choices);
      const file = `outputs/${session}/session.yaml`;
      const line = demo.lineOf(file, /^method:/);
      const aside = `setAside:\n  - profiles: [${profile}]\n    reason: One lead was found loose after the session.\n    by: Bench lead\n    date: 2026-10-01`;
      return {
        what: `${file}: ${profile} set aside`,
        edits: [demo.withLine(file, line, `${aside}\n${demo.lines(file)[line - 1]}`)],
      };
    },
  },
  {
    name: 'a wider tolerance of a statement',
    make: (dice, demo) =>
      fieldOf(demo, dice, /^statements\//, /tolerance[A-Za-z]+: [0-9.]+$/, (text) =>
        text.replace(/[0-9.]+$/, (value) => String(Number(value) * 2)),
      ),
  },
  {
    name: 'a control drawn a millimetre further on',
    make: (dice, demo) =>
      fieldOf(demo, dice, /^families\//, /^ {4}- \{ id: .*xMm: [0-9]+/, (text) =>
        text.replace(/xMm: ([0-9]+)/, (_, mm: string) => `xMm: ${Number(mm) + 1}`),
      ),
  },
  {
    name: 'trust in a source reconsidered',
    make: (dice, demo) => fieldOf(demo, dice, /^sources\//, /^trust: medium$/, () => 'trust: low'),
  },
];
