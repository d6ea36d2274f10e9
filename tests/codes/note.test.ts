import { expect, test } from 'vitest';
import { ordinal } from '../../src/codes/note.ts';

test('ordinals', () => {
  expect([1, 3, 12, 13, 20, 21, 22, 23, 24, 100, 111, 112, 113].map(ordinal)).toEqual(
    'first third twelfth 13th 20th 21st 22nd 23rd 24th 100th 111th 112th 113th'.split(' '),
  );
});
