/** Whether a bench session and the source it is cited as can be one and the same. */
import type { Base, Entry } from '../base/index.ts';

/** How long after its readings a session may be written up: a month. Common practice, no source. */
export const mostDaysToWriteUp = 31;

/** A session that cites the source of another: of a different day, while that of its own day has no session. */
export interface MistakenSource {
  readonly session: Entry<'outputs'>;
  readonly cited: Entry<'sources'>;
  readonly meant: Entry<'sources'>;
}

/** The sources of the kind bench-session that no session cites. */
export function sourcesWithoutSession(base: Base): Entry<'sources'>[] {
  const cited = new Set([...base.outputs.values()].map((session) => session.data.source));
  return [...base.sources.values()].filter(({ id, data }) => data.kind === 'bench-session' && !cited.has(id));
}

export function mistakenSources(base: Base): MistakenSource[] {
  const spare = new Map(sourcesWithoutSession(base).map((source) => [source.data.date, source]));
  return [...base.outputs.values()].flatMap((session) => {
    const cited = base.sources.get(session.data.source);
    const meant = spare.get(session.data.date);
    if (!cited || !meant || cited.data.date === session.data.date) return [];
    return [{ session, cited, meant }];
  });
}

/** Days from one date to another, both as year-month-day. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);
}
