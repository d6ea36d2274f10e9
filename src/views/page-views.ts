/** What every page of the site shows, made when a page asks for it: views of profiles are not kept, as all together fill gigabytes. */
import type { Answers } from '../answers.ts';
import { LazyMap } from '../base/index.ts';
import { blankSheets } from './blank-sheet.ts';
import { codeFiles } from './code-directory.ts';
import { codeList, codeSentences } from './code-list.ts';
import { codesPages } from './codes-page.ts';
import { type CorrectionView, correctionViews } from './corrections.ts';
import { coverageView } from './coverage/coverage-page.ts';
import { dataPage } from './data-page.ts';
import { guidePages } from './guide-page.ts';
import { movedPages } from './moved-pages.ts';
import { planPages } from './plan-answers.ts';
import { plannerData } from './planner-data.ts';
import { profilePage } from './profile-page.ts';
import { readingsPage } from './readings-page.ts';
import { rulesPage } from './rules-page.ts';
import { listsView, type SiteView, siteView } from './site.ts';
import { sourcePages } from './source-page.ts';
import { tableFiles } from './table-files.ts';
import { tablePages } from './table-page.ts';
import { unitPage } from './unit-page.ts';
import { wayPages } from './way-page.ts';
import { whichUnitView } from './which-unit.ts';

/** The views of one kind of page. */
export interface Views<View> {
  readonly ids: () => Promise<readonly string[]>;
  readonly get: (id: string) => Promise<View | undefined>;
}

type Made<View> = View | Promise<View>;

/** One view, of the id given. */
function one<View>(id: string, make: () => Made<View>): Views<View> {
  return listed(() => [[id, make()]]);
}

/** Views that are made together, and kept. */
function listed<View>(make: () => Made<Iterable<readonly [id: string, view: Made<View>]>>): Views<View> {
  let made: Promise<ReadonlyMap<string, Made<View>>> | undefined;
  const all = (): Promise<ReadonlyMap<string, Made<View>>> => {
    made ??= (async () => {
      const views = await make();
      return views instanceof LazyMap ? views : new Map(views);
    })();
    return made;
  };
  return { ids: async () => [...(await all()).keys()], get: async (id) => (await all()).get(id) };
}

/** Views that are made one by one, each time one is asked for. */
function each<View>(ids: () => Iterable<string>, make: (id: string) => Made<View | undefined>): Views<View> {
  return { ids: async () => [...ids()], get: async (id) => make(id) };
}

/** The same, but kept. */
function eachKept<View>(ids: Iterable<string>, make: (id: string) => Made<View | undefined>): Views<View> {
  const kept = new LazyMap([...ids], make);
  return { ids: async () => [...kept.keys()], get: async (id) => kept.get(id) };
}

const byId = <View extends { readonly id: string }>(views: readonly View[]): (readonly [string, View])[] =>
  views.map((view) => [view.id, view]);

/** The views of a site that is mounted at `base`, which has a slash at both ends. */
export function pageViews(answers: Answers, base: string) {
  const profiles = answers.base.profiles;
  const families = answers.base.families;
  return {
    lists: one('lists', () => listsView(answers)),
    rules: one('rules', () => rulesPage(answers)),
    codeFiles: listed(() => codeFiles(codeList(answers), codeSentences(answers))),
    codesPages: listed(() => byId(codesPages(answers))),
    whichUnit: one('whichUnit', () => whichUnitView(answers)),
    unitPages: eachKept(families.keys(), (id) => {
      const family = families.get(id);
      return family && unitPage(answers, family, base);
    }),
    wayPages: listed(() => byId(wayPages(answers))),
    profilePages: each(
      () => answers.outputs.keys(),
      (id) => {
        const profile = profiles.get(id);
        return profile && profilePage(answers, profile);
      },
    ),
    movedPages: listed(() => byId(movedPages(answers))),
    readingsPages: each(
      () => [...answers.outputs.keys()].filter((id) => answers.base.sessionsOfProfile.has(id)),
      (id) => {
        const profile = profiles.get(id);
        return profile && readingsPage(answers, profile);
      },
    ),
    dataPage: one('dataPage', () => dataPage(answers)),
    planPages: listed(() => byId(planPages(answers))),
    tablePages: listed(() => byId(tablePages(answers))),
    tableFiles: listed(() => tableFiles(answers)),
    planner: one('planner', () => plannerData(answers)),
    blankSheets: listed(() => byId(blankSheets(answers))),
    coverage: one('coverage', () => coverageView(answers)),
    guidePages: listed(async () => byId(await guidePages(answers, base))),
    sourcePages: listed(() => byId(sourcePages(answers))),
  };
}

export type PageViews = ReturnType<typeof pageViews>;

/**
 * What components ask for in the midst of a page, given at once: all that follows a component that waits is kept aside
 * piece by piece until it has come.
 */
export interface PageParts {
  readonly site: SiteView;
  /** Where what the page at a path shows is corrected. */
  readonly corrections: (path: string) => CorrectionView['links'];
}

function pageParts(answers: Answers): PageParts {
  let views: ReadonlyMap<string, CorrectionView> | undefined;
  return {
    site: siteView(answers),
    corrections: (path) => {
      views ??= correctionViews(answers);
      const view = views.get(path);
      if (!view) throw new Error(`Nothing is known of where ${path} is corrected.`);
      return view.links;
    },
  };
}

/** What is handed over to the pages: made by the caller’s modules, so that pages are free of all that makes it. */
export interface Handed {
  readonly answers: Answers;
  readonly views: PageViews;
  readonly parts: PageParts;
}

/** All that the pages of a site mounted at `base` are made of. */
export function pageContents(answers: Answers, base: string): Handed {
  return { answers, views: pageViews(answers, base), parts: pageParts(answers) };
}

/** The view of a kind of page. */
export type ViewOf<Kind extends keyof PageViews> = NonNullable<Awaited<ReturnType<PageViews[Kind]['get']>>>;
