import { describe, expect, it } from 'vitest';
import { fnv1a, randomStream, xoshiro128 } from '../../src/demo/random.ts';

describe('xoshiro128**', () => {
  it('gives the outputs of the reference implementation from state 1, 2, 3, 4', () => {
    // Source: xoshiro128starstar.c 1.1 by Blackman and Vigna, as transcribed in the tests of Rust's rand_xoshiro.
    const next = xoshiro128([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, next)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });
});

describe('FNV-1a', () => {
  it.each([
    ['', 0x811c9dc5],
    ['a', 0xe40c292c],
    ['foobar', 0xbf9cf968],
  ])('hashes %j as published', (text, hash) => {
    // Source: test vectors of Fowler, Noll and Vo (RFC 9923), as transcribed.
    expect(fnv1a(text)).toBe(hash);
  });
});

describe('randomStream', () => {
  it('repeats under the same name and differs under another', () => {
    const draw = (name: string) => Array.from({ length: 4 }, randomStream(7, name).next32);
    expect(draw('a')).toEqual(draw('a'));
    expect(draw('a')).not.toEqual(draw('b'));
  });

  it('draws uniform and gaussian numbers with the moments these have', () => {
    const stream = randomStream(7, 'moments');
    const count = 20_000;
    const moments = (values: number[]) => {
      const mean = values.reduce((sum, value) => sum + value, 0) / count;
      return { mean, variance: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count };
    };
    // Uniform over [−1, 1): mean 0, variance 1/3. Bounds are five standard errors.
    const uniform = moments(Array.from({ length: count }, () => stream.uniform(-1, 1)));
    expect(Math.abs(uniform.mean)).toBeLessThan(5 * Math.sqrt(1 / 3 / count));
    expect(Math.abs(uniform.variance - 1 / 3)).toBeLessThan(5 * Math.sqrt(4 / 45 / count));
    const gaussian = moments(Array.from({ length: count }, () => stream.gaussian()));
    expect(Math.abs(gaussian.mean)).toBeLessThan(5 / Math.sqrt(count));
    expect(Math.abs(gaussian.variance - 1)).toBeLessThan(5 * Math.sqrt(2 / count));
  });
});
