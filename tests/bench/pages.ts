/** `npm run bench -- pages [RUNS]`: what Lighthouse says of a page of each kind on a phone, held against the budgets. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import lighthouse, { type Result } from 'lighthouse';
import type { Browser } from 'playwright-core';
import { readAnswers } from '../../src/answers.ts';
import { buildSite } from '../../src/publish/build.ts';
import { launchBrowser } from '../site/browser.ts';
import { freePort } from '../site/nginx.ts';
import { budgetOf, filledPlan, mostPageBytes } from '../site/page-budgets.ts';
import { scriptBytes } from '../site/script-bytes.ts';
import { serveCompressed } from './compressing-server.ts';

const categories = ['performance', 'accessibility', 'best-practices', 'seo'] as const;

/** A page of each kind that is visited most, by its path, and by what it is counted. */
const pages = [
  { path: '', kind: 'start' },
  { path: 'units/brasslight/', kind: 'unit' },
  { path: 'profiles/brasslight/8b0s-i5z/', kind: 'profile' },
  { path: 'tables/amplifier-without-reflash/', kind: 'table' },
  { path: `planner/?${new URLSearchParams(filledPlan)}`, kind: 'planner' },
] as const;

/** Lighthouse's usual phone: a slow one on a slow network, simulated. Of `runs` the median counts. */
export async function benchPages(runs: number): Promise<void> {
  const work = await mkdtemp(join(tmpdir(), 'readback-bench-pages-'));
  const folder = join(work, 'site');
  const { answers } = await readAnswers(new URL('../../content/', import.meta.url).pathname);
  const { headers } = await buildSite({ answers, outDir: folder, basePath: '/', log: () => {} });
  const served = await serveCompressed(folder, headers);
  const port = await freePort();
  const browser = await launchBrowser([`--remote-debugging-port=${port}`]);
  try {
    for (const { path, kind } of pages) {
      const results: Result[] = [];
      for (let run = 0; run < runs; run += 1) results.push(await measured(`${served.origin}/${path}`, port));
      const missed = await report(browser, `${served.origin}/${path}`, kind, results);
      for (const one of missed) console.log(`  MISSED: ${one}`);
      if (missed.length > 0) process.exitCode = 1;
    }
  } finally {
    await browser.close();
    await served.close();
    await rm(work, { recursive: true, force: true });
  }
}

async function measured(address: string, port: number): Promise<Result> {
  const run = await lighthouse(address, { port, logLevel: 'error', onlyCategories: [...categories] });
  if (!run) throw new Error(`Lighthouse gave nothing for ${address}`);
  const { runtimeError } = run.lhr;
  if (runtimeError) throw new Error(`${address}: ${runtimeError.message}`);
  return run.lhr;
}

/** Prints what was measured; gives back what misses its budget. */
async function report(
  browser: Browser,
  address: string,
  kind: string,
  results: readonly Result[],
): Promise<string[]> {
  const missed: string[] = [];
  const of = (what: (result: Result) => number): number => median(results.map(what));
  const scores = categories.map((id) => {
    const score = of(({ categories: all }) => Math.round(100 * (all[id]?.score ?? 0)));
    if (score < 100) missed.push(`${id} ${score}: ${faults(results, id).join('; ')}`);
    return `${id} ${score}`;
  });
  const shift = of(({ audits }) => audits['cumulative-layout-shift']?.numericValue ?? 1);
  if (shift > 0) missed.push(`layout shift ${shift.toFixed(4)}`);
  const bytes = of(({ audits }) => audits['total-byte-weight']?.numericValue ?? Number.POSITIVE_INFINITY);
  const { all, first, later } = await scriptBytes(browser, address);
  const budget = budgetOf(kind);
  if (all > budget) missed.push(`scripts ${kilobytes(all)} of ${kilobytes(budget)}`);
  if (kind === 'profile' && bytes > mostPageBytes) {
    missed.push(`transferred ${kilobytes(bytes)} of ${kilobytes(mostPageBytes)}`);
  }
  const scripts =
    first < all || later > 0
      ? `${kilobytes(all)}, ${kilobytes(first)} of it at first, ${kilobytes(later)} after it`
      : `${kilobytes(all)} in all`;
  console.log(
    `${kind}: ${scores.join(', ')}; transferred ${kilobytes(bytes)}; scripts ${scripts}; layout shift ${shift.toFixed(3)}`,
  );
  return missed;
}

/** What cost points, in Lighthouse's words. */
function faults(results: readonly Result[], id: string): string[] {
  const [first] = results;
  return (first?.categories[id]?.auditRefs ?? []).flatMap(({ id: audit, weight }) => {
    const { score, title, displayValue = '' } = first?.audits[audit] ?? {};
    const isFault = weight > 0 && score !== null && score !== undefined && score < 1;
    return isFault ? [`${title} ${displayValue}`.trim()] : [];
  });
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`;
}
