/** How much a reading is expected to tell, before it is taken. */

/** One hypothesis: its probability, and the normal distribution of the reading under it. */
export interface Component {
  readonly probability: number;
  readonly mean: number;
  readonly standardDeviation: number;
}

/** Quadrature nodes about each component, in its standard deviations. */
const nodes = Array.from({ length: 31 }, (_, index) => (index - 15) / 3);

/** A component is left out this many standard deviations away: it is below 2e-8 of its peak. */
const farAway = 6;

/**
 * Mutual information of hypothesis and reading, bits: the fall of the entropy over the hypotheses that the
 * reading is expected to bring, I = ∫ Σ pₖ fₖ log₂(fₖ / Σ pⱼ fⱼ) dy (Cover and Thomas, Elements of Information
 * Theory, 2006, 2.4 and 8.5; from memory). Probabilities are taken in proportion. By the trapezoid rule over
 * the nodes of all components together, ±5 standard deviations about each: fine where one of them is narrow.
 */
export function mutualInformationBits(components: readonly Component[]): number {
  const present = components.filter((one) => one.probability > 0);
  const total = present.reduce((sum, one) => sum + one.probability, 0);
  const means = Float64Array.from(present, (one) => one.mean);
  const sds = Float64Array.from(present, (one) => one.standardDeviation);
  const shares = Float64Array.from(present, (one) => one.probability / total);
  const logScales = sds.map((sd) => -Math.log(sd * Math.sqrt(2 * Math.PI)));
  const integrand = (y: number): number => {
    let mixture = 0;
    let sum = 0;
    for (let k = 0; k < means.length; k += 1) {
      const away = (y - (means[k] ?? 0)) / (sds[k] ?? 1);
      if (away > farAway || away < -farAway) continue;
      const logDensity = (logScales[k] ?? 0) - (away * away) / 2;
      const density = (shares[k] ?? 0) * Math.exp(logDensity);
      mixture += density;
      sum += density * logDensity;
    }
    return mixture > 0 ? sum - mixture * Math.log(mixture) : 0;
  };
  const ys = new Float64Array(means.length * nodes.length);
  means.forEach((mean, k) => {
    for (let node = 0; node < nodes.length; node += 1) {
      ys[k * nodes.length + node] = mean + (nodes[node] ?? 0) * (sds[k] ?? 1);
    }
  });
  ys.sort();
  let nats = 0;
  let before = 0;
  for (let index = 0; index < ys.length; index += 1) {
    const here = integrand(ys[index] ?? 0);
    if (index > 0) nats += ((here + before) / 2) * ((ys[index] ?? 0) - (ys[index - 1] ?? 0));
    before = here;
  }
  return Math.max(0, nats / Math.LN2);
}
