/** What a table’s form writes into the address, and how it is read back: shared by the page and its script. */
import { daysOf } from '../tables/sets/days.ts';
import type { ListedInput } from './table-listing.ts';

/** The name of the unit in the address; no input can have it, as their names have no underscore. */
export const unitField = 'head_unit';

export const allUnits = 'All units';

/**
 * The piece that what was said of an input lies in. Undefined where nothing was said, or something it cannot be.
 * @param options the answers to choose from, in the order of the pieces.
 */
export function pieceSaid(
  { ends }: ListedInput,
  said: string,
  options: readonly string[],
): number | undefined {
  if (said === '') return undefined;
  if (!ends) return pieceAt(options.indexOf(said));
  const value = daysOf(said) ?? Number(said);
  if (!Number.isFinite(value)) return undefined;
  return pieceAt(
    ends.findIndex(([low, high]) =>
      low !== null && low === high
        ? value === low
        : value > (low ?? Number.NEGATIVE_INFINITY) && value < (high ?? Number.POSITIVE_INFINITY),
    ),
  );
}

function pieceAt(index: number): number | undefined {
  return index < 0 ? undefined : index;
}
