/** The entries that a Markdown body names: in its links and in its directives. */
import type { Nodes } from 'mdast';
import type { Entry } from './base.ts';
import { placeInDirective, placeOfAddress } from './body-places.ts';
import { attributeOf, isDirective, knownName, labelWords, walk } from './directives.ts';
import type { Link } from './link.ts';
import { targetOf } from './targets.ts';

/** Every mention of an entry in the body, in the order of the text; each with the place it stands at. */
export function bodyLinks({ body, source, file }: Entry): Link[] {
  if (!body || !source) return [];
  const links: Link[] = [];
  const see = (node: Nodes): void => {
    if (node.type === 'link' || node.type === 'definition') {
      const target = targetOf(node.url, file);
      if (target.to !== 'entry') return;
      links.push({ kind: target.kind, id: target.id, path: [], place: placeOfAddress(source, node) });
    } else if (isDirective(node)) {
      const name = knownName(node);
      const cited = attributeOf(node, 'source');
      const [profile] = labelWords(node);
      if ((name === 'value' || name === 'code') && profile !== undefined) {
        const place = placeInDirective(source, node, { word: profile });
        links.push({ kind: 'profiles', id: profile, path: [], place });
      }
      if (name === 'cited' && cited) {
        const place = placeInDirective(source, node, { attribute: 'source' });
        links.push({ kind: 'sources', id: cited, path: [], place });
      }
    }
  };
  walk(body, see);
  return links;
}
