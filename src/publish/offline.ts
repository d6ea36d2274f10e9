/** Makes a finished site readable without a network: lists of what is kept, and the worker. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { familyListPath, type OfflinePlan } from '../worker/plan.ts';
import { type OfflineSizes, offlineFiles } from './offline-plan.ts';
import { projectRoot } from './project.ts';
import type { StampedSite } from './stamp-pages.ts';

/** `base` has a slash at both ends. */
export async function makeOffline(folder: string, base: string, site: StampedSite): Promise<OfflineSizes> {
  const { plan, lists, sizes } = offlineFiles(site, base);
  for (const [family, list] of lists) {
    await writeFile(join(folder, familyListPath(family)), JSON.stringify(list));
  }
  await bundleWorker(folder, plan);
  return sizes;
}

/** The worker as one plain script: not every browser takes modules there. */
async function bundleWorker(folder: string, plan: OfflinePlan): Promise<void> {
  const { build } = await import('vite');
  await build({
    configFile: false,
    root: projectRoot,
    publicDir: false,
    logLevel: 'error',
    define: {
      'process.env.NODE_ENV': '"production"',
      __OFFLINE_PLAN__: JSON.stringify(plan),
    },
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: 'es2022',
      rolldownOptions: {
        input: join(projectRoot, 'src/worker/service-worker.ts'),
        output: { format: 'iife', entryFileNames: 'service-worker.js' },
      },
    },
  });
}
