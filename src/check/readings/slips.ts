/** All slips of unit in a base, each told once. */
import type { Base, Entry } from '../../base/index.ts';
import type { Cell } from './cells.ts';
import { sheetsOfProfile } from './sheets.ts';
import { type Slip, slipOf, slipsOfRepeats } from './slip.ts';
import { compareSessions, isStriking, type Suspicion } from './slips-between-sessions.ts';
import { slipsByLimit } from './slips-by-limit.ts';
import { slipsOfThd, type ThdSlip } from './slips-of-thd.ts';
import { slipsByFrequency, slipsByOutput, slipsBySteps } from './slips-within-sheet.ts';

export interface Slips {
  readonly volts: readonly Slip[];
  readonly thd: readonly ThdSlip[];
}

/** Whether anything looks like a slip in the profiles of a family, before it is settled what it is. */
export function mayHaveSlips(base: Base, family: string): boolean {
  return (base.profilesOfFamily.get(family) ?? []).some((profile) => {
    const unit = base.families.get(family);
    const { suspicions, volts, thd } = unit
      ? slipsOfProfile(base, profile, unit)
      : { suspicions: [], volts: [], thd: [] };
    return suspicions.length + volts.length + thd.length > 0;
  });
}

/**
 * Finds the slips of every profile of some families; which of two sessions is at fault may show only over
 * several profiles.
 */
export function slipsOf(base: Base, families: ReadonlySet<string>): Slips {
  const suspicions: Suspicion[] = [];
  const volts: Slip[] = [];
  const thd: ThdSlip[] = [];
  for (const profile of base.profiles.values()) {
    const family = base.families.get(profile.data.family);
    if (!family || !families.has(family.id)) continue;
    const found = slipsOfProfile(base, profile, family);
    suspicions.push(...found.suspicions);
    volts.push(...found.volts);
    thd.push(...found.thd);
  }
  return { volts: [...told(suspicions), ...volts], thd };
}

function slipsOfProfile(
  base: Base,
  { id }: Entry<'profiles'>,
  { data: { output } }: Entry<'families'>,
): Slips & { suspicions: readonly Suspicion[] } {
  const sheets = sheetsOfProfile(base, id);
  const { suspicions, confirmed } = compareSessions(sheets, output.topology);
  const volts = sheets.flatMap((sheet) => {
    const repeats = slipsOfRepeats(sheet);
    if (suspicions.some(({ here, there }) => here === sheet || there === sheet)) return repeats;
    const [within = []] = [slipsBySteps, slipsByFrequency, slipsByOutput]
      .map((find) => find(sheet, confirmed))
      .filter((slips) => slips.length > 0);
    if (within.length > 0 || repeats.length > 0) return [...repeats, ...within];
    return slipsByLimit(sheet, confirmed, output.topology);
  });
  return { suspicions, volts, thd: sheets.flatMap((sheet) => slipsOfThd(sheet, sheets) ?? []) };
}

/**
 * Settles each suspicion on one sheet: one that could be turned round follows the session that is suspected
 * over more profiles. A reading that several sessions contradict is told once, by the slip of most readings.
 */
function told(suspicions: readonly Suspicion[]): Slip[] {
  const profilesOf = new Map<string, Set<string>>();
  const key = ({ here, kind }: Suspicion): string => `${here.session.id} ${kind.id}`;
  for (const suspicion of suspicions) {
    for (const one of suspicion.otherwise ? [suspicion, suspicion.otherwise] : [suspicion]) {
      const known = profilesOf.get(key(one));
      if (known) known.add(one.here.profile);
      else profilesOf.set(key(one), new Set([one.here.profile]));
    }
  }
  const count = (one: Suspicion): number => profilesOf.get(key(one))?.size ?? 0;
  const settled = suspicions
    .map((one) => (one.otherwise && count(one.otherwise) > count(one) ? one.otherwise : one))
    .sort((a, b) => b.pairs.length - a.pairs.length);
  const striking = new Set(settled.filter(isStriking).map(key));
  const taken = new Set<Cell>();
  return settled.flatMap((one) => {
    const pairs = one.pairs.filter(([cell]) => !taken.has(cell));
    if (pairs.length === 0 || !striking.has(key(one))) return [];
    for (const [cell] of pairs) taken.add(cell);
    const cells = pairs.map(([cell]) => cell);
    const witness = pairs[0]?.[1].readings[0];
    return [slipOf(one.here, one.kind, cells, `what ${one.there.session.id} reads`, witness)];
  });
}

/** Whether a slip covers all that its sheet has to say of the profile, but for a few rows that cannot show it. */
export function isWhole({ sheet, readings }: Slip): boolean {
  const playing = sheet.cells.filter(
    ({ volts }) => volts > 20 * sheet.session.data.instrument.resolutionVolts,
  );
  const rows = playing.reduce((sum, cell) => sum + cell.readings.length, 0);
  return readings.length >= 0.8 * rows;
}
