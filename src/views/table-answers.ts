/** What each decision table says of a profile: the answer first, then why, down to the readings. */
import { type Answers, judgedProfile } from '../answers.ts';
import type { JudgedProfile } from '../decide/index.ts';
import type { Value } from '../tables/index.ts';
import { phrase } from '../words/index.ts';
import { isAsked, type JudgedTable, openOf, tablesOfProfiles } from './judged-tables.ts';
import { tablePath } from './paths.ts';
import type { ReadingRows } from './reading-links.ts';
import type { NamedLink } from './source-page.ts';
import { evidenceOf, settlingWords } from './table-evidence.ts';
import { notMeasured } from './table-listing.ts';
import { answerWords, type Open, type Outcome, type Sureness } from './table-outcomes.ts';
import { linksOfRule, ruleAnchor } from './table-page.ts';
import { anyWords, setOfPieces, setWords, valueWords } from './table-words.ts';

export interface TableAnswerView {
  readonly name: string;
  readonly question: string;
  readonly path: string;
  /** The answer, or all the answers; empty where it is not settled. */
  readonly answer: string;
  /** Whether it is settled whatever the rider plans. */
  readonly settled: boolean;
  /** The questions of the table that decide. */
  readonly dependsOn: readonly string[];
  readonly borderline: readonly BorderlineView[];
  readonly rules: readonly RuleAnswerView[];
}

export interface BorderlineView {
  readonly label: string;
  /** The value with its uncertainty; empty where it was not measured. */
  readonly value: string;
  readonly anchor: string;
  /** The readings that would settle it. */
  readonly settledBy: string;
}

/** A rule that gives the answer, surely or where what stands in `cases` holds. */
export interface RuleAnswerView {
  readonly answer: string;
  readonly path: string;
  readonly number: number;
  readonly sureness: Sureness;
  /** What the rider would have to say: “Rear wanted: yes”. */
  readonly cases: readonly string[];
  readonly say: string;
  readonly guides: readonly NamedLink[];
  /** Profiles of the same unit that the rule points to. */
  readonly pointsTo: readonly NamedLink[];
  readonly because: readonly BecauseView[];
  /** Whether it gives the answer because none of the rules before it does; `because` then is what those asked for. */
  readonly isRest: boolean;
}

/** What a rule tests of the profile, and what was found. */
export interface BecauseView {
  readonly label: string;
  readonly test: string;
  readonly found: string;
  readonly anchor: string;
  readonly readings: ReadingRows;
}

/** What the tables that a profile alone can be held against say of it, in the order of the tables. */
export function tableAnswerViews(answers: Answers, id: string): readonly TableAnswerView[] {
  const last = lastAsked.get(answers);
  if (last?.id === id) return last.views;
  const profile = judgedProfile(answers, id);
  const views = profile
    ? tablesOfProfiles(answers).map((judged) => {
        const open = openOf(judged, profile);
        return answerView(answers, judged, id, profile, open, judged.decide(open));
      })
    : [];
  lastAsked.set(answers, { id, views });
  return views;
}

/** A profile’s page and its document for programs ask for the same, one after the other. */
const lastAsked = new WeakMap<Answers, { readonly id: string; readonly views: readonly TableAnswerView[] }>();

function answerView(
  answers: Answers,
  judged: JudgedTable,
  id: string,
  profile: JudgedProfile,
  open: Open,
  outcome: Outcome,
): TableAnswerView {
  const { inputs, name, question } = judged.entry.data;
  const deciding = outcome.dependsOn.flatMap((at) => inputs[at] ?? []);
  const sure = [...outcome.answers].flatMap(([words, { sureness }]) => (sureness === 'sure' ? [words] : []));
  return {
    name,
    question,
    path: tablePath(judged.entry.id),
    answer: deciding.length === 0 ? sure.join(phrase(', then ')) : '',
    settled: deciding.length === 0,
    dependsOn: deciding.flatMap((input) => ('question' in input ? [input.question] : [])),
    borderline: deciding
      .filter((input) => !isAsked(input))
      .map((input) => {
        const { anchor, quantity } = evidenceOf(input, profile);
        return {
          label: input.label,
          value: quantity,
          anchor,
          settledBy: settlingWords(input, quantity !== ''),
        };
      }),
    rules: [...outcome.rules]
      .sort(([a], [b]) => a - b)
      .map(([rule, sureness]) => ruleView(answers, judged, id, profile, open, rule, sureness)),
  };
}

