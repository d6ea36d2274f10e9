import { expect, test } from 'vitest';
import { contentDate } from '../../src/publish/content-date.ts';

const now = new Date(2026, 10, 5, 23, 59);

test('the day of the build where it runs', () => {
  expect(contentDate({}, now)).toBe('2026-11-05');
  expect(contentDate({ SOURCE_DATE_EPOCH: '' }, now)).toBe('2026-11-05');
});

test('the day of SOURCE_DATE_EPOCH in UTC, whatever day it is', () => {
  expect(contentDate({ SOURCE_DATE_EPOCH: '1772323199' }, now)).toBe('2026-02-28');
  expect(contentDate({ SOURCE_DATE_EPOCH: '1772323200' }, now)).toBe('2026-03-01');
});

test('anything else is refused', () => {
  for (const epoch of ['yesterday', '-1', '1e3', '99999999999999999']) {
    expect(() => contentDate({ SOURCE_DATE_EPOCH: epoch }, now), epoch).toThrow('no number of seconds');
  }
});
