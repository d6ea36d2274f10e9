/** The code field of the start page: results as one types. Without it the form leads to the list of codes. */
import { phrase } from '../words/index.ts';
import type { Lookup, LookupAddresses } from './code-index.ts';
import { codeItem, recentItem } from './code-items.ts';
import { find } from './find.ts';
import { noSignal } from './no-signal.ts';
import { pageFilters } from './page-filters.ts';
import { loadPagefind, searchPages } from './page-search.ts';
import { looksLikeWords } from './query.ts';
import { forgetRecentCodes, keepRecentCode, recentCodes } from './recent-codes.ts';
import { resultList } from './result-list.ts';

const pauseMs = 200;

/** What answers codes comes with their list, once it is needed: a page that is only read is spared both. */
async function loadAnswers(addresses: LookupAddresses) {
  const { loadLookup, searchFor, verdictWords } = await import('./code-search.ts');
  return { lookup: await loadLookup(addresses), searchFor, verdictWords };
}

function start(root: HTMLElement): void {
  const input = find(root, '#code-field', HTMLInputElement);
  const results = find(root, '#code-results', HTMLUListElement);
  const verdict = find(root, '#code-verdict', HTMLParagraphElement);
  const pages = find(root, '#page-results', HTMLElement);
  const pageList = find(pages, 'ul', HTMLUListElement);
  const pagesTitle = find(pages, 'h2', HTMLHeadingElement);
  const recent = find(root, '#recent-codes', HTMLElement);
  const unitLine = find(root, '#code-unit', HTMLParagraphElement);
  const form = find(root, 'form', HTMLFormElement);
  const { base = '/', codes, sentences } = root.dataset;
  const addresses = { base, codes, sentences };

  let asked = 0;
  let pageTimer: number | undefined;
  let unit = new URLSearchParams(window.location.search).get('unit') ?? undefined;
  const filters = pageFilters(find(pages, '.filters', HTMLElement), () => {
    asked += 1;
    window.clearTimeout(pageTimer);
    searchWords(input.value.trim(), asked, pagesTitle.hidden !== false);
  });

  const show = (items: HTMLLIElement[], words: string): void => {
    list.show(items);
    if (verdict.textContent !== words) verdict.textContent = words;
  };

  const hidePages = (): void => {
    pageList.replaceChildren();
    pages.hidden = true;
    filters.clear();
  };

  const searchWords = (typed: string, mine: number, wordsOnly: boolean): void => {
    pageTimer = window.setTimeout(async () => {
      const chosen = filters.chosen();
      const found = await searchPages(base, typed, chosen).catch(() => undefined);
      if (mine !== asked) return;
      const items = found?.items ?? [];
      pageList.replaceChildren(...items);
      pages.hidden = items.length === 0 && Object.keys(chosen).length === 0;
      if (items.length > 0) filters.offer(found?.offered ?? {});
      pagesTitle.hidden = wordsOnly;
      if (wordsOnly) verdict.textContent = pageVerdict(typed, found?.items.length);
    }, pauseMs);
  };

  const update = async (): Promise<void> => {
    const typed = input.value.trim();
    asked += 1;
    const mine = asked;
    window.clearTimeout(pageTimer);
    keepInAddress('code', typed);
    keepInAddress('unit', unit ?? '');
    recent.hidden = typed !== '' || recent.querySelector('li') === null;
    if (typed === '') {
      show([], '');
      hidePages();
      return;
    }
    if (looksLikeWords(typed)) {
      show([], '');
      searchWords(typed, mine, true);
      return;
    }
    const answers = await loadAnswers(addresses).catch(() => undefined);
    if (mine !== asked) return;
    if (answers) showUnit(answers.lookup);
    const search = await answers
      ?.searchFor(answers.lookup, typed, unit, () => mine === asked)
      .catch(() => undefined);
    if (mine !== asked) return;
    if (!answers || !search) {
      show([], noSignal());
      return;
    }
    show(
      [...search.candidates, ...search.elsewhere].map((candidate, at) =>
        codeItem(answers.lookup, candidate, at, base),
      ),
      answers.verdictWords(search),
    );
    if (search.verdict === 'unknown') searchWords(typed, mine, false);
    else hidePages();
  };

  const showRecent = (): void => {
    const items = recentCodes().map((one) => recentItem(one, base));
    find(recent, 'ul', HTMLUListElement).replaceChildren(...items);
    recent.hidden = items.length === 0 || input.value.trim() !== '';
  };

  /** Says which unit alone is searched, where the address names one. */
  const showUnit = ({ familyNames }: Lookup): void => {
    const name = familyNames.get(unit ?? '');
    if (name === undefined) unit = undefined;
    unitLine.hidden = name === undefined;
    if (name !== undefined)
      find(unitLine, 'span', HTMLSpanElement).textContent = phrase('Codes of {name} only.', { name });
  };

  const open = (option: HTMLLIElement, inNewTab: boolean): void => {
    const address = option.getAttribute('data-href');
    if (!address) return;
    const { code = '', family = '', path = '' } = option.dataset;
    if (path) keepRecentCode({ code, family, path });
    if (inNewTab) window.open(address, '_blank', 'noopener');
    else window.location.assign(address);
  };

  const list = resultList(input, results, {
    open,
    clear: () => {
      input.value = '';
      void update();
    },
  });
  input.addEventListener('input', () => void update());
  input.addEventListener(
    'focus',
    () => {
      // One after the other: on a bad signal the codes are wanted first.
      loadAnswers(addresses)
        .then(() => loadPagefind(base))
        .catch(() => undefined);
    },
    { once: true },
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const chosen = list.chosen();
    if (chosen) open(chosen, false);
    else void update();
  });

  find(unitLine, 'button', HTMLButtonElement).addEventListener('click', () => {
    unit = undefined;
    unitLine.hidden = true;
    void update();
    input.focus();
  });
  find(recent, 'button', HTMLButtonElement).addEventListener('click', () => {
    forgetRecentCodes();
    showRecent();
    input.focus();
  });
  // Coming back with the browser's own button shows the page as it was left: the history has grown since.
  window.addEventListener('pageshow', showRecent);

  const given = new URLSearchParams(window.location.search).get('code');
  if (given) input.value = given;
  showRecent();
  if (unit !== undefined) {
    loadAnswers(addresses)
      .then(({ lookup }) => showUnit(lookup))
      .catch(() => undefined);
  }
  if (input.value.trim() !== '') void update();
}

/** What came of a search for words; `count` is undefined where the search could not be loaded. */
function pageVerdict(typed: string, count: number | undefined): string {
  if (count === undefined)
    return phrase('Searching for words needs the network, and it did not come through. Codes work without.');
  if (count === 0) return phrase('No page speaks of “{words}”. Try fewer or other words.', { words: typed });
  return count === 1
    ? phrase('One page speaks of “{words}”.', { words: typed })
    : phrase('Pages that speak of “{words}”, best first.', { words: typed });
}

/** Keeps what is searched for in the address, so that it can be sent to someone and survives going back. */
function keepInAddress(name: 'code' | 'unit', value: string): void {
  const address = new URL(window.location.href);
  if (value === '') address.searchParams.delete(name);
  else address.searchParams.set(name, value);
  if (address.href !== window.location.href) window.history.replaceState(null, '', address);
}

const root = document.querySelector<HTMLElement>('.lookup');
if (root) start(root);
