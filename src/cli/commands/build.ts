/** `readback build`: checks the content, then writes the site. */
import { realpath } from 'node:fs/promises';
import { resolve, sep } from 'node:path';
import type { BuildResult } from '../../../schemas/results/build.ts';
import { type Answers, readAnswers } from '../../answers.ts';
import { CannotRun } from '../../base/index.ts';
import { checkContent, isFailing } from '../../check/index.ts';
import { changeOf } from '../../impact/index.ts';
import { type BuiltSite, buildSite } from '../../publish/build.ts';
import { assertNginxPaths, nginxConfiguration } from '../../publish/nginx.ts';
import { changesSince, type SinceRevision } from '../../views/changes/compare.ts';
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
import { writeWhole } from './whole-file.ts';

export interface BuildOptions extends ContentOption, JsonOption {
  readonly out: string;
  readonly base: string;
  readonly since?: string;
  /** Where a configuration for nginx is written, if anywhere. */
  readonly nginx?: string;
}

/** Outputs kept whole at once, 130 to 250 kB each: of a larger base they are worked out again for some parts of the site. */
export const mostOutputs = 300;

export async function build(options: BuildOptions, output: Output): Promise<number> {
  const { base: basePath, nginx } = options;
  const folder = resolve(options.out);
  if (nginx !== undefined) {
    assertNginxPaths(folder, basePath);
    if (resolve(nginx).startsWith(`${folder}${sep}`)) {
      throw new CannotRun(
        `The configuration ${nginx} would be published with the site.`,
        `Name a file outside ${options.out}.`,
      );
    }
  }
  const built = await checkedBuild(options, output);
  if (!built) return exitCodes.findings;
  if (nginx !== undefined) {
    const text = await nginxConfiguration({ ...built, folder, basePath });
    await writeWhole(nginx, text, 'The configuration');
  }
  if (options.json) {
    const { pages, headers, redirects, since } = built;
    printJson(output, {
      folder,
      basePath,
      pages,
      since: since ?? null,
      headers,
      redirects,
      ...(nginx !== undefined && { nginx: resolve(nginx) }),
    } satisfies BuildResult);
  } else {
    output.out(`Built ${built.pages} pages in ${options.out}`);
    if (built.since) {
      output.out(`Profiles that answer differently than at ${options.since}: ${built.since.profiles}`);
    }
  }
  return exitCodes.ok;
}

/** A built site, and how many of its profiles answer differently than at the commit it was compared with. */
export interface CheckedSite extends BuiltSite {
  readonly since: BuildResult['since'];
}

/** Builds the site where the check finds nothing; else reports what it found. */
export async function checkedBuild(options: BuildOptions, output: Output): Promise<CheckedSite | undefined> {
  const commit = options.since === undefined ? undefined : await commitOf(options.content, options.since);
  const content = await realpath(options.content).catch(() => resolve(options.content));
  if (`${resolve(options.out)}${sep}`.startsWith(`${content}${sep}`)) {
    throw new CannotRun(
      `The output folder ${options.out} lies among the entries.`,
      `Name a folder outside ${options.content}.`,
    );
  }
  const checked = await checkContent(options.content, { today: today(), outputsAtOnce: mostOutputs });
  const { answers, findings } = checked;
  if (isFailing(findings)) {
    reportFindings(output, checked, options.content);
    output.err('Nothing was built.');
    return undefined;
  }
  const since = commit === undefined ? undefined : await sinceCommit(options.content, commit, answers);
  const built = await buildSite({
    answers,
    outDir: resolve(options.out),
    basePath: options.base,
    since,
    log: output.err,
  });
  return { ...built, since: since ? { commit: since.commit, profiles: built.changes } : null };
}

/** What has changed in the answers since a commit, those of then worked out by the program as it is now. */
async function sinceCommit(folder: string, commit: string, now: Answers): Promise<SinceRevision> {
  const { content, renames } = await contentAt(folder, commit);
  const { answers: before } = await readAnswers(content);
  const change = changeOf(before, now, renames);
  return { changes: () => changesSince(change), commit, date: await dateOfCommit(folder, commit) };
}
