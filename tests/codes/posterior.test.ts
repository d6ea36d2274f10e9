import { describe, expect, test } from 'vitest';
import { buildCodeIndex, likelihood } from '../../src/codes/index.ts';
import { posterior } from '../../src/codes/posterior.ts';
import { strangerRatio } from '../../src/codes/strangers.ts';
import { entry } from './sample.ts';

describe('Bayes’ rule worked by hand', () => {
  test('two known codes and a stranger’s, one of the known typed exactly', () => {
    const index = buildCodeIndex([entry('X7'), entry('X1')]);
    const { hits, noneOfThese } = posterior(index, 'X1', undefined);
    // Priors 0.75 shared by two, 0.1 for a stranger, of which a quarter as what is typed is known.
    const known = ['X7', 'X1'].map((code) => 0.375 * likelihood('X1', code, 'prefix'));
    const stranger = 0.1 * 0.25 * strangerRatio(index.familyLengths, 'X1', undefined) * 37 ** -2;
    const total = known.reduce((sum, each) => sum + each, stranger);
    expect(noneOfThese).toBeCloseTo(stranger / total, 10);
    const found = new Map(hits.map(({ spelling, probability }) => [spelling.canonical, probability]));
    expect(found.get('X7')).toBeCloseTo((known[0] ?? 0) / total, 10);
    expect(found.get('X1')).toBeCloseTo((known[1] ?? 0) / total, 10);
  });

  test('other families weigh a hundredth, other spellings half', () => {
    const index = buildCodeIndex([
      entry('KX4812', 'one'),
      entry('KX4812', 'two'),
      entry('TV39', 'one', ['KX4812']),
    ]);
    const [one, two, other] = posterior(index, 'KX4812', 'one')
      .hits.toSorted((a, b) => a.spelling.entryIndex - b.spelling.entryIndex)
      .map(({ probability }) => probability);
    expect((one ?? 0) / (two ?? 1)).toBeCloseTo(100, 6);
    expect((one ?? 0) / (other ?? 1)).toBeCloseTo(2, 6);
  });
});

test('of several spellings of an entry the one that fits best counts, wherever it stands', () => {
  const index = buildCodeIndex([entry('KX4812', 'one', ['KX4B12', 'KX48']), entry('KX4811')]);
  const best = (text: string) =>
    posterior(index, text, undefined)
      .hits.toSorted((a, b) => b.probability - a.probability)
      .map(({ spelling, exact }) => [spelling.written, exact]);
  expect(best('KX4812')[0]).toEqual(['KX4812', true]);
  expect(best('KX4B12')[0]).toEqual(['KX4B12', true]);
  expect(best('KX48')[0]).toEqual(['KX48', true]);
});

test('the known codes and none of these make one', () => {
  const index = buildCodeIndex(['KX4812', 'KX4B12', 'KX4711', 'TV3907'].map((code) => entry(code)));
  for (const text of ['K', 'KX4', 'KX4812', 'KX4712', 'TV', 'Q', 'TV39074', 'ZZZZZZ', '0', '000000']) {
    const { hits, noneOfThese, inFamily, elsewhere, beginnings } = posterior(index, text, undefined);
    expect(noneOfThese + inFamily).toBeCloseTo(1, 12);
    expect(elsewhere).toBe(0);
    expect(beginnings).toBeLessThanOrEqual(inFamily);
    // What is not among the hits is little.
    expect(Math.abs(hits.reduce((sum, { probability }) => sum + probability, -inFamily))).toBeLessThan(0.003);
  }
});
