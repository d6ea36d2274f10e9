/** Mistakes in whole blocks of a sheet, and in the conditions of a session. */
import type { Demo, Row } from '../demo.ts';
import type { Dice } from '../dice.ts';
import { type Expected, type FaultKind, type Mistake, onLine } from '../kind.ts';
import { offRules, onScale, written } from './readings.ts';

function linesOf(rows: readonly Row[]): Expected[] {
  return [...new Set(rows.map(({ file }) => file))].map((file) => ({
    file,
    lines: rows.filter((row) => row.file === file).map(({ line }) => line),
  }));
}

/** Lines of statements that speak of a profile. */
function claimsOf(demo: Demo, profile: string): Expected[] {
  return demo
    .list(/^statements\//)
    .filter((file) => demo.text(file).includes(profile))
    .map((file) => ({ file, lines: 'any' }));
}

/** A session’s rows of one profile that another session under like conditions measured. */
function blockReadTwice(dice: Dice, demo: Demo): Row[] {
  const pairs = [...demo.answers.base.readings.values()].flatMap(({ session, profiles }) =>
    profiles
      .filter((profile) => demo.likeSessions(session, profile).length > 0)
      .map((profile) => ({ session, profile })),
  );
  const { session, profile } = dice.pick(pairs);
  return demo.rows.filter((row) => row.session === session && row.profile === profile);
}

/** Profiles whose rear differs from their front, by what the readings say. */
function rearApart(demo: Demo): string[] {
  return [...demo.answers.outputs.values()]
    .filter(
      ({ mutedChannels, characteristics }) =>
        mutedChannels.length > 0 ||
        characteristics.some((one) => one.name === 'rear-to-front' && one.value < -2.5),
    )
    .map(({ profile }) => profile);
}

function scaled(demo: Demo, rows: readonly Row[], factor: number, what: string): Mistake {
  const [first] = rows;
  return {
    what: `${first?.file}: ${what} in all rows of ${first?.profile}`,
    edits: [demo.withRows(rows, ({ volts }) => ({ volts: written(volts, Number(volts) * factor) }))],
    places: linesOf(rows),
  };
}

export const sheetKinds: readonly FaultKind[] = [
  {
    name: 'peak for rms throughout a profile',
    rule: offRules,
    shownBy: 'another session under like conditions; peak is the higher of the two',
    make: (dice, demo) => scaled(demo, blockReadTwice(dice, demo), Math.SQRT2, 'peak for rms'),
  },
  {
    name: 'millivolts for volts in the quiet rows of a profile',
    rule: [...offRules, 'schema'],
    shownBy: 'the level falls by a thousand where the rows in volts begin',
    mostEchoes: 4,
    make: (dice, demo) => {
      const quiet = onScale(demo, ({ volts }) => Number(volts) < 0.1);
      const { session, profile } = dice.pick(quiet);
      const rows = demo.rows.filter(
        (row) =>
          row.session === session &&
          row.profile === profile &&
          row.channel === 'FL' &&
          row.hz === 1000 &&
          row.step > 0 &&
          Number(row.volts) < 0.1,
      );
      return {
        what: `${rows[0]?.file}: millivolts in ${rows.length} quiet rows of ${profile}`,
        edits: [demo.withRows(rows, ({ volts }) => ({ volts: (Number(volts) * 1000).toFixed(1) }))],
        places: linesOf(rows),
      };
    },
  },
  {
    name: 'range of the meter off throughout a profile',
    // Where another profile is louder by just as much, it may as well have been that one.
    rule: [...offRules, 'mistaken-series'],
    shownBy: 'another session under like conditions; which of two benches is off, the readings cannot say',
    make: (dice, demo) => {
      const rows = blockReadTwice(dice, demo);
      const [first] = rows;
      if (!first) throw new Error('no rows');
      const others = demo.likeSessions(first.session, first.profile);
      // 15 % is at least four times what any two of the benches may differ by.
      const mistake = scaled(demo, rows, dice.pick([0.8, 1.2]), 'the scale off');
      const sessions = [first.session, ...others];
      return {
        ...mistake,
        places: [
          ...linesOf(
            demo.rows.filter((row) => row.profile === first.profile && sessions.includes(row.session)),
          ),
          ...sessions.map((session): Expected => ({ file: `outputs/${session}/session.yaml`, lines: 'any' })),
        ],
      };
    },
  },
  {
    name: 'readings under the name of another profile',
    rule: 'mistaken-series',
    shownBy: 'another session under like conditions measured that profile',
    mostEchoes: 4,
    make: (dice, demo) => {
      const choices = [...demo.answers.base.readings.values()].flatMap(({ session, profiles }) =>
        profiles.flatMap((profile) =>
          [...demo.answers.base.profiles.keys()]
            .filter((other) => other.split('/')[0] === profile.split('/')[0] && !profiles.includes(other))
            // The two must differ in level by 1 dB at least, and another bench must have measured the other.
            .filter(
              (other) => demo.likeSessions(session, other).length > 0 && apartDb(demo, profile, other) > 1,
            )
            .map((other) => ({ session, profile, other })),
        ),
      );
      const { session, profile, other } = dice.pick(choices);
      const rows = demo.rows.filter((row) => row.session === session && row.profile === profile);
      return {
        what: `${rows[0]?.file}: ${profile} called ${other}`,
        edits: [demo.withRows(rows, () => ({ profile: other }))],
        // Which of two sessions holds the wrong profile, two benches alone cannot say.
        places: [
          ...linesOf(rows),
          ...linesOf(
            demo.rows.filter(
              (row) => row.profile === other && demo.likeSessions(session, other).includes(row.session),
            ),
          ),
          ...[session, ...demo.likeSessions(session, other)].map(
            (id): Expected => ({ file: `outputs/${id}/session.yaml`, lines: 'any' }),
          ),
        ],
      };
    },
  },
  {
    name: 'one row under the name of its neighbour',
    rule: 'repeated-row',
    shownBy: 'the sheet holds that point of the other profile already',
    make: (dice, demo) => {
      const row = dice.pick(onScale(demo));
      const profiles = demo.answers.base.readings.get(row.session)?.profiles ?? [];
      const others = profiles.flatMap((profile) => {
        const same = demo.rows.find(
          (one) =>
            one.file === row.file &&
            one.profile === profile &&
            one.channel === row.channel &&
            one.hz === row.hz &&
            one.step === row.step &&
            one.repeat === row.repeat,
        );
        return same && profile !== row.profile ? [same] : [];
      });
      const other = dice.pick(others);
      return {
        what: `${row.file}:${row.line} ${row.profile} called ${other.profile}`,
        edits: [demo.withRows([row], () => ({ profile: other.profile }))],
        places: [{ file: row.file, lines: [row.line, other.line] }],
      };
    },
  },
  {
    name: 'front and rear swapped at one step',
    rule: [...offRules, 'mistaken-series', 'stated-versus-computed', 'same-output'],
    shownBy: 'the front falls below the step before; the rear rises above the front',
    mostEchoes: 4,
    make: (dice, demo) => {
      const row = dice.pick(
        demo.rows.filter(
          (one) =>
            one.channel === 'RL' &&
            one.hz === 1000 &&
            rearApart(demo).includes(one.profile) &&
            one.step < demo.cleanStep(one.profile),
        ),
      );
      const front = demo.rows.filter(
        (one) =>
          one.file === row.file &&
          one.profile === row.profile &&
          one.channel === 'FL' &&
          one.hz === 1000 &&
          one.step === row.step,
      );
      const swapped = demo.withRows([row, ...front], (one) =>
        one.channel === 'RL' ? { volts: front[0]?.volts ?? '' } : { volts: row.volts },
      );
      return {
        what: `${row.file}: FL and RL of ${row.profile} at step ${row.step} swapped`,
        edits: [swapped],
        places: [...linesOf([row, ...front]), ...claimsOf(demo, row.profile)],
      };
    },
  },
  {
    name: 'front right and rear left swapped throughout a profile',
    rule: [...offRules, 'mistaken-series', 'stated-versus-computed', 'same-output'],
    shownBy: 'another session, or a statement on the rear; else the two fronts differ as no profile’s do',
    mostEchoes: 4,
    make: (dice, demo) => {
      const shown = rearApart(demo).filter(
        (profile) =>
          demo.list(/^statements\//).some((file) => demo.text(file).includes(profile)) ||
          (demo.answers.base.sessionsOfProfile.get(profile) ?? []).length > 1,
      );
      const profile = dice.pick(shown);
      const session = dice.pick((demo.answers.base.sessionsOfProfile.get(profile) ?? []).map(({ id }) => id));
      const rows = demo.rows.filter(
        (row) =>
          row.session === session &&
          row.profile === profile &&
          (row.channel === 'FR' || row.channel === 'RL'),
      );
      const likely = [session, ...demo.likeSessions(session, profile)];
      return {
        what: `${rows[0]?.file}: FR and RL of ${profile} swapped`,
        edits: [demo.withRows(rows, ({ channel }) => ({ channel: channel === 'FR' ? 'RL' : 'FR' }))],
        places: [
          ...linesOf(
            demo.rows.filter(
              (row) => row.profile === profile && likely.includes(row.session) && row.channel !== 'FL',
            ),
          ),
          ...claimsOf(demo, profile),
        ],
      };
    },
  },
  {
    name: 'signal on an output said to be silent',
    rule: [...offRules, 'stated-versus-computed', 'muted-with-signal', 'same-output'],
    shownBy: 'the other readings of that output are a trace of noise',
    mostEchoes: 4,
    make: (dice, demo) => {
      const row = dice.pick(
        demo.rows.filter((one) =>
          demo.answers.outputs.get(one.profile)?.mutedChannels.some((channel) => channel === one.channel),
        ),
      );
      const front = demo.rows.find(
        (one) =>
          one.file === row.file &&
          one.profile === row.profile &&
          one.channel === 'FL' &&
          one.step === row.step &&
          one.hz === row.hz,
      );
      return {
        what: `${row.file}:${row.line} ${row.profile} ${row.channel} reads as FL`,
        edits: [demo.withRows([row], () => ({ volts: front?.volts ?? '1.0000' }))],
        places: [...linesOf([row]), ...claimsOf(demo, row.profile)],
      };
    },
  },
  {
    name: 'block of another profile pasted in',
    rule: 'copied-block',
    shownBy: 'two profiles read alike to the last figure in row after row',
    mostEchoes: 6,
    make: (dice, demo) => {
      const pairs = [...demo.answers.base.readings.values()].flatMap(({ session, profiles }) =>
        profiles.flatMap((a) =>
          profiles
            .filter((b) => a !== b && a.split('/')[0] === b.split('/')[0])
            .map((b) => ({ session, a, b })),
        ),
      );
      const scaleOf = (session: string, profile: string): Row[] =>
        demo.rows.filter(
          (row) =>
            row.session === session && row.profile === profile && row.channel === 'FL' && row.hz === 1000,
        );
      const blocks = pairs
        .map(({ session, a, b }) => ({ a, b, from: scaleOf(session, a), to: scaleOf(session, b) }))
        .filter(({ from, to }) => from.length === to.length);
      const { a, b, from, to } = dice.pick(blocks);
      const copies = new Map(to.map((row, at) => [row.line, { ...(from[at] ?? row), profile: b }]));
      return {
        what: `${to[0]?.file}: the volume scale of ${b} is that of ${a}`,
        edits: [demo.withRows(to, (row) => copies.get(row.line) ?? row)],
        places: [
          ...linesOf(to),
          ...linesOf(from),
          ...claimsOf(demo, b),
          { file: `profiles/${b}.yaml`, lines: 'any' },
          { file: `profiles/${a}.yaml`, lines: 'any' },
        ],
      };
    },
  },
  {
    name: 'supply too low for what was read',
    rule: ['impossible-reading', 'unit-slip'],
    shownBy: 'a bridged output gives at most the supply over √2, clean',
    make: (dice, demo) => {
      const loud = demo.rows.filter(({ volts, thd }) => Number(volts) > 7 && thd !== '' && Number(thd) < 0.9);
      const session = dice.pick([...new Set(loud.map((row) => row.session))]);
      const file = `outputs/${session}/session.yaml`;
      const line = demo.lineOf(file, /^ {2}volts: /);
      return {
        ...onLine(demo, file, line, '  volts: 8.4'),
        places: [{ file, lines: [line] }, ...linesOf(demo.rows.filter((row) => row.session === session))],
      };
    },
  },
  {
    name: 'shifted decimal in the load',
    rule: 'power-beyond-supply',
    shownBy: 'no supply of the bench gives that power',
    make: (dice, demo) => {
      const loud = demo.rows.filter(({ volts }) => Number(volts) > 5);
      const session = dice.pick([...new Set(loud.map((row) => row.session))]);
      const file = `outputs/${session}/session.yaml`;
      const line = demo.lineOf(file, /^ {2}ohms: /);
      const ohms = demo.session(session).load.ohms / 10;
      return {
        ...onLine(demo, file, line, `  ohms: ${ohms}`),
        places: [{ file, lines: [line] }, ...linesOf(demo.rows.filter((row) => row.session === session))],
      };
    },
  },
  {
    name: 'nought lost from the meter’s highest frequency',
    rule: 'impossible-reading',
    shownBy: 'the sheet holds readings above it',
    make: (dice, demo) => {
      const file = dice.pick(demo.list(/session\.yaml$/));
      const line = demo.lineOf(file, /^ {6}toHz: 30000$/);
      const high = demo.rows.filter((row) => row.session === file.split('/')[1] && row.hz > 2200);
      return {
        ...onLine(demo, file, line, '      toHz: 3000'),
        places: [{ file, lines: [line, line - 1] }, ...linesOf(high)],
      };
    },
  },
];

/** How far the levels of two profiles lie apart, dB: the median over the steps both play clean. */
function apartDb(demo: Demo, a: string, b: string): number {
  const [ofA, ofB] = [demo.answers.outputs.get(a), demo.answers.outputs.get(b)];
  const levels = new Map(
    ofB?.levelByStep.filter(({ clean }) => clean).map(({ step, volts }) => [step, volts.value]),
  );
  const apart = (ofA?.levelByStep ?? [])
    .flatMap(({ step, volts, clean }) => {
      const other = levels.get(step);
      return clean && other && volts.value > 0 ? [Math.abs(20 * Math.log10(volts.value / other))] : [];
    })
    .sort((x, y) => x - y);
  return apart[apart.length >> 1] ?? 0;
}
