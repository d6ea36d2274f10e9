/** The view model of a profile's readings: every row of every sheet, as it was read. */
import type { Answers } from '../answers.ts';
import { type Entry, setAsideFor } from '../base/index.ts';
import { phrase } from '../words/index.ts';
import { profilePath, readingsPath, sessionAnchor, sourcePath } from './paths.ts';
import { benchSettingOf } from './session-conditions.ts';
import { longDate } from './wording.ts';

/** One reading: line of the sheet, channel, step, hertz, volts rms, THD in per cent or null, number of the repeat. */
export type ReadingRow = readonly [
  line: number,
  channel: string,
  step: number,
  hz: number,
  voltsRms: number,
  thdPercent: number | null,
  repeat: number,
];

export interface ReadingsPageView {
  readonly profile: string;
  readonly code: string;
  readonly path: string;
  readonly profilePath: string;
  readonly title: string;
  readonly description: string;
  readonly sessions: readonly {
    readonly id: string;
    readonly anchor: string;
    readonly date: string;
    readonly setting: string;
    /** Decimals of the voltmeter, so that readings are shown as they were read. */
    readonly voltsDecimals: number;
    readonly sourceTitle: string;
    readonly sourcePath: string;
    /** Why these readings are not used; empty where they are. */
    readonly setAside: string;
    readonly rows: readonly ReadingRow[];
  }[];
}

/** The view of a profile’s readings; undefined where it was not measured. */
export function readingsPage({ base }: Answers, profile: Entry<'profiles'>): ReadingsPageView | undefined {
  const measured = base.sessionsOfProfile.get(profile.id) ?? [];
  if (measured.length === 0 || !base.families.has(profile.data.family)) return undefined;
  return {
    profile: profile.id,
    code: profile.data.code,
    path: readingsPath(profile.id),
    profilePath: profilePath(profile.id),
    title: phrase('Readings of {code}', { code: profile.data.code }),
    description: phrase('Every bench reading of the profile {code}, as it was taken.', {
      code: profile.data.code,
    }),
    sessions: measured.map((session) => ({
      id: session.id,
      anchor: sessionAnchor(session.id),
      date: longDate(session.data.date),
      setting: benchSettingOf(session.data),
      voltsDecimals: decimalsOf(session.data.instrument.resolutionVolts),
      sourceTitle: base.sources.get(session.data.source)?.data.title ?? session.data.source,
      sourcePath: sourcePath(session.data.source),
      setAside: setAsideFor(session, profile.id)?.reason ?? '',
      rows: (base.readings.get(session.id)?.readingsOf(profile.id) ?? []).map(
        (one): ReadingRow => [
          Number(one.id.slice(one.id.lastIndexOf(':') + 1)),
          one.channel,
          one.step,
          one.hz,
          one.voltsRms,
          one.thdPercent,
          one.repeat,
        ],
      ),
    })),
  };
}

function decimalsOf(resolutionVolts: number): number {
  return Math.max(0, Math.ceil(-Math.log10(resolutionVolts) - 1e-9));
}
