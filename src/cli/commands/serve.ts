/** `readback serve`: checks, builds and serves the site, until interrupted. */
import { serveFolder } from '../../publish/serve.ts';
import { exitCodes, interrupted, type Output } from '../command.ts';
import { type BuildOptions, build } from './build.ts';

export interface ServeOptions extends BuildOptions {
  readonly host: string;
  readonly port: number;
}

export async function serve(options: ServeOptions, output: Output): Promise<number> {
  const built = await build({ ...options, json: false }, { ...output, out: output.err });
  if (built !== exitCodes.ok) return built;
  const server = await serveFolder({
    folder: options.out,
    basePath: options.base,
    host: options.host,
    port: options.port,
  });
  output.out(options.json ? JSON.stringify({ address: server.address }) : `Open ${server.address}`);
  await interrupted();
  await server.close();
  return exitCodes.ok;
}
