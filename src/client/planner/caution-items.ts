/** Cautions as items of a list: the page holds the words of each. */
import type { ArithmeticLine } from '../../decide/plan/line.ts';
import { find } from '../find.ts';
import { make } from '../make.ts';

/** The cautions with these ids, each once, in the order given. */
export function cautionItems(ids: ArithmeticLine['cautions']): HTMLLIElement[] {
  return [...new Set(ids)].map((id) => make('li', {}, cautionWords(id)));
}

/** What is printed beneath every set of cautions. */
export function deferralWords(): Node {
  return cautionWords('deferral');
}

/** @throws Error where the page has no words for it: better no arithmetic than one without its caution. */
function cautionWords(id: ArithmeticLine['cautions'][number] | 'deferral'): Node {
  return find(document, `template[data-caution="${id}"]`, HTMLTemplateElement).content.cloneNode(true);
}
