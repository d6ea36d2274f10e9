/** The planner’s data, each file asked for once; a failure is forgotten, so that the next change tries again. */

import type { CodeEntry } from '../../codes/index.ts';
import type { CodeList } from '../../views/code-list-format.ts';
import { codeListPath, plannerProfilePath, plannerUnitPath } from '../../views/paths.ts';
import {
  type PlannerData,
  type PlannerProfileData,
  type PlannerUnitData,
  plannerFormat,
} from '../../views/planner-format.ts';

const loading = new Map<string, Promise<unknown>>();

export interface Loader {
  readonly site: () => Promise<PlannerData>;
  readonly unit: (family: string) => Promise<PlannerUnitData>;
  readonly profile: (id: string) => Promise<PlannerProfileData>;
  /** Every known code, for one that is typed before the unit is known. */
  readonly codes: () => Promise<readonly CodeEntry[]>;
}

/** @param base the base path of the site; `site` the address of what every plan needs. */
export function loaderOf(base: string, site: string): Loader {
  return {
    site: () => loaded<PlannerData>(site),
    unit: (family) => loaded<PlannerUnitData>(`${base}${plannerUnitPath(family)}`),
    profile: (id) => loaded<PlannerProfileData>(`${base}${plannerProfilePath(id)}`),
    codes: async () => {
      const { entriesOf } = await import('../../views/code-list-format.ts');
      return entriesOf(
        await once(`${base}${codeListPath}`, () => fetched<CodeList>(`${base}${codeListPath}`)),
      );
    },
  };
}

function loaded<Kind extends { readonly format: number }>(address: string): Promise<Kind> {
  return once(address, async () => {
    const data = await fetched<Kind>(address);
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

async function fetched<Kind>(address: string): Promise<Kind> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return (await response.json()) as Kind;
}
