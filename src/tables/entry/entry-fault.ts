/** What is wrong with a table entry, and where in it. */

export type EntryPath = readonly (string | number)[];

/** The path of the field, the words, and names that may have been meant. */
export interface EntryFault {
  readonly path: EntryPath;
  /** Whether it is the name of the field that is wrong, not its value. */
  readonly part: 'key' | 'value';
  readonly message: string;
  readonly help: string;
  /** A name that is not known, and those that are, for “did you mean”. */
  readonly unknown?: { readonly name: string; readonly known: readonly string[] };
  /** Other places with the same fault: one slip in a column’s name shows in every rule. */
  readonly also?: readonly EntryPath[];
}

/** One fault for each text: the first, with the places of the others. */
export function joinedFaults(faults: Iterable<EntryFault>): EntryFault[] {
  const alike = Map.groupBy(faults, ({ path, part, message }) => JSON.stringify([path[0], part, message]));
  return [...alike.values()].flatMap(([first, ...others]) => {
    if (!first) return [];
    return others.length === 0 ? [first] : [{ ...first, also: others.map(({ path }) => path) }];
  });
}
