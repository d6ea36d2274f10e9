/** Searches the words of the pages through Pagefind, which is loaded when it is first needed. */
import { speaksOf } from './query.ts';

interface PagefindResult {
  readonly url: string;
  readonly excerpt: string;
  /** All words of the page. */
  readonly content: string;
  readonly meta: { readonly title?: string };
}
interface Pagefind {
  options(options: { baseUrl: string }): Promise<void>;
  init(): Promise<void>;
  search(text: string): Promise<{ results: { data(): Promise<PagefindResult> }[] }>;
}

let loading: Promise<Pagefind> | undefined;

/** Loads the search; a failure (no signal) is forgotten, so that the next try can succeed. */
export function loadPagefind(base: string): Promise<Pagefind> {
  loading ??= (import(/* @vite-ignore */ `${base}pagefind/pagefind.js`) as Promise<Pagefind>).then(
    async (pagefind) => {
      await pagefind.options({ baseUrl: base });
      await pagefind.init();
      return pagefind;
    },
  );
  loading.catch(() => {
    loading = undefined;
  });
  return loading;
}

const mostResults = 6;

/** The pages that speak of `text`, best first, as list items. */
export async function searchPages(base: string, text: string): Promise<HTMLLIElement[]> {
  const pagefind = await loadPagefind(base);
  const { results } = await pagefind.search(text);
  const found = await Promise.all(results.slice(0, mostResults).map((result) => result.data()));
  const speaking = found.filter(({ content, meta }) => speaksOf(`${meta.title ?? ''} ${content}`, text));
  return speaking.map(({ url, excerpt, meta }) => {
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
  });
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
