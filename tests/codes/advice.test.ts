import { expect, test } from 'vitest';
import { adviceFor, buildCodeIndex, findCode } from '../../src/codes/index.ts';
import { entry } from './sample.ts';

const index = buildCodeIndex([
  entry('KX-4812'),
  entry('KX-4B12'),
  entry('TM7100'),
  entry('TM7100', 'two'),
  entry('VV3955', 'two'),
]);

test.each([
  ['VV3955', undefined, 'This is VV3955.'],
  ['KX4812', undefined, 'Look at the fifth character again: is it 8 or B?'],
  ['TM7100', undefined, 'More than one profile fits: compare the unit before you choose.'],
  ['VV', undefined, 'This is the beginning of a code: go on, or pick one.'],
  ['VV3955', 'one', 'This unit has no such code, but another one has: check which unit it is.'],
])('%s (family %s): %s', (typed, family, advice) => {
  expect(adviceFor(findCode(index, typed, family === undefined ? {} : { family }))).toBe(advice);
});

test('an unknown code: read it once more', () => {
  expect(adviceFor(findCode(index, 'HJ0000Y'))).toContain('Read it once more');
});
