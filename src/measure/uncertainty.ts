/** The uncertainty budget of a result, after the GUM (JCGM 100:2008). */
import type { Component } from './component.ts';
import { studentWithin } from './student.ts';

export type { Component } from './component.ts';

/** The standard uncertainty of a quantity known to lie within ± `halfWidth`, all values alike (GUM 4.3.7). */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** A component known from a specification's limits ± `halfWidth`. */
export function limits(name: string, halfWidth: number, id?: string): Component {
  return component(name, rectangular(halfWidth), Number.POSITIVE_INFINITY, 'rectangular', id);
}

/** The components of a result multiplied by its sensitivity to it (GUM 5.1.3). */
export function scaled(components: readonly Component[], sensitivity: number): Component[] {
  return components.map(({ name, standardUncertainty, degreesOfFreedom, shape, id }) =>
    component(name, standardUncertainty * sensitivity, degreesOfFreedom, shape, id),
  );
}

/** All components have the same fields in the same order, set or not: engines handle such objects fastest. */
function component(
  name: string,
  standardUncertainty: number,
  degreesOfFreedom: number,
  shape: Component['shape'],
  id: string | undefined,
): Component {
  return { name, standardUncertainty, degreesOfFreedom, shape, id };
}

/** Adds up the components that are one influence; what cancels is left out. */
export function merged(components: readonly Component[]): Component[] {
  const places = new Map<string, number>();
  const sums: Component[] = [];
  for (const one of components) {
    const place = one.id === undefined ? undefined : places.get(one.id);
    if (place === undefined) {
      if (one.id !== undefined) places.set(one.id, sums.length);
      sums.push(one);
      continue;
    }
    const before = sums[place];
    if (!before) continue;
    const { name, degreesOfFreedom, shape, id } = one;
    const sum = before.standardUncertainty + one.standardUncertainty;
    sums[place] = component(name, sum, degreesOfFreedom, shape, id);
  }
  return sums.filter((one) => one.standardUncertainty !== 0);
}

/** Beyond this Student's t is the normal distribution to nine digits. */
const mostDegreesOfFreedom = 1e9;

/**
 * Coverage factor for a level of confidence: the two-sided quantile of Student's t at the effective
 * degrees of freedom, rounded down to a whole number (GUM G.4.1, note 1; G.6.4).
 */
export function coverageFactor(degreesOfFreedom: number, confidence = 0.95): number {
  const whole = Math.min(mostDegreesOfFreedom, Math.max(1, Math.floor(degreesOfFreedom)));
  if (confidence !== 0.95) return studentWithin(confidence, whole);
  const known = factors95.get(whole);
  if (known !== undefined) return known;
  const factor = studentWithin(0.95, whole);
  factors95.set(whole, factor);
  return factor;
}

/** Factors for 95 % already found: the same few degrees of freedom come again and again. */
const factors95 = new Map<number, number>();

/**
 * Coverage factors for 95 % of a combination by its excess kurtosis, from −1.2 in steps of 0.2: 0.95·√3 =
 * 1.645 for a single rectangular one (−1.2; GUM G.1.3 and 4.3.7), 1.960 for a normal distribution (0), and
 * between them as sums of rectangular and normal parts give it by simulation, within 1.5 %. After the method
 * of moments of Willink, Metrologia 42:329 (2005), from memory.
 */
const factorByKurtosis = [1.645, 1.75, 1.823, 1.883, 1.925, 1.944, 1.96] as const;

/** How much narrower than normal at 95 % a combination of the given excess kurtosis, −1.2 to 0, is. */
function shapeFactor(excessKurtosis: number): number {
  const place = Math.min(6, Math.max(0, (excessKurtosis + 1.2) / 0.2));
  const below = Math.min(5, Math.floor(place));
  const [low, high] = [factorByKurtosis[below] ?? 1.96, factorByKurtosis[below + 1] ?? 1.96];
  return (low + (place - below) * (high - low)) / 1.96;
}

/** What a budget comes to, gathered part by part: enough for the uncertainty without keeping the parts. */
export class Gathered {
  #squares = 0;
  #limitFourths = 0;
  #fourthsByFreedom = 0;

  /** Adds a part known from its limits ± `halfWidth`. */
  limits(halfWidth: number): void {
    const square = halfWidth ** 2 / 3;
    this.#squares += square;
    this.#limitFourths += square ** 2;
  }

  /** Adds a part by its standard uncertainty. */
  part(standardUncertainty: number, degreesOfFreedom: number, shape?: Component['shape']): void {
    const square = standardUncertainty ** 2;
    this.#squares += square;
    this.#fourthsByFreedom += square ** 2 / degreesOfFreedom;
    if (shape === 'rectangular') this.#limitFourths += square ** 2;
  }

  /** Combined standard uncertainty of uncorrelated parts: root of the sum of squares (GUM 5.1.2). */
  get standardUncertainty(): number {
    return Math.sqrt(this.#squares);
  }

  /** Effective degrees of freedom, ν = u_c⁴ / Σ(u_i⁴/ν_i) (Welch–Satterthwaite, GUM G.4.1). */
  get degreesOfFreedom(): number {
    if (this.#fourthsByFreedom === 0) return Number.POSITIVE_INFINITY;
    return this.#squares ** 2 / this.#fourthsByFreedom;
  }

  /** For 95 %: Student's t at the effective degrees of freedom, times the shape factor. */
  get coverageFactor(): number {
    const fourth = this.#squares ** 2;
    const excessKurtosis = fourth === 0 ? 0 : (-1.2 * this.#limitFourths) / fourth;
    return coverageFactor(this.degreesOfFreedom) * shapeFactor(excessKurtosis);
  }
}
