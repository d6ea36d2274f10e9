/** Narrows the units down by model line, year and one question at a time. Without it the page lists them all. */
import { fittedTo, looksLike, nextQuestion, type SightedUnit, unsure } from '../decide/which-unit.ts';
import { fittedWords, leftWords } from '../views/which-unit-words.ts';
import { phrase } from '../words/index.ts';
import { find } from './find.ts';

type Unit = SightedUnit & { readonly path: string };

function start(root: HTMLElement): void {
  const units = JSON.parse(find(document, '#which-units', HTMLScriptElement).textContent) as Unit[];
  const model = find(root, '#which-model', HTMLSelectElement);
  const year = find(root, '#which-year', HTMLSelectElement);
  const verdict = find(root, '#which-verdict', HTMLParagraphElement);
  const question = find(root, '#which-question', HTMLFieldSetElement);
  const legend = find(question, 'legend', HTMLLegendElement);
  const choices = find(question, '.which-choices', HTMLElement);
  const done = find(root, '#which-done', HTMLParagraphElement);
  const again = find(root, '#which-again', HTMLButtonElement);
  const sights = [...document.querySelectorAll<HTMLElement>('.sight')];
  const address = new URLSearchParams(window.location.search);
  let said: Record<string, string> = {};
  model.value = address.get('model') ?? '';
  year.value = address.get('year') ?? '';
  // A value that is no option leaves the field empty, not without any choice.
  for (const field of [model, year]) if (field.selectedIndex < 0) field.value = '';

  const show = (): void => {
    const ride = { model: model.value || undefined, year: year.value ? Number(year.value) : undefined };
    const fitted = fittedTo(units, ride.model, ride.year);
    const from = fitted.length > 0 ? fitted : units;
    const left = looksLike(from, said);
    const ids = new Set(left.map(({ id }) => id));
    for (const sight of sights) sight.hidden = ids.size > 0 && !ids.has(sight.dataset.unit ?? '');
    const next = nextQuestion(left, said);
    const isBegun = ride.model !== undefined || Object.keys(said).length > 0;
    verdict.textContent =
      `${fittedWords(ride, fitted, units)} ${isBegun ? leftWords(left, next !== undefined) : ''}`.trim();
    question.hidden = next === undefined;
    if (next) {
      legend.textContent = next.ask;
      choices.replaceChildren(
        ...next.answers.map(({ id, text }) => choice(text, () => answer(next.id, id))),
        choice(phrase('I can’t tell'), () => answer(next.id, unsure), 'unsure'),
      );
    }
    const [only] = left;
    done.hidden = left.length !== 1;
    done.replaceChildren();
    if (only && left.length === 1) {
      done.append(
        link(`${only.path}#read`, phrase('Read its code')),
        link(only.path, phrase('All about {name}', { name: only.name })),
      );
    }
    again.hidden = !isBegun && year.value === '';
    keepInAddress(model.value, year.value);
  };

  const answer = (id: string, given: string): void => {
    said = { ...said, [id]: given };
    show();
    const first = choices.querySelector('button') ?? done.querySelector('a') ?? again;
    (question.hidden ? (done.querySelector('a') ?? again) : first).focus();
  };

  for (const field of [model, year]) {
    field.addEventListener('change', () => {
      said = {};
      show();
    });
  }
  again.addEventListener('click', () => {
    said = {};
    model.value = '';
    year.value = '';
    show();
    model.focus();
  });
  root.hidden = false;
  show();
}

function choice(text: string, chosen: () => void, className = ''): HTMLButtonElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = text;
  button.className = className;
  button.addEventListener('click', chosen);
  return button;
}

function link(address: string, text: string): HTMLAnchorElement {
  const anchor = document.createElement('a');
  anchor.className = 'button';
  anchor.href = address;
  anchor.textContent = text;
  return anchor;
}

/** Keeps what is ridden in the address, so that it can be sent to someone. */
function keepInAddress(model: string, year: string): void {
  const address = new URL(window.location.href);
  for (const [name, value] of [
    ['model', model],
    ['year', year],
  ] as const) {
    if (value === '') address.searchParams.delete(name);
    else address.searchParams.set(name, value);
  }
  if (address.href !== window.location.href) window.history.replaceState(null, '', address);
}

const root = document.querySelector<HTMLElement>('#which');
if (root) start(root);
