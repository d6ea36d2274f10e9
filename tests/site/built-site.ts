/** Builds, once for all browser tests, the demo site, mounted below a path, and serves it; and two editions of it. */
import { fork } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { serveFolder } from '../../src/publish/serve.ts';
import { basePath, type SiteInFolder } from './editions.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The address of the start page, base path included. */
    siteAddress: string;
    /** The folder the site was built into. */
    siteFolder: string;
    /** What is known of the site beside its files. Its folder is not to be changed. */
    site: SiteInFolder;
    /** Two editions of the demo in English; see `editions`. Their folders are not to be changed. */
    firstEdition: SiteInFolder;
    secondEdition: SiteInFolder;
  }
}

/** In a process of its own, at an hour of its own. */
function inProcess(what: 'demo' | 'editions', work: string, zone: string): Promise<SiteInFolder[]> {
  const { VITEST: _, NODE_ENV: __, ...env } = process.env;
  const child = fork(fileURLToPath(new URL('build-sites.ts', import.meta.url)), [what, work], {
    env: { ...env, TZ: zone },
  });
  return new Promise((done, failed) => {
    child.on('message', (sites: SiteInFolder[]) => done(sites));
    child.on('exit', (code) => failed(new Error(`Building the ${what} for the tests ended with ${code}.`)));
  });
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const work = await mkdtemp(join(tmpdir(), 'readback-site-'));
  const [[site], [first, second]] = await Promise.all([
    inProcess('demo', work, 'UTC'),
    inProcess('editions', work, 'Pacific/Kiritimati'),
  ]);
  if (!site || !first || !second) throw new Error('A site is missing.');
  const { folder, folders, headers } = site;
  const served = await serveFolder({ folder, basePath, host: '127.0.0.1', port: 0, folders, headers });
  project.provide('siteAddress', served.address);
  project.provide('siteFolder', folder);
  project.provide('site', site);
  project.provide('firstEdition', first);
  project.provide('secondEdition', second);
  return async () => {
    await served.close();
    await rm(work, { recursive: true, force: true });
  };
}
