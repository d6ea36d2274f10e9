/** The example base with a few mistakes, checked: what the goldens of the reporters show. */
import { checkContent, type Report } from '../../../src/check/index.ts';
import { editedExample } from '../example-base.ts';

/** Mistakes of several kinds: in an entry, in a sheet against another sheet, in a statement, and one set aside. */
export const brokenExample = editedExample([
  { file: 'profiles/moorlight/kn-2093.yaml', good: 'origin: factory', bad: 'orign: factory' },
  { file: 'guides/reading-a-code.md', good: 'order: 10', bad: 'order:' },
  {
    file: 'outputs/2025-05-shed/readings.csv',
    good: 'FL,16,1000,1.5841',
    bad: 'FL,16,1000,1.5481',
  },
  { file: 'statements/bulletin-loud-profile.yaml', good: 'valueVolts: 6.3', bad: 'valueVolts: 3.6' },
  {
    file: 'statements/letter-rear.yaml',
    good: 'source: rider-letter',
    bad: 'source: riders-leter',
  },
  {
    file: 'exceptions/letter-lost.yaml',
    good: '',
    bad: 'rule: dangling-link\nfile: statements/letter-rear.yaml\nreason: The letter is being looked for.\nby: Bench lead\nuntil: 2026-12-31\n',
  },
  {
    file: 'exceptions/old-letter.yaml',
    good: '',
    bad: 'rule: dangling-link\nfile: statements/letter-rear.yaml\nreason: The letter was being looked for.\nby: Bench lead\nuntil: 2025-12-31\n',
  },
]);

export async function brokenReport(): Promise<Report> {
  const checked = await checkContent(brokenExample, { today: '2026-11-01' });
  return {
    findings: checked.findings,
    folder: 'content',
    sourceOf: checked.sourceOf,
    setAside: checked.setAside.length,
    ruleAddress: (rule) => `https://sample.example/check/#${rule}`,
  };
}
