/** The running text of a Markdown body, with the place each of its characters has in the file. */
import type { Nodes, Root, TableCell } from 'mdast';
import { isDirective, plainText, type TextFile, walk } from '../base/index.ts';

/** The text of one paragraph, heading or table cell. */
export interface Flow {
  readonly node: Nodes;
  /** The words without their marks; what is code or a directive is one U+FFFC. */
  readonly text: string;
  /** For each UTF-16 unit of the text, where it begins in the file. */
  readonly offsets: readonly number[];
  /** The heading of the column a table cell stands under. */
  readonly columnHeading?: string;
}

/** What stands for a part that is not prose. */
const notProse = '\ufffc';

/** The flows of a body, in the order of the file. */
export function flowsOf(body: Root, source: TextFile): Flow[] {
  const flows: Flow[] = [];
  const headings = columnHeadings(body);
  walk(body, (node) => {
    if (node.type !== 'paragraph' && node.type !== 'heading' && node.type !== 'tableCell') return;
    const columnHeading = node.type === 'tableCell' ? headings.get(node) : undefined;
    flows.push({ node, ...flowOf(node, source), ...(columnHeading !== undefined && { columnHeading }) });
  });
  return flows;
}

function columnHeadings(body: Root): Map<TableCell, string> {
  const headings = new Map<TableCell, string>();
  walk(body, (node) => {
    if (node.type !== 'table') return;
    const [head, ...rows] = node.children;
    const names = (head?.children ?? []).map(plainText);
    for (const row of rows) {
      for (const [at, cell] of row.children.entries()) headings.set(cell, names[at] ?? '');
    }
  });
  return headings;
}

function flowOf(block: Nodes, source: TextFile): { text: string; offsets: number[] } {
  let text = '';
  const offsets: number[] = [];
  let cursor = block.position?.start.offset ?? 0;
  const end = block.position?.end.offset ?? source.text.length;
  const add = (piece: string, places: readonly number[]): void => {
    text += piece;
    for (const place of places) offsets.push(place);
  };
  const see = (node: Nodes): void => {
    const start = node.position?.start.offset ?? cursor;
    const stop = node.position?.end.offset ?? end;
    if (node.type === 'text') {
      add(node.value, alignedOffsets(node.value, source.text.slice(start, stop), start));
      cursor = node.position ? stop : (offsets.at(-1) ?? cursor) + 1;
    } else if (node.type === 'break') {
      add('\n', [start]);
    } else if (node.type === 'image' || node.type === 'imageReference') {
      const alt = node.alt ?? '';
      const from = start + '!['.length;
      add(notProse, [start]);
      add(alt, alignedOffsets(alt, source.text.slice(from, stop), from));
      add(notProse, [start]);
    } else if (node.type === 'inlineCode' || isDirective(node) || isBareAddress(node)) {
      add(notProse, [start]);
    } else if ('children' in node) {
      node.children.forEach(see);
    }
  };
  if ('children' in block) block.children.forEach(see);
  return { text, offsets };
}

/** A link whose words are its address. */
function isBareAddress(node: Nodes): boolean {
  return node.type === 'link' && node.url.endsWith(plainText(node));
}

const longestGap = 200;

/**
 * Where each UTF-16 unit of a value begins in the text it was read from. The text may hold escapes, character
 * references, and what the reader leaves out: indentation, quote marks, ends of folded lines.
 */
export function alignedOffsets(value: string, raw: string, start: number): number[] {
  const offsets: number[] = [];
  let at = 0;
  for (let index = 0; index < value.length; index += 1) {
    const unit = value.charAt(index);
    const reference = raw.charAt(at) === '&' ? /^&#?\w{1,31};/.exec(raw.slice(at, at + 34))?.[0] : undefined;
    if (reference !== undefined && (unit !== '&' || /^&(?:amp|AMP|#38|#x26);$/.test(reference))) {
      offsets.push(start + at);
      at += reference.length;
      continue;
    }
    if (raw.charAt(at) === '\\' && raw.charAt(at + 1) === unit) {
      offsets.push(start + at);
      at += 2;
      continue;
    }
    if (raw.charAt(at) !== unit) {
      const gap = raw.slice(at, at + longestGap).indexOf(unit);
      if (gap === -1) {
        offsets.push(start + Math.min(at, raw.length));
        continue;
      }
      at += gap;
    }
    offsets.push(start + at);
    at += 1;
  }
  return offsets;
}
