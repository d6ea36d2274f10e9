/**
 * The comment on a pull request: texts of entries stay texts. Read by `remark-parse` with `remark-gfm` (CommonMark and
 * GitHub’s additions), which had no part in writing it; what GitHub links beyond Markdown (mentions, numbers of issues:
 * docs.github.com, “Autolinked references and URLs”, from memory) is looked for by its patterns.
 */
import type { Root } from 'mdast';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { expect, test } from 'vitest';
import { changeOf } from '../../src/impact/index.ts';
import { impactMarkdown, impactMarker, mostCommentSigns } from '../../src/views/impact/markdown.ts';
import { impactText } from '../../src/views/impact/text.ts';
import { exampleAnswers } from './edited.ts';

const nasty =
  '</details><!-- x --> <b>@octo/team @octocat</b> #12 GH-12 o/r#12 https://evil.example www.evil.example a@evil.example ' +
  '[x](javascript:1) ![y](//evil.example/p.png) *b* _i_ ~~s~~ `c` | &lt; \\[z] \u202Eabc';
const quoted = JSON.stringify(nasty);
const named = [
  { file: 'plans/two-channel.yaml', good: 'name: Two-channel amplifier', bad: `name: ${quoted}` },
  { file: 'families/moorlight.md', good: 'name: Moorlight', bad: `name: ${quoted}` },
  {
    file: 'tables/behind-an-amplifier.yaml',
    good: 'question: Can I put an amplifier behind this profile as it is?',
    bad: `question: ${quoted}`,
  },
];
const flips = [
  { file: 'plans/two-channel.yaml', good: 'leastVolts: 1,', bad: 'leastVolts: 4,' },
  { file: 'tables/behind-an-amplifier.yaml', good: '"< 1"', bad: '"< 4"' },
];
const change = changeOf(await exampleAnswers(named), await exampleAnswers([...named, ...flips]));
const place = { file: 'plans/`x`@octocat.yaml', line: 1, column: 1, endLine: 1, endColumn: 2 };
const finding = { rule: 'x', severity: 'warning', place, message: nasty, help: nasty, related: [] } as const;
const input = {
  change,
  since: { revision: `1.${nasty}`, commit: 'c'.repeat(40) },
  findings: [finding],
  setAside: 0,
  folder: 'content',
};

interface Node {
  readonly type: string;
  readonly value?: string;
  readonly children?: readonly Node[];
}
function nodesOf(node: Node): Node[] {
  return [node, ...(node.children ?? []).flatMap(nodesOf)];
}
const parsed = (text: string): Node[] =>
  nodesOf(unified().use(remarkParse).use(remarkGfm).parse(text) as Root as Node);

test('nothing in an entry becomes markup, a link, or a mention', () => {
  const text = impactMarkdown(input);
  const nodes = parsed(text);
  const types = new Set(nodes.map(({ type }) => type));
  expect([...types].sort()).toEqual(
    ['root', 'html', 'heading', 'text', 'paragraph', 'list', 'listItem', 'inlineCode'].sort(),
  );
  const html = nodes.filter(({ type }) => type === 'html').map(({ value }) => value);
  expect(html).toEqual([impactMarker, '<sub>', '</sub>']);
  const shown = nodes.flatMap(({ type, value }) => (type === 'text' ? [value ?? ''] : [])).join('\n');
  expect(shown).not.toMatch(/(^|\W)@[a-z0-9]/i);
  expect(shown).not.toMatch(/#\d|\bGH-\d|:\/\/|\bwww\./i);
  expect(shown).not.toContain('\u202E');
  // All of it is still there to read.
  const plain = (one: string) => one.replaceAll('\u2060', '').replaceAll('\u202E', '\uFFFD');
  expect(plain(shown)).toContain(plain(nasty));
});

test('too long for a comment: cut between items, what is left out is counted, and the marker is its first line', () => {
  const findings = Array.from({ length: 3000 }, (_, at) => ({
    ...finding,
    place: { ...place, line: at + 1 },
  }));
  const text = impactMarkdown({ ...input, findings });
  expect(text.length).toBeLessThanOrEqual(mostCommentSigns);
  expect(text.length).toBeGreaterThan(mostCommentSigns - 2000);
  expect(text.startsWith(`${impactMarker}\n`)).toBe(true);
  const leftOut = Number(/(\d+) more left out/.exec(text)?.[1]);
  const whole = impactMarkdown({ ...input, findings }, Number.POSITIVE_INFINITY);
  const items = (of: string) => of.split('\n').filter((line) => line.startsWith('- ')).length;
  expect(items(text) + leftOut).toBe(items(whole));
  expect(whole).not.toContain('left out here');
});

test('as text it moves no cursor, and has what the Markdown has', () => {
  const text = impactText(input);
  expect(text).not.toContain('\u202E');
  expect(text).toContain('Verdicts that flipped\n  KN-2093, ');
  expect(text).toContain(': Keep → Reflash\n');
});
