/** Markdown bodies to safe HTML, with the values their directives stand for. */
import type { Element, ElementContent, Root as HtmlRoot } from 'hast';
import type { Image, ImageReference, Nodes } from 'mdast';
import rehypeSanitize, { defaultSchema } from 'rehype-sanitize';
import rehypeStringify from 'rehype-stringify';
import remarkRehype, { type Options } from 'remark-rehype';
import { unified } from 'unified';
import type { Answers } from '../answers.ts';
import {
  attributeOf,
  type DirectiveNode,
  type Entry,
  isDirective,
  knownName,
  targetOf,
  walk,
} from '../base/index.ts';
import { headingsOf, resolveDirective } from '../prose/index.ts';
import { codeRuns } from './code-runs.ts';
import { addressPath, profilePath, sourcePath } from './paths.ts';
import { valueAnchorOf } from './value-anchors.ts';
import { benchSetting, characteristicLabel, readAt } from './wording.ts';

/**
 * What may come through: the usual tags of Markdown, telephone links, and the marks of codes. Ids are ours
 * alone, because raw HTML never gets this far, so they need no prefix.
 */
const schema = {
  ...defaultSchema,
  tagNames: defaultSchema.tagNames?.filter((name) => name !== 'img'),
  clobber: [],
  attributes: {
    ...defaultSchema.attributes,
    span: [['className', 'code', 'zero'] as [string, ...string[]]],
  },
  protocols: { ...defaultSchema.protocols, href: ['https', 'http', 'mailto', 'tel'] },
};

/** An entry whose body is shown on a page of its own. */
export type ProseEntry = Entry<'guides'> | Entry<'families'>;

/**
 * The body of an entry as HTML; empty where it has none. Raw HTML, scripts and unknown attributes are dropped.
 * Headings are moved down so that the highest is of level `topLevel`, and get ids made of their words.
 * `base` is the site's base path, `/help/`. A directive that stands for nothing is shown as it was written.
 */
export async function proseHtml(
  answers: Answers,
  entry: ProseEntry,
  topLevel: 2 | 3,
  base: string,
): Promise<string> {
  if (!entry.body) return '';
  const headings = new Map(headingsOf(entry.body, entry.kind).map((one) => [one.node, one.id]));
  const down = topLevel - Math.min(...[...headings.keys()].map(({ depth }) => depth));
  const handlers: NonNullable<Options['handlers']> = {
    heading: (state, node) => {
      const level = Math.min(6, Math.max(topLevel, node.depth + down));
      const id = headings.get(node);
      return { type: 'element', tagName: `h${level}`, properties: { id }, children: state.all(node) };
    },
    // Pages ask no other site for anything: the words of an image stand in its place.
    image: (_state, node: Image) => text(node.alt ?? ''),
    imageReference: (_state, node: ImageReference) => text(node.alt ?? ''),
    textDirective: (state, node: DirectiveNode) =>
      directiveHtml(answers, entry, node, () => state.all(node) as ElementContent[]),
    leafDirective: (_state, node: DirectiveNode) => paragraph(asWritten(entry, node)),
    containerDirective: (state, node: DirectiveNode) => {
      const [label] = node.children;
      const isLabel = label?.type === 'paragraph' && label.data?.directiveLabel === true;
      const inside = state.all(node) as ElementContent[];
      const opening = asWritten(entry, node).split('\n', 1)[0] ?? '';
      return [paragraph(opening), ...inside.filter((_, at) => !(isLabel && at === 0))];
    },
  };
  const toHtml = unified()
    .use(remarkRehype, { handlers, footnoteLabelTagName: `h${topLevel}` })
    .use(rehypeSanitize, schema)
    .use(rehypeStringify);
  const tree = (await toHtml.run(entry.body)) as HtmlRoot;
  finish(tree, (target) => pageAddress(target, entry.file, base), false);
  return toHtml.stringify(tree);
}

/** The ids of the sources that the body of an entry cites, in the order of the text. */
export function citedSources(entry: ProseEntry): string[] {
  const ids: string[] = [];
  if (entry.body) {
    walk(entry.body, (node: Nodes) => {
      const id = isDirective(node) && knownName(node) === 'cited' ? attributeOf(node, 'source') : undefined;
      if (id !== undefined) ids.push(id);
    });
  }
  return ids;
}

/** The address a page is to use for a link target written in the body of the entry in `file`. */
export function pageAddress(target: string, file: string, base: string): string {
  const leads = targetOf(target, file);
  if (leads.to === 'page') return `${base}${leads.path}`;
  if (leads.to !== 'entry') return target.startsWith('/') ? `${base}${target.slice(1)}` : target;
  return `${base}${addressPath(leads)}${leads.hash === '' ? '' : `#${leads.hash}`}`;
}

function directiveHtml(
  answers: Answers,
  entry: ProseEntry,
  node: DirectiveNode,
  label: () => ElementContent[],
): ElementContent | ElementContent[] {
  const leads = resolveDirective(answers, node);
  if (leads.to === 'limit') return text(leads.text);
  if (leads.to === 'nothing') return text(asWritten(entry, node));
  if (leads.to === 'cited') {
    return link(`/${sourcePath(leads.source.id)}`, `Source: ${leads.source.data.title}`, label());
  }
  const { profile } = leads;
  if (leads.to === 'code') {
    return link(`/${profilePath(profile.id)}`, undefined, [
      span('code', codeRuns(profile.data.code).map(codeRun)),
    ]);
  }
  const { value, output } = leads;
  const conditions = [readAt(value.conditions), benchSetting(value.conditions)].filter((part) => part !== '');
  return link(
    `/${profilePath(profile.id)}#${valueAnchorOf(output, value)}`,
    `${characteristicLabel(value.name)}, ${profile.data.code}: ${conditions.join('; ')}`,
    [text(leads.text)],
  );
}

function codeRun(run: string): ElementContent {
  return run === '0' ? span('zero', [text(run)]) : text(run);
}

function asWritten({ source }: ProseEntry, { position, name }: DirectiveNode): string {
  return source?.text.slice(position?.start.offset, position?.end.offset) ?? `:${name}`;
}

function text(value: string): ElementContent {
  return { type: 'text', value };
}

function span(className: 'code' | 'zero', children: ElementContent[]): Element {
  return { type: 'element', tagName: 'span', properties: { className: [className] }, children };
}

function paragraph(value: string): Element {
  return { type: 'element', tagName: 'p', properties: {}, children: [text(value)] };
}

function link(href: string, title: string | undefined, children: ElementContent[]): Element {
  return { type: 'element', tagName: 'a', properties: { href, title }, children };
}

/** Turns every link target into its address; a link within a link becomes plain text, as HTML knows none. */
function finish(parent: HtmlRoot | Element, resolve: (target: string) => string, inLink: boolean): void {
  for (const child of parent.children) {
    if (child.type !== 'element') continue;
    const isLink = child.tagName === 'a';
    const { href } = child.properties;
    if (isLink && inLink) {
      child.tagName = 'span';
      child.properties = {};
    } else if (typeof href === 'string') child.properties = { ...child.properties, href: resolve(href) };
    finish(child, resolve, inLink || isLink);
  }
}
