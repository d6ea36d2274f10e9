/**
 * Quantiles of Student's t. A page computes them too, where a general library of distributions would weigh several
 * times the page's own script; so they are made here, from the closed forms of Abramowitz and Stegun, chapter 26.
 */

/** Beyond this many degrees of freedom the expansion about the normal distribution is good to ten digits. */
const mostBySum = 300;

/** The value that |t| with whole `degreesOfFreedom`, 1 or more, stays within with the probability `within`. */
export function studentWithin(within: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom <= mostBySum) return solved(within, (t) => shareWithin(t, degreesOfFreedom));
  return expanded(solved(within, normalWithin), degreesOfFreedom);
}

/** P(|T| ≤ t), A&S 26.7.3 (odd degrees of freedom) and 26.7.4 (even). */
function shareWithin(t: number, degreesOfFreedom: number): number {
  const angle = Math.atan(t / Math.sqrt(degreesOfFreedom));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const isOdd = degreesOfFreedom % 2 === 1;
  let term = isOdd ? cosine : 1;
  let sum = degreesOfFreedom === 1 ? 0 : term;
  for (let next = isOdd ? 3 : 2; next <= degreesOfFreedom - 2; next += 2) {
    term *= ((next - 1) / next) * cosine ** 2;
    sum += term;
  }
  return isOdd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
}

/** P(|X| ≤ x) of the normal distribution, A&S 26.2.11. */
function normalWithin(x: number): number {
  let term = x;
  let sum = x;
  for (let next = 3; term > 1e-17 * sum; next += 2) {
    term *= x ** 2 / next;
    sum += term;
  }
  return Math.sqrt(2 / Math.PI) * Math.exp(-(x ** 2) / 2) * sum;
}

/** Student's t of a normal quantile, A&S 26.7.5. */
function expanded(x: number, degreesOfFreedom: number): number {
  const terms = [
    (x ** 3 + x) / 4,
    (5 * x ** 5 + 16 * x ** 3 + 3 * x) / 96,
    (3 * x ** 7 + 19 * x ** 5 + 17 * x ** 3 - 15 * x) / 384,
    (79 * x ** 9 + 776 * x ** 7 + 1482 * x ** 5 - 1920 * x ** 3 - 945 * x) / 92_160,
  ];
  return terms.reduce((sum, term, index) => sum + term / degreesOfFreedom ** (index + 1), x);
}

/** Where a rising share, 0 at 0, reaches `within`: the interval is doubled until it holds it, then halved. */
function solved(within: number, share: (at: number) => number): number {
  let high = 1;
  while (share(high) < within && high < 1e6) high *= 2;
  let low = 0;
  for (let half = 0; half < 60 && high - low > 1e-15 * high; half += 1) {
    const middle = (low + high) / 2;
    if (share(middle) < within) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
