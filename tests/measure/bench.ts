/** A bench session and readings made up for one test: an ideal unit, read without error unless told otherwise. */
import type { Session } from '../../schemas/index.ts';
import type { BenchReading } from '../../src/base/index.ts';
import type { Run } from '../../src/measure/index.ts';

export const session: Session = {
  source: 'bench-x',
  date: '2026-01-01',
  bench: 'bench',
  takenBy: 'technician',
  instrument: {
    name: 'voltmeter',
    resolutionVolts: 0.0001,
    accuracy: [{ fromHz: 10, toHz: 100_000, ofReadingPercent: 0.5, counts: 2 }],
    thdFloorPercent: 0.01,
    thdOfReadingPercent: 5,
  },
  signal: { kind: 'sine', levelDbfs: 0, levelToleranceDb: 0.05, from: 'disc' },
  load: { ohms: 4, tolerancePercent: 1 },
  supply: { volts: 14.4, toleranceVolts: 0.1 },
  method: 'as in the test',
  setAside: [],
};

export type Row = readonly [
  channel: BenchReading['channel'],
  step: number,
  hz: number,
  voltsRms: number,
  thdPercent?: number | null,
  repeat?: number,
];

export function run(rows: readonly Row[], changes: Partial<Session> = {}, id = 's'): Run {
  return {
    session: id,
    conditions: { ...session, ...changes },
    readings: rows.map(([channel, step, hz, voltsRms, thdPercent = null, repeat = 1], index) => ({
      id: `${id}:${index + 2}`,
      session: id,
      profile: 'p',
      channel,
      step,
      hz,
      voltsRms,
      thdPercent,
      repeat,
    })),
  };
}
