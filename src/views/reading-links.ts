/** Links from a number to the readings and sources it rests on. */
import type { Answers } from '../answers.ts';
import { readingAnchor, readingsPath, sessionAnchor, sourcePath } from './paths.ts';

/** The readings behind a number: rows of each session's sheet, joined where they follow one another. */
export type ReadingRows = readonly {
  readonly session: string;
  readonly rows: readonly (readonly [from: number, to: number])[];
}[];

/**
 * What the links of one profile's readings have in common, once for its page: where the readings stand, and
 * the source each session is cited as.
 */
export interface ReadingBook {
  readonly path: string;
  readonly sessions: Readonly<Record<string, { readonly title: string; readonly path: string }>>;
}

export interface SourceLink {
  readonly id: string;
  readonly title: string;
  readonly path: string;
}

/** The rows that reading ids (`session:line`) name, by session in the order they are first named. */
export function readingRows(ids: readonly string[]): ReadingRows {
  const lines = new Map<string, Set<number>>();
  for (const id of ids) {
    const colon = id.lastIndexOf(':');
    const session = id.slice(0, colon);
    const known = lines.get(session) ?? new Set();
    lines.set(session, known.add(Number(id.slice(colon + 1))));
  }
  return [...lines].map(([session, numbers]) => ({
    session,
    rows: joined([...numbers].sort((a, b) => a - b)),
  }));
}

function joined(lines: readonly number[]): [from: number, to: number][] {
  const ranges: [number, number][] = [];
  for (const line of lines) {
    const last = ranges.at(-1);
    if (last && last[1] === line - 1) last[1] = line;
    else ranges.push([line, line]);
  }
  return ranges;
}

/** The book of a profile's readings: one entry for each session that measured it. */
export function readingBook(answers: Answers, profile: string): ReadingBook {
  const { base } = answers;
  const sessions = (base.sessionsOfProfile.get(profile) ?? []).map(({ id, data }) => [
    id,
    {
      title: base.sources.get(data.source)?.data.title ?? id,
      path: `${sourcePath(data.source)}#${sessionAnchor(id)}`,
    },
  ]);
  return { path: readingsPath(profile), sessions: Object.fromEntries(sessions) };
}

/** The path of one row of a session's sheet on the page of readings. */
export function rowPath(book: ReadingBook, session: string, line: number): string {
  return `${book.path}#${readingAnchor(`${session}:${line}`)}`;
}

/** The path of the first of some readings; undefined where there are none. */
export function firstRowPath(book: ReadingBook, readings: ReadingRows): string | undefined {
  const [first] = readings;
  const line = first?.rows[0]?.[0];
  return first && line !== undefined ? rowPath(book, first.session, line) : undefined;
}

/** The sources with these ids, as links; an id without an entry is left out (the check names it). */
export function sourceLinks(answers: Answers, ids: readonly string[]): SourceLink[] {
  return [...new Set(ids)].flatMap((id) => {
    const source = answers.base.sources.get(id);
    return source ? [{ id, title: source.data.title, path: sourcePath(id) }] : [];
  });
}
