/** `readback build`: checks the content, then writes the site. */
import { resolve } from 'node:path';
import type { BuildResult } from '../../../schemas/results/build.ts';
import { checkContent, isFailing } from '../../check/index.ts';
import { type BuiltSite, buildSite } from '../../publish/build.ts';
import {
  type ContentOption,
  exitCodes,
  type JsonOption,
  type Output,
  printJson,
  reportFindings,
  today,
} from '../command.ts';

export interface BuildOptions extends ContentOption, JsonOption {
  readonly out: string;
  readonly base: string;
}

export async function build(options: BuildOptions, output: Output): Promise<number> {
  const built = await checkedBuild(options, output);
  if (!built) return exitCodes.findings;
  const { pages, headers } = built;
  const { out: folder, base: basePath } = options;
  if (options.json)
    printJson(output, { folder: resolve(folder), basePath, pages, headers } satisfies BuildResult);
  else output.out(`Built ${pages} pages in ${folder}`);
  return exitCodes.ok;
}

/** Builds the site where the check finds nothing; else reports what it found. */
export async function checkedBuild(options: BuildOptions, output: Output): Promise<BuiltSite | undefined> {
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
