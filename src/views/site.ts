/** What every page shows of the shop, and what the list pages list. */
import type { Site } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { byOrder } from '../base/index.ts';
import type { FaceData } from '../plot/face.ts';
import { phrase } from '../words/index.ts';
import { languageFolder, languagesOf } from './languages.ts';
import { guidePath, planPath, sourcePath, tablePath, unitPath, wayPath } from './paths.ts';
import { faceData } from './unit-page.ts';
import { longDate, sourceKindLabel, trustLabel } from './wording.ts';

export interface SiteView extends Site {
  /** Where the language of these pages is below the base path: empty for the first, `es/` for a further one. */
  readonly folder: string;
  /** All languages of the site, in their order; one where it speaks no other. */
  readonly spoken: readonly { readonly tag: string; readonly name: string; readonly folder: string }[];
}

/** Stands in while site.yaml is missing; the check says that it is. */
const unnamed: Site = {
  name: 'Unnamed shop',
  tagline: 'site.yaml is missing or cannot be read',
  about: 'Add site.yaml to the content folder: the check says how.',
  contact: {},
  address: 'https://example.invalid/',
  colours: { accent: '#8a3b12', accentDark: '#f0a57a' },
};

export function siteView(answers: Answers): SiteView {
  const languages = languagesOf(answers);
  return {
    ...(answers.base.site?.data ?? unnamed),
    folder: languageFolder(languages, phrase('en')),
    spoken: languages.map(({ tag, name }) => ({ tag, name, folder: languageFolder(languages, tag) })),
  };
}

export interface ListItem {
  readonly path: string;
  readonly title: string;
  readonly summary: string;
  /** A short fact set at the end of the line: years, a count, a date. */
  readonly aside: string;
}

export interface UnitListItem extends ListItem {
  readonly face: FaceData;
  /** The ways to its code, each with a page of its own. */
  readonly ways: readonly { readonly path: string; readonly name: string }[];
}

/** The lists of the start page and of the list pages: names and summaries, never whole entries. */
export interface ListsView {
  readonly units: readonly UnitListItem[];
  readonly guides: readonly ListItem[];
  readonly plans: readonly ListItem[];
  readonly tables: readonly ListItem[];
  readonly sources: readonly (ListItem & { readonly kind: string })[];
  /** How many profiles there are. */
  readonly profiles: number;
}

export function listsView(answers: Answers): ListsView {
  const { base } = answers;
  return {
    units: [...base.families.values()].map((family) => ({
      path: unitPath(family.id),
      title: family.data.name,
      summary: family.data.summary,
      aside: yearsOf(family.data.fitment),
      face: faceData(family),
      ways: (base.sequencesOfFamily.get(family.id) ?? []).map(({ id, data }) => ({
        path: wayPath(family.id, id),
        name: data.name,
      })),
    })),
    guides: [...base.guides.values()]
      .sort(byOrder)
      .map(({ id, data }) => ({ path: guidePath(id), title: data.title, summary: data.summary, aside: '' })),
    plans: [...base.plans.values()]
      .sort(byOrder)
      .map(({ id, data }) => ({ path: planPath(id), title: data.name, summary: data.summary, aside: '' })),
    tables: [...answers.tables].flatMap(([id, { table }]) => {
      const data = base.tables.get(id)?.data;
      return data && table
        ? [{ path: tablePath(id), title: data.question, summary: firstSentence(data.about), aside: '' }]
        : [];
    }),
    sources: [...base.sources.values()]
      .sort((a, b) => b.data.date.localeCompare(a.data.date) || a.id.localeCompare(b.id))
      .map(({ id, data }) => ({
        path: sourcePath(id),
        title: data.title,
        summary: phrase('Trust: {trust}. {reason}', {
          trust: trustLabel(data.trust).toLowerCase(),
          reason: data.trustReason,
        }),
        aside: longDate(data.date),
        kind: sourceKindLabel(data.kind),
      })),
    profiles: base.profiles.size,
  };
}

/** A list is read at a glance: the rest of a text is on its own page. */
function firstSentence(text: string): string {
  return /^.*?[.!?](?=\s|$)/s.exec(text)?.[0] ?? text;
}

function yearsOf(fitment: readonly { readonly fromYear: number; readonly toYear: number }[]): string {
  const from = Math.min(...fitment.map((one) => one.fromYear));
  const to = Math.max(...fitment.map((one) => one.toYear));
  return from === to ? `${from}` : `${from}–${to}`;
}
