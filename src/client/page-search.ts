/** Searches the words of the pages through Pagefind, which is loaded when it is first needed. */
import { speaksOf, wordsOf } from './query.ts';

interface PagefindResult {
  readonly url: string;
  readonly excerpt: string;
  /** All words of the page. */
  readonly content: string;
  readonly meta: { readonly title?: string };
}
/** How many pages each value of each filter leaves: `{ Unit: { Brasslight: 3 } }`. */
type FilterCounts = Readonly<Record<string, Readonly<Record<string, number>>>>;
interface Pagefind {
  options(options: { baseUrl: string }): Promise<void>;
  init(): Promise<void>;
  filters(): Promise<FilterCounts>;
  search(
    text: string,
    options: { filters: Readonly<Record<string, string>> },
  ): Promise<{ results: { data(): Promise<PagefindResult> }[]; filters: FilterCounts }>;
}

export interface PageSearch {
  /** The pages found, best first, as list items. */
  readonly items: HTMLLIElement[];
  /** The values of each filter that leave a page beside what is chosen already. */
  readonly offered: Readonly<Record<string, readonly string[]>>;
}

let loading: Promise<Pagefind> | undefined;

/** Loads the search; a failure (no signal) is forgotten, so that the next try can succeed. */
export function loadPagefind(base: string): Promise<Pagefind> {
  loading ??= (import(/* @vite-ignore */ `${base}pagefind/pagefind.js`) as Promise<Pagefind>).then(
    async (pagefind) => {
      await pagefind.options({ baseUrl: base });
      await pagefind.init();
      await pagefind.filters();
      return pagefind;
    },
  );
  loading.catch(() => {
    loading = undefined;
  });
  return loading;
}

const mostResults = 6;
const enoughResults = 5;

/** The pages that speak of `text`, narrowed to the filters chosen. */
export async function searchPages(
  base: string,
  text: string,
  filters: Readonly<Record<string, string>>,
): Promise<PageSearch> {
  const pagefind = await loadPagefind(base);
  const speaking = new Map<string, PagefindResult>();
  const offered: Record<string, string[]> = {};
  // Pages that have all the words first; where they are few, those that have one of them.
  for (const asked of [text, ...wordsOf(text)]) {
    if (speaking.size >= enoughResults) break;
    const { results, filters: counts } = await pagefind.search(asked, { filters });
    const found = await Promise.all(
      results.slice(0, mostResults - speaking.size).map((result) => result.data()),
    );
    for (const page of found) {
      if (!speaking.has(page.url) && speaksOf(`${page.meta.title ?? ''} ${page.content}`, asked))
        speaking.set(page.url, page);
    }
    for (const [name, values] of Object.entries(counts)) {
      const known = new Set(offered[name]);
      for (const [value, pages] of Object.entries(values)) if (pages > 0) known.add(value);
      offered[name] = [...known];
    }
  }
  return { items: [...speaking.values()].map(resultItem), offered };
}

function resultItem({ url, excerpt, meta }: PagefindResult): HTMLLIElement {
  const item = document.createElement('li');
  const link = document.createElement('a');
  link.className = 'row-link';
  link.href = url;
  const text = document.createElement('span');
  text.className = 'row-text';
  const title = document.createElement('span');
  title.className = 'row-title';
  title.textContent = meta.title ?? url;
  const words = document.createElement('span');
  words.className = 'block fine';
  words.append(...excerptNodes(excerpt));
  text.append(title, words);
  link.append(text);
  item.append(link);
  return item;
}

/** The excerpt's text with its marked words; any other markup in it is dropped. */
function excerptNodes(excerpt: string): Node[] {
  const { body } = new DOMParser().parseFromString(excerpt, 'text/html');
  return [...body.childNodes].map((node) => {
    if (node.nodeName !== 'MARK') return document.createTextNode(node.textContent ?? '');
    const mark = document.createElement('mark');
    mark.textContent = node.textContent;
    return mark;
  });
}
