/** What every reporter is given: the findings of a run, and what it takes to show them. */
import type { Finding } from '../../base/index.ts';
import type { SourceLookup } from '../source-texts.ts';

export interface Report {
  readonly findings: readonly Finding[];
  /** What to put before each path: the content folder, so that a place can be opened from there. */
  readonly folder: string;
  /** The text of the files the findings point into, for code frames. */
  readonly sourceOf: SourceLookup;
  /** How many findings exceptions have set aside. */
  readonly setAside: number;
  /** Where findings are only those a change brings in: since which revision, and how many it leaves out. */
  readonly since?: { readonly revision: string; readonly commit: string; readonly older: number };
  /** The page where a rule is explained, where the address of the site is known. */
  readonly ruleAddress?: RuleAddress;
}

/** The full address of the page that explains a rule. */
export type RuleAddress = (rule: string) => string | undefined;

/** The path of a file as seen from where the command runs. */
export function pathOf(report: Pick<Report, 'folder'>, file: string): string {
  const folder = report.folder.replace(/\/+$/, '');
  return folder === '' || folder === '.' ? file : `${folder}/${file}`;
}
