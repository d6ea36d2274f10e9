/**
 * Builds sites as a process of its own, and tells its parent what came of it: two such use two cores. Named by its
 * argument: `demo`, or `editions`.
 */
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { readAnswers } from '../../src/answers.ts';
import { buildSite } from '../../src/publish/build.ts';
import { basePath, editions, firstEditionContent, type SiteInFolder } from './editions.ts';

const [what, work = ''] = process.argv.slice(2);

async function built(content: string, name: string, date?: string): Promise<SiteInFolder> {
  const { answers } = await readAnswers(content);
  const folder = join(work, name);
  const dated = date === undefined ? {} : { date };
  return { ...(await buildSite({ answers, outDir: folder, basePath, log: () => {}, ...dated })), folder };
}

async function builtEditions(): Promise<SiteInFolder[]> {
  const { edited, newWords, removed, dates } = editions;
  const content = await firstEditionContent();
  const entry = (page: string): string => page.replace(/\/$/, '.yaml');
  const first = await built(content.folder, 'editions/first', dates.first);
  const before = 'A dealer update against dull sound';
  await content.edit(entry(edited), before, `${newWords} ${before}`);
  await rm(join(content.folder, entry(removed)));
  const second = await built(content.folder, 'editions/second', dates.second);
  await content.remove();
  return [first, second];
}

process.send?.(what === 'demo' ? [await built('content', 'site')] : await builtEditions(), () =>
  process.disconnect(),
);
