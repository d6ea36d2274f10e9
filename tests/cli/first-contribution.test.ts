/** “Your first contribution” in the README does what it says, on a copy of the demo. */
import { cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { follow, stepsOf } from './guide.ts';

test('every command prints what the README shows, in the order it is followed', async () => {
  const readme = await readFile('README.md', 'utf8');
  const section = /^## Your first contribution\n(.*?)^## /ms.exec(readme)?.[1] ?? '';
  const work = await mkdtemp(join(tmpdir(), 'readback-first-'));
  const content = join(work, 'content');
  await cp('content', content, { recursive: true });
  await cp('schemas/json', join(work, 'schemas/json'), { recursive: true });
  const steps = stepsOf(section, ['console', 'yaml']);
  expect(steps.map(({ kind }) => kind)).toEqual(['console', 'console', 'yaml', 'console', 'console']);
  for (const { kind, text } of steps) {
    if (kind === 'yaml') {
      const [file = '', ...lines] = text.split('\n');
      expect(await readFile(join(work, file.replace('# ', '')), 'utf8')).toBe(lines.join('\n'));
      continue;
    }
    const { shown, printed } = await follow(text, 'npx readback', content);
    expect(printed).toEqual(shown);
  }
  await rm(work, { recursive: true });
});
