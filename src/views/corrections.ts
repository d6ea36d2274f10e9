/** Where what a page shows can be corrected: the file in the repository, and the line in it. */
import type { Site } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { type Base, type Entry, LazyMap } from '../base/index.ts';
import { phrase } from '../words/index.ts';
import {
  guidePath,
  planPath,
  profilePath,
  readingsPath,
  sourcePath,
  tablePath,
  unitPath,
  wayPath,
} from './paths.ts';
import { siteView } from './site.ts';
import { longDate } from './wording.ts';

/** Part of what a page shows, and where it is written. */
export interface CorrectionPlace {
  /** In a word or two: “this unit”. */
  readonly what: string;
  /** Below the content folder, with forward slashes. */
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
}

export interface CorrectionView {
  /** The path of the page. */
  readonly id: string;
  readonly links: readonly (CorrectionPlace & { readonly address: string })[];
}

/** One view for each page of an entry, made when it is asked for; without a link where the shop has neither repository nor mail. */
export function correctionViews(answers: Answers): ReadonlyMap<string, CorrectionView> {
  const site = siteView(answers);
  const placesOf = new Map(correctionPlaces(answers));
  return new LazyMap(placesOf.keys(), (id) => ({
    id,
    links: (placesOf.get(id)?.() ?? []).flatMap((place) => {
      const address = correctionAddress(site, place);
      return address === undefined ? [] : [{ ...place, address }];
    }),
  }));
}

/**
 * Where a file is corrected: by the pattern of site.yaml (`correctAt`), else in the repository, else by a mail to the
 * shop that names file and line; undefined where site.yaml has none of them.
 */
export function correctionAddress(
  { correctAt, repository, contact }: Pick<Site, 'correctAt' | 'repository' | 'contact'>,
  { file, line }: Pick<CorrectionPlace, 'file' | 'line'>,
): string | undefined {
  if (correctAt !== undefined) {
    const path = file.split('/').map(encodeURIComponent).join('/');
    return correctAt.replaceAll('{file}', () => path).replaceAll('{line}', String(line));
  }
  if (repository !== undefined || contact.email === undefined) return repository;
  return `mailto:${contact.email}?subject=${encodeURIComponent(phrase('Correction: {file}, line {line}', { file, line }))}`;
}

/** By the path of the page, what is written where; what a page is chiefly about comes first. */
function* correctionPlaces({ base, tables }: Answers): Generator<[path: string, () => CorrectionPlace[]]> {
  for (const family of base.families.values()) {
    yield [
      unitPath(family.id),
      () => {
        const body = family.body?.children[0]?.position?.start.line;
        return [
          top(phrase('this unit'), family),
          ...(body === undefined ? [] : [place(phrase('the text about it'), family, body)]),
        ];
      },
    ];
  }
  for (const sequence of base.sequences.values()) {
    yield [wayPath(sequence.data.family, sequence.id), () => [top(phrase('this way in'), sequence)]];
  }
  for (const profile of base.profiles.values()) {
    yield [
      profilePath(profile.id),
      () => [top(phrase('this profile'), profile), ...statementPlaces(base, profile.id)],
    ];
    if (base.sessionsOfProfile.has(profile.id)) {
      yield [readingsPath(profile.id), () => sheetPlaces(base, profile.id)];
    }
  }
  for (const plan of base.plans.values()) yield [planPath(plan.id), () => [top(phrase('this plan'), plan)]];
  for (const [id, { table }] of tables) {
    const entry = base.tables.get(id);
    if (entry && table) yield [tablePath(id), () => [top(phrase('this table'), entry)]];
  }
  for (const guide of base.guides.values())
    yield [guidePath(guide.id), () => [top(phrase('this guide'), guide)]];
  const sessionsOf = Map.groupBy(base.outputs.values(), ({ data }) => data.source);
  const statementsOf = Map.groupBy(base.statements.values(), ({ data }) => data.source);
  for (const source of base.sources.values()) {
    const sessions = sessionsOf.get(source.id) ?? [];
    const statements = statementsOf.get(source.id) ?? [];
    yield [
      sourcePath(source.id),
      () => [
        top(phrase('this source'), source),
        ...sessions.map((session) =>
          top(phrase('the conditions of {date}', { date: longDate(session.data.date) }), session),
        ),
        ...statements.map((statement) =>
          place(phrase('the words taken from it'), statement, statement.place(['quote'], 'key').line),
        ),
      ],
    ];
  }
}

/** What statements claim of a profile. */
function statementPlaces(base: Base, profile: string): CorrectionPlace[] {
  return (base.statementsOfProfile.get(profile) ?? []).map((statement) => {
    const index = statement.data.claims.findIndex((claim) => claim.profile === profile);
    const title = base.sources.get(statement.data.source)?.data.title ?? statement.data.source;
    return place(
      phrase('what “{title}” says', { title }),
      statement,
      statement.place(['claims', index]).line,
    );
  });
}

/** The first row of a profile in each sheet. */
function sheetPlaces(base: Base, profile: string): CorrectionPlace[] {
  return (base.sessionsOfProfile.get(profile) ?? []).flatMap(({ id, data }) => {
    const table = base.readings.get(id);
    const first = table?.readingsOf(profile)[0];
    if (!table || !first) return [];
    const { file, line } = table.place(first.id);
    return [{ what: phrase('the readings of {date}', { date: longDate(data.date) }), file, line }];
  });
}

function top(what: string, entry: Entry): CorrectionPlace {
  return place(what, entry, 1);
}

function place(what: string, { file }: Entry, line: number): CorrectionPlace {
  return { what, file, line };
}
