/** One collection for each kind of page, fed with view models from the answers; pages never read files. */
import { defineCollection } from 'astro:content';
import { z } from 'astro/zod';
import type { Answers } from './answers.ts';
import { codeFiles } from './views/code-directory.ts';
import { codeList, codeSentences } from './views/code-list.ts';
import type { CodeSentences, CodesFile } from './views/code-list-format.ts';
import { type CodesPageView, codesPages } from './views/codes-page.ts';
import { type CoverageView, coverageView } from './views/coverage/coverage-page.ts';
import { currentAnswers } from './views/current.ts';
import { type DataPageView, dataPage } from './views/data-page.ts';
import { type GuidePageView, guidePages } from './views/guide-page.ts';
import { type MovedPageView, movedPages } from './views/moved-pages.ts';
import { type PlanPageView, planPages } from './views/plan-answers.ts';
import { plannerData, plannerUnits } from './views/planner-data.ts';
import type { PlannerData, PlannerUnitData } from './views/planner-format.ts';
import { type ProfilePageView, profilePages } from './views/profile-page.ts';
import { type ReadingsPageView, readingsPages } from './views/readings-page.ts';
import { type RulesPageView, rulesPage } from './views/rules-page.ts';
import { type ListsView, listsView, type SiteView, siteView } from './views/site.ts';
import { type SourcePageView, sourcePages } from './views/source-page.ts';
import { type TableFilesView, tableFiles } from './views/table-files.ts';
import { type TablePageView, tablePages } from './views/table-page.ts';
import { type UnitPageView, unitPages } from './views/unit-page.ts';
import { type WayPageView, wayPages } from './views/way-page.ts';
import { type WhichUnitView, whichUnitView } from './views/which-unit.ts';

type Identified<View> = readonly (readonly [id: string, view: View])[];

/** A collection whose entries are views; they are typed here, so their shape is not checked a second time. */
function viewsOf<View extends object>(
  name: string,
  make: (answers: Answers, base: string) => Identified<View> | Promise<Identified<View>>,
) {
  return defineCollection({
    schema: z.custom<View>((data) => typeof data === 'object' && data !== null),
    loader: {
      name,
      load: async ({ store, config }) => {
        const base = config.base.endsWith('/') ? config.base : `${config.base}/`;
        const views = await make(await currentAnswers(), base);
        store.clear();
        for (const [id, view] of views) store.set({ id, data: { ...view } as Record<string, unknown> });
      },
    },
  });
}

const byId = <View extends { readonly id: string }>(views: readonly View[]): Identified<View> =>
  views.map((view) => [view.id, view]);

export const collections = {
  site: viewsOf<SiteView>('site', (answers) => [['site', siteView(answers)]]),
  lists: viewsOf<ListsView>('lists', (answers) => [['lists', listsView(answers)]]),
  rules: viewsOf<RulesPageView>('rules', (answers) => [['rules', rulesPage(answers)]]),
  codeFiles: viewsOf<{ readonly content: CodesFile | CodeSentences }>('codeFiles', (answers) =>
    [...codeFiles(codeList(answers), codeSentences(answers))].map(([path, content]) => [path, { content }]),
  ),
  codesPages: viewsOf<CodesPageView>('codesPages', (answers) => byId(codesPages(answers))),
  whichUnit: viewsOf<WhichUnitView>('whichUnit', (answers) => [['whichUnit', whichUnitView(answers)]]),
  unitPages: viewsOf<UnitPageView>('unitPages', async (answers, base) =>
    byId(await unitPages(answers, base)),
  ),
  wayPages: viewsOf<WayPageView>('wayPages', (answers) => byId(wayPages(answers))),
  profilePages: viewsOf<ProfilePageView>('profilePages', (answers) => byId(profilePages(answers))),
  movedPages: viewsOf<MovedPageView>('movedPages', (answers) => byId(movedPages(answers))),
  readingsPages: viewsOf<ReadingsPageView>('readingsPages', (answers) =>
    readingsPages(answers).map((view) => [view.profile, view]),
  ),
  dataPage: viewsOf<DataPageView>('dataPage', (answers) => [['data', dataPage(answers)]]),
  planPages: viewsOf<PlanPageView>('planPages', (answers) => byId(planPages(answers))),
  tablePages: viewsOf<TablePageView>('tablePages', (answers) => byId(tablePages(answers))),
  tableFiles: viewsOf<TableFilesView>('tableFiles', (answers) => tableFiles(answers)),
  planner: viewsOf<PlannerData>('planner', (answers) => [['planner', plannerData(answers)]]),
  plannerUnits: viewsOf<PlannerUnitData>('plannerUnits', (answers) => byId(plannerUnits(answers))),
  coverage: viewsOf<CoverageView>('coverage', (answers) => [['coverage', coverageView(answers)]]),
  guidePages: viewsOf<GuidePageView>('guidePages', async (answers, base) =>
    byId(await guidePages(answers, base)),
  ),
  sourcePages: viewsOf<SourcePageView>('sourcePages', (answers) => byId(sourcePages(answers))),
};