function ruleView(
  answers: Answers,
  judged: JudgedTable,
  id: string,
  profile: JudgedProfile,
  open: Open,
  rule: number,
  sureness: Sureness,
): RuleAnswerView {
  const { entry, table, data } = judged;
  const written = entry.data.rules[rule];
  const { guides, pointsTo } = written ? linksOfRule(answers, written) : { guides: [], pointsTo: [] };
  const family = answers.base.profiles.get(id)?.data.family;
  const tested = becauseOf(judged, profile, open, rule);
  const isRest = tested.length === 0 && (entry.data.hit === 'first' || entry.data.hit === 'priority');
  return {
    answer: answerWords((table.rules[rule]?.results ?? []) as readonly Value[], data.outputs),
    path: `${tablePath(entry.id)}#${ruleAnchor(written?.id ?? '')}`,
    number: rule + 1,
    sureness,
    cases: sureness === 'sure' ? [] : casesOf(judged, open, rule),
    say: written?.say ?? '',
    guides,
    pointsTo: pointsTo
      .filter(({ unit, path }) => unit === family && !path.endsWith(`/${id}/`))
      .map(({ text, path }) => ({ text, path })),
    because: isRest ? becauseOf(judged, profile, open) : tested,
    isRest,
  };
}

/**
 * What has to be so for the rule to give the answer: of each question, the answers with which it may where not all
 * do; of each value near a limit, what the rule asks for.
 */
function casesOf(judged: JudgedTable, open: Open, rule: number): string[] {
  const { entry, table, grid, decide } = judged;
  return [...open.keys()].flatMap((at) => {
    const [input, cut, pieces, written] = [table.inputs[at], grid[at], open[at] ?? [], entry.data.inputs[at]];
    if (!input || !cut || !written || pieces.length < 2) return [];
    const fitting = pieces.filter((piece) =>
      decide(open.map((one, index) => (index === at ? [piece] : one))).rules.has(rule),
    );
    if (fitting.length === pieces.length) return [];
    const tested = isAsked(written) ? setOfPieces(cut, fitting) : table.rules[rule]?.cells[at]?.set;
    const words = tested ? setWords(tested, input, written) : anyWords();
    return words === anyWords() ? [] : [`${input.label}: ${words}`];
  });
}

/** The tests of the rule on what was measured, each with what was found; without a rule, all that was found. */
function becauseOf(judged: JudgedTable, profile: JudgedProfile, open: Open, rule?: number): BecauseView[] {
  const { entry, table, grid } = judged;
  return entry.data.inputs.flatMap((input, at) => {
    const [column, cut, pieces] = [table.inputs[at], grid[at], open[at] ?? []];
    const set = rule === undefined ? undefined : table.rules[rule]?.cells[at]?.set;
    if (isAsked(input) || !column || !cut) return [];
    const test = set ? setWords(set, column, input) : '';
    if (test === anyWords()) return [];
    const { anchor, quantity, readings } = evidenceOf(input, profile);
    const piece = cut.pieces[pieces[0] ?? -1];
    const isFact = pieces.length === 1 && piece !== undefined && 'value' in piece;
    const fact = isFact ? valueWords(piece.value, column.type, input) : '';
    return [{ label: input.label, test, found: quantity || fact || notMeasured(), anchor, readings }];
  });
}
