/** Choices drawn from a repeatable stream. */
import { type RandomStream, randomStream } from '../../src/demo/random.ts';

export class Dice {
  readonly #stream: RandomStream;

  constructor(seed: number, name: string) {
    this.#stream = randomStream(seed, name);
  }

  /** A whole number from 0 up to, not including, `below`. */
  below(below: number): number {
    return Math.min(below - 1, Math.floor(this.#stream.uniform(0, below)));
  }

  between(low: number, high: number): number {
    return this.#stream.uniform(low, high);
  }

  chance(probability = 0.5): boolean {
    return this.#stream.uniform(0, 1) < probability;
  }

  /** @throws where there is nothing to pick from: a kind without a victim is a mistake in the kind. */
  pick<T>(list: readonly T[]): T {
    if (list.length === 0) throw new Error('nothing to pick from');
    return list[this.below(list.length)] as T;
  }

  shuffled<T>(list: readonly T[]): T[] {
    const left = [...list];
    const drawn: T[] = [];
    while (left.length > 0) drawn.push(...left.splice(this.below(left.length), 1));
    return drawn;
  }
}
