/** Which pages of the site come, go, or lie elsewhere after a change. */
import type { Answers } from '../../answers.ts';
import type { States } from '../../impact/index.ts';
import { movedPages } from '../moved-pages.ts';
import {
  blankSheetPath,
  guidePath,
  planPath,
  profilePath,
  readingsPath,
  sheetPath,
  sourcePath,
  tablePath,
  unitPath,
  wayPath,
} from '../paths.ts';

export interface PageChanges {
  /** Paths below the base path. */
  readonly added: readonly string[];
  readonly removed: readonly RemovedPage[];
}

export interface RemovedPage {
  readonly path: string;
  /** Where the same entry has its page now; undefined where it is gone. */
  readonly now: string | undefined;
  /** Whether the old address leads there. */
  readonly redirected: boolean;
}

/** The pages that entries have, each by the name of what it shows: the same for an entry that was renamed. */
function pagesOf({ base }: Answers, idNow: States['idNow']): Map<string, string> {
  const pages = new Map<string, string>();
  for (const id of base.families.keys()) {
    pages.set(`unit ${idNow('families', id)}`, unitPath(id));
    pages.set(`sheet ${idNow('families', id)}`, sheetPath(id));
    pages.set(`bench sheet ${idNow('families', id)}`, blankSheetPath(id));
  }
  for (const { id, data } of base.sequences.values()) {
    if (base.families.has(data.family)) pages.set(`way ${idNow('sequences', id)}`, wayPath(data.family, id));
  }
  for (const { id, data } of base.profiles.values()) {
    if (!base.families.has(data.family)) continue;
    pages.set(`profile ${idNow('profiles', id)}`, profilePath(id));
    if ((base.sessionsOfProfile.get(id) ?? []).length > 0) {
      pages.set(`readings ${idNow('profiles', id)}`, readingsPath(id));
    }
  }
  const plain = { plans: planPath, tables: tablePath, guides: guidePath, sources: sourcePath } as const;
  for (const kind of ['plans', 'tables', 'guides', 'sources'] as const) {
    for (const id of base[kind].keys()) pages.set(`${kind} ${idNow(kind, id)}`, plain[kind](id));
  }
  return pages;
}

/** The pages that are there in one of the two states only, by path. */
export function pageChanges(states: States): PageChanges {
  const before = pagesOf(states.before, (kind, id) => states.idNow(kind, id));
  const now = pagesOf(states.now, (_, id) => id);
  const [paths, pathsBefore] = [new Set(now.values()), new Set(before.values())];
  const moved = new Map(movedPages(states.now).map(({ id, to }) => [`${id}/`, to]));
  return {
    added: [...now.values()].filter((path) => !pathsBefore.has(path)).sort(),
    removed: [...before]
      .filter(([, path]) => !paths.has(path))
      .map(([name, path]) => ({ path, now: moved.get(path) ?? now.get(name), redirected: moved.has(path) }))
      .sort((a, b) => (a.path < b.path ? -1 : 1)),
  };
}
