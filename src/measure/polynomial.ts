/** The polynomial through given nodes, in Newton's form: divided differences (any text on interpolation). */
export class Polynomial {
  readonly #x: readonly number[];
  readonly #differences: number[];

  /** The one polynomial of least degree through the nodes (x, y); the x must differ. */
  constructor(x: readonly number[], y: readonly number[]) {
    const differences = [...y];
    for (let order = 1; order < x.length; order += 1) {
      for (let at = x.length - 1; at >= order; at -= 1) {
        const rise = (differences[at] ?? 0) - (differences[at - 1] ?? 0);
        differences[at] = rise / ((x[at] ?? 0) - (x[at - order] ?? 0));
      }
    }
    this.#x = x;
    this.#differences = differences;
  }

  at(where: number): number {
    let value = 0;
    for (let order = this.#differences.length - 1; order >= 0; order -= 1) {
      value = value * (where - (this.#x[order] ?? 0)) + (this.#differences[order] ?? 0);
    }
    return value;
  }

  /** The straight line through the first two nodes. */
  straightAt(where: number): number {
    return (this.#differences[0] ?? 0) + (this.#differences[1] ?? 0) * (where - (this.#x[0] ?? 0));
  }

  slopeAt(where: number): number {
    let [value, slope] = [0, 0];
    for (let order = this.#differences.length - 1; order >= 0; order -= 1) {
      const along = where - (this.#x[order] ?? 0);
      slope = slope * along + value;
      value = value * along + (this.#differences[order] ?? 0);
    }
    return slope;
  }

  curvatureAt(where: number): number {
    let [value, slope, curvature] = [0, 0, 0];
    for (let order = this.#differences.length - 1; order >= 0; order -= 1) {
      const along = where - (this.#x[order] ?? 0);
      curvature = curvature * along + 2 * slope;
      slope = slope * along + value;
      value = value * along + (this.#differences[order] ?? 0);
    }
    return curvature;
  }

  /** How much of each node's value is in the value at `where` (Lagrange's weights; they add up to 1). */
  weightsAt(where: number): number[] {
    const x = this.#x;
    return x.map((own, index) =>
      x.reduce(
        (weight, other, at) => (at === index ? weight : (weight * (where - other)) / (own - other)),
        1,
      ),
    );
  }

  /** How much of each node's value is in the slope at `where`; they add up to 0. */
  weightSlopesAt(where: number): number[] {
    const x = this.#x;
    return x.map((own, index) => {
      let [weight, slope] = [1, 0];
      x.forEach((other, at) => {
        if (at === index) return;
        slope = (slope * (where - other) + weight) / (own - other);
        weight = (weight * (where - other)) / (own - other);
      });
      return slope;
    });
  }
}
