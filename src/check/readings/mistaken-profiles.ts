/** Sheets that stand under a profile they were not taken of. */
import type { Base } from '../../base/index.ts';
import { areAlike } from '../../measure/index.ts';
import { areDeclaredSame } from '../declared-twins.ts';
import type { ProfileSheet } from './cells.ts';
import { mostlyAgree, scaleBetween } from './sheet-pairs.ts';
import { slipKinds } from './slip-kinds.ts';

/** Two sheets of one profile that contradict each other in most of what they have in common; `a` is the older. */
export interface Suspect {
  readonly a: ProfileSheet;
  readonly b: ProfileSheet;
}

/** Readings that fit another profile of the family better than their own. */
export interface MistakenProfile {
  readonly sheet: ProfileSheet;
  /** The sheet of the same profile that they contradict. */
  readonly contradicted: ProfileSheet;
  /** The sheet of another profile that they fit. */
  readonly witness: ProfileSheet;
  /** The sheet that stands under the other profile and fits this one, where both changed places. */
  readonly partner?: ProfileSheet;
}

interface Belonging extends MistakenProfile {
  /** The surer of several explanations has more. */
  readonly evidence: number;
}

/** What each suspect comes from, one for each sheet at fault. `family` holds the sheets of its profiles. */
export function mistakenProfiles(
  base: Base,
  suspects: readonly Suspect[],
  family: ReadonlyMap<string, readonly ProfileSheet[]>,
): MistakenProfile[] {
  const mistakes = suspects.flatMap(({ a, b }): Belonging[] => {
    // The newer sheet is named where either may be at fault, the surer fit first.
    const found = [...belongings(base, b, a, family), ...belongings(base, a, b, family)];
    return found.sort((x, y) => y.evidence - x.evidence).slice(0, 1);
  });
  const done = new Set<ProfileSheet>();
  return mistakes
    .sort((x, y) => y.evidence - x.evidence)
    .flatMap((mistake): MistakenProfile[] => {
      const partner = mistakes.find(
        ({ sheet }) => sheet.session === mistake.sheet.session && sheet.profile === mistake.witness.profile,
      );
      if (done.has(mistake.sheet) || (partner && done.has(partner.sheet))) return [];
      done.add(mistake.sheet);
      const isExchange = partner?.witness.profile === mistake.sheet.profile;
      return [{ ...mistake, ...(isExchange && { partner: partner.sheet }) }];
    });
}

/** Where the readings of `sheet` fit better than under its own profile. */
function belongings(
  base: Base,
  sheet: ProfileSheet,
  contradicted: ProfileSheet,
  family: ReadonlyMap<string, readonly ProfileSheet[]>,
): Belonging[] {
  const scale = scaleBetween(sheet, contradicted);
  // Another profile may be louder by just the factor of a slip; the slip is likelier.
  if (scale !== undefined && isFactorOfSlip(scale)) return [];
  const own = family.get(sheet.profile) ?? [];
  const backed = own.filter((one) => one !== sheet && mostlyAgree(sheet, one)).length;
  return [...family].flatMap(([profile, its]) =>
    areDeclaredSame(base, profile, sheet.profile)
      ? []
      : its.flatMap((witness): Belonging[] => {
          if (!areAlike(sheet.session.data, witness.session.data)) return [];
          const isElsewhere = witness.session !== sheet.session;
          // A sheet that reads like its neighbour may be right, and the other session off in its scale.
          if (scale !== undefined && !isElsewhere) return [];
          if (!mostlyAgree(sheet, witness)) return [];
          // A profile that the other session reads just so too is one with its own, whatever they are called.
          const isTwin = its.some(
            (one) => one.session === contradicted.session && mostlyAgree(contradicted, one),
          );
          if (isTwin) return [];
          // Sheets of its own profile that agree with it speak against the mistake.
          return [{ sheet, contradicted, witness, evidence: 1 - backed + (isElsewhere ? 0.5 : 0) }];
        }),
  );
}

function isFactorOfSlip(scale: number): boolean {
  return slipKinds.some(({ factor }) => factor !== undefined && Math.abs(Math.log(factor / scale)) < 0.03);
}
