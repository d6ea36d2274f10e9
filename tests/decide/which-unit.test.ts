import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fittedTo,
  looksLike,
  nextQuestion,
  type SightAnswers,
  type SightedUnit,
  unsure,
} from '../../src/decide/index.ts';
import { fittedWords, leftWords } from '../../src/views/which-unit-words.ts';

const key = { kind: 'key', label: 'A' } as const;
const knob = { kind: 'knob', label: 'Volume' } as const;

function unit(
  id: string,
  changes: Partial<SightedUnit['face']> = {},
  rest: Partial<SightedUnit> = {},
): SightedUnit {
  return {
    id,
    name: id.toUpperCase(),
    fitment: [{ model: 'Line', fromYear: 2010, toYear: 2014 }],
    features: [`the mark of ${id}`],
    face: {
      widthMm: 180,
      heightMm: 100,
      screen: { display: 'dot-matrix', touch: false },
      controls: [key],
      ...changes,
    },
    ...rest,
  };
}

describe('what was fitted', () => {
  const units = [
    unit('a'),
    unit('b', {}, { fitment: [{ model: 'Line', fromYear: 2014, toYear: 2020 }] }),
    unit('c', {}, { fitment: [{ model: 'Other', fromYear: 2010, toYear: 2020 }] }),
  ];
  const ids = (model?: string, year?: number) => fittedTo(units, model, year).map(({ id }) => id);

  test.each([
    [undefined, undefined, ['a', 'b', 'c']],
    [undefined, 2012, ['a', 'b', 'c']],
    ['Line', undefined, ['a', 'b']],
    ['Line', 2010, ['a']],
    ['Line', 2014, ['a', 'b']],
    ['Line', 2021, []],
    ['Nothing', 2012, []],
  ])('%s of %s', (model, year, expected) => expect(ids(model, year)).toEqual(expected));

  test('in words', () => {
    expect(fittedWords({ model: 'Line', year: 2014 }, units.slice(0, 2), units)).toBe(
      'Line of 2014 left the factory with A or B.',
    );
    expect(fittedWords({ model: 'Line', year: 2021 }, [], units)).toBe(
      'No unit is known for Line of 2021; known are 2010 to 2020. Go by what you see.',
    );
    expect(leftWords([], false)).toMatch(/^No unit known here looks like that/);
  });
});

describe('questions', () => {
  test('none where one unit or none is left', () => {
    expect(nextQuestion([unit('a')], {})).toBeUndefined();
    expect(nextQuestion([], {})).toBeUndefined();
  });

  test('the one that tells most: an even split before an uneven one, whichever is easier to see', () => {
    const smooth = { display: 'anti-aliased', touch: false } as const;
    const units = [
      unit('a', { controls: [knob, key] }),
      unit('b'),
      unit('c', { screen: smooth }),
      unit('d', { screen: smooth }),
    ];
    const asked = nextQuestion(units, {});
    expect(asked?.id).toBe('display');
    expect(asked?.answers.map(({ units: left }) => left)).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
  });

  test('of equals the easiest to see', () => {
    const units = [
      unit('a', { controls: [knob, key], screen: { display: 'seven-segment', touch: true } }),
      unit('b'),
    ];
    expect(nextQuestion(units, {})?.id).toBe('knobs');
  });

  test('where faces differ in nothing, the telling features', () => {
    const twins = [unit('a'), unit('b'), unit('c', {}, { features: [] })];
    const asked = nextQuestion(twins, {});
    expect(asked?.answers.map(({ text }) => text)).toEqual([
      'the mark of a',
      'the mark of b',
      'None of these',
    ]);
    for (const { id, units } of asked?.answers ?? []) {
      expect(looksLike(twins, { [asked?.id ?? '']: id }).map((one) => one.id)).toEqual(units);
    }
    expect(nextQuestion(twins, { [asked?.id ?? '']: unsure })).toBeUndefined();
  });

  test('whoever answers what he sees keeps his unit, and is asked each question once', () => {
    const face = fc.record({
      widthMm: fc.integer({ min: 100, max: 300 }),
      heightMm: fc.integer({ min: 50, max: 150 }),
      screen: fc.record({
        display: fc.constantFrom('dot-matrix', 'seven-segment', 'anti-aliased'),
        touch: fc.boolean(),
      }),
      controls: fc.array(
        fc.constantFrom(
          key,
          knob,
          { kind: 'key', label: '3' } as const,
          { kind: 'touch-area', label: 'x' } as const,
        ),
        {
          minLength: 1,
          maxLength: 5,
        },
      ),
    });
    fc.assert(
      fc.property(fc.array(face, { minLength: 2, maxLength: 8 }), fc.nat(), (faces, pick) => {
        const units = faces.map((one, at) => unit(`u${at}`, one as Partial<SightedUnit['face']>));
        const mine = `u${pick % units.length}`;
        let said: SightAnswers = {};
        for (let asked = 0; ; asked += 1) {
          const left = looksLike(units, said);
          expect(left.map(({ id }) => id)).toContain(mine);
          const question = nextQuestion(left, said);
          if (!question) {
            // Every unit here has a feature of its own, so the questions end with one unit.
            expect(left).toHaveLength(1);
            return;
          }
          expect(said).not.toHaveProperty(question.id);
          expect(asked).toBeLessThan(8);
          const given = question.answers.find(({ units: fitting }) => fitting.includes(mine));
          said = { ...said, [question.id]: given?.id ?? '' };
        }
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});
