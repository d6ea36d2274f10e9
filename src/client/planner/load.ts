/** The planner’s data, each file asked for once; a failure is forgotten, so that the next change tries again. */

import type { CodeEntry } from '../../codes/index.ts';
import { plannerProfilePath, plannerUnitPath } from '../../views/paths.ts';
import {
  type PlannerData,
  type PlannerProfileData,
  type PlannerUnitData,
  plannerFormat,
} from '../../views/planner-format.ts';
import { fetchJson } from '../fetch-json.ts';

const loading = new Map<string, Promise<unknown>>();

export interface Loader {
  readonly site: () => Promise<PlannerData>;
  readonly unit: (family: string) => Promise<PlannerUnitData>;
  readonly profile: (id: string) => Promise<PlannerProfileData>;
  /** The known code that is typed so, of a unit or, where none is chosen, of any. */
  readonly code: (canonical: string, unit: string | undefined) => Promise<CodeEntry | undefined>;
}

/** @param base the base path of the site; `site` the address of what every plan needs. */
export function loaderOf(base: string, site: string): Loader {
  return {
    site: () => loaded<PlannerData>(site),
    unit: (family) => loaded<PlannerUnitData>(`${base}${plannerUnitPath(family)}`),
    profile: (id) => loaded<PlannerProfileData>(`${base}${plannerProfilePath(id)}`),
    code: async (canonical, unit) => (await import('../code-typed.ts')).codeTyped(base, canonical, unit),
  };
}

function loaded<Kind extends { readonly format: number }>(address: string): Promise<Kind> {
  return once(address, async () => {
    const data = (await fetchJson(address)) as Kind;
    if (data.format !== plannerFormat) throw new Error(`${address} is of another version of this page`);
    return data;
  });
}

function once<Kind>(address: string, load: () => Promise<Kind>): Promise<Kind> {
  const known = loading.get(address) as Promise<Kind> | undefined;
  if (known) return known;
  const asked = load();
  loading.set(address, asked);
  asked.catch(() => loading.delete(address));
  return asked;
}
