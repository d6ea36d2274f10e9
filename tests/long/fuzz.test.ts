/** Malformed files of every kind, 10,000 of them: never a crash, a hang or a place outside its file. */
import { test } from 'vitest';
import { fuzz } from '../faults/fuzz.ts';

test('10,000 malformed files', async () => {
  await fuzz(10_000, 4_417);
});
