/** The floor of all that reads content: every file read and parsed with the reader’s libraries, and nothing else. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse as parseCsv } from 'csv-parse/sync';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { parseDocument } from 'yaml';

/** Reads every file and parses it as the reader does, and nothing else; gives the number of readings. */
export async function parseOnly(folder: string): Promise<number> {
  const markdown = unified()
    .use(remarkParse)
    .use(remarkFrontmatter, ['yaml'])
    .use(remarkGfm)
    .use(remarkDirective);
  let readings = 0;
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const text = await readFile(join(entry.parentPath, entry.name), 'utf8');
    if (entry.name.endsWith('.csv')) readings += parseCsv(text).length - 1;
    else if (entry.name.endsWith('.yaml')) parseDocument(text, { prettyErrors: false }).toJS();
    else {
      markdown.parse(text);
      parseDocument(text.split('---')[1] ?? '', { prettyErrors: false }).toJS();
    }
  }
  return readings;
}
