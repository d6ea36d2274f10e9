/** A map whose values are made when they are first asked for, and kept: all of them, or the last few. */
export class LazyMap<V> implements ReadonlyMap<string, V> {
  readonly #keys: ReadonlySet<string>;
  readonly #make: (key: string) => V;
  readonly #most: number;
  readonly #made = new Map<string, V>();

  /** @param most how many values are kept at once; one that was let go is made again. */
  constructor(keys: Iterable<string>, make: (key: string) => V, most = Number.POSITIVE_INFINITY) {
    this.#keys = new Set(keys);
    this.#make = make;
    this.#most = most;
  }

  get size(): number {
    return this.#keys.size;
  }

  has(key: string): boolean {
    return this.#keys.has(key);
  }

  get(key: string): V | undefined {
    if (!this.#keys.has(key)) return undefined;
    const known = this.#made.get(key);
    if (known !== undefined || this.#made.has(key)) return known;
    const value = this.#make(key);
    if (this.#made.size >= this.#most) {
      const [oldest] = this.#made.keys();
      if (oldest !== undefined) this.#made.delete(oldest);
    }
    this.#made.set(key, value);
    return value;
  }

  keys(): MapIterator<string> {
    return this.#keys.keys();
  }

  *entries(): MapIterator<[string, V]> {
    for (const key of this.#keys) yield [key, this.get(key) as V];
  }

  *values(): MapIterator<V> {
    for (const [, value] of this.entries()) yield value;
  }

  [Symbol.iterator](): MapIterator<[string, V]> {
    return this.entries();
  }

  forEach(each: (value: V, key: string, map: ReadonlyMap<string, V>) => void): void {
    for (const [key, value] of this.entries()) each(value, key, this);
  }
}
