import { expect, test } from 'vitest';
import { growth, scaleRuns } from '../bench/scale.ts';

test('time, memory and output grow no faster than the base; the pages of an entry stay as they are', async () => {
  for (const [what, exponent] of growth(await scaleRuns([200, 800]))) {
    // Twice 5 % of noise over a factor of four.
    expect(exponent, what).toBeLessThan(what.includes('time') ? 1.12 : 1.05);
    if (/largest profiles/.test(what)) expect(Math.abs(exponent), what).toBeLessThan(0.05);
  }
});
