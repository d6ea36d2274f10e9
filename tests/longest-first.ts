/** The order of test files: those that take longest begin first, so that none is left to run alone at the end. */
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Longest first, as measured on two cores. */
const longest = [
  'site/accessibility',
  'site/planner',
  'site/offline',
  'site/walk',
  'site/hostile',
  'site/nginx',
  'site/build-again',
  'site/content-policy',
  'faults/faults',
  'views/planner-data',
  'faults/harmless',
  'decide/plan/correction',
  'check/one-line-edits',
  'codes/find',
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
