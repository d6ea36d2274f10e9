/**
 * The code field: results as one types, after the combobox pattern of the WAI-ARIA Authoring Practices
 * (editable, list autocomplete, focus stays in the field). Without it the form leads to the list of codes.
 */
import { buildCodeIndex, type CodeCandidate, type CodeIndex, findCode } from '../codes/index.ts';
import type { CodeList } from '../views/code-list.ts';
import { codeText } from './code-text.ts';
import { loadPagefind, searchPages } from './page-search.ts';
import { looksLikeWords } from './query.ts';
import { verdictWords } from './verdict-words.ts';

interface Lookup {
  readonly list: CodeList;
  readonly index: CodeIndex;
}

const pauseMs = 200;
const noSignal = 'The list of codes did not come through. Check the signal and type again.';

function start(root: HTMLElement): void {
  const input = find(root, '#code-field', HTMLInputElement);
  const results = find(root, '#code-results', HTMLUListElement);
  const verdict = find(root, '#code-verdict', HTMLParagraphElement);
  const pages = find(root, '#page-results', HTMLElement);
  const pageList = find(pages, 'ul', HTMLUListElement);
  const pagesTitle = find(pages, 'h2', HTMLHeadingElement);
  const form = find(root, 'form', HTMLFormElement);
  const { base = '/', codes: listAddress = '' } = root.dataset;

  input.setAttribute('role', 'combobox');
  input.setAttribute('aria-autocomplete', 'list');
  input.setAttribute('aria-controls', results.id);
  input.setAttribute('aria-expanded', 'false');
  results.setAttribute('role', 'listbox');

  let active = -1;
  let asked = 0;
  let pageTimer: number | undefined;

  const options = (): HTMLLIElement[] => [...results.querySelectorAll('li')];

  const activate = (index: number): void => {
    active = index;
    options().forEach((option, at) => {
      option.setAttribute('aria-selected', String(at === index));
      if (at === index) option.scrollIntoView({ block: 'nearest' });
    });
    const option = options()[index];
    if (option) input.setAttribute('aria-activedescendant', option.id);
    else input.removeAttribute('aria-activedescendant');
  };

  const show = (items: HTMLLIElement[], words: string): void => {
    results.replaceChildren(...items);
    results.hidden = items.length === 0;
    input.setAttribute('aria-expanded', String(items.length > 0));
    if (verdict.textContent !== words) verdict.textContent = words;
    activate(-1);
  };

  const showPages = (items: HTMLLIElement[]): void => {
    pageList.replaceChildren(...items);
    pages.hidden = items.length === 0;
  };

  const searchWords = (typed: string, mine: number, wordsOnly: boolean): void => {
    pageTimer = window.setTimeout(async () => {
      const items = await searchPages(base, typed).catch(() => undefined);
      if (mine !== asked) return;
      showPages(items ?? []);
      pagesTitle.hidden = wordsOnly;
      if (wordsOnly) verdict.textContent = pageVerdict(typed, items?.length);
    }, pauseMs);
  };

  const update = async (): Promise<void> => {
    const typed = input.value.trim();
    asked += 1;
    const mine = asked;
    window.clearTimeout(pageTimer);
    keepInAddress(typed);
    if (typed === '') {
      show([], '');
      showPages([]);
      return;
    }
    if (looksLikeWords(typed)) {
      show([], '');
      searchWords(typed, mine, true);
      return;
    }
    const lookup = await loadLookup(listAddress).catch(() => undefined);
    if (mine !== asked) return;
    if (!lookup) {
      show([], noSignal);
      return;
    }
    const search = findCode(lookup.index, typed, { limit: 6 });
    show(
      search.candidates.flatMap((candidate, at) => resultItem(lookup.list, candidate, at, base) ?? []),
      verdictWords(search),
    );
    if (search.verdict === 'unknown') searchWords(typed, mine, false);
    else showPages([]);
  };

  const open = (option: HTMLLIElement | undefined, inNewTab = false): void => {
    const address = option?.getAttribute('data-href');
    if (!address) return;
    if (inNewTab) window.open(address, '_blank', 'noopener');
    else window.location.assign(address);
  };

  input.addEventListener('input', () => void update());
  input.addEventListener(
    'focus',
    () => {
      // One after the other: on a bad signal the codes are wanted first.
      loadLookup(listAddress)
        .then(() => loadPagefind(base))
        .catch(() => undefined);
    },
    { once: true },
  );
  input.addEventListener('keydown', (event) => {
    const count = options().length;
    if (event.key === 'Escape') {
      if (active >= 0) activate(-1);
      else {
        input.value = '';
        void update();
      }
      event.preventDefault();
    } else if (count > 0 && (event.key === 'ArrowDown' || event.key === 'ArrowUp')) {
      const step = event.key === 'ArrowDown' ? 1 : -1;
      // One past either end is the field itself.
      activate(((active + 1 + step + count + 1) % (count + 1)) - 1);
      event.preventDefault();
    }
  });
  results.addEventListener('click', (event) => {
    if (!(event.target instanceof Element)) return;
    open(event.target.closest('li') ?? undefined, event.ctrlKey || event.metaKey);
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const chosen = options()[active] ?? (options().length === 1 ? options()[0] : undefined);
    if (chosen) open(chosen);
    else void update();
  });

  const given = new URLSearchParams(window.location.search).get('code');
  if (given) input.value = given;
  if (input.value.trim() !== '') void update();
}

