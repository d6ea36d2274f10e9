/** The text of each machine-made entry. */
import type { z } from 'zod';
import {
  type profileSchema,
  type Reading,
  readingColumns,
  type Source,
  type sessionSchema,
} from '../../schemas/index.ts';
import { benchSourceId } from '../base/bench-source-id.ts';
import { entryText } from '../base/entry-text.ts';
import { type DemoSession, findBench, type PlacedProfile, sessions, signalLevelDbfs } from './world/index.ts';
import type { DemoStatement } from './world/statements.ts';

/** profiles/<family>/<slug>.yaml */
export function profileText({ id, family, profile }: PlacedProfile): string {
  const measured = sessions.filter((session) => session.profiles.includes(id));
  const data: z.input<typeof profileSchema> = {
    family: family.id,
    code: profile.code,
    otherSpellings: [...(profile.otherSpellings ?? [])],
    origin: profile.origin,
    system: profile.system,
    soldAs: [...(profile.soldAs ?? [])],
    ...(profile.sameAs === undefined ? {} : { sameAs: profile.sameAs }),
    tellApart: [...(profile.tellApart ?? [])],
    about: profile.about,
    sources: [...measured.map((session) => benchSourceId(session.id)), ...profile.sources],
  };
  return entryText('profile', 3, data);
}

/** outputs/<session>/session.yaml */
export function sessionText(session: DemoSession): string {
  const bench = findBench(session.bench);
  const data: z.input<typeof sessionSchema> = {
    source: benchSourceId(session.id),
    date: session.date,
    bench: bench.id,
    takenBy: bench.takenBy,
    instrument: bench.instrument,
    signal: {
      kind: 'sine',
      levelDbfs: signalLevelDbfs,
      levelToleranceDb: bench.levelToleranceDb,
      from: session.from,
    },
    load: { ohms: session.loadOhms, tolerancePercent: bench.loadTolerancePercent },
    supply: session.supply,
    method: session.method,
  };
  return entryText('session', 3, data);
}

/** sources/bench-<session>.yaml */
export function benchSourceText(session: DemoSession): string {
  const bench = findBench(session.bench);
  const data: Source = {
    kind: 'bench-session',
    title: `Bench session of ${session.date}, ${bench.title}`,
    date: session.date,
    keptAt: bench.keptAt,
    trust: bench.trust,
    trustReason: bench.trustReason,
  };
  return entryText('source', 2, data);
}

/** statements/<id>.yaml */
export function statementText({ id: _, ...data }: DemoStatement): string {
  return entryText('statement', 2, data);
}

/** outputs/<session>/readings.csv: volts with as many decimals as the resolution has. */
export function readingsText(session: DemoSession, readings: readonly Reading[]): string {
  const { resolutionVolts } = findBench(session.bench).instrument;
  const decimals = Math.round(-Math.log10(resolutionVolts));
  const cells = (reading: Reading): Record<(typeof readingColumns)[number], string | number> => ({
    ...reading,
    voltsRms: reading.voltsRms.toFixed(decimals),
    thdPercent: reading.thdPercent === null ? '' : reading.thdPercent.toFixed(3),
  });
  const rows = readings.map((reading) => {
    const row = cells(reading);
    return readingColumns.map((column) => row[column]).join(',');
  });
  return `${[readingColumns.join(','), ...rows].join('\n')}\n`;
}
