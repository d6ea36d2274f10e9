/** `readback build`: checks the content, then writes the site. */
import { realpath } from 'node:fs/promises';
import { resolve, sep } from 'node:path';
import type { BuildResult } from '../../../schemas/results/build.ts';
import { CannotRun } from '../../base/index.ts';
import { checkContent, isFailing } from '../../check/index.ts';
import { type BuiltSite, buildSite } from '../../publish/build.ts';
import { assertNginxPaths, nginxConfiguration } from '../../publish/nginx.ts';

import {
  type ContentOption,
  exitCodes,
  type JsonOption,
  type Output,
  printJson,
  reportFindings,
  today,
} from '../command.ts';
import { writeWhole } from './whole-file.ts';

export interface BuildOptions extends ContentOption, JsonOption {
  readonly out: string;
  readonly base: string;
  /** Where a configuration for nginx is written, if anywhere. */
  readonly nginx?: string;
}

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
    printJson(output, {
      folder,
      basePath,
      ...built,
      ...(nginx !== undefined && { nginx: resolve(nginx) }),
    } satisfies BuildResult);
  } else output.out(`Built ${built.pages} pages in ${options.out}`);
  return exitCodes.ok;
}

/** Builds the site where the check finds nothing; else reports what it found. */
export async function checkedBuild(options: BuildOptions, output: Output): Promise<BuiltSite | undefined> {
  const content = await realpath(options.content).catch(() => resolve(options.content));
  if (`${resolve(options.out)}${sep}`.startsWith(`${content}${sep}`)) {
    throw new CannotRun(
      `The output folder ${options.out} lies among the entries.`,
      `Name a folder outside ${options.content}.`,
    );
  }
  const checked = await checkContent(options.content, { today: today() });
  const { answers, findings } = checked;
  if (isFailing(findings)) {
    reportFindings(output, checked, options.content);
    output.err('Nothing was built.');
    return undefined;
  }
  return await buildSite({
    answers,
    outDir: resolve(options.out),
    basePath: options.base,
    log: output.err,
  });
}
