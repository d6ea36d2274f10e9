/** The choices that narrow the search over the pages: unit, kind of page, trait. */
import { filterNames } from '../views/search-filters.ts';
import { phrase } from '../words/index.ts';

/** Which of the filters are chosen; those left at any are absent. */
export type ChosenFilters = Readonly<Record<string, string>>;

export interface PageFilters {
  /** What is chosen now. */
  chosen(): ChosenFilters;
  /** Offers the values that leave a page, and what is chosen. Hidden where there is nothing to choose. */
  offer(values: Readonly<Record<string, readonly string[]>>): void;
  /** Back to any. */
  clear(): void;
}

function filterLabel(name: (typeof filterNames)[number]): string {
  switch (name) {
    case 'Unit':
      return phrase('Unit');
    case 'Kind':
      return phrase('Kind');
    case 'Trait':
      return phrase('Trait');
  }
}

/** Fills `root` with one field for each filter; `changed` is called when the rider chooses. */
export function pageFilters(root: HTMLElement, changed: () => void): PageFilters {
  const fields = filterNames.map((name) => {
    const field = document.createElement('select');
    field.id = `filter-${name.toLowerCase()}`;
    field.append(new Option(phrase('Any'), ''));
    field.addEventListener('change', changed);
    const label = document.createElement('label');
    label.htmlFor = field.id;
    label.textContent = filterLabel(name);
    const choice = document.createElement('p');
    choice.className = 'filter';
    choice.append(label, field);
    root.append(choice);
    return { name, field, choice };
  });
  root.hidden = true;
  return {
    chosen: () =>
      Object.fromEntries(fields.flatMap(({ name, field }) => (field.value ? [[name, field.value]] : []))),
    offer: (values) => {
      for (const { name, field, choice } of fields) {
        const chosen = field.value;
        const all = [...new Set([...(values[name] ?? []), ...(chosen ? [chosen] : [])])].sort();
        field.replaceChildren(new Option(phrase('Any'), ''), ...all.map((value) => new Option(value, value)));
        field.value = chosen;
        // Where all pages are alike in this, or none is left, there is nothing to choose.
        choice.hidden = all.length < 2 && !chosen;
      }
      root.hidden = fields.every(({ choice }) => choice.hidden);
    },
    clear: () => {
      for (const { field } of fields) field.value = '';
      root.hidden = true;
    },
  };
}
