/** The answer as it is shown: mark and sentence, reasons, what would change it, in which order to buy. */
import type { Change } from '../../decide/plan/changes.ts';
import type { JudgedPlan } from '../../decide/plan/judged-plan.ts';
import type { PlanPolicy } from '../../decide/plan/policy.ts';
import type { PlanQuery } from '../../decide/plan/query.ts';
import type { Verdict } from '../../decide/verdict.ts';
import { profilePath } from '../../views/paths.ts';
import { changesWords, type Names, stageWords } from '../../views/plan-words.ts';
import type { PlannerLabels } from '../../views/planner-format.ts';
import { verdictLabel } from '../../views/wording.ts';
import { phrase } from '../../words/index.ts';
import { codeText } from '../code-text.ts';
import { make } from '../make.ts';

/** What the parts of an answer need beside it. */
export interface Telling {
  readonly base: string;
  readonly names: Names;
  readonly query: PlanQuery;
  readonly policy: PlanPolicy;
  readonly labels: PlannerLabels;
  /** Puts changes into the form. */
  readonly apply: (changes: readonly Change[]) => void;
}

/** A verdict as mark and word: the page holds one of each, made by the component all pages use. */
export function verdictMark(verdict: Verdict): Node {
  const template = document.querySelector<HTMLTemplateElement>(`template[data-verdict="${verdict}"]`);
  return template?.content.cloneNode(true) ?? document.createTextNode(verdictLabel(verdict));
}

/** The sentence, and where it is not certain, what is possible and what settles it. */
export function answerHead({ answer, settledBy }: JudgedPlan, { policy }: Telling): HTMLElement[] {
  const { verdict, sentence, possible } = answer;
  const others = possible.filter((one) => one !== verdict);
  const isClose = answer.reasons.some(({ outcome }) => outcome === 'borderline');
  const isOpen = verdict === 'measure-first' || possible.length > 1;
  const columns = policy.inputs.filter(({ id }) => settledBy.includes(id)).map(({ label }) => label);
  const may = { verdicts: either(others.map((one) => verdictLabel(one).toLowerCase())) };
  const open = [
    isClose
      ? phrase('Within the uncertainty of the readings it comes to: {verdicts}.', may)
      : phrase('It may come to: {verdicts}.', may),
    ...(columns.length > 0
      ? [phrase('Known more exactly, this alone would settle it: {columns}.', { columns: either(columns) })]
      : []),
  ];
  return [
    make('p', { class: 'verdict-line' }, verdictMark(verdict)),
    make('p', { class: 'plan-sentence' }, sentence),
    ...(isOpen && others.length > 0
      ? [
          make(
            'p',
            { class: 'plan-open' },
            make('strong', {}, `${isClose ? phrase('Borderline.') : phrase('Not known yet.')} `),
            open.join(' '),
          ),
        ]
      : []),
  ];
}

/** “keep and correct, or reflash”. */
function either([one = '', ...others]: readonly string[]): string {
  return others.reduce((first, next) => phrase('{first}, or {next}', { first, next }), one);
}

/** What was compared. */
export function reasonsList({ answer }: JudgedPlan, { labels }: Telling): HTMLElement {
  return make(
    'dl',
    { class: 'reasons' },
    ...answer.reasons.map(({ topic, outcome, text }) =>
      make(
        'div',
        { 'data-outcome': outcome },
        make('dt', {}, `${labels.topics[topic]}: `, make('strong', {}, labels.outcomes[outcome])),
        make('dd', {}, text),
      ),
    ),
  );
}

/** Changes that are shown at once; the others are folded away. */
const shownChanges = 5;

/** One button for each smallest change. */
export function changeButtons({ changes }: JudgedPlan, { names, apply }: Telling): HTMLElement[] {
  const buttons = changes.map(({ changes: made, verdict }) => {
    const button = make(
      'button',
      { type: 'button', class: 'plan-change' },
      make('span', {}, changesWords(made, names)),
      make('span', { class: 'plan-then' }, verdictMark(verdict)),
    );
    button.addEventListener('click', () => apply(made));
    return make('li', {}, button);
  });
  const rest = buttons.slice(shownChanges);
  return [
    make('ul', { class: 'plain plan-changes' }, ...buttons.slice(0, shownChanges)),
    ...(rest.length > 0
      ? [
          make(
            'details',
            {},
            make('summary', {}, phrase('More that would do ({count})', { count: rest.length })),
            make('ul', { class: 'plain plan-changes' }, ...rest),
          ),
        ]
      : []),
  ];
}

/** The other profiles of the unit that suit the plan, as links. */
export function suitsList({ suits }: JudgedPlan, { base, names }: Telling): HTMLElement {
  return make(
    'ul',
    { class: 'plain plan-suits' },
    ...suits.map(({ id, verdict }) =>
      make(
        'li',
        {},
        make('a', { class: 'code-link', href: `${base}${profilePath(id)}` }, codeText(names.code(id))),
        verdictMark(verdict),
      ),
    ),
  );
}

/** The order of purchases, and what each stage comes to. */
export function stagesList({ staged }: JudgedPlan, { query, labels: { captions } }: Telling): HTMLElement[] {
  if (!staged) return [];
  return [
    make('p', {}, staged.keepsThroughout ? captions.staysThroughout : captions.staysUnsure),
    make(
      'ol',
      { class: 'plan-stages' },
      ...staged.stages.map((stage) =>
        make('li', {}, make('span', {}, stageWords(stage, query)), verdictMark(stage.verdict)),
      ),
    ),
  ];
}
