/** Builds the demo site once for all browser tests, mounted below a path, and serves it. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { readAnswers } from '../../src/answers.ts';
import { buildSite } from '../../src/publish/build.ts';
import { serveFolder } from '../../src/publish/serve.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The address of the start page, base path included. */
    siteAddress: string;
    /** The folder the site was built into. */
    siteFolder: string;
  }
}

/** A base path other than `/`, so that a link that forgets it is broken. */
export const basePath = '/help/';

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const work = await mkdtemp(join(tmpdir(), 'readback-site-'));
  const outDir = join(work, 'site');
  const content = fileURLToPath(new URL('../../content/', import.meta.url));
  const { answers } = await readAnswers(content);
  const { headers, folders } = await buildSite({ answers, outDir, basePath, log: () => {} });
  const served = await serveFolder({
    folder: outDir,
    basePath,
    host: '127.0.0.1',
    port: 0,
    folders,
    headers,
  });
  project.provide('siteAddress', served.address);
  project.provide('siteFolder', outDir);
  return async () => {
    await served.close();
    await rm(work, { recursive: true, force: true });
  };
}
