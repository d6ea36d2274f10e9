import { describe, expect, test } from 'vitest';
import { adviceFor, buildCodeIndex, type Display, findCode } from '../../src/codes/index.ts';
import { largeList } from './large-list.ts';
import { misread, modelReader, otherReader } from './readers.ts';
import { entry, randomNumbers } from './sample.ts';

/** A part of `npm run bench -- codes`, which has the figures for 10,000 codes. */
describe('3,000 codes of all displays in twelve families', () => {
  const { known, unknown } = largeList(3000, 12, 7);
  const index = buildCodeIndex(known);

  test.each([
    ['one misread', 1, modelReader('model'), 1, 0.97],
    ['one misread', 1, modelReader('model'), 3, 0.99],
    ['two misread', 2, modelReader('model'), 5, 0.95],
    ['one misread, by another matrix', 1, otherReader, 3, 0.985],
  ])('%s: the right one among the first so many', (_, slips, reader, among, share) => {
    const random = randomNumbers(8);
    const rounds = 400;
    let right = 0;
    for (let round = 0; round < rounds; round += 1) {
      const wanted = known[Math.floor(random() * known.length)] ?? entry('');
      const { candidates } = findCode(index, misread(wanted, slips, reader, random));
      if (candidates.slice(0, among).some(({ profile }) => profile === wanted.profile)) right += 1;
    }
    expect(right / rounds).toBeGreaterThanOrEqual(share);
  });

  test('unknown codes of the same families are hardly ever found', () => {
    const found = unknown.filter(({ code }) => findCode(index, code).verdict === 'found');
    expect(found.length / unknown.length).toBeLessThanOrEqual(0.01);
  });
});

describe('each display forgives what looks alike on it', () => {
  const at = (display: Display, code: string) => ({ ...entry(code, display), display });

  test.each<[Display, string, string]>([
    ['seven-segment', 'E1.508.42', 'E1.5O8.42'],
    ['seven-segment', 'E1.508.42', 'E1.SO8.4Z'],
    ['seven-segment', 'E1.508.42', 'EI.508.42'],
    ['seven-segment', 'E1.508.42', 'E1.500.42'], // the middle stroke dark
    ['seven-segment', 'Eb.508.42', 'E6.508.42'],
    ['dot-matrix', 'KX-4812', 'KX-4B12'],
    ['dot-matrix', 'KH-4812', 'KN-4812'],
    ['dot-matrix', 'KQ-4812', 'K0-4812'],
    ['anti-aliased', 'KM-4812', 'KRN-4812'],
    ['anti-aliased', 'KG-4812', 'K6-4812'],
    ['anti-aliased', 'K1-4812', 'Kl-4812'],
    ['anti-aliased', 'K1-4812', 'K|-4812'],
  ])('%s: %s typed %s', (display, code, typed) => {
    const other = display === 'dot-matrix' ? 'TW-7355' : 'TU-7366';
    const { candidates, verdict } = findCode(buildCodeIndex([at(display, code), at(display, other)]), typed);
    expect(candidates[0]?.code).toBe(code);
    expect(['found', 'look-again']).toContain(verdict);
  });

  test('of two codes the one whose display makes the mistake comes first', () => {
    // A stroke that stays dark turns 8 into 0 on seven segments; no smooth 8 looks like a 0.
    const index = buildCodeIndex([at('seven-segment', 'AC-4831'), at('anti-aliased', 'AC-4831')]);
    expect(findCode(index, 'AC4031').candidates[0]?.family).toBe('seven-segment');
    expect(findCode(index, 'AC4031').candidates[0]?.probability).toBeGreaterThan(
      5 * (findCode(index, 'AC4031').candidates[1]?.probability ?? 1),
    );
  });

  test('a code of another family: said, with what it could be', () => {
    const index = buildCodeIndex([at('dot-matrix', 'KX-4812'), at('seven-segment', 'E1.508.42')]);
    const search = findCode(index, 'E1.508.42', { family: 'dot-matrix' });
    expect(search.verdict).toBe('unknown');
    expect(search.elsewhere[0]?.code).toBe('E1.508.42');
    expect(adviceFor(search)).toContain('another one has');
  });
});
