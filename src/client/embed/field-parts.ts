/** The elements of the code field for other sites; the ids are those of its shadow tree alone. */
import { phrase } from '../../words/index.ts';
import { make } from '../make.ts';

export interface FieldParts {
  readonly frame: HTMLElement;
  readonly form: HTMLFormElement;
  readonly input: HTMLInputElement;
  readonly verdict: HTMLParagraphElement;
  readonly results: HTMLUListElement;
  /** Where the answer to one code stands; what is put here is read out. */
  readonly answer: HTMLDivElement;
  /** What the page has written between the element’s tags: the plain link, for when the list does not come through. */
  readonly home: HTMLParagraphElement;
}

/** @param codesPage where the form leads when the list of codes is not there. */
export function fieldParts(label: string, codesPage: string): FieldParts {
  const input = make('input', {
    id: 'code',
    name: 'code',
    type: 'text',
    autocomplete: 'off',
    autocapitalize: 'characters',
    autocorrect: 'off',
    spellcheck: 'false',
    enterkeyhint: 'search',
    maxlength: 80,
    'aria-describedby': 'hint',
  });
  const form = make(
    'form',
    { action: codesPage, method: 'get', role: 'search' },
    make('label', { for: 'code' }, label),
    make('div', { class: 'row' }, input, make('button', { type: 'submit' }, phrase('Look up'))),
    make(
      'p',
      { id: 'hint', class: 'hint' },
      phrase('Type it as it stands there; dashes, dots and spaces do not matter.'),
    ),
  );
  const verdict = make('p', { id: 'verdict', role: 'status' });
  const results = make('ul', { id: 'results', 'aria-label': phrase('Codes that fit'), hidden: true });
  const answer = make('div', { class: 'answer', role: 'status', hidden: true });
  const home = make('p', { class: 'home', hidden: true }, make('slot'));
  const frame = make('div', { class: 'frame', part: 'frame' }, form, verdict, results, answer, home);
  return { frame, form, input, verdict, results, answer, home };
}
