/** The order of test files: those that take longest begin first, so that none is left to run alone at the end. */
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Longest first, as measured on two cores. */
const longest = [
  'site/accessibility',
  'site/planner',
  'site/build-again',
  'site/browsing',
  'site/hostile',
  'site/offline',
  'site/walk',
  'site/content-policy',
  'site/changes',
  'site/tables',
  'site/dev',
  'site/init',
  'site/nginx',
  'faults/faults',
  'faults/harmless',
  'views/planner-data',
  'decide/plan/correction',
  'check/tables',
  'recording/sweep-analysis',
  'codes/find',
  'check/one-line-edits',
  'check/workflow',
  'faults/fuzz',
];

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = longest.findIndex((name) => moduleId.endsWith(`tests/${name}.test.ts`));
      return at < 0 ? longest.length : at;
    };
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}
