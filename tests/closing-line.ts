/** Prints one plain closing line after a run, for people and for logs: `tests: 120 passed, 0 failed`. */
import type { Reporter, TestModule } from 'vitest/node';
import { hasNginx } from './site/nginx.ts';

export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const counts = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) counts[test.result().state] += 1;
      // A file that cannot even be loaded has no tests to count, and is a failure all the same.
      if (module.errors().length > 0) counts.failed += 1;
    }
    const skipped = counts.skipped + counts.pending;
    const about = modules.some(({ moduleId }) => moduleId.endsWith('/nginx.test.ts')) && !hasNginx();
    console.log(
      `tests: ${counts.passed} passed, ${counts.failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}` +
        (about ? ' (nginx is not installed: its configuration was not tried)' : ''),
    );
  }
}
