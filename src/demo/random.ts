/** Repeatable pseudo-random numbers, drawn from streams that are named by what they are for. */

/** Numbers in sequence from one stream. */
export interface RandomStream {
  /** Uniform over 0 to 2³² − 1, an integer. */
  next32(): number;
  /** Uniform over [low, high). */
  uniform(low: number, high: number): number;
  /** Gaussian with mean 0 and standard deviation 1. */
  gaussian(): number;
}

function rotateLeft(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits));
}

/**
 * xoshiro128** 1.1 from four 32-bit words of state.
 * Source: D. Blackman and S. Vigna, https://prng.di.unimi.it/xoshiro128starstar.c (public domain).
 */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [s0, s1, s2, s3] = state;
  return () => {
    const result = Math.imul(rotateLeft(Math.imul(s1, 5), 7), 9) >>> 0;
    const t = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= t;
    s3 = rotateLeft(s3, 11);
    return result;
  };
}

/** 32-bit FNV-1a hash of an ASCII text. Source: Fowler, Noll and Vo; IETF RFC 9923. */
export function fnv1a(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return hash >>> 0;
}

/**
 * The next 32-bit word of a counter passed through the MurmurHash3 finaliser (A. Appleby, public domain):
 * spreads one seed over the state of a generator, as its authors advise.
 */
function spread(seed: number, index: number): number {
  let word = (seed + Math.imul(index + 1, 0x9e3779b9)) | 0;
  word = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
  word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
  return (word ^ (word >>> 16)) >>> 0;
}

/**
 * The stream of the given name under the given seed.
 * One stream per purpose: a profile or session added to the world leaves every other number as it was.
 */
export function randomStream(seed: number, name: string): RandomStream {
  const root = (seed ^ fnv1a(name)) >>> 0;
  const next32 = xoshiro128([spread(root, 0), spread(root, 1), spread(root, 2), spread(root, 3)]);
  const uniform = (low: number, high: number) => low + (high - low) * (next32() / 2 ** 32);
  // Box and Muller, Ann. Math. Stat. 29:610 (1958). 1 − u keeps the logarithm finite.
  const gaussian = () => Math.sqrt(-2 * Math.log(1 - uniform(0, 1))) * Math.cos(2 * Math.PI * uniform(0, 1));
  return { next32, uniform, gaussian };
}
