/** Narrows a decision table to what the rider says: rules, profiles under them, profiles by answer. */
import { pieceSaid, unitField } from '../views/table-address.ts';
import {
  type ListingData,
  leftWords,
  lister,
  type RuleListing,
  type Said,
  underRule,
  underWords,
} from '../views/table-listing.ts';
import { find } from './find.ts';
import { answerGroup, profilesByUnit } from './table-lists.ts';

type Field = HTMLSelectElement | HTMLInputElement;

function start(page: HTMLElement): void {
  const data = JSON.parse(find(document, '#table-data', HTMLScriptElement).textContent) as ListingData;
  const root = page.dataset.profiles ?? '';
  const form = find(page, '#table-form', HTMLFormElement);
  const left = find(form, '#table-left', HTMLParagraphElement);
  const again = find(form, '#table-again', HTMLButtonElement);
  const groups = find(page, '#table-groups', HTMLElement);
  const settling = page.querySelector<HTMLElement>('.settling');
  const rules = [...page.querySelectorAll<HTMLElement>('.rule')];
  const fields = [...form.querySelectorAll<Field>('select, input')];
  const list = lister(data);

  const said = (): Said => {
    const pieces = new Map<number, number>();
    let unit: number | undefined;
    for (const field of fields) {
      if (field.name === unitField) {
        const index = data.units.findIndex(({ id }) => id === field.value);
        unit = index < 0 ? undefined : index;
        continue;
      }
      const input = data.inputs.findIndex(({ id }) => id === field.name);
      const known = data.inputs[input];
      const piece = known && pieceSaid(known, field.value, optionsOf(field));
      if (piece !== undefined) pieces.set(input, piece);
    }
    return unit === undefined ? { pieces } : { pieces, unit };
  };

  const show = (): void => {
    const now = said();
    const listing = list(now);
    const isBegun = now.pieces.size > 0 || now.unit !== undefined;
    const unitId = now.unit === undefined ? undefined : data.units[now.unit]?.id;
    for (const [index, rule] of rules.entries()) {
      const under = listing.rules[index];
      rule.hidden = !under?.left;
      if (under) showUnder(rule, under);
      for (const link of rule.querySelectorAll<HTMLElement>('a[data-unit]')) {
        link.hidden = unitId !== undefined && link.dataset.unit !== unitId;
      }
    }
    const unfolded = new Set(
      [...groups.querySelectorAll<HTMLDetailsElement>('details[open]')].map((one) => one.dataset.answer),
    );
    groups.replaceChildren(
      ...listing.groups.map((group) => answerGroup(data, group, root, isBegun || unfolded.has(group.answer))),
    );
    if (settling) {
      settling.hidden = !listing.groups.some(({ parts }) =>
        parts.some((part) => part.borderline.length + part.unknown.length > 0),
      );
    }
    left.textContent = leftWords(rules.length, listing.rules.filter((one) => one.left).length, listing);
    again.hidden = fields.every(({ value }) => value === '');
    for (const field of fields) {
      // What the table cannot take is said by the field, and counts as not said.
      if (field instanceof HTMLInputElement) field.ariaInvalid = String(!field.checkValidity());
    }
  };

  const showUnder = (rule: HTMLElement, under: RuleListing): void => {
    const [sure, perhaps] = [under.sure.length, under.perhaps.length];
    const details = find(rule, '.under', HTMLDetailsElement);
    details.hidden = sure + perhaps === 0;
    find(rule, '.under-none', HTMLParagraphElement).hidden = !details.hidden;
    find(details, 'summary', HTMLElement).textContent = underWords(sure, perhaps);
    find(details, '.under-list', HTMLElement).replaceChildren(
      ...profilesByUnit(data, underRule(under), root),
    );
  };

  const changed = (): void => {
    show();
    keepInAddress(fields);
  };
  const address = new URLSearchParams(window.location.search);
  for (const field of fields) {
    field.value = address.get(field.name) ?? '';
    // A value that is no option leaves the field empty, not without any choice.
    if (field instanceof HTMLSelectElement && field.selectedIndex < 0) field.value = '';
    field.addEventListener('input', changed);
  }
  again.addEventListener('click', () => {
    for (const field of fields) field.value = '';
    changed();
    fields[0]?.focus();
  });
  form.addEventListener('submit', (event) => event.preventDefault());
  form.hidden = false;
  show();
  // The form has moved what the address points to.
  if (window.location.hash.length > 1) {
    document.getElementById(window.location.hash.slice(1))?.scrollIntoView();
  }
}

function optionsOf(field: Field): string[] {
  if (!(field instanceof HTMLSelectElement)) return [];
  return [...field.options].map(({ value }) => value).filter((value) => value !== '');
}

/** Keeps what was said in the address, so that it can be sent to someone. */
function keepInAddress(fields: readonly Field[]): void {
  const address = new URL(window.location.href);
  for (const { name, value } of fields) {
    if (value === '') address.searchParams.delete(name);
    else address.searchParams.set(name, value);
  }
  if (address.href !== window.location.href) window.history.replaceState(null, '', address);
}

const page = document.querySelector<HTMLElement>('#table');
// A table the planner decides by asks nothing.
if (page?.querySelector('#table-form')) start(page);
