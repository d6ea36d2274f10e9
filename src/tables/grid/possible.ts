/** Which rules may fit together while inputs are open: a walk over the pieces, without the FEEL library. */

/** What the walk needs of each input: for each rule, which pieces it lets through. */
export interface Passes {
  readonly passes: readonly ArrayLike<number>[];
}

/** The indexes of the rules that fit at some values, in the order of the table. */
export type Leaf = readonly number[];

/**
 * Every set of rules that fit at some values within the open pieces of each input, each once.
 * @param open for each input, the indexes of the pieces its value may lie in.
 */
export function possibleHits(grid: readonly Passes[], open: readonly (readonly number[])[]): Leaf[] {
  const leaves: Leaf[] = [];
  const seen = new Set<string>();
  const walk = (input: number, rules: readonly number[]): void => {
    const key = `${input}:${rules.join()}`;
    // The same rules left at the same input lead to the same leaves.
    if (seen.has(key)) return;
    seen.add(key);
    const here = grid[input];
    if (!here) {
      leaves.push(rules);
      return;
    }
    for (const piece of open[input] ?? []) {
      walk(
        input + 1,
        rules.filter((rule) => here.passes[rule]?.[piece] === 1),
      );
    }
  };
  walk(0, [...(grid[0]?.passes.keys() ?? [])]);
  return leaves;
}
