/** The lists of profiles on a table’s page, built as components/TableGroups.astro and ProfilesByUnit.astro build them. */
import {
  type AnswerGroup,
  byUnit,
  groupWords,
  type ListingData,
  moreWords,
  partWords,
} from '../views/table-listing.ts';
import { codeText } from './code-text.ts';

/** Profiles under their units. @param root the address that the paths of profiles follow. */
export function profilesByUnit(
  data: ListingData,
  profiles: readonly { readonly index: number; readonly note: string }[],
  root: string,
): HTMLElement[] {
  const { lists, more } = byUnit(data, profiles);
  const list = element('dl', 'by-unit');
  for (const { unit, profiles: own } of lists) {
    const codes = element('ul', 'plain inline-links');
    for (const { code, path, note } of own) {
      const link = document.createElement('a');
      link.href = `${root}${path}`;
      link.append(codeText(code));
      const item = document.createElement('li');
      item.append(link, ...(note ? [' ', element('span', 'fine', note)] : []));
      codes.append(item);
    }
    const [term, held, pair] = [element('dt', '', unit), element('dd', ''), element('div', '')];
    held.append(codes);
    pair.append(term, held);
    list.append(pair);
  }
  return [list, ...(more > 0 ? [element('p', 'fine', moreWords(more))] : [])];
}

/** One answer with its profiles; folded away unless `open`. */
export function answerGroup(data: ListingData, group: AnswerGroup, root: string, open: boolean): HTMLElement {
  const details = document.createElement('details');
  details.className = 'answer-group';
  details.dataset.answer = group.answer;
  details.open = open;
  const summary = document.createElement('summary');
  const line = element('span', '');
  line.append(
    element('span', 'group-answer', group.answer),
    ' ',
    element('span', 'group-count', groupWords(group)),
  );
  summary.append(line);
  const parts = element('div', 'group-parts');
  for (const part of group.parts) {
    const profiles = part.profiles.map(({ index, near }) => ({ index, note: near }));
    parts.append(element('p', 'part-words', partWords(part)), ...profilesByUnit(data, profiles, root));
  }
  details.append(summary, parts);
  return details;
}

function element(name: string, className: string, text = ''): HTMLElement {
  const made = document.createElement(name);
  if (className) made.className = className;
  made.textContent = text;
  return made;
}
