/** Texts with marked parts, such as links: “See <link>all guides</link>.” */
import { shownPart } from './fill.ts';

export interface Tagged {
  /** The mark around this part, if any. */
  readonly tag?: string;
  readonly text: string;
}

const tagged = /<([a-z]+)>(.*?)<\/\1>/gs;

/** A text in parts, in their order; marks do not nest. */
export function taggedParts(text: string): Tagged[] {
  const parts: Tagged[] = [];
  let end = 0;
  for (const found of text.matchAll(tagged)) {
    const [whole, tag = '', inner = ''] = found;
    if (found.index > end) parts.push({ text: shownPart(text.slice(end, found.index)) });
    parts.push({ tag, text: shownPart(inner) });
    end = found.index + whole.length;
  }
  if (end < text.length) parts.push({ text: shownPart(text.slice(end)) });
  return parts;
}

/** The marks of a text, in sorted order, each as often as it is there. */
export function tagNames(text: string): string[] {
  return [...text.matchAll(tagged)].map(([, tag = '']) => tag).sort();
}
