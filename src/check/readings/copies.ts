/** Rows that stand under two profiles, and which of the two has them from the other. */
import type { Base } from '../../base/index.ts';
import { formatHz } from '../../measure/index.ts';
import { type ChanceOfSame, chanceOfSame } from './chance-of-same.ts';
import { pairsSharingRows, type Rows, sameBlocks } from './copied-blocks.ts';
import { type CopySign, secondIsCopy } from './copy-or-original.ts';

/** What was found among some sheets. */
export interface Copies {
  /** How many rows were held against rows of another sheet. */
  readonly compared: number;
  readonly copies: readonly Copy[];
}

/** Rows of one profile that stand under another too. */
export interface Copy {
  readonly copy: SheetName;
  readonly original: SheetName;
  readonly sign: CopySign;
  /** The copied rows, by id, and the first of them as it stands in the original. */
  readonly rows: readonly string[];
  readonly source: string;
  /** Where the first of them is: “FL, step 3, 1 kHz”. */
  readonly at: string;
  readonly telling: number;
  /** The chance that independent readings of one level would be the same in the block least likely of all. */
  readonly chance: number;
}

interface SheetName {
  readonly profile: string;
  readonly session: string;
}

/**
 * So many blocks may come by chance in one base. A block begins at one of the rows that were held against another
 * sheet: so many times its chance is how many like it are to be expected, were all profiles to put out the same.
 */
export const mostExpected = 1e-6;

/** The copies among some sheets, of pairs that `mayShare` does not rule out. */
export function copiesIn(
  base: Base,
  sheets: readonly Rows[],
  mayShare: (a: Rows, b: Rows) => boolean,
): Copies {
  const rows = sheets.reduce((sum, { readings }) => sum + readings.length, 0);
  const chances = new Map<string, ChanceOfSame>();
  const chanceIn = ({ session }: Rows): ChanceOfSame => {
    const table = base.readings.get(session.id);
    if (!table) throw new Error(`no readings of session ${session.id}`);
    const known = chances.get(session.id);
    if (known) return known;
    const readings = table.profiles.map((profile) => table.readingsOf(profile));
    const chance = chanceOfSame(readings, session.data.instrument.resolutionVolts);
    chances.set(session.id, chance);
    return chance;
  };
  const pairs = pairsSharingRows(sheets, (a, b) => a.profile !== b.profile && mayShare(a, b));
  const copies = pairs.flatMap(([a, b]): Copy[] => {
    const blocks = sameBlocks(a, b, [chanceIn(a), chanceIn(b)]).filter(({ chance }) => chance < mostExpected);
    const [first] = blocks;
    if (!first) return [];
    const { isCopy, sign } = secondIsCopy(
      base,
      [a, b],
      blocks.flatMap((block) => block.a),
    );
    const [copy, original] = isCopy ? [b, a] : [a, b];
    const [copied, source] = isCopy ? [first.b[0], first.a[0]] : [first.a[0], first.b[0]];
    if (!copied || !source) return [];
    return [
      {
        copy: { profile: copy.profile, session: copy.session.id },
        original: { profile: original.profile, session: original.session.id },
        sign,
        rows: blocks.flatMap((block) => (isCopy ? block.b : block.a).map(({ id }) => id)),
        source: source.id,
        at: `${copied.channel}, step ${copied.step}, ${formatHz(copied.hz)}`,
        telling: blocks.reduce((sum, block) => sum + block.telling, 0),
        chance: Math.min(...blocks.map(({ chance }) => chance)),
      },
    ];
  });
  return { compared: (rows * sheets.length) / 2, copies };
}
