/** A sample of malformed files of every kind; the long tests run many more. */
import { test } from 'vitest';
import { fuzz } from './fuzz.ts';

test('300 malformed files: no crash, no hang, every place in its file', { timeout: 120_000 }, async () => {
  await fuzz(300, 20_260_314);
});