/** What came of a search for words; `count` is undefined where the search could not be loaded. */
function pageVerdict(typed: string, count: number | undefined): string {
  if (count === undefined)
    return 'Searching for words needs the network, and it did not come through. Codes work without.';
  if (count === 0) return `No page speaks of “${typed}”. Try fewer or other words.`;
  return count === 1 ? `One page speaks of “${typed}”.` : `Pages that speak of “${typed}”, best first.`;
}

let lookupLoading: Promise<Lookup> | undefined;

/** Fetches the list of codes once; a failure is forgotten, so that the next key tries again. */
function loadLookup(address: string): Promise<Lookup> {
  lookupLoading ??= fetch(address)
    .then((response) => {
      if (!response.ok) throw new Error(`${address}: ${response.status}`);
      return response.json() as Promise<CodeList>;
    })
    .then((list) => ({
      list,
      index: buildCodeIndex(
        list.codes.map(([code, family, path, , otherSpellings]) => ({
          code,
          family: String(family),
          profile: path,
          otherSpellings,
        })),
      ),
    }));
  lookupLoading.catch(() => {
    lookupLoading = undefined;
  });
  return lookupLoading;
}

function resultItem(
  list: CodeList,
  { code, profile, note }: CodeCandidate,
  at: number,
  base: string,
): HTMLLIElement | undefined {
  const row = list.codes.find(([, , path]) => path === profile);
  if (!row) return undefined;
  const [, family, path, sentence] = row;
  const item = document.createElement('li');
  item.id = `code-result-${at + 1}`;
  item.setAttribute('role', 'option');
  item.setAttribute('data-href', `${base}${path}`);
  const head = document.createElement('div');
  head.className = 'result-head';
  head.append(codeText(code), textElement('div', 'result-family', list.families[family] ?? ''));
  item.append(head);
  if (!note.startsWith('exactly as typed')) item.append(textElement('div', 'result-note', capital(note)));
  item.append(textElement('div', 'result-sentence', sentence));
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

/** Keeps `?code=` in the address, so that it can be sent to someone and survives going back. */
function keepInAddress(typed: string): void {
  const address = new URL(window.location.href);
  if (typed === '') address.searchParams.delete('code');
  else address.searchParams.set('code', typed);
  if (address.href !== window.location.href) window.history.replaceState(null, '', address);
}

function find<Kind extends HTMLElement>(within: ParentNode, selector: string, kind: new () => Kind): Kind {
  const element = within.querySelector(selector);
  if (!(element instanceof kind)) throw new Error(`The page has no ${selector}`);
  return element;
}

const root = document.querySelector<HTMLElement>('.lookup');
if (root) start(root);
