/** Mutual information against closed cases, a figure from coding theory, and brute force. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Component, mutualInformationBits } from '../../src/decide/identify/information.ts';

/** By Riemann sum on a grid finer than anything in it, from H(mixture) − Σ p·H(component). */
function byBruteForce(components: readonly Component[]): number {
  const low = Math.min(...components.map((one) => one.mean - 9 * one.standardDeviation));
  const high = Math.max(...components.map((one) => one.mean + 9 * one.standardDeviation));
  const width = Math.min(...components.map((one) => one.standardDeviation)) / 25;
  let mixtureEntropy = 0;
  for (let y = low; y < high; y += width) {
    const density = components.reduce((sum, { probability, mean, standardDeviation }) => {
      const z = (y - mean) / standardDeviation;
      return sum + (probability * Math.exp(-(z ** 2) / 2)) / (standardDeviation * Math.sqrt(2 * Math.PI));
    }, 0);
    if (density > 0) mixtureEntropy -= density * Math.log2(density) * width;
  }
  const within = components.reduce(
    (sum, one) => sum + one.probability * Math.log2(one.standardDeviation * Math.sqrt(2 * Math.PI * Math.E)),
    0,
  );
  return mixtureEntropy - within;
}

describe('mutual information', () => {
  test('nothing where all hypotheses say the same, all of the entropy where none can be confused', () => {
    const alike = [0.5, 0.3, 0.2].map((probability) => ({ probability, mean: -7, standardDeviation: 0.4 }));
    expect(mutualInformationBits(alike)).toBeCloseTo(0, 6);
    const apart = alike.map((one, index) => ({ ...one, mean: 20 * index }));
    const entropy = -0.5 * Math.log2(0.5) - 0.3 * Math.log2(0.3) - 0.2 * Math.log2(0.2);
    expect(mutualInformationBits(apart)).toBeCloseTo(entropy, 3);
  });

  test('two signs in noise of σ = 0.97869 carry half a bit (Shannon limit of the binary-input Gaussian channel at rate ½, E_b/N_0 = 0.187 dB; from memory)', () => {
    const noise = Math.sqrt(1 / (2 * 0.5 * 10 ** (0.187 / 10)));
    expect(noise).toBeCloseTo(0.97869, 4);
    const signs = [-1, 1].map((mean) => ({ probability: 0.5, mean, standardDeviation: noise }));
    expect(mutualInformationBits(signs)).toBeCloseTo(0.5, 3);
  });

  test('agrees with brute force, narrow beside wide', () => {
    const component = fc.record({
      weight: fc.double({ min: 0.02, max: 1, noNaN: true }),
      mean: fc.double({ min: -40, max: 20, noNaN: true }),
      standardDeviation: fc.double({ min: 0.25, max: 25, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(component, { minLength: 2, maxLength: 6 }), (drawn) => {
        const total = drawn.reduce((sum, one) => sum + one.weight, 0);
        const components = drawn.map(({ weight, ...rest }) => ({ ...rest, probability: weight / total }));
        const entropy = -components.reduce((sum, { probability: p }) => sum + p * Math.log2(p), 0);
        const found = mutualInformationBits(components);
        expect(Math.abs(found - byBruteForce(components))).toBeLessThan(0.01);
        expect(found).toBeLessThan(entropy + 0.01);
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  test('hypotheses of no weight change nothing', () => {
    const two = [0, 3].map((mean) => ({ probability: 0.5, mean, standardDeviation: 1 }));
    const third = { probability: 0, mean: 1.5, standardDeviation: 0.1 };
    expect(mutualInformationBits([...two, third])).toBe(mutualInformationBits(two));
  });
});
