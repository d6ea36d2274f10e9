/** `readback serve`: checks, builds and serves the site, until interrupted. */
import type { ServeResult } from '../../../schemas/results/serve.ts';
import { serveFolder } from '../../publish/serve.ts';
import { exitCodes, interrupted, type Output, printJson } from '../command.ts';
import { type BuildOptions, checkedBuild } from './build.ts';

export interface ServeOptions extends BuildOptions {
  readonly host: string;
  readonly port: number;
}

export async function serve(options: ServeOptions, output: Output): Promise<number> {
  const built = await checkedBuild(options, { ...output, out: output.err });
  if (!built) return exitCodes.findings;
  const server = await serveFolder({
    folder: options.out,
    basePath: options.base,
    host: options.host,
    port: options.port,
    folders: built.folders,
    headers: built.headers,
  });
  if (options.json) printJson(output, { address: server.address } satisfies ServeResult);
  else output.out(`Open ${server.address}`);
  await interrupted();
  await server.close();
  return exitCodes.ok;
}
