import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './longest-first.ts';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    sequence: { sequencer: LongestFirst },
    setupFiles: [new URL('fixed-draws.ts', import.meta.url).pathname],
    reporters: ['default', new URL('closing-line.ts', import.meta.url).pathname],
    // What checks remember between runs stays out of the user's own cache.
    env: { XDG_CACHE_HOME: join(tmpdir(), 'readback-tests-cache') },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/site/**', 'tests/long/**'],
          testTimeout: 30_000,
          // Tests here change nothing that another file could see, and modules are loaded once a worker.
          isolate: false,
          maxWorkers: 2,
        },
      },
      {
        extends: true,
        test: { name: 'long', include: ['tests/long/**/*.test.ts'], testTimeout: 1_800_000 },
      },
      {
        extends: true,
        test: {
          name: 'site',
          include: ['tests/site/**/*.test.ts'],
          globalSetup: ['tests/site/built-site.ts'],
          testTimeout: 150_000,
          hookTimeout: 180_000,
          // A page on a busy machine takes its time; a wait that is met ends at once.
          expect: { poll: { timeout: 20_000 } },
          // Two browsers on two cores; more would make tests wait for each other.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
