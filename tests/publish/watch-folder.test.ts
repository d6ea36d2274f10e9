import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, expect, test, vi } from 'vitest';
import { stateOfFolder, watchFolder } from '../../src/publish/watch-folder.ts';

const folder = mkdtempSync(join(tmpdir(), 'readback-watch-'));
mkdirSync(join(folder, 'profiles'));
writeFileSync(join(folder, 'profiles/a.yaml'), 'one');
let stop = new AbortController();

afterEach(() => {
  stop.abort();
  stop = new AbortController();
});

async function watching(changed: () => Promise<void>): Promise<void> {
  void watchFolder(folder, await stateOfFolder(folder), changed, stop.signal);
  await wait(100);
}

test('a change is told once, also in a folder made meanwhile; hidden files are none', async () => {
  const changed = vi.fn(async () => undefined);
  await watching(changed);
  writeFileSync(join(folder, '.hidden'), 'x');
  await wait(700);
  expect(changed).not.toHaveBeenCalled();
  writeFileSync(join(folder, 'profiles/a.yaml'), 'two!');
  await vi.waitFor(() => expect(changed).toHaveBeenCalledTimes(1), { timeout: 5000 });
  mkdirSync(join(folder, 'guides'));
  writeFileSync(join(folder, 'guides/new.md'), 'new');
  await vi.waitFor(() => expect(changed.mock.calls.length).toBeGreaterThan(1), { timeout: 5000 });
  await wait(800);
  const before = changed.mock.calls.length;
  await wait(800);
  expect(changed).toHaveBeenCalledTimes(before);
  rmSync(folder, { recursive: true });
});
