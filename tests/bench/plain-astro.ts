/** The floor of a build: Astro alone, writing as many pages with the same markup, which it is given as text. */
import { mkdir, mkdtemp, readdir, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectRoot } from '../../src/publish/project.ts';

const config = `import { defineConfig } from 'astro/config';
export default defineConfig({ output: 'static', trailingSlash: 'always', devToolbar: { enabled: false } });
`;

const page = `---
import { readFileSync } from 'node:fs';
export async function getStaticPaths() {
  return JSON.parse(readFileSync(process.env.PLAIN_PAGES, 'utf8')).map(({ path, file }) => ({ params: { path: path || undefined }, props: { file } }));
}
const html = readFileSync(Astro.props.file, 'utf8');
const [, head = ''] = /<head[^>]*>([\\s\\S]*?)<\\/head>/.exec(html) ?? [];
const [, body = ''] = /<body[^>]*>([\\s\\S]*)<\\/body>/.exec(html) ?? [];
---
<html lang="en">
  <head set:html={head} />
  <body><Fragment set:html={body} /></body>
</html>
`;

/** Builds the pages of a finished site once more from their text, which are left in the folder for temporary files; gives their number. */
export async function plainAstro(site: string): Promise<number> {
  const folder = await mkdtemp(join(tmpdir(), 'readback-plain-'));
  await mkdir(join(folder, 'src/pages'), { recursive: true });
  await symlink(join(projectRoot, 'node_modules'), join(folder, 'node_modules'));
  await writeFile(join(folder, 'astro.config.mjs'), config);
  await writeFile(join(folder, 'package.json'), '{ "type": "module" }');
  await writeFile(join(folder, 'src/pages/[...path].astro'), page);
  const pages = (await readdir(site, { recursive: true }))
    .filter((file) => file.endsWith('index.html'))
    .map((file) => ({ path: file.replace(/\/?index\.html$/, ''), file: join(site, file) }));
  const list = join(folder, 'pages.json');
  await writeFile(list, JSON.stringify(pages));
  process.env.PLAIN_PAGES = list;
  process.chdir(folder);
  const { build } = await import('astro');
  await build({ root: folder, outDir: join(folder, 'dist'), logLevel: 'error' });
  return pages.length;
}
