import { expect, test } from 'vitest';
import { dateOf } from '../../src/import/dates.ts';

test.each([
  ['2026-03-14'],
  ['2026-03-14 09:30'],
  ['14.03.2026'],
  ['14.3.26'],
  ['14. März 2026'],
  ['3/14/2026'],
  ['14/03/2026'],
  ['14 March 2026'],
  ['March 14, 2026'],
  ['Saturday, March 14th, 2026'],
  ['14 de marzo de 2026'],
])('%s', (text) => {
  expect(dateOf(text)).toEqual({ date: '2026-03-14' });
});

test('a day that may be two is asked, and one that is none is refused', () => {
  expect(dateOf('3/4/2026')).toEqual({ problem: '“3/4/2026” may be 2026-04-03 or 2026-03-04' });
  expect(dateOf('4/4/2026')).toEqual({ date: '2026-04-04' });
  expect(dateOf('31.2.2026')).toMatchObject({ problem: expect.stringMatching(/no day/) });
  expect(dateOf('soon')).toMatchObject({ problem: expect.stringMatching(/no date/) });
});
