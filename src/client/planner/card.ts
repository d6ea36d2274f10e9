/** The job card for the bench: what to set, what to reach, what to heed, what it rests on. */

import type { JudgedPlan } from '../../decide/plan/judged-plan.ts';
import type { PlanQuery } from '../../decide/plan/query.ts';
import type { Section } from '../../decide/plan/workings.ts';
import { formatQuantity } from '../../measure/format.ts';
import { type LineTexts, lineText } from '../../views/line-texts.ts';
import { filterSetting } from '../../views/plan-words.ts';
import { verdictLabel } from '../../views/wording.ts';
import { phrase } from '../../words/index.ts';
import { codeText } from '../code-text.ts';
import { find } from '../find.ts';
import { make } from '../make.ts';

/** Lines a workshop sets or checks, in the order of the work; the rest is reckoning on the way there. */
const rows: readonly string[] = [
  'fuse',
  'wire-gauge',
  'wire-drop-share',
  'load-impedance',
  'attenuation',
  'protective-high-pass',
  'high-pass-slope',
  'gain-step',
  'tone-level',
  'gain-target',
  'rear-gain',
  'boosted-band-clips',
  'correction-headroom',
  'residual-rms',
  'level-coherent',
  'allowed-time',
];

export interface CardContent {
  readonly unit: string;
  readonly code: string;
  readonly query: PlanQuery;
  readonly judged: JudgedPlan;
  readonly sections: readonly Section[];
  /** In words, as items of a list. */
  readonly cautions: readonly HTMLElement[];
  readonly sourceTitles: Readonly<Record<string, string>>;
  readonly lineTexts: LineTexts;
}

/** Fills the card in that the page holds, and has it printed. */
export function fillCard(card: HTMLElement, content: CardContent): void {
  const { unit, code, judged, sections, sourceTitles, lineTexts } = content;
  const lines = sections.flatMap((section) => section.lines);
  const wanted = lines
    .filter(({ id }) => rows.includes(id))
    .sort((a, b) => rows.indexOf(a.id) - rows.indexOf(b.id));
  const filters = sections.flatMap(({ correction }) => correction?.filters ?? []);
  const sources = [...new Set(lines.flatMap((line) => line.sources))];
  const { verdict, sentence } = judged.answer;
  part(card, 'what').replaceChildren(`${phrase('{unit}, code', { unit })} `, codeText(code));
  part(card, 'verdict').replaceChildren(make('strong', {}, verdictLabel(verdict)), `: ${sentence}`);
  part(card, 'plan').replaceChildren(...planned(content.query));
  part(card, 'rows').replaceChildren(
    ...wanted.map(({ id, given, result, commonPractice }) => {
      const { title } = lineText(lineTexts, id);
      // Several speakers have a line each: its value says whose it is.
      const name = id === 'load-impedance' ? capital(given[0]?.name ?? title) : title;
      return row(`${name}${commonPractice ? '*' : ''}`, formatQuantity(result));
    }),
    ...filters.map((filter, index) =>
      row(phrase('Filter {number}', { number: index + 1 }), filterSetting(filter)),
    ),
  );
  part(card, 'remarks').replaceChildren(
    ...[...new Set(sections.flatMap(({ remarks }) => remarks))].map((text) => make('li', {}, text)),
  );
  part(card, 'cautions').replaceChildren(...content.cautions);
  part(card, 'sources').textContent = sources.map((id) => sourceTitles[id] ?? id).join('; ');
  card.hidden = false;
}

function part(card: HTMLElement, name: string): HTMLElement {
  return find(card, `[data-part="${name}"]`, HTMLElement);
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** A line to set, with room for what was found. */
function row(title: string, value: string): HTMLElement {
  return make(
    'tr',
    {},
    make('th', { scope: 'row' }, title),
    make('td', { class: 'number' }, value),
    make('td', { class: 'job-found' }),
  );
}

function planned({ fitted, amplifier, front, rear, subwoofer, replacementUnit }: PlanQuery): HTMLElement[] {
  const facts: readonly (readonly [string, string | undefined])[] = [
    [phrase('Fitted now'), fitted?.name],
    [phrase('Amplifier'), amplifier?.name ?? phrase('none: the unit drives the speakers')],
    [phrase('Front'), front?.name],
    [phrase('Rear'), rear?.name],
    [phrase('Subwoofer'), subwoofer?.name],
    [phrase('Unit'), replacementUnit ? phrase('to be replaced') : undefined],
  ];
  return facts.flatMap(([label, text]) =>
    text === undefined ? [] : [make('div', {}, make('dt', {}, label), make('dd', {}, text))],
  );
}
