/** The headings of a Markdown body and the ids they have on its page. */
import type { Heading as HeadingNode, Root } from 'mdast';
import { plainText, walk } from '../base/index.ts';

export interface Heading {
  readonly node: HeadingNode;
  /** Without its marks; the label of a directive stands for it. */
  readonly text: string;
  readonly id: string;
}

/** The ids that the pages of guides and units give their own sections; no heading of a body takes one. */
export const sectionIds: Readonly<Record<'guides' | 'families', readonly string[]>> = {
  guides: ['cautions', 'sources'],
  families: ['identify', 'read', 'profiles', 'cautions', 'more', 'sources'],
};

/** Every heading of a body in order, each with an id made of its words that no other has. */
export function headingsOf(body: Root, kind: 'guides' | 'families'): Heading[] {
  const taken = new Set(sectionIds[kind]);
  const headings: Heading[] = [];
  walk(body, (node) => {
    if (node.type !== 'heading') return;
    const text = plainText(node).trim();
    headings.push({ node, text, id: freeId(slugOf(text), taken) });
  });
  return headings;
}

/** The words of a heading as they stand in its id: “set-the-gain”. */
export function slugOf(text: string): string {
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
