/** Reads one Markdown file: YAML front matter, then the body as a syntax tree with positions. */
import type { Nodes, Root } from 'mdast';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { withoutStrayColons } from './directives.ts';
import type { TextFile } from './text-file.ts';
import { readYaml, type YamlReading } from './yaml.ts';

export interface MarkdownReading extends YamlReading {
  /** The body, without the front matter; positions count from the top of the file. */
  readonly body: Root;
}

const parser = unified()
  .use(remarkParse)
  .use(remarkFrontmatter, ['yaml'])
  .use(remarkGfm)
  .use(remarkDirective);

/** Nothing that a person writes goes deeper; what does would overrun the stack of those who walk the tree. */
const mostLevels = 100;
const rowOfQuotes = new RegExp(`^(?:[ \\t]{0,3}>){${mostLevels + 1},}`, 'm');

function refusedNesting(source: TextFile, start: number, end: number): MarkdownReading {
  return {
    data: undefined,
    positions: readYaml(source, '', 0).positions,
    findings: [
      {
        rule: 'syntax',
        severity: 'error',
        place: source.place(start, end),
        message: `Quotes, lists and emphasis are nested more than ${mostLevels} deep here.`,
        help: 'Look for a row of > or * signs that was not meant, and take it out.',
        related: [],
      },
    ],
    body: { type: 'root', children: [] },
  };
}

/** A part of the tree that lies deeper than the most; undefined where none does. */
function tooDeep(tree: Root): Nodes | undefined {
  let level: Nodes[] = [tree];
  for (let depth = 0; depth < mostLevels; depth += 1) {
    level = level.flatMap((node): Nodes[] => ('children' in node ? node.children : []));
  }
  return level[0];
}

/** Parses a Markdown entry. Without front matter, data is undefined and a finding says so. */
export function readMarkdown(source: TextFile): MarkdownReading {
  // Looked for before the parser, which takes long over these and at last fails.
  const row = rowOfQuotes.exec(source.text);
  if (row) return refusedNesting(source, row.index, row.index + row[0].length);
  const tree = parser.parse(source.text);
  const deep = tooDeep(tree)?.position;
  if (deep) return refusedNesting(source, deep.start.offset ?? 0, deep.end.offset ?? 0);
  withoutStrayColons(tree);
  const [first, ...rest] = tree.children;
  if (first?.type !== 'yaml') {
    return {
      data: undefined,
      positions: readYaml(source, '', 0).positions,
      findings: [
        {
          rule: 'syntax',
          severity: 'error',
          place: source.place(0),
          ...noFrontMatter(source.text),
          related: [],
        },
      ],
      body: tree,
    };
  }
  const blockStart = first.position?.start.offset ?? 0;
  const blockEnd = first.position?.end.offset ?? 0;
  const firstLineEnd = source.text.indexOf('\n', blockStart) + 1;
  const text = source.text.slice(firstLineEnd, blockEnd).replace(/---[ \t]*$/, '');
  return { ...readYaml(source, text, firstLineEnd), body: { ...tree, children: rest } };
}

/** Why a Markdown file has no front matter, in the order of how often it happens. */
function noFrontMatter(text: string): { message: string; help: string } {
  if (/^---[ \t]*\r?\n/.test(text)) {
    return {
      message: 'The front matter begins here and does not end.',
      help: 'Add a line --- below the last “name: value” line.',
    };
  }
  if (/^\s+---[ \t]*\r?\n/.test(text)) {
    return {
      message: 'The front matter does not begin on the first line.',
      help: 'Take out what stands before the first line ---, empty lines and spaces too.',
    };
  }
  return {
    message: 'This entry has no front matter.',
    help: 'Begin the file with a line ---, then the “name: value” lines, then another line ---.',
  };
}
