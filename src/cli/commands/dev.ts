/** `readback dev`: serves the site while entries are edited; a saved entry reloads the page. */
import { devSite } from '../../publish/dev.ts';
import { type ContentOption, exitCodes, interrupted, type Output } from '../command.ts';

export interface DevOptions extends ContentOption {
  readonly host: string;
  readonly port: number;
}

export async function dev(options: DevOptions, output: Output): Promise<number> {
  const site = await devSite({ contentFolder: options.content, host: options.host, port: options.port });
  output.out(`Open ${site.address}`);
  await interrupted();
  await site.close();
  return exitCodes.ok;
}
