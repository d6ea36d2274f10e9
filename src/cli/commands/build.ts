/** `readback build`: checks the content, then writes the site. */
import { resolve } from 'node:path';
import type { BuildResult } from '../../../schemas/results/build.ts';
import { readAnswers } from '../../answers.ts';
import { checkContent, isFailing } from '../../check/index.ts';
import { buildSite } from '../../publish/build.ts';
import { answersDocument } from '../../views/api/answers-document.ts';
import type { EarlierAnswers } from '../../views/changes/compare.ts';
import {
  type ContentOption,
  exitCodes,
  type JsonOption,
  type Output,
  printJson,
  reportFindings,
  today,
} from '../command.ts';
import { commitOf, contentAt, dateOfCommit } from '../revision.ts';

export interface BuildOptions extends ContentOption, JsonOption {
  readonly out: string;
  readonly base: string;
  readonly since?: string;
}

export async function build(options: BuildOptions, output: Output): Promise<number> {
  const commit = options.since === undefined ? undefined : await commitOf(options.content, options.since);
  const checked = await checkContent(options.content, { today: today() });
  const { answers, findings } = checked;
  if (isFailing(findings)) {
    reportFindings(output, checked, options.content);
    output.err('Nothing was built.');
    return exitCodes.findings;
  }
  const outDir = resolve(options.out);
  const earlier = commit === undefined ? undefined : await earlierAnswers(options.content, commit);
  const { pages, changes } = await buildSite({
    answers,
    outDir,
    basePath: options.base,
    earlier,
    log: output.err,
  });
  const since = earlier && { commit: earlier.commit, profiles: changes };
  if (options.json)
    printJson(output, {
      folder: outDir,
      basePath: options.base,
      pages,
      since: since ?? null,
    } satisfies BuildResult);
  else {
    output.out(`Built ${pages} pages in ${options.out}`);
    if (since) output.out(`Profiles that answer differently than at ${options.since}: ${since.profiles}`);
  }
  return exitCodes.ok;
}

/** The answers that the content gave at a commit, worked out by the program as it is now. */
async function earlierAnswers(folder: string, commit: string): Promise<EarlierAnswers> {
  const { content, renames } = await contentAt(folder, commit);
  const { answers } = await readAnswers(content);
  const profileOf = (file: string): string | undefined => /^profiles\/(.+)\.yaml$/.exec(file)?.[1];
  return {
    answers: answersDocument(answers),
    commit,
    date: await dateOfCommit(folder, commit),
    renamed: new Map(
      renames.flatMap(({ from, to }) => {
        const [was, is] = [profileOf(from), profileOf(to)];
        return was !== undefined && is !== undefined ? [[was, is] as const] : [];
      }),
    ),
  };
}
