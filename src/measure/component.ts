/** A line of an uncertainty budget, after the GUM (JCGM 100:2008). */

/**
 * One line of a budget: what one influence contributes to the result's standard uncertainty, in the unit
 * of the result. Its sign says which way the influence moves the result; it matters where two results
 * share the influence.
 */
export interface Component {
  readonly name: string;
  readonly standardUncertainty: number;
  /** Infinite for influences known from a specification (GUM G.4.2). */
  readonly degreesOfFreedom: number;
  /** `rectangular` where only limits are known; `normal` where absent. */
  readonly shape?: 'normal' | 'rectangular' | undefined;
  /**
   * The influence itself. Components of one id are one influence acting twice: they are fully correlated
   * (GUM 5.2, r = 1) and add with their signs. Without an id a component is its own influence.
   */
  readonly id?: string | undefined;
}
