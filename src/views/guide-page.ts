/** The view model of a guide. */
import type { Answers } from '../answers.ts';
import { byOrder } from '../base/index.ts';
import { type CautionText, cautionTexts } from './cautions.ts';
import { guidePath } from './paths.ts';
import { citedSources, proseHtml } from './prose.ts';
import { type SourceLink, sourceLinks } from './reading-links.ts';

export interface GuidePageView {
  readonly id: string;
  readonly path: string;
  readonly title: string;
  readonly description: string;
  readonly html: string;
  readonly cautions: readonly CautionText[];
  readonly sources: readonly SourceLink[];
}

/** One view for each guide, in the order guides are listed in. `base` is the site's base path, `/help/`. */
export async function guidePages(answers: Answers, base: string): Promise<GuidePageView[]> {
  const inOrder = [...answers.base.guides.values()].sort(byOrder);
  return Promise.all(
    inOrder.map(async (guide) => ({
      id: guide.id,
      path: guidePath(guide.id),
      title: guide.data.title,
      description: guide.data.summary,
      html: await proseHtml(answers, guide, 2, base),
      cautions: cautionTexts(guide.data.cautions),
      sources: sourceLinks(answers, [...guide.data.sources, ...citedSources(guide)]),
    })),
  );
}
