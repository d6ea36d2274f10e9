/** The form of a plan: what is in its fields, which units and codes are left, and what is wrong with a field. */

import { canonicalCode } from '../../codes/canonical-code.ts';
import { type QueryFault, queryFields } from '../../decide/plan/read-query.ts';
import type { PlannerCode, PlannerData, PlannerUnit } from '../../views/planner-format.ts';
import { phrase } from '../../words/index.ts';
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
      // Another machine has other codes.
      if (target instanceof HTMLElement && target.getAttribute('name') === 'unit')
        this.#unread.delete('code');
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
      const said = this.#unread.get(name) ?? value;
      return said === '' ? [] : [[name, said] as const];
    });
    return Object.fromEntries(entries);
  }

  /** Fills the form in. */
  fill(values: Values): void {
    this.#unread.clear();
    this.#offerUnits(this.#site.units);
    for (const name of fieldNames) {
      const value = values[name] ?? '';
      const control = this.#control(name);
      if (control instanceof HTMLInputElement && control.type === 'checkbox') {
        control.checked = ['yes', 'true', '1', 'on'].includes(value.toLowerCase());
      } else if (control instanceof HTMLSelectElement) {
        control.value = value;
        if (control.selectedIndex < 0) {
          control.value = '';
          if (value !== '' && value !== 'none') this.#unread.set(name, value);
        }
      } else if (control) control.value = value;
    }
    for (const details of this.#form.querySelectorAll('details')) {
      details.open ||= [...details.querySelectorAll('input')].some(({ value }) => value !== '');
    }
  }

  /** Offers only the units that fit what is ridden; the only one is chosen. */
  narrow(): void {
    const [model, year, unit] = ['model', 'year', 'unit'].map((name) => this.#select(name));
    if (!model || !year || !unit) return;
    const fitted =
      model.value === ''
        ? this.#site.units
        : this.#site.units.filter(({ fitment }) =>
            fitment.some(
              (one) =>
                one.model === model.value &&
                (year.value === '' ||
                  (one.fromYear <= Number(year.value) && Number(year.value) <= one.toYear)),
            ),
          );
    // Where nothing is known to fit, every unit may be in it.
    const offered = fitted.length > 0 ? fitted : this.#site.units;
    const before = unit.value;
    this.#offerUnits(offered);
    const [only] = offered;
    if (offered.some(({ id }) => id === before)) unit.value = before;
    else if (offered.length === 1 && only && !this.#unread.has('unit')) unit.value = only.id;
  }

  /** Offers the codes of the unit; one that was asked for before they were known is chosen. */
  offerCodes(codes: readonly PlannerCode[]): void {
    const select = this.#select('code');
    if (!select) return;
    const wanted = canonicalCode(this.#unread.get('code') ?? select.value);
    const [first] = select.options;
    if (first) first.textContent = codes.length === 0 ? phrase('Say the unit first') : phrase('Choose it');
    select.replaceChildren(...(first ? [first] : []), ...codes.map(({ code }) => new Option(code, code)));
    const found = codes.find(({ code }) => canonicalCode(code) === wanted);
    select.value = found?.code ?? '';
    if (found) this.#unread.delete('code');
  }

  /** The unit that is chosen. */
  unit(): PlannerUnit | undefined {
    const id = this.#select('unit')?.value;
    return this.#site.units.find((one) => one.id === id);
  }

  /** Takes a code of a unit, or of none that is known yet. */
  takeCode(code: string, unit: string): void {
    this.#offerUnits(this.#site.units);
    const select = this.#select('unit');
    if (select) select.value = unit;
    this.#unread.set('code', code);
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

  #offerUnits(units: readonly PlannerUnit[]): void {
    const select = this.#select('unit');
    const [first] = select?.options ?? [];
    select?.replaceChildren(...(first ? [first] : []), ...units.map(({ id, name }) => new Option(name, id)));
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
