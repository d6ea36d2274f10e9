/** `npm run bench -- serve [SECONDS]`: the built demo behind nginx, asked by wrk over loopback. */
import { spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readAnswers } from '../../src/answers.ts';
import { buildSite } from '../../src/publish/build.ts';
import { hasNginx, startNginx } from '../site/nginx.ts';

const basePath = '/help/';
const pages = ['', 'codes.json', 'units/brasslight/', 'profiles/brasslight/8b0s-i5z/'];

/** Asks for each of a few pages for its share of `seconds`, with 32 connections and compression. */
export async function benchServe(seconds: number): Promise<void> {
  if (!hasNginx() || spawnSync('wrk', ['-v']).error) {
    console.error('This needs nginx and wrk: apt-get install nginx wrk');
    process.exitCode = 2;
    return;
  }
  const work = await mkdtemp(join(tmpdir(), 'readback-bench-serve-'));
  const folder = join(work, 'site');
  const content = new URL('../../content/', import.meta.url).pathname;
  const { answers } = await readAnswers(content);
  const site = await buildSite({ answers, outDir: folder, basePath, log: () => {} });
  const nginx = await startNginx({ ...site, folder, basePath });
  try {
    const each = Math.max(1, Math.round(seconds / pages.length));
    for (const page of pages) {
      const { stdout } = spawnSync(
        'wrk',
        [
          '-t1',
          '-c32',
          `-d${each}s`,
          '--latency',
          '-H',
          'Accept-Encoding: gzip',
          `${nginx.origin}${basePath}${page}`,
        ],
        { encoding: 'utf8', timeout: (each + 20) * 1000 },
      );
      const figure = (pattern: RegExp): string => pattern.exec(stdout)?.[1] ?? 'not said';
      // wrk names answers that are no success on a line of its own.
      const failures = /Non-2xx or 3xx responses: (\d+)/.exec(stdout)?.[1] ?? '0';
      console.log(
        `${basePath}${page}: ${figure(/Requests\/sec:\s+([\d.]+)/)} requests/s, ` +
          `half within ${figure(/50%\s+(\S+)/)}, 99 % within ${figure(/99%\s+(\S+)/)}, ` +
          `${figure(/Transfer\/sec:\s+(\S+)/)}/s, ${failures} failed`,
      );
    }
  } finally {
    await nginx.close();
    await rm(work, { recursive: true, force: true });
  }
}
