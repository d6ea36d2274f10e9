/** Copied, exchanged and misplaced rows and series on simulated sheets. A sample; the long tests count more. */
import { expect, test } from 'vitest';
import { mistakes, tallyMistakes } from './sheet-mistakes.ts';

test('36 mistakes, each kind four times: all found, all but one at most named at their place and nothing beside', async () => {
  const { byKind, wrong } = await tallyMistakes(20260502, 36);
  expect([...byKind.keys()].sort()).toEqual(Object.keys(mistakes).sort());
  for (const { put, found } of byKind.values()) expect(found).toBe(put);
  expect(wrong.length, wrong.join('\n')).toBeLessThanOrEqual(1);
});
