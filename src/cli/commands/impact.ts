/** `readback impact`: what does a change do to the answers? */
import { readAnswers } from '../../answers.ts';
import { CannotRun } from '../../base/index.ts';
import { checkChange, isFailing, isWhole, outputsAtOnce, textReport } from '../../check/index.ts';
import { changeOf } from '../../impact/index.ts';
import { impactMarkdown } from '../../views/impact/markdown.ts';
import type { ImpactInput } from '../../views/impact/report.ts';
import { impactResult } from '../../views/impact/result.ts';
import { impactText } from '../../views/impact/text.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, today } from '../command.ts';
import { recallMemory } from '../kept-memory.ts';
import { formatByEnding, fromHere } from '../report-file.ts';
import { commitOf, contentAt, whereBranchBegan } from '../revision.ts';
import { writeWhole } from './whole-file.ts';

export const impactFormats = ['text', 'json', 'markdown'] as const;
type ImpactFormat = (typeof impactFormats)[number];

export interface ImpactOptions extends ContentOption, JsonOption {
  readonly since?: string;
  readonly format: ImpactFormat;
  readonly out?: readonly string[];
}

const formatOfEnding: Readonly<Record<string, ImpactFormat>> = {
  '.txt': 'text',
  '.json': 'json',
  '.md': 'markdown',
};

const reports: Readonly<Record<ImpactFormat, (input: ImpactInput) => string>> = {
  text: impactText,
  json: (input) => JSON.stringify(impactResult(input), undefined, 2),
  markdown: impactMarkdown,
};

export async function impact(options: ImpactOptions, output: Output): Promise<number> {
  const { content: folder, since: revision } = options;
  const files = (options.out ?? []).map((file) => ({ file, format: formatByEnding(file, formatOfEnding) }));
  const since =
    revision === undefined
      ? await whereBranchBegan(folder)
      : { commit: await commitOf(folder, revision), revision };
  const earlier = await contentAt(folder, since.commit);
  const now = await readAnswers(folder, recallMemory(folder), outputsAtOnce);
  if (!isWhole(now.findings)) {
    const { findings } = now;
    output.err(textReport({ findings, folder, sourceOf: () => undefined, setAside: 0 }, output.colour));
    output.err('Nothing was compared: put this right first.');
    return exitCodes.findings;
  }
  const before = await readAnswers(earlier.content, recallMemory(folder), outputsAtOnce);
  if (!isWhole(before.findings)) {
    throw new CannotRun(
      `Not every entry could be read as it was at ${since.commit.slice(0, 12)}, so answers of then are missing.`,
      'Compare with a revision at which readback check found nothing: --since REV.',
    );
  }
  const change = changeOf(before.answers, now.answers, earlier.renames);
  const { findings, setAside } = checkChange(folder, change, today());
  const input = { change, since, findings, setAside: setAside.length, folder: fromHere(folder) };
  for (const { file, format } of files) {
    await writeWhole(file, `${reports[format](input).trimEnd()}\n`, 'The report');
  }
  output.out(reports[options.json ? 'json' : options.format](input).trimEnd());
  return isFailing(findings) ? exitCodes.findings : exitCodes.ok;
}
