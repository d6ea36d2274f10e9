/**
 * How the whole pipeline grows with the base: `npm run bench -- scale [PROFILES …]`, each size against the floor in the
 * same run (parsing alone; Astro alone with the same pages as text; the search index alone). Growth is the exponent of the
 * least-squares line through the logarithms.
 */
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text as textOf } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { writeLargeBase } from './large-base.ts';
import type { Stage } from './scale-stage.ts';

const readingsPerProfile = 100;
const stageNames = ['parse', 'check', 'compute', 'build', 'astro', 'pagefind'] as const;
type StageName = (typeof stageNames)[number];
export type ScaleRun = Readonly<Record<StageName, Stage>>;

/** Runs the benchmark and prints its figures. */
export async function benchScale(sizes: readonly number[]): Promise<void> {
  const runs = await scaleRuns(sizes, report);
  if (runs.length < 2) return;
  console.log('scale: growth exponents');
  for (const [name, exponent] of growth(runs)) console.log(`  ${name.padEnd(44)} ${exponent.toFixed(2)}`);
}

/**
 * All stages over a base of each size. What was written is removed in the end: for minutes after files are removed, ext4
 * looks for room for new ones among their places, which would be counted as time of the next stage.
 */
export async function scaleRuns(
  sizes: readonly number[],
  told: (profiles: number, run: ScaleRun) => void = () => undefined,
): Promise<[profiles: number, run: ScaleRun][]> {
  const folder = await mkdtemp(join(tmpdir(), 'readback-scale-'));
  const runs: [profiles: number, run: ScaleRun][] = [];
  try {
    for (const profiles of sizes) {
      const [content, site] = [join(folder, `content-${profiles}`), join(folder, `site-${profiles}`)];
      await writeLargeBase(content, { families: 40, profiles, readingsPerProfile, isWhole: true });
      const run: Partial<Record<StageName, Stage>> = {};
      for (const name of stageNames) run[name] = await stage(name, folder, content, site);
      told(profiles, run as ScaleRun);
      runs.push([profiles, run as ScaleRun]);
    }
    return runs;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/**
 * A stage in a process of its own, what it writes besides in `folder`: processor time of that process and of those it
 * started, as `time` (POSIX) counts.
 */
async function stage(name: StageName, folder: string, content: string, site: string): Promise<Stage> {
  const script = fileURLToPath(new URL('scale-stage.ts', import.meta.url));
  const node = [process.execPath, script, name, content, site];
  const child = spawn('time', ['-p', ...node], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, TMPDIR: folder },
  });
  const [text, told, code] = await Promise.all([
    textOf(child.stdout),
    textOf(child.stderr),
    new Promise<number | null>((done, failed) => child.on('error', failed).on('close', done)),
  ]);
  if (code !== 0) throw new Error(`The stage “${name}” ended with ${code}:\n${told}`);
  const seconds = [...told.matchAll(/^(?:user|sys) (\d+\.\d+)$/gm)].map(([, value]) => Number(value));
  const own = JSON.parse(text.trim().split('\n').at(-1) ?? '') as Stage;
  return { ...own, seconds: seconds.reduce((sum, one) => sum + one, 0) };
}

function report(profiles: number, run: ScaleRun): void {
  console.log(
    `scale: ${profiles} profiles, ${run.parse.figures.readings} readings, ${run.build.figures.pages} pages`,
  );
  for (const name of stageNames) {
    const { seconds, wallSeconds, peakBytes, parts } = run[name];
    console.log(
      `  ${name.padEnd(12)} ${seconds.toFixed(1)} s of the processor, ${wallSeconds.toFixed(1)} s by the clock   peak ${(peakBytes / 2 ** 20).toFixed(0)} MB`,
    );
    if (parts.length > 0)
      console.log(`    ${parts.map(([what, time]) => `${what} ${time.toFixed(1)} s`).join('; ')}`);
  }
  const toFloor = (of: (stage: Stage) => number): string =>
    (of(run.build) / (of(run.astro) + of(run.pagefind))).toFixed(2);
  const [byProcessor, byClock] = [
    toFloor(({ seconds }) => seconds),
    toFloor(({ wallSeconds }) => wallSeconds),
  ];
  console.log(
    `  check / parsing alone ${(run.check.seconds / run.parse.seconds).toFixed(2)}; build / plain Astro + Pagefind ${byProcessor}, by the clock ${byClock}; output ${((run.build.figures['bytes of the site'] ?? 0) / 1e6).toFixed(0)} MB`,
  );
}

/** The exponent of each stage’s time, of peak memory, and of the figures of the build. */
export function growth(runs: readonly (readonly [profiles: number, run: ScaleRun])[]): [string, number][] {
  const exponent = (of: (run: ScaleRun) => number): number =>
    slope(runs.map(([profiles, run]) => [Math.log(profiles), Math.log(of(run))]));
  const figures = Object.keys(runs[0]?.[1].build.figures ?? {}).filter((name) =>
    runs.every(([, run]) => (run.build.figures[name] ?? 0) > 0),
  );
  return [
    ...stageNames.map((name): [string, number] => [`${name}, time`, exponent((run) => run[name].seconds)]),
    ['build, peak memory', exponent((run) => run.build.peakBytes)],
    ...figures.map((name): [string, number] => [
      `build, ${name}`,
      exponent((run) => run.build.figures[name] ?? 1),
    ]),
  ];
}

/** Of the least-squares line through the points. */
function slope(points: readonly (readonly [x: number, y: number])[]): number {
  const mean = (of: (point: readonly [number, number]) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [x, y] = [mean(([one]) => one), mean(([, one]) => one)];
  const covariance = mean(([one, other]) => (one - x) * (other - y));
  return covariance / mean(([one]) => (one - x) ** 2);
}
