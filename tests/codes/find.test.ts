import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { worthAsking } from '../../src/codes/constants.ts';
import { buildCodeIndex, type CodeSearch, findCode } from '../../src/codes/index.ts';
import {
  anyText,
  codeOfShape,
  entry,
  fiveFamilies,
  lettersAndDigits,
  lookAlikeMisreads,
  pick,
  randomNumbers,
  shapes,
} from './sample.ts';

const known = fiveFamilies();
const codes = new Set(known.map(({ code }) => code));
const index = buildCodeIndex(known);
const anyKnown = fc.constantFrom(...known);

/** What a search says, without notes and likeness, which tell how a code was written. */
function withoutNotes(search: CodeSearch): unknown {
  const strip = (list: CodeSearch['candidates']) => list.map(({ note, likeness, ...rest }) => rest);
  return { ...search, candidates: strip(search.candidates), elsewhere: strip(search.elsewhere) };
}

const share = (part: number, whole: number) => `${((100 * part) / whole).toFixed(2)} % (${part} of ${whole})`;

describe('a code read right', () => {
  test.each(known.filter((_, i) => i % 10 === 0))('$code of $family comes first', ({ code, profile }) => {
    const { verdict, candidates } = findCode(index, code);
    expect(verdict).toBe('found');
    expect(candidates[0]).toMatchObject({ profile, note: 'exactly as typed' });
  });

  test('comes first and is the most probable, in any list of codes', () => {
    const someCode = fc.string({ unit: fc.constantFrom(...'A0OQ8B1I|RNM-. 7'), minLength: 2, maxLength: 12 });
    const usable = someCode.filter((code) => /[^-. ]/.test(code));
    fc.assert(
      fc.property(fc.array(usable, { minLength: 1, maxLength: 30 }), fc.nat(), (list, at) => {
        const code = list[at % list.length] ?? '';
        const own = buildCodeIndex(list.map((each) => entry(each)));
        const { candidates, verdict } = findCode(own, code, { limit: 1000 });
        const first = candidates[0];
        expect(first && codeKey(first.code)).toBe(codeKey(code));
        expect(first?.probability).toBe(Math.max(...candidates.map(({ probability }) => probability)));
        expect(['found', 'look-again']).toContain(verdict);
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  test('case, separators and endings change nothing', () => {
    const separator = fc.constantFrom('', '-', ' ', '_', '/', '.', ' – ');
    fc.assert(
      fc.property(
        anyKnown,
        fc.infiniteStream(separator),
        fc.boolean(),
        fc.nat(30),
        ({ code }, gaps, low, cut) => {
          const typed = code.slice(0, 1 + cut).replace('-', '');
          const plain = withoutNotes(findCode(index, typed));
          const spaced = Array.from(typed, (character) => character + gaps.next().value).join('');
          expect(withoutNotes(findCode(index, low ? spaced.toLowerCase() : spaced))).toEqual(plain);
          expect(withoutNotes(findCode(index, `${typed}.txt`))).toEqual(plain);
        },
      ),
      { seed: 4, numRuns: 300 },
    );
  });
});

/** Independent of the code under test, for codes of ASCII without endings. */
const codeKey = (code: string): string => code.toUpperCase().replaceAll(/[-. ]/g, '');

describe('500 codes in five families', () => {
  test('one look-alike wrong: the right code first at least 98 times in 100', () => {
    let right = 0;
    let all = 0;
    let foundWrong = 0;
    for (const { code, profile } of known) {
      for (const typed of lookAlikeMisreads(code)) {
        const { verdict, candidates } = findCode(index, typed);
        all += 1;
        if (candidates[0]?.profile === profile) right += 1;
        else if (verdict === 'found') foundWrong += 1;
      }
    }
    const message = `right code first: ${share(right, all)}`;
    console.log(message);
    expect(all).toBeGreaterThan(2000);
    expect(right / all, message).toBeGreaterThanOrEqual(0.98);
    expect(foundWrong, 'found, but another code').toBe(0);
  });

  test('one other slip: the right code first at least 98 times in 100, and never another one found', () => {
    const random = randomNumbers(5);
    const kinds: Record<string, (code: string, at: number) => string> = {
      other: (code, at) => code.slice(0, at) + pick(lettersAndDigits, random) + code.slice(at + 1),
      dropped: (code, at) => code.slice(0, at) + code.slice(at + 1),
      doubled: (code, at) => code.slice(0, at + 1) + code.slice(at),
      added: (code, at) => code.slice(0, at) + pick(lettersAndDigits, random) + code.slice(at),
      swapped: (code, at) =>
        code.slice(0, at) +
        code
          .slice(at, at + 2)
          .split('')
          .reverse()
          .join('') +
        code.slice(at + 2),
    };
    for (const [kind, slip] of Object.entries(kinds)) {
      let right = 0;
      for (const { code, profile } of known) {
        const canonical = code.replace('-', '');
        const typed = slip(canonical, Math.floor(random() * canonical.length));
        const { verdict, candidates } = findCode(index, typed);
        if (candidates[0]?.profile === profile) right += 1;
        else expect(verdict, `${typed} for ${code}`).not.toBe('found');
      }
      const message = `${kind}: right code first ${share(right, known.length)}`;
      console.log(message);
      expect(right / known.length, message).toBeGreaterThanOrEqual(0.98);
    }
  });

  test('readings with up to three look-alikes wrong: what is said to be found is right', () => {
    const random = randomNumbers(12);
    let first = 0;
    let found = 0;
    let foundRight = 0;
    for (const { code, profile } of known) {
      let typed = code;
      for (let misread = 0; misread < 3; misread += 1) {
        const misreads = [typed, ...lookAlikeMisreads(typed)];
        typed = misreads[Math.floor(random() * misreads.length)] ?? typed;
      }
      const { verdict, candidates } = findCode(index, typed);
      const right = candidates[0]?.profile === profile;
      if (right) first += 1;
      if (verdict === 'found') found += 1;
      if (verdict === 'found' && right) foundRight += 1;
    }
    const message = `up to three look-alikes wrong: right code first ${share(first, known.length)}, of those found right ${share(foundRight, found)}`;
    console.log(message);
    expect(found, message).toBeGreaterThan(known.length / 2);
    expect(foundRight / found, message).toBeGreaterThanOrEqual(0.99);
  });

  test.each([
    [
      'any characters',
      (random: () => number) => codeOfShape('X'.repeat(4 + Math.floor(random() * 7)), random),
    ],
    [
      'of the shape of a family',
      (random: () => number) => codeOfShape(shapes[Math.floor(random() * 5)] ?? '', random),
    ],
  ])('unknown codes, %s: found at most 5 times in 1000', (name, make) => {
    const random = randomNumbers(6);
    const verdicts: Record<string, number> = {};
    const rounds = 2000;
    for (let round = 0; round < rounds; ) {
      const typed = make(random);
      if (codes.has(typed)) continue;
      round += 1;
      const { verdict } = findCode(index, typed);
      verdicts[verdict] = (verdicts[verdict] ?? 0) + 1;
    }
    const message = `${name}: found ${share(verdicts.found ?? 0, rounds)} ${JSON.stringify(verdicts)}`;
    console.log(message);
    expect((verdicts.found ?? 0) / rounds, message).toBeLessThanOrEqual(0.005);
    expect((verdicts.unknown ?? 0) / rounds, message).toBeGreaterThan(0.9);
  });

  test('unknown relatives, one character of a known code different: hardly ever found', () => {
    const random = randomNumbers(7);
    let found = 0;
    const rounds = 2000;
    for (let round = 0; round < rounds; ) {
      const { code, family } = known[Math.floor(random() * known.length)] ?? entry('');
      const at = Math.floor(random() * code.length);
      const typed =
        code.slice(0, at) +
        codeOfShape(shapes[Number(family.slice(-1))] ?? '', random)[at] +
        code.slice(at + 1);
      if (codes.has(typed)) continue;
      round += 1;
      if (findCode(index, typed).verdict === 'found') found += 1;
    }
    const message = `relatives found: ${share(found, rounds)}`;
    console.log(message);
    // Where the one character is a look-alike nothing tells them apart, which is 1 or 2 in 100 of them; with the
    // display told it is rarer still.
    expect(found / rounds, message).toBeLessThan(0.02);
  });
});

describe('probabilities', () => {
  test('of all candidates and none of these make no more than one', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          anyText,
          anyKnown.map(({ code }) => code.slice(0, 4)),
        ),
        (typed) => {
          const { candidates, noneOfThese } = findCode(index, typed, { limit: 1000 });
          const sum = candidates.reduce((total, { probability }) => total + probability, noneOfThese);
          expect(sum).toBeLessThanOrEqual(1 + 1e-9);
          // Not listed are many improbable ones, together less than what is worth asking about.
          expect(sum).toBeGreaterThan(1 - worthAsking);
          for (const { probability } of candidates) expect(probability).toBeGreaterThan(0);
        },
      ),
      { seed: 8, numRuns: 500 },
    );
  });

  test('none of these grows as more of a code is replaced by chance', () => {
    const random = randomNumbers(9);
    const means = [0, 1, 2, 3, 6].map((replaced) => {
      let sum = 0;
      for (const { code } of known) {
        const characters = Array.from(code.replace('-', ''));
        for (let at = 0; at < replaced; at += 1) characters[at] = pick(lettersAndDigits, random);
        sum += findCode(index, characters.join('')).noneOfThese;
      }
      return sum / known.length;
    });
    expect(means).toEqual([...means].sort((a, b) => a - b));
    expect(means[0]).toBeLessThan(0.001);
    expect(means.at(-1)).toBeGreaterThan(0.95);
  });
});

describe('any text at all', () => {
  test('never throws', () => {
    fc.assert(
      fc.property(anyText, fc.option(fc.string()), fc.integer(), (typed, family, limit) => {
        const { verdict, candidates } = findCode(index, typed, { limit, ...(family !== null && { family }) });
        expect(candidates.length).toBeLessThanOrEqual(Math.max(5, limit));
        expect(['found', 'look-again', 'partial', 'unknown']).toContain(verdict);
      }),
      { seed: 10, numRuns: 1000 },
    );
  });
  test.each([
    ['nothing', ''],
    ['separators', ' -./_ '],
    ['10,000 characters', 'A1'.repeat(5000)],
    ['10,000 zeros', '0'.repeat(10_000)],
    ['emoji', '🏍️🔊🎵'],
    ['lone surrogates', '\uD83D\uDE00\uD83D \uDE00'],
  ])('%s is unknown', (_, typed) => {
    const { verdict, candidates, noneOfThese } = findCode(index, typed);
    expect({ verdict, candidates }).toEqual({ verdict: 'unknown', candidates: [] });
    expect(noneOfThese).toBeGreaterThan(0.99);
  });
  test('and so is anything where no code is known', () => {
    for (const empty of [buildCodeIndex([]), buildCodeIndex([entry('--')])]) {
      expect(findCode(empty, 'A1')).toMatchObject({ verdict: 'unknown', candidates: [], noneOfThese: 1 });
    }
  });
  test('a limit that is no number is the usual one', () => {
    const all = buildCodeIndex(known.map(({ code }) => entry(`A${code}`)));
    expect(findCode(all, 'A', { limit: Number.NaN }).candidates).toHaveLength(5);
    expect(findCode(all, 'A', { limit: 2.9 }).candidates).toHaveLength(2);
    expect(findCode(all, 'A', { limit: -3 }).candidates).toHaveLength(1);
  });
});

describe('notes', () => {
  const few = buildCodeIndex([
    entry('KX-4812', 'one', ['KX4812/EU']),
    entry('0092773', 'one'),
    entry('TMV450', 'one'),
  ]);
  test.each([
    ['KX-4812', 'exactly as typed'],
    [' KX-4812 ', 'exactly as typed'],
    ['kx 4812.bin', 'same code, written differently'],
    ['KX4812EU', 'same code, written differently'],
    ['KX4B12', 'fifth character: is it 8 or B?'],
    ['KX4B1Z', 'fifth character: is it 8 or B?; seventh character: is it 2 or Z?'],
    ['KX4B12EU', 'as written KX4812/EU: fourth character: is it 8 or B?'],
    ['KX412', 'one character missing after the fourth'],
    ['X4812', 'one character missing at the beginning'],
    ['KX48W12', 'one character too many after the fifth'],
    ['KXX4812', 'second character typed twice'],
    ['KX8412', 'fourth and fifth characters swapped'],
    ['TRNV450', 'second character: is it M or RN?'],
    ['92773', 'same code but for zeros at the beginning'],
    ['KX48', 'begins like this'],
    ['KX4B', 'begins like this; fifth character: is it 8 or B?'],
  ])('%s: %s', (typed, note) => {
    expect(findCode(few, typed).candidates[0]?.note).toBe(note);
  });
});

describe('verdicts', () => {
  test('a twin one look-alike away: look again, even where one is read exactly', () => {
    const twins = buildCodeIndex([entry('KX-4812'), entry('KX-4B12'), entry('KX-7711')]);
    for (const [typed, options] of [
      ['KX4812', ['8', 'B']],
      ['KX4B12', ['B', '8']],
    ] as const) {
      const { verdict, lookAgain, candidates } = findCode(twins, typed);
      expect({ verdict, lookAgain }).toEqual({ verdict: 'look-again', lookAgain: { position: 5, options } });
      expect(candidates.map(({ code }) => code)).toEqual(
        options[0] === '8' ? ['KX-4812', 'KX-4B12'] : ['KX-4B12', 'KX-4812'],
      );
    }
  });
  test('several that the text may stand for are all asked about', () => {
    const four = buildCodeIndex(['K0', 'KD', 'KO', 'KQ'].map((start) => entry(`${start}4417`)));
    const { lookAgain } = findCode(four, 'KO4417');
    expect(lookAgain?.position).toBe(2);
    expect(lookAgain?.options[0]).toBe('O');
    expect(new Set(lookAgain?.options)).toEqual(new Set(['0', 'O', 'Q', 'D']));
  });
  test('any other character wrong: look again, at what was typed', () => {
    const { verdict, lookAgain } = findCode(buildCodeIndex([entry('KX4812')]), 'KX4712');
    expect({ verdict, lookAgain }).toEqual({
      verdict: 'look-again',
      lookAgain: { position: 4, options: ['8', '7'] },
    });
  });
  test('a code that goes on in another: look whether it ends', () => {
    const longer = Array.from('ABCDEFGH', (end) => entry(`KX4812${end}`));
    const { verdict, lookAgain } = findCode(buildCodeIndex([entry('KX4812'), ...longer]), 'KX4812');
    expect(verdict).toBe('look-again');
    expect(lookAgain?.position).toBe(7);
    expect(lookAgain?.options[0]).toBe('');
    expect(new Set(lookAgain?.options)).toEqual(new Set(['', ...'ABCDEFGH']));
    const two = findCode(buildCodeIndex([entry('KX4812'), entry('KX4812A')]), 'KX4812');
    expect(two.verdict).toBe('found');
    expect(two.candidates[1]).toMatchObject({ code: 'KX4812A', note: 'begins like this' });
  });
  test('a beginning: partial, with every code it may become', () => {
    const { verdict, candidates } = findCode(buildCodeIndex(known), known[0]?.code.slice(0, 3) ?? '');
    expect(verdict).toBe('partial');
    expect(candidates[0]?.code.slice(0, 3)).toBe(known[0]?.code.slice(0, 3));
    for (const letter of 'ABCDEFGHIJKLMNOPQRSTUVWXYZ') {
      if (![...codes].some((code) => code.startsWith(letter))) continue;
      const search = findCode(index, letter);
      expect(search.verdict, letter).toBe('partial');
      expect(search.candidates[0]?.code[0]).toBe(letter);
    }
  });
  test('partial too where many codes begin so and one whole code looks alike', () => {
    const hundred = Array.from({ length: 100 }, (_, i) => entry(`KX48${100 + i}`));
    expect(findCode(buildCodeIndex([entry('KX4B'), ...hundred]), 'KX48').verdict).toBe('partial');
  });
  test('a beginning is never found, however few codes begin so', () => {
    for (const { code } of known) {
      for (let length = 1; length < code.length; length += 1) {
        const typed = code.slice(0, length);
        expect(findCode(index, typed).verdict, typed).not.toBe('found');
      }
    }
  });
  test('a code that is known exactly is never unknown, be it the beginning of a thousand', () => {
    const thousand = Array.from({ length: 1000 }, (_, i) => entry(`KX${1000 + i}`));
    const { verdict, candidates } = findCode(buildCodeIndex([entry('KX'), ...thousand]), 'KX');
    expect(verdict).toBe('look-again');
    expect(candidates[0]?.code).toBe('KX');
  });
});

describe('families', () => {
  const shared = buildCodeIndex([
    entry('KX4812', 'one'),
    entry('KX-4812', 'two'),
    entry('TM7100', 'two'),
    entry('TM7I00', 'one'),
    entry('VV3955', 'three'),
  ]);
  test('the same code in two: both, and the rider picks', () => {
    const search = findCode(shared, 'kx4812');
    expect(search).toMatchObject({ verdict: 'look-again', families: ['one', 'two'] });
    expect(search.lookAgain).toBeUndefined();
    expect(search.candidates.slice(0, 2).map(({ family, note }) => [family, note])).toEqual([
      ['one', 'same code, written differently; several families have it: pick yours'],
      ['two', 'same code, written differently; several families have it: pick yours'],
    ]);
    expect(search.candidates[0]?.probability).toBeCloseTo(search.candidates[1]?.probability ?? 0, 8);
  });
  test('with the family given it is found there', () => {
    for (const family of ['one', 'two']) {
      const search = findCode(shared, 'kx4812', { family });
      expect(search).toMatchObject({ verdict: 'found', families: [] });
      expect(search.candidates.map((candidate) => candidate.family)[0]).toBe(family);
    }
  });
  test('its candidates come first, even before an exact one elsewhere, which is not passed over', () => {
    const search = findCode(shared, 'TM7100', { family: 'one' });
    expect(search.candidates.map(({ code }) => code)).toEqual(['TM7I00', 'TM7100']);
    expect(search).toMatchObject({
      verdict: 'look-again',
      lookAgain: { position: 4, options: ['I', '1'] },
    });
  });
  test('a family without such a code: unknown, and what others have', () => {
    for (const family of ['one', 'two', 'of nobody']) {
      const search = findCode(shared, 'VV3955', { family });
      expect(search).toMatchObject({ verdict: 'unknown', candidates: [] });
      expect(search.elsewhere).toMatchObject([{ code: 'VV3955', family: 'three', note: 'exactly as typed' }]);
    }
  });
  test('nothing anywhere: unknown, and nothing elsewhere', () => {
    expect(findCode(shared, 'HJ0000Y', { family: 'one' })).toMatchObject({
      verdict: 'unknown',
      candidates: [],
      elsewhere: [],
    });
  });
});
