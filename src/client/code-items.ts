/** Codes as items of a list: those that fit what was typed, and those looked up before. */
import type { CodeCandidate } from '../codes/index.ts';
import { profilePath } from '../views/paths.ts';
import type { Lookup } from './code-index.ts';
import { codeText } from './code-text.ts';
import type { RecentCode } from './recent-codes.ts';

/** An option of the code field; its answer comes in when it has been loaded. */
export function codeItem(
  { familyNames, sentence }: Lookup,
  { code, family, profile, note, likeness }: CodeCandidate,
  at: number,
  base: string,
): HTMLLIElement {
  const item = document.createElement('li');
  const path = profilePath(profile);
  const name = familyNames.get(family) ?? '';
  item.id = `code-result-${at + 1}`;
  item.setAttribute('role', 'option');
  item.setAttribute('data-href', `${base}${path}`);
  Object.assign(item.dataset, { code, path, family: name });
  const head = document.createElement('div');
  head.className = 'result-head';
  head.append(codeText(code), textElement('div', 'result-family', name));
  item.append(head);
  if (likeness !== 'as-typed') item.append(textElement('div', 'result-note', capital(note)));
  const answer = textElement('div', 'result-sentence', '');
  item.append(answer);
  void sentence(profile).then((text) => {
    answer.textContent = text;
  });
  return item;
}

/** A link to a code looked up before. */
export function recentItem({ code, family, path }: RecentCode, base: string): HTMLLIElement {
  const item = document.createElement('li');
  const link = document.createElement('a');
  link.className = 'row-link';
  link.href = `${base}${path}`;
  link.append(codeText(code), textElement('span', 'aside', family));
  item.append(link);
  return item;
}

function textElement(name: string, className: string, text: string): HTMLElement {
  const element = document.createElement(name);
  element.className = className;
  element.textContent = text;
  return element;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
