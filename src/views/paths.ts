/** Where each page of the site is: paths below the base path, with a trailing slash and without a leading one. */

import type { Target } from '../base/targets.ts';

export const unitsPath = 'units/';
export const plansPath = 'plans/';
export const tablesPath = 'tables/';
export const guidesPath = 'guides/';
export const sourcesPath = 'sources/';
export const codesPath = 'codes/';
/** The page that finds out which unit a rider has. */
export const whichUnitPath = 'which-unit/';
/** Where a rider works out a plan of his own. */
export const plannerPath = 'planner/';
/** What the planner needs for every plan. */
export const plannerDataPath = 'planner.json';

/** The planner with a profile filled in. */
export function plannerWith(family: string, code: string): string {
  return `${plannerPath}?${new URLSearchParams({ unit: family, code })}`;
}

/** What the planner needs of all profiles of a unit. */
export function plannerUnitPath(family: string): string {
  return `units/${family}/planner.json`;
}

/** What the planner needs of one profile. */
export function plannerProfilePath(profile: string): string {
  return `profiles/${profile}/planner.json`;
}

/** Where the development site, and it alone, says when it last loaded content anew. */
export const refreshedPath = 'content-refreshed.json';
/** The compact list that the code field looks codes up in, or where its parts are. */
export const codeListPath = 'codes.json';
/** The answer of every code in a sentence, while they are few. */
export const codeSentencesPath = 'code-sentences.json';
/** Where the parts of a long list are, and its sentences. */
export const lookupFolder = 'lookup/';

/** A part of the list of codes, by its name (see `src/codes/code-files.ts`). */
export function codeFilePath(name: string): string {
  return `${lookupFolder}${name}.json`;
}

/** The list of codes of one unit. */
export function unitCodesPath(family: string): string {
  return `${lookupFolder}unit-${family}.json`;
}

/** The page that says how to put the code field into another site. */
export const embedPath = 'embed/';
/** The script of the code field for other sites; its address stays. */
export const embedScriptPath = 'embed/code-field.js';
/** What that script fetches, from pages of any origin: files, and folders (with a slash) with all that is in them. */
export const embedDataPaths: readonly string[] = [codeListPath, codeSentencesPath, lookupFolder];

/** The page that says what is measured and what is not. */
export const coveragePath = 'coverage/';
/** The readings wanted most, as sheets to print and fill in. */
export const benchSheetPath = 'coverage/bench-sheet/';
/** The same as a file, by the id of its load. */
export function benchSheetFile(id: string): string {
  return `coverage/readings-${id}.csv`;
}

/** The documents for other programs. */
export const apiPath = 'api/v1/';
export const openApiPath = `${apiPath}openapi.json`;
export const apiIndexPath = `${apiPath}index.json`;
export const apiSourcesPath = `${apiPath}sources.json`;
export const apiAnswersPath = `${apiPath}answers.json`;

export function apiUnitPath(family: string): string {
  return `${apiPath}units/${family}.json`;
}

export function apiProfilePath(profile: string): string {
  return `${apiPath}profiles/${profile}.json`;
}

export function apiTablePath(table: string): string {
  return `${apiPath}tables/${table}.json`;
}

/** The page that lists what there is for other programs. */
export const dataPath = 'data/';
export const dataPackagePath = `${dataPath}datapackage.json`;

/** The feed of changes. */
export const changesPath = 'changes.atom';

/** The pictures of link previews. */
export const sitePreviewPath = 'previews/site.png';

export function unitPreviewPath(family: string): string {
  return `previews/units/${family}.png`;
}

export function profilePreviewPath(system: 'amplified' | 'unamplified'): string {
  return `previews/profiles/${system}.png`;
}

/** `to` as a document at `from` names it: both below the base path. */
export function relativePath(from: string, to: string): string {
  const [folders, target] = [from.split('/').slice(0, -1), to.split('/')];
  let shared = 0;
  while (shared < Math.min(folders.length, target.length - 1) && folders[shared] === target[shared])
    shared += 1;
  return [...folders.slice(shared).map(() => '..'), ...target.slice(shared)].join('/');
}

/** The page that says what the check demands of entries. */
export const rulesPath = 'check/';

/** Where a rule of the check is explained. */
export function rulePath(rule: string): string {
  return `${rulesPath}#${rule}`;
}

/** The page of a head-unit family. */
export function unitPath(family: string): string {
  return `units/${family}/`;
}

/** The sheet to fill in at the bench for a profile of a unit, and the same as a file. */
export function blankSheetPath(family: string): string {
  return `units/${family}/bench-sheet/`;
}

export function blankSheetFile(family: string): string {
  return `units/${family}/bench-sheet.csv`;
}

/** The QR codes of a unit and its profiles, to print. */
export function sheetPath(family: string): string {
  return `units/${family}/sheet/`;
}

/** The page that leads through a sequence step by step. */
export function wayPath(family: string, sequence: string): string {
  return `units/${family}/way-in/${sequence}/`;
}

/** The page of a profile, by its id `family/slug`. */
export function profilePath(profile: string): string {
  return `profiles/${profile}/`;
}

/** The page with every reading of a profile. */
export function readingsPath(profile: string): string {
  return `profiles/${profile}/readings/`;
}

export function guidePath(guide: string): string {
  return `guides/${guide}/`;
}

export function planPath(plan: string): string {
  return `plans/${plan}/`;
}

export function tablePath(table: string): string {
  return `tables/${table}/`;
}

/** A table as a file for other programs: `tables/x.dmn`. */
export function tableFilePath(table: string, form: 'dmn' | 'csv'): string {
  return `tables/${table}.${form}`;
}

export function sourcePath(source: string): string {
  return `sources/${source}/`;
}

/** The page of the entry a link in prose leads to. */
export function addressPath({ kind, id, readings }: Extract<Target, { to: 'entry' }>): string {
  if (kind === 'profiles') return readings ? readingsPath(id) : profilePath(id);
  return { families: unitPath, plans: planPath, tables: tablePath, guides: guidePath, sources: sourcePath }[
    kind
  ](id);
}

/** The anchor of one reading on its readings page: `r-2026-03-quay-17` for the reading `2026-03-quay:17`. */
export function readingAnchor(readingId: string): string {
  return `r-${readingId.replace(':', '-')}`;
}

/** The anchor of a bench session on the page of its source, and on readings pages. */
export function sessionAnchor(session: string): string {
  return `session-${session}`;
}

/** The anchor of a characteristic's row on its profile page. */
export function valueAnchor(name: string): string {
  return `value-${name}`;
}
