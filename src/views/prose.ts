/** Markdown bodies to safe HTML. */
import type { Root as HtmlRoot } from 'hast';
import type { Root } from 'mdast';
import rehypeSanitize, { defaultSchema } from 'rehype-sanitize';
import rehypeStringify from 'rehype-stringify';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';

const toHtml = unified().use(remarkRehype).use(rehypeSanitize, defaultSchema).use(rehypeStringify);

/**
 * A Markdown body as HTML. Raw HTML, scripts and unknown attributes are dropped. Headings are moved down so
 * that the highest is of level `topLevel`, and get ids made of their words. `resolve` turns each link target
 * into the address the page is to use.
 */
export async function proseHtml(
  body: Root,
  topLevel: 2 | 3,
  resolve: (target: string) => string,
): Promise<string> {
  const tree = (await toHtml.run(body)) as HtmlRoot;
  const taken = new Set<string>();
  const levels = body.children.flatMap((node) => (node.type === 'heading' ? [node.depth] : []));
  const down = topLevel - Math.min(...levels);
  visit(tree, (element) => {
    const level = /^h([1-6])$/.exec(element.tagName)?.[1];
    if (level !== undefined) {
      element.tagName = `h${Math.min(6, Math.max(topLevel, Number(level) + down))}`;
      element.properties = { ...element.properties, id: freeId(slugOf(textOf(element)), taken) };
    }
    const { href } = element.properties;
    if (typeof href === 'string') element.properties = { ...element.properties, href: resolve(href) };
  });
  return toHtml.stringify(tree);
}

type Parent = HtmlRoot | Extract<HtmlRoot['children'][number], { type: 'element' }>;
type Element = Extract<HtmlRoot['children'][number], { type: 'element' }>;

function visit(parent: Parent, see: (element: Element) => void): void {
  for (const child of parent.children) {
    if (child.type !== 'element') continue;
    see(child);
    visit(child, see);
  }
}

function textOf(element: Element): string {
  return element.children
    .map((child) => (child.type === 'text' ? child.value : child.type === 'element' ? textOf(child) : ''))
    .join('');
}

function slugOf(text: string): string {
  const words = text
    .normalize('NFKD')
    .toLowerCase()
    .match(/[a-z0-9]+/g);
  return words?.join('-') ?? 'section';
}

function freeId(wanted: string, taken: Set<string>): string {
  let id = wanted;
  for (let number = 2; taken.has(id); number += 1) id = `${wanted}-${number}`;
  taken.add(id);
  return id;
}
