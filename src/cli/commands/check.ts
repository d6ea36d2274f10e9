/** `readback check`: is everything sourced, and does nothing contradict itself? */
import type { Base } from '../../base/index.ts';
import { CannotRun, MapMemory, nearest } from '../../base/index.ts';
import {
  checkContent,
  isFailing,
  newSince,
  outputsAtOnce,
  type Report,
  rules,
  rulesReport,
  ruleText,
  ruleTitles,
} from '../../check/index.ts';
import { rulePath } from '../../views/paths.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson, today } from '../command.ts';
import { keepMemory, recallMemory } from '../kept-memory.ts';
import { formatOfFile, fromHere, type ReportFormat, reportText, writeReport } from '../report-file.ts';
import { commitOf, contentAt } from '../revision.ts';

export interface CheckOptions extends ContentOption, JsonOption {
  readonly format: ReportFormat;
  readonly out?: readonly string[];
  readonly since?: string;
  readonly explain?: string;
  readonly rules?: boolean;
  readonly afresh?: boolean;
}

export async function check(options: CheckOptions, output: Output): Promise<number> {
  if (options.explain !== undefined || options.rules) return tellRules(options, output);
  const files = options.out ?? [];
  for (const file of files) formatOfFile(file);
  const format = options.json ? 'json' : options.format;
  const commit = options.since === undefined ? undefined : await commitOf(options.content, options.since);
  const memory = options.afresh ? new MapMemory() : recallMemory(options.content);
  const earlier = commit === undefined ? undefined : await earlierState(options.content, commit);
  const settings = { today: today(), memory, outputsAtOnce, ...(earlier && { earlier }) };
  const checked = await checkContent(options.content, settings);
  keepMemory(options.content, memory);
  const news = earlier ? newSince(checked, earlier.checked, earlier.renames) : checked.findings;
  const report: Report = {
    findings: news,
    folder: options.content,
    sourceOf: checked.sourceOf,
    setAside: checked.setAside.length,
    ruleAddress: ruleAddress(checked.answers.base),
    ...(commit === undefined || options.since === undefined
      ? {}
      : { since: { revision: options.since, commit, older: checked.findings.length - news.length } }),
  };
  // Reports for other programs name files as seen from where the command runs.
  const forPrograms = { ...report, folder: fromHere(options.content) };
  for (const file of files) await writeReport(forPrograms, file);
  output.out(reportText(format === 'text' ? report : forPrograms, format, output.colour).trimEnd());
  return isFailing(report.findings) ? exitCodes.findings : exitCodes.ok;
}

/** The content as it was, checked too: by the same rules, on the same day. */
async function earlierState(folder: string, commit: string) {
  const { content, renames } = await contentAt(folder, commit);
  const memory = recallMemory(folder);
  return { checked: await checkContent(content, { today: today(), memory, outputsAtOnce }), renames };
}

function tellRules(options: CheckOptions, output: Output): number {
  const shown = options.explain === undefined ? rules : rules.filter(({ id }) => id === options.explain);
  const [first] = shown;
  if (!first) {
    const guess = nearest(
      options.explain ?? '',
      rules.map(({ id }) => id),
    );
    throw new CannotRun(
      `There is no rule “${options.explain}”.`,
      guess ? `Did you mean --explain ${guess}?` : 'readback check --rules lists them all.',
    );
  }
  if (options.json) printJson(output, rulesReport(shown));
  else output.out(options.explain === undefined ? ruleTitles(shown) : ruleText(first, output.colour));
  return exitCodes.ok;
}

/** Where the site explains a rule; unknown where site.yaml does not say where the site is. */
function ruleAddress({ site }: Base): (rule: string) => string | undefined {
  const address = site?.data.address.replace(/\/*$/, '/');
  return (rule) => (address === undefined ? undefined : new URL(rulePath(rule), address).href);
}
