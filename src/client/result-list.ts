/**
 * The list of results beneath a field, after the combobox pattern of the WAI-ARIA Authoring Practices (editable, list
 * autocomplete, focus stays in the field).
 */

export interface ResultList {
  /** Puts these in place of what stood there; none takes the list away. */
  show(items: readonly HTMLLIElement[]): void;
  /** The item one is on, or the only one; undefined where one has to choose. */
  chosen(): HTMLLIElement | undefined;
}

export interface ResultListEvents {
  readonly open: (item: HTMLLIElement, inNewTab: boolean) => void;
  /** Escape, with no item chosen. */
  readonly clear: () => void;
}

/** Makes a combobox of a field and a list, which stand in the same tree. */
export function resultList(
  input: HTMLInputElement,
  results: HTMLUListElement,
  { open, clear }: ResultListEvents,
): ResultList {
  input.setAttribute('role', 'combobox');
  input.setAttribute('aria-autocomplete', 'list');
  input.setAttribute('aria-controls', results.id);
  input.setAttribute('aria-expanded', 'false');
  results.setAttribute('role', 'listbox');

  let active = -1;
  const items = (): HTMLLIElement[] => [...results.querySelectorAll('li')];

  const activate = (index: number): void => {
    active = index;
    items().forEach((item, at) => {
      item.setAttribute('aria-selected', String(at === index));
      if (at === index) item.scrollIntoView({ block: 'nearest' });
    });
    const item = items()[index];
    if (item) input.setAttribute('aria-activedescendant', item.id);
    else input.removeAttribute('aria-activedescendant');
  };

  input.addEventListener('keydown', (event) => {
    const count = items().length;
    if (event.key === 'Escape') {
      if (active >= 0) activate(-1);
      else clear();
      event.preventDefault();
    } else if (count > 0 && (event.key === 'ArrowDown' || event.key === 'ArrowUp')) {
      const step = event.key === 'ArrowDown' ? 1 : -1;
      // One past either end is the field itself.
      activate(((active + 1 + step + count + 1) % (count + 1)) - 1);
      event.preventDefault();
    }
  });
  results.addEventListener('click', (event) => {
    const item = event.target instanceof Element ? event.target.closest('li') : null;
    if (item) open(item, event.ctrlKey || event.metaKey);
  });

  return {
    show: (shown) => {
      results.replaceChildren(...shown);
      results.hidden = shown.length === 0;
      input.setAttribute('aria-expanded', String(shown.length > 0));
      activate(-1);
    },
    chosen: () => items()[active] ?? (items().length === 1 ? items()[0] : undefined),
  };
}
