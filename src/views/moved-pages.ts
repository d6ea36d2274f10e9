/** Pages left at the addresses renamed profiles once had. */
import type { Answers } from '../answers.ts';
import { profilePath, readingsPath } from './paths.ts';

export interface MovedPageView {
  /** The old address below the base path, without the slash at its end. */
  readonly id: string;
  /** The new one, as a path of views/paths.ts. */
  readonly to: string;
  readonly code: string;
  readonly familyName: string;
}

/** One for each page a renamed profile had, by old address. An id that is in use again leads nowhere else. */
export function movedPages({ base }: Answers): MovedPageView[] {
  return [...base.profiles.values()]
    .flatMap(({ id, data }) => {
      const familyName = base.families.get(data.family)?.data.name ?? data.family;
      return data.formerly
        .filter((former) => !base.profiles.has(former))
        .flatMap((former) =>
          [profilePath, readingsPath].map((path) => ({
            id: path(former).replace(/\/$/, ''),
            to: path(id),
            code: data.code,
            familyName,
          })),
        );
    })
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}
