/** One stage of `scale`, in a process of its own so that its memory is its own: prints a `Stage` as JSON. */
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { answersOf } from '../../src/answers.ts';
import { readBase } from '../../src/base/index.ts';
import { checkContent, outputsAtOnce } from '../../src/check/index.ts';
import { mostOutputs } from '../../src/cli/commands/build.ts';
import { buildSite } from '../../src/publish/build.ts';
import { pagefindAlone } from './pagefind-alone.ts';
import { parseOnly } from './parse-only.ts';
import { plainAstro } from './plain-astro.ts';

/** What a stage cost and came to. */
export interface Stage {
  /** Of the processor, all threads of the process and of those it started, from start to end. */
  readonly seconds: number;
  /** By the clock, from start to end. */
  readonly wallSeconds: number;
  readonly peakBytes: number;
  /** Parts of it, in seconds of the processor, in their order. */
  readonly parts: readonly (readonly [name: string, seconds: number])[];
  readonly figures: Readonly<Record<string, number>>;
}

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

const parts: [string, number][] = [];
let partBegan = 0;
function part(name: string): void {
  const now = cpuSeconds();
  parts.push([name, now - partBegan]);
  partBegan = now;
}

const stages: Readonly<Record<string, (content: string, site: string) => Promise<Record<string, number>>>> = {
  parse: async (content) => ({ readings: await parseOnly(content) }),
  check: async (content) => {
    const { findings } = await checkContent(content, { outputsAtOnce });
    return { findings: findings.length };
  },
  compute: async (content) => {
    const { base } = await readBase(content);
    part('reading');
    let values = 0;
    for (const output of answersOf(base, outputsAtOnce).outputs.values())
      values += output.characteristics.length;
    part('outputs');
    return { values };
  },
  build: async (content, site) => {
    const { answers } = await checkContent(content, { outputsAtOnce: mostOutputs });
    part('check');
    const { pages } = await buildSite({
      answers,
      outDir: site,
      basePath: '/',
      date: '2026-01-01',
      log: (line) => part(line.replaceAll(/[\d,.]+ /g, '')),
    });
    part('rest');
    return { pages, ...(await weights(site)) };
  },
  astro: async (_, site) => ({ pages: await plainAstro(site) }),
  pagefind: async (_, site) => ({ pages: await pagefindAlone(site) }),
};

/** Bytes of the whole site, and of the largest file of each kind: as it is, and as it is sent, compressed. */
async function weights(site: string): Promise<Record<string, number>> {
  const largest = new Map<string, { readonly path: string; readonly size: number }>();
  let all = 0;
  for (const entry of await readdir(site, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    const { size } = await stat(path);
    all += size;
    if (!entry.name.endsWith('.html') && !entry.name.endsWith('.json')) continue;
    const below = path.slice(site.length + 1);
    if (below.startsWith('pagefind/')) continue;
    const [top = ''] = below.split('/');
    const kind = `${top.endsWith('.html') ? 'start page' : top}${entry.name.endsWith('.json') && top !== entry.name ? ' (data)' : ''}`;
    if (size > (largest.get(kind)?.size ?? 0)) largest.set(kind, { path, size });
  }
  return {
    'bytes of the site': all,
    ...Object.fromEntries([...largest].map(([kind, { size }]) => [`largest ${kind}`, size])),
    ...Object.fromEntries(
      await Promise.all(
        [...largest].map(async ([kind, { path }]) => [
          `largest ${kind}, compressed`,
          gzipSync(await readFile(path)).length,
        ]),
      ),
    ),
  };
}

/** The most this process had in memory. */
async function peakBytes(): Promise<number> {
  const status = await readFile('/proc/self/status', 'utf8').catch(() => '');
  const kilobytes = Number(/VmHWM:\s+(\d+)/.exec(status)?.[1] ?? process.resourceUsage().maxRSS);
  return kilobytes * 1024;
}

/** Ends what was started and is left: what a child took counts as ours once it has ended and been waited for. */
async function endChildren(): Promise<void> {
  const listed = `/proc/self/task/${process.pid}/children`;
  for (;;) {
    const children = (await readFile(listed, 'utf8').catch(() => '')).trim();
    if (children === '') return;
    for (const child of children.split(' ')) process.kill(Number(child));
    await sleep(20);
  }
}

const [name = '', content = '', site = ''] = process.argv.slice(2);
const run = stages[name];
if (!run) throw new Error(`There is no stage “${name}”.`);
partBegan = cpuSeconds();
const figures = await run(content, site);
await endChildren();
const result: Stage = {
  seconds: cpuSeconds(),
  wallSeconds: performance.now() / 1000,
  peakBytes: await peakBytes(),
  parts,
  figures,
};
process.stdout.write(`\n${JSON.stringify(result)}\n`);
process.exit(0);
