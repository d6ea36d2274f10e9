/** `readback build`: checks the content, then writes the site. */
import { resolve } from 'node:path';
import type { BuildResult } from '../../../schemas/results/build.ts';
import { checkContent, isFailing } from '../../check/index.ts';
import { buildSite } from '../../publish/build.ts';
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
  const checked = await checkContent(options.content, { today: today() });
  const { answers, findings } = checked;
  if (isFailing(findings)) {
    reportFindings(output, checked, options.content);
    output.err('Nothing was built.');
    return exitCodes.findings;
  }
  const outDir = resolve(options.out);
  const { pages } = await buildSite({ answers, outDir, basePath: options.base, log: output.err });
  if (options.json)
    printJson(output, { folder: outDir, basePath: options.base, pages } satisfies BuildResult);
  else output.out(`Built ${pages} pages in ${options.out}`);
  return exitCodes.ok;
}
