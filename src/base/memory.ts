/** What earlier runs found out, kept by the hash of everything it follows from. */
import { hash } from 'node:crypto';

export interface Memory {
  /** The value kept under a key; undefined where there is none. */
  recall(key: string): unknown;
  /** Keeps a value that survives JSON under a key. */
  keep(key: string, value: unknown): void;
}

/** Remembers nothing: everything is found out anew. */
export const noMemory: Memory = { recall: () => undefined, keep: () => undefined };

/** A digest of texts, short enough for a key and long enough never to meet its like (SHA-256, 132 bits). */
export function digestOf(first: string | Uint8Array, ...rest: readonly string[]): string {
  const whole = rest.length === 0 ? first : [first, ...rest].map((text) => `${text.length}:${text}`).join('');
  return hash('sha256', whole, 'base64url').slice(0, 22);
}

/**
 * The value that follows from `inputs` (texts or digests of them, the name of what is computed first): as kept
 * by an earlier run, or made now and kept. T must survive JSON.
 */
export function remembered<T>(memory: Memory, inputs: readonly string[], make: () => T): T {
  if (memory === noMemory) return make();
  const key = digestOf(inputs.length.toString(), ...inputs);
  const known = memory.recall(key);
  // What stands under the digest of these very inputs was put there by this very computation.
  if (known !== undefined) return known as T;
  const value = make();
  memory.keep(key, value);
  return value;
}

/** A memory in a map: the keys used in a run can be written out and read back by the next. */
export class MapMemory implements Memory {
  readonly #known: ReadonlyMap<string, unknown>;
  readonly #used = new Map<string, unknown>();
  #learnt = 0;

  constructor(known: Iterable<readonly [string, unknown]> = []) {
    this.#known = new Map(known);
  }

  recall(key: string): unknown {
    const value = this.#used.get(key) ?? this.#known.get(key);
    if (value !== undefined) this.#used.set(key, value);
    return value;
  }

  keep(key: string, value: unknown): void {
    this.#used.set(key, value);
    this.#learnt += 1;
  }

  /** What this run has used: all that the next one can make use of. */
  get used(): ReadonlyMap<string, unknown> {
    return this.#used;
  }

  /** Whether it differs from what was known before. */
  get hasChanged(): boolean {
    return this.#learnt > 0 || this.#used.size !== this.#known.size;
  }
}
