/** Searches by the fast way say what searches by the plain way say. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalCode } from '../../src/codes/canonical-code.ts';
import { searchOf } from '../../src/codes/find.ts';
import { buildCodeIndex, type CodeEntry, type CodeIndex, findCode } from '../../src/codes/index.ts';
import { shownForm } from '../../src/codes/normalise.ts';
import { type Posterior, posterior } from '../../src/codes/posterior.ts';
import { largeList } from './large-list.ts';
import { type PlainPosterior, plainPosterior } from './plain-posterior.ts';
import { misread, modelReader } from './readers.ts';
import { entry, randomNumbers } from './sample.ts';

/** The plain posterior with every code among the hits. */
function everyHit(
  index: CodeIndex,
  text: string,
  family: string | undefined,
  plain: PlainPosterior,
): Posterior {
  const sums = { inFamily: 0, elsewhere: 0, beginnings: 0 };
  const hits = index.entries.map((one, entryIndex) => {
    const probability = plain.probabilities[entryIndex] ?? 0;
    const isBeginning = plain.isBeginning[entryIndex] ?? false;
    const { written } = plain.best[entryIndex] ?? { written: one.code };
    const canonical = canonicalCode(written);
    sums[family === undefined || one.family === family ? 'inFamily' : 'elsewhere'] += probability;
    if (isBeginning) sums.beginnings += probability;
    const spelling = {
      entry: one,
      entryIndex,
      written,
      canonical,
      shown: shownForm(written),
      displayed: written === one.code,
    };
    return { spelling, exact: canonical === text, isBeginning, probability };
  });
  return { hits, noneOfThese: plain.noneOfThese, ...sums };
}

/** Probabilities to nine digits, so that the order of the sum does not show. */
const rounded = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(9)) : value;

function expectTheSame(index: CodeIndex, typed: string, family: string | undefined): void {
  const text = canonicalCode(typed);
  const plain = plainPosterior(index, text, family);
  const fast = posterior(index, text, family);
  const close = (value: number, other: number): void => {
    expect(Math.abs(value - other), typed).toBeLessThan(1e-9);
  };
  close(fast.noneOfThese, plain.noneOfThese);
  for (const { spelling, probability, isBeginning } of fast.hits) {
    close(probability, plain.probabilities[spelling.entryIndex] ?? Number.NaN);
    expect(isBeginning).toBe(plain.isBeginning[spelling.entryIndex]);
  }
  const options = { limit: 6, ...(family !== undefined && { family }) };
  const said = findCode(index, typed, options);
  const wanted = searchOf(everyHit(index, text, family, plain), typed, options);
  const compared = ({ candidates, elsewhere, ...rest }: typeof said) => ({
    ...rest,
    // Those equally probable may stand in any order.
    candidates: candidates.map(({ probability }) => probability),
    elsewhere: elsewhere.map(({ probability }) => probability),
  });
  expect(JSON.parse(JSON.stringify(compared(said), rounded))).toEqual(
    JSON.parse(JSON.stringify(compared(wanted), rounded)),
  );
  const spelledOnce = new Set(
    index.entries.flatMap(({ profile, otherSpellings }) => (otherSpellings.length === 0 ? [profile] : [])),
  );
  /** Those that stand clear of the ones before and after. */
  const clear = (list: typeof said.candidates) =>
    list.filter(({ probability }, at) => {
      const apart = (other: number | undefined) =>
        other === undefined || Math.abs(other / probability - 1) > 1e-9;
      return apart(list[at - 1]?.probability) && apart(list[at + 1]?.probability) && at < 5;
    });
  // Of several spellings of one code two may fit equally well: either note will do.
  const named = (list: typeof said.candidates) =>
    clear(list).map(({ profile, note }) => [profile, spelledOnce.has(profile) && note]);
  expect(named(said.candidates)).toEqual(named(wanted.candidates));
}

describe('the fast way says the same as the plain one', () => {
  const { known, unknown } = largeList(240, 12, 3);
  const index = buildCodeIndex(known);
  const reader = modelReader('model');

  test.each([0, 1, 2, 3])('of a large list, %i misread', (slips) => {
    const random = randomNumbers(11 + slips);
    const some = (list: readonly CodeEntry[]): CodeEntry =>
      list[Math.floor(random() * list.length)] ?? entry('');
    for (let round = 0; round < 60; round += 1) {
      const wanted = some(round % 5 === 0 ? unknown : known);
      const whole = misread(wanted, slips, reader, random);
      const text = round % 3 === 0 ? whole.slice(0, 1 + Math.floor(random() * whole.length)) : whole;
      expectTheSame(index, text, [undefined, wanted.family, some(known).family][round % 3]);
    }
  });

  test('of any codes and texts', () => {
    const code = fc
      .string({ unit: fc.constantFrom(...'00118BMRNX-b'), minLength: 1, maxLength: 7 })
      .filter((one) => /[^-]/.test(one));
    const someEntry = fc
      .tuple(code, fc.constantFrom('one', 'two'), fc.array(code, { maxLength: 2 }))
      .map(([of, family, others]) => ({
        ...entry(of, family, others),
        ...(family === 'two' && { display: 'seven-segment' as const }),
      }));
    fc.assert(
      fc.property(
        fc.uniqueArray(someEntry, { minLength: 1, maxLength: 12, selector: ({ profile }) => profile }),
        fc.array(code, { minLength: 1, maxLength: 4 }),
        fc.constantFrom(undefined, 'one', 'none'),
        (entries, texts, family) => {
          const own = buildCodeIndex(entries);
          for (const text of [...texts, entries[0]?.code ?? '']) expectTheSame(own, text, family);
        },
      ),
      { seed: 15, numRuns: 400 },
    );
  });
});
