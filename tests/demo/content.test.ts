import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { machineMadeFiles, writeDemo } from '../../src/demo/write.ts';

const content = join(import.meta.dirname, '../../content');
const list = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();

describe('the machine-made part of the content', () => {
  const folder = mkdtempSync(join(tmpdir(), 'readback-demo-'));
  beforeAll(async () => {
    await writeDemo(folder);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('is byte for byte what the generator writes', () => {
    const written = list(folder);
    expect(written).toEqual([...machineMadeFiles().keys()].sort());
    const differing = written.filter(
      (path) => !readFileSync(join(folder, path)).equals(readFileSync(join(content, path))),
    );
    expect(differing, 'run `node src/demo/write.ts` and look at the difference').toEqual([]);
  });

  it('leaves nothing behind from an earlier run', () => {
    const machineMade = /^(profiles|outputs|statements)\/|^sources\/bench-/;
    expect(list(content).filter((path) => machineMade.test(path))).toEqual(list(folder));
  });
});
