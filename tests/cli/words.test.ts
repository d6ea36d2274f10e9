/** `readback words`: what is listed as missing, filled in, leaves nothing missing. */

import { afterAll, beforeAll, expect, test } from 'vitest';
import { parse } from 'yaml';
import { wordsResultSchema } from '../../schemas/results/words.ts';
import { ContentCopy } from '../content-copy.ts';
import { readback } from './run.ts';

let content: ContentCopy;
beforeAll(async () => {
  content = await ContentCopy.make();
});
afterAll(() => content.remove());

test('Spanish and English are whole', async () => {
  for (const tag of ['en', 'es', 'es-MX']) {
    const run = await readback('words', tag, '--content', content.folder);
    expect(run.code, run.out).toBe(0);
  }
});

test('a further language is listed, filled in, and then passes the check', async () => {
  const listed = await readback('words', 'pl', '--content', content.folder);
  expect(listed.code).toBe(1);
  const filled = listed.out.replaceAll(
    /^# {2}("(?:[^"\\]|\\.)*"): (.*)$/gm,
    (_, key: string, value: string) => `  ${key}: ${value.replaceAll('""', key)}`,
  );
  expect(Object.keys(parse(filled).texts).length).toBeGreaterThan(15);
  await content.write('words/pl.yaml', filled);
  await content.edit('site.yaml', 'languages: [en, es]', 'languages: [en, pl]');
  const again = await readback('words', 'pl', '--content', content.folder, '--json');
  expect(wordsResultSchema.parse(JSON.parse(again.out)).missing).toEqual([]);
  const checked = await readback('check', '--content', content.folder);
  expect(checked.out).toContain('No contradictions, nothing unsourced.');

  const [line = ''] = filled.match(/^ {2}.*$/gm) ?? [];
  await content.edit('words/pl.yaml', `${line}\n`, '');
  const lacking = await readback('check', '--content', content.folder);
  expect(lacking.code).toBe(1);
  expect(lacking.out).toMatch(/words\/pl\.yaml:3:1 {2}error {2}interface-text\n {2}A text is missing: “/);
});

test('what is no language is refused', async () => {
  const run = await readback('words', 'Spanish', '--content', content.folder);
  expect(run.code).toBe(2);
  expect(run.err).toContain('is not the name of a language');
});
