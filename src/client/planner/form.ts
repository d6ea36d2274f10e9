/** The form of a plan: what is in its fields, which units and codes are left, and what is wrong with a field. */

import { canonicalCode } from '../../codes/normalise.ts';
import { type QueryFault, queryFields } from '../../decide/plan/read-query.ts';
import type { PlannerData, PlannerUnit } from '../../views/planner-format.ts';
import { find } from '../find.ts';

export type Values = Readonly<Record<string, string>>;

/** What says which machine it is, beside the fields of a plan. */
const rideFields = ['model', 'year', 'unit', 'code'] as const;
const fieldNames: readonly string[] = [...rideFields, ...queryFields];

export class PlanForm {
  readonly #form: HTMLFormElement;
  readonly #site: PlannerData;
  /** What an address says of a choice that is not offered: told as a fault until the field is changed. */
  readonly #unread = new Map<string, string>();

  constructor(form: HTMLFormElement, site: PlannerData) {
    this.#form = form;
    this.#site = site;
    form.addEventListener('input', ({ target }) => {
      if (target instanceof HTMLElement) this.#unread.delete(target.getAttribute('name') ?? '');
    });
  }

  /** What is filled in; empty fields are left out. */
  values(): Values {
    const entries = fieldNames.flatMap((name) => {
      const control = this.#control(name);
      const value =
        control instanceof HTMLInputElement && control.type === 'checkbox'
          ? control.checked
            ? 'yes'
            : ''
          : (control?.value.trim() ?? '');
      const said = value === '' ? (this.#unread.get(name) ?? '') : value;
      return said === '' ? [] : [[name, said] as const];
    });
    return Object.fromEntries(entries);
  }

  /** Fills the form in. */
  fill(values: Values): void {
    this.#unread.clear();
    // The unit first: it decides which codes are offered.
    for (const name of fieldNames) {
      const value = values[name] ?? '';
      const control = this.#control(name);
      if (name === 'code') this.#offerCodes();
      if (control instanceof HTMLInputElement && control.type === 'checkbox') {
        control.checked = ['yes', 'true', '1', 'on'].includes(value.toLowerCase());
      } else if (control instanceof HTMLSelectElement) {
        const wanted = name === 'code' ? (this.#codeLike(value) ?? value) : value;
        control.value = wanted;
        if (control.selectedIndex < 0) {
          control.value = '';
          if (value !== '' && value !== 'none') this.#unread.set(name, value);
        }
      } else if (control) control.value = value;
    }
    // A code sent without its unit finds it.
    if (values.unit === undefined && values.code !== undefined) this.takeTyped(values.code);
    for (const details of this.#form.querySelectorAll('details')) {
      details.open ||= [...details.querySelectorAll('input')].some(({ value }) => value !== '');
    }
    this.narrow();
  }

  /** Offers only what fits what is ridden, and the codes of the unit. */
  narrow(): void {
    const [model, year, unit] = ['model', 'year', 'unit'].map((name) => this.#select(name));
    if (!model || !year || !unit) return;
    const fitted = this.#site.units.filter(({ fitment }) =>
      fitment.some(
        (one) =>
          (model.value === '' || one.model === model.value) &&
          (year.value === '' || (one.fromYear <= Number(year.value) && Number(year.value) <= one.toYear)),
      ),
    );
    const isNarrowed = model.value !== '' && fitted.length > 0;
    for (const option of unit.options) {
      option.hidden = isNarrowed && option.value !== '' && !fitted.some(({ id }) => id === option.value);
    }
    const [only] = fitted;
    if (isNarrowed && fitted.length === 1 && only && unit.value === '') unit.value = only.id;
    if (unit.selectedOptions[0]?.hidden) unit.value = fitted.length === 1 && only ? only.id : '';
    this.#offerCodes();
  }

  /** The unit that is chosen. */
  unit(): PlannerUnit | undefined {
    const id = this.#select('unit')?.value;
    return this.#site.units.find((one) => one.id === id);
  }

  /** Takes a typed code where it is one of a unit’s, however it is spaced and dashed: whether it is. */
  takeTyped(typed: string): boolean {
    const canonical = canonicalCode(typed);
    if (canonical === '') return false;
    const unit = this.unit();
    const units = unit ? [unit] : this.#site.units;
    for (const { id, profiles } of units) {
      const found = profiles.find(({ code }) => canonicalCode(code) === canonical);
      const select = this.#select('unit');
      const code = this.#select('code');
      if (!found || !select || !code) continue;
      select.value = id;
      this.#offerCodes();
      code.value = found.code;
      this.#unread.delete('code');
      return true;
    }
    return false;
  }

  /** Shows each fault at its field, and takes away those put right. */
  showFaults(faults: readonly QueryFault[]): void {
    for (const name of fieldNames) {
      const line = this.#form.querySelector<HTMLElement>(`#fault-${name}`);
      const fault = faults.find(({ field }) => field === name);
      const control = this.#control(name);
      if (!line || !control) continue;
      line.hidden = !fault;
      line.textContent = fault ? `${fault.message} ${fault.help}` : '';
      if (fault) control.setAttribute('aria-invalid', 'true');
      else control.removeAttribute('aria-invalid');
      const folded = control.closest('details');
      if (fault && folded) folded.open = true;
    }
  }

  /** Shows the class’s own numbers where a rider may put others. */
  hint(numbers: Readonly<Record<string, number | undefined>>): void {
    for (const [name, value] of Object.entries(numbers)) {
      const control = this.#control(name);
      if (control instanceof HTMLInputElement) control.placeholder = value === undefined ? '' : String(value);
    }
  }

  #offerCodes(): void {
    const select = this.#select('code');
    if (!select) return;
    const before = select.value;
    const codes = this.unit()?.profiles.map(({ code }) => code) ?? [];
    const [first] = select.options;
    if (first) first.textContent = codes.length === 0 ? 'Say the unit first' : 'Choose it';
    select.replaceChildren(...(first ? [first] : []), ...codes.map((code) => new Option(code, code)));
    select.value = codes.includes(before) ? before : '';
  }

  #codeLike(typed: string): string | undefined {
    const canonical = canonicalCode(typed);
    return this.unit()?.profiles.find(({ code }) => canonicalCode(code) === canonical)?.code;
  }

  #select(name: string): HTMLSelectElement | undefined {
    const control = this.#control(name);
    return control instanceof HTMLSelectElement ? control : undefined;
  }

  #control(name: string): HTMLInputElement | HTMLSelectElement | undefined {
    const control = this.#form.elements.namedItem(name);
    return control instanceof HTMLInputElement || control instanceof HTMLSelectElement ? control : undefined;
  }
}

/** The values an address holds. */
export function valuesOfAddress(search: string): Values {
  const address = new URLSearchParams(search);
  return Object.fromEntries(
    [...fieldNames, 'beside'].flatMap((name) => {
      const value = address.get(name);
      return value === null || value === '' ? [] : [[name, value] as const];
    }),
  );
}

/** Keeps a plan in the address, so that it can be sent to someone. */
export function keepInAddress(values: Values): void {
  const address = new URL(window.location.href);
  address.search = new URLSearchParams(values).toString();
  if (address.href !== window.location.href) window.history.replaceState(null, '', address);
}

/** The form of a page. */
export function formIn(root: ParentNode): HTMLFormElement {
  return find(root, '#plan-form', HTMLFormElement);
}
