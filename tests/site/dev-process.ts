/**
 * Runs the development site as a process of its own and tells its parent what happens: Astro's server does not
 * answer within Vitest, as Vitest is itself made of the same server.
 */
import { devSite } from '../../src/publish/dev.ts';

/** What the process tells its parent. */
export type DevMessage =
  | { readonly kind: 'ready'; readonly address: string }
  | { readonly kind: 'news'; readonly shown: boolean; readonly files: readonly string[] };

const tell = (message: DevMessage): void => {
  process.send?.(message);
};

const [contentFolder = '', port = '0'] = process.argv.slice(2);
const site = await devSite({
  contentFolder,
  host: '127.0.0.1',
  port: Number(port),
  report: ({ shown, findings }) =>
    tell({ kind: 'news', shown, files: findings.map(({ place }) => place.file) }),
});
tell({ kind: 'ready', address: site.address });
process.on('disconnect', () => process.exit());
