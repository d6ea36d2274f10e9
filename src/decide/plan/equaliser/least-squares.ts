/** Least squares with bounds: Levenberg and Marquardt's method, held within a box. */

/** A problem: residuals to be made small, and how each moves with each variable. */
export interface Problem {
  readonly bounds: readonly (readonly [least: number, most: number])[];
  readonly residuals: (at: readonly number[]) => readonly number[];
  /** One row a variable: the change of each residual with it. */
  readonly slopes: (at: readonly number[]) => readonly (readonly number[])[];
}

export interface Solution {
  readonly at: readonly number[];
  /** Sum of the squares of the residuals. */
  readonly cost: number;
}

/**
 * Goes downhill from `start` until a step gains less than a part in 10⁷ or `mostSteps` are made. Variables at a bound
 * that the descent would leave are held there (Marquardt, J. SIAM 11:431, 1963, with projection; from memory).
 */
export function descend(problem: Problem, start: readonly number[], mostSteps: number): Solution {
  const { bounds } = problem;
  let at = start.map((value, index) => clamped(value, bounds[index]));
  let residuals = problem.residuals(at);
  let cost = squares(residuals);
  let damping = 1e-2;
  for (let step = 0; step < mostSteps && cost > 1e-12; step += 1) {
    const slopes = problem.slopes(at);
    const gradient = slopes.map((row) => dot(row, residuals));
    const free = at.flatMap((value, index) =>
      isHeld(value, gradient[index] ?? 0, bounds[index]) ? [] : [index],
    );
    const before = cost;
    let found = false;
    while (!found && damping < 1e8) {
      const moves = solved(slopes, gradient, free, damping);
      const next = [...at];
      free.forEach((index, place) => {
        next[index] = clamped((at[index] ?? 0) + (moves[place] ?? 0), bounds[index]);
      });
      const nextResiduals = problem.residuals(next);
      const nextCost = squares(nextResiduals);
      found = nextCost < cost;
      if (found) {
        at = next;
        residuals = nextResiduals;
        cost = nextCost;
        damping = Math.max(1e-9, damping / 5);
      } else damping *= 4;
    }
    if (!found || before - cost < 1e-7 * before) break;
  }
  return { at, cost };
}

function clamped(value: number, bound: readonly [number, number] | undefined): number {
  return bound ? Math.min(bound[1], Math.max(bound[0], value)) : value;
}

function isHeld(value: number, slope: number, bound: readonly [number, number] | undefined): boolean {
  if (!bound) return false;
  return bound[0] === bound[1] || (value <= bound[0] && slope > 0) || (value >= bound[1] && slope < 0);
}

/** Solves (JᵀJ + damping·diag) · moves = −gradient for the free variables, by Cholesky's factors. */
function solved(
  slopes: readonly (readonly number[])[],
  gradient: readonly number[],
  free: readonly number[],
  damping: number,
): number[] {
  const factor: number[][] = [];
  const moves: number[] = [];
  free.forEach((variable, row) => {
    const mine = slopes[variable] ?? [];
    const line: number[] = [];
    for (let column = 0; column <= row; column += 1) {
      const other = slopes[free[column] ?? 0] ?? [];
      const left = factor[column] ?? line;
      let sum = dot(mine, other);
      // A variable that moves nothing, as the frequency of a filter without gain, stays where it is.
      if (column === row) sum += damping * sum + 1e-9;
      for (let k = 0; k < column; k += 1) sum -= (line[k] ?? 0) * (left[k] ?? 0);
      line.push(column === row ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (left[column] ?? 1));
    }
    factor.push(line);
    let right = -(gradient[variable] ?? 0);
    for (let k = 0; k < row; k += 1) right -= (line[k] ?? 0) * (moves[k] ?? 0);
    moves.push(right / (line[row] ?? 1));
  });
  for (let row = free.length - 1; row >= 0; row -= 1) {
    let right = moves[row] ?? 0;
    for (let k = row + 1; k < free.length; k += 1) right -= (factor[k]?.[row] ?? 0) * (moves[k] ?? 0);
    moves[row] = right / (factor[row]?.[row] ?? 1);
  }
  return moves;
}

export function squares(values: readonly number[]): number {
  return dot(values, values);
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let index = 0; index < a.length; index += 1) sum += (a[index] ?? 0) * (b[index] ?? 0);
  return sum;
}
