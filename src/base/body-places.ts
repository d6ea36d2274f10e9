/** Where the parts of a Markdown body stand in its file. */
import type { Nodes } from 'mdast';
import type { DirectiveNode } from './directives.ts';
import type { Place } from './finding.ts';
import type { TextFile } from './text-file.ts';

/** The place of a whole node; the top of the file where the parser kept none. */
export function placeOfNode(source: TextFile, node: Nodes): Place {
  return source.place(node.position?.start.offset ?? 0, node.position?.end.offset ?? 0);
}

/**
 * The place of a part of a directive: a word of its label, or an attribute with its value. The whole
 * directive where the part is not written that way (an escape, say).
 */
export function placeInDirective(
  source: TextFile,
  node: DirectiveNode,
  part: { readonly word: string } | { readonly attribute: string },
): Place {
  const start = node.position?.start.offset ?? 0;
  const end = node.position?.end.offset ?? 0;
  const text = source.text.slice(start, end);
  const [first] = node.children;
  const last = node.children.at(-1);
  if ('word' in part) {
    const from = (first?.position?.start.offset ?? start) - start;
    const at = text.indexOf(part.word, from);
    return at === -1 ? placeOfNode(source, node) : source.place(start + at, start + at + part.word.length);
  }
  const labelEnd = (last?.position?.end.offset ?? start) - start;
  const opened = text.indexOf('{', labelEnd) + 1;
  const pattern = new RegExp(
    `(?<=[\\s{])${escaped(part.attribute)}(?:\\s*=\\s*(?:"[^"]*"|'[^']*'|[^\\s}]*))?`,
  );
  const match = opened === 0 ? null : pattern.exec(text.slice(opened - 1));
  if (!match) return placeOfNode(source, node);
  const at = start + opened - 1 + match.index;
  return source.place(at, at + match[0].length);
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** The place of the address of a link or an image in it; the whole node where it is written otherwise. */
export function placeOfAddress(source: TextFile, node: Nodes & { readonly url: string }): Place {
  const start = node.position?.start.offset ?? 0;
  const end = node.position?.end.offset ?? 0;
  const text = source.text.slice(start, end);
  const children = 'children' in node ? node.children : [];
  const labelEnd = (children.at(-1)?.position?.end.offset ?? start) - start;
  const at = node.url === '' ? -1 : text.indexOf(node.url, text.startsWith('[') ? labelEnd : 0);
  return at === -1 ? placeOfNode(source, node) : source.place(start + at, start + at + node.url.length);
}
