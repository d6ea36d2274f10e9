/** The fast way of comparing thousands of codes, held against the plain one of `alignment.ts`. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compare } from '../../src/codes/alignment.ts';
import { channelOf, relativeChannel } from '../../src/codes/channel.ts';
import { codeTree } from '../../src/codes/code-tree.ts';
import { confusionModel } from '../../src/codes/confusion.ts';
import { longestCompared, stoppedEarly } from '../../src/codes/constants.ts';
import { anyDisplay, canonicalCode, modelOf } from '../../src/codes/index.ts';
import { leadingZeros, shownForm } from '../../src/codes/normalise.ts';
import { TreeRows } from '../../src/codes/tree-rows.ts';

/** Characters that are swapped, doubled, looked alike or seen as two; and some of no table. */
const character = fc.constantFrom(...'00001118BRNMVWXx7ob|é漢');
const letters = fc.string({ unit: character, minLength: 1, maxLength: 7 });
const zeros = fc.constantFrom('', '0', '00', '0x', '0x0');
const code = fc.tuple(zeros, letters).map(([before, rest]) => before + rest);
/** Two pairs for one character, one of them twice the same: nothing in the tables forbids it. */
const manyDigraphs = confusionModel(
  'many',
  [['8', 'B', 0.05]],
  [
    ['RN', 'M', 0.04],
    ['VV', 'W', 0.004],
    ['1N', 'M', 0.01],
  ],
);
const models = [anyDisplay, modelOf('seven-segment'), modelOf('anti-aliased'), manyDigraphs];

describe('the same likelihoods as the plain way', () => {
  test('whatever the codes and the texts before', () => {
    fc.assert(
      fc.property(
        fc.array(code, { minLength: 1, maxLength: 25 }),
        fc.array(fc.oneof(code, letters), { minLength: 1, maxLength: 6 }),
        fc.constantFrom(...models),
        fc.boolean(),
        (codes, texts, model, ofRelatives) => {
          const groups = Map.groupBy(
            codes,
            (one) => `${canonicalCode(one).length} ${leadingZeros(canonicalCode(one))}`,
          );
          for (const group of groups.values()) {
            const both = group.map((one) => ({ canonical: canonicalCode(one), shown: shownForm(one) }));
            const first = both[0]?.canonical ?? '';
            const how = ofRelatives ? relativeChannel(model, first.length) : channelOf(model);
            const rows = new TreeRows(codeTree(both, model.digraphs), how, leadingZeros(first));
            // Key by key, so that rows are kept; then the next text, from where the last one was left.
            const keys = texts.flatMap((text) => Array.from(text, (_, at) => text.slice(0, at + 1)));
            for (const typed of keys.map(canonicalCode)) {
              rows.compare(typed);
              both.forEach(({ canonical, shown }, at) => {
                const { complete, beginning } = compare(typed, canonical, model, { shown, how });
                expect((rows.whole[at] ?? 0) / ((1 - stoppedEarly) * complete)).toBeCloseTo(1, 9);
                expect(Math.abs((rows.beginning[at] ?? 0) - beginning)).toBeLessThanOrEqual(1e-9 * beginning);
              });
            }
          }
        },
      ),
      { seed: 14, numRuns: 400 },
    );
  });

  test('codes and texts longer than are compared', () => {
    const long = 'AB12'.repeat(longestCompared / 2);
    const rows = new TreeRows(codeTree([{ canonical: long, shown: long }], []), channelOf(anyDisplay), 0);
    for (const typed of [long.slice(1), `${long}X`, long.slice(0, 150), `${'AB12'.repeat(20)}Z${long}`]) {
      rows.compare(typed);
      const { complete, beginning } = compare(typed, long, anyDisplay);
      expect((rows.whole[0] ?? 0) / ((1 - stoppedEarly) * complete)).toBeCloseTo(1, 9);
      expect((rows.beginning[0] ?? 0) / beginning).toBeCloseTo(1, 9);
    }
  });
});

test('codes share what they begin with, and part where the next character tells', () => {
  const codes = ['AB13', 'AB12', 'AC12', 'ACC2'].map((one) => ({ canonical: one, shown: one }));
  const { levels, parent, leaves } = codeTree(codes, []);
  // A; AB, AC before another character, AC before a C; AB1 and AC1 and ACC; the four.
  expect([...levels]).toEqual([0, 1, 2, 5, 8, 12]);
  expect([...parent.subarray(0, 5)]).toEqual([0, 0, 1, 1, 1]);
  expect(new Set(leaves).size).toBe(4);
});
