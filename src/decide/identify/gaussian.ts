/** Several levels that vary together: density and conditioning of a multivariate normal. */

/** A joint normal distribution of a few values. */
export interface Joint {
  readonly mean: readonly number[];
  /** Symmetric, positive definite, by rows. */
  readonly covariance: readonly (readonly number[])[];
}

/** A joint normal with values it took, ready to be asked for their density and for what follows from them. */
export interface Observed {
  /** Natural logarithm of the density of the values; 0 for none. */
  readonly logDensity: number;
  /**
   * Mean and variance of one more value given these, from its own mean, its variance and its covariance with
   * each: μ + cᵀC⁻¹(y − m) and v − cᵀC⁻¹c.
   */
  condition(next: {
    readonly mean: number;
    readonly variance: number;
    readonly covariances: readonly number[];
  }): { readonly mean: number; readonly variance: number };
}

/**
 * Observes values of a joint normal, by Cholesky factorisation C = LLᵀ.
 * @throws RangeError where the covariance is not positive definite.
 */
export function observe(joint: Joint, values: readonly number[]): Observed {
  const factor = cholesky(joint.covariance);
  const whitened = forward(
    factor,
    values.map((value, index) => value - (joint.mean[index] ?? 0)),
  );
  const logDeterminant = factor.reduce((sum, row, index) => sum + Math.log(row[index] ?? 1), 0);
  const squares = whitened.reduce((sum, one) => sum + one ** 2, 0);
  return {
    logDensity: -squares / 2 - logDeterminant - (values.length / 2) * Math.log(2 * Math.PI),
    condition: ({ mean, variance, covariances }) => {
      const spread = forward(factor, covariances);
      return {
        mean: mean + spread.reduce((sum, one, index) => sum + one * (whitened[index] ?? 0), 0),
        variance: variance - spread.reduce((sum, one) => sum + one ** 2, 0),
      };
    },
  };
}

/** The lower triangle L of C = LLᵀ. */
function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const factor: number[][] = [];
  matrix.forEach((row, i) => {
    const current: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      const other = j === i ? current : (factor[j] ?? []);
      let rest = row[j] ?? 0;
      for (let k = 0; k < j; k += 1) rest -= (current[k] ?? 0) * (other[k] ?? 0);
      if (j < i) current.push(rest / (other[j] ?? 1));
      else if (rest > 0) current.push(Math.sqrt(rest));
      else throw new RangeError('the covariance is not positive definite');
    }
    factor.push(current);
  });
  return factor;
}

/** Solves Lx = b. */
function forward(factor: readonly (readonly number[])[], b: readonly number[]): number[] {
  const x: number[] = [];
  factor.forEach((row, i) => {
    let rest = b[i] ?? 0;
    for (let k = 0; k < i; k += 1) rest -= (row[k] ?? 0) * (x[k] ?? 0);
    x.push(rest / (row[i] ?? 1));
  });
  return x;
}
