/** The view model of a decision table’s page: the questions, the rules in words, the profiles under each. */
import type { TableEntry, TableEntryInput, TableEntryRule } from '../../schemas/index.ts';
import { type Answers, judgedProfile } from '../answers.ts';
import { numberBehind } from '../decide/index.ts';
import { formatQuantity } from '../measure/format.ts';
import type { Value } from '../tables/index.ts';
import { phrase } from '../words/index.ts';
import { type CautionText, cautionTexts } from './cautions.ts';
import { isAsked, type JudgedTable, judgedTables, openOf } from './judged-tables.ts';
import { guidePath, profilePath, tablePath } from './paths.ts';
import { type SourceLink, sourceLinks } from './reading-links.ts';
import type { NamedLink } from './source-page.ts';
import { settlingWords } from './table-evidence.ts';
import { type ListedProfile, type Listing, type ListingData, lister, notMeasured } from './table-listing.ts';
import { answerWords } from './table-outcomes.ts';
import { proofOf } from './table-proof.ts';
import { type ColumnTestsView, columnTests, type TableCellView, testAnchor } from './table-tests.ts';
import { anyWords, readingRule, setWords } from './table-words.ts';

export interface TablePageView {
  readonly id: string;
  readonly path: string;
  /** The question it answers. */
  readonly title: string;
  readonly name: string;
  readonly description: string;
  /** How its rules are to be read. */
  readonly reading: string;
  /** What is proved of it, in sentences. */
  readonly proof: readonly string[];
  /** What stands above the answers. */
  readonly answerLabel: string;
  readonly columns: readonly { readonly label: string; readonly asked: boolean }[];
  readonly rules: readonly TableRuleView[];
  readonly asks: readonly AskView[];
  /** For each column that speaks of profiles, which of them pass each of its tests. */
  readonly tests: readonly ColumnTestsView[];
  /** Whether whole plans are held against it, which the planner does. */
  readonly isForPlans: boolean;
  readonly data: ListingData;
  /** With nothing said yet. */
  readonly listing: Listing;
  /** What would settle a borderline value, by its label. */
  readonly settling: readonly { readonly label: string; readonly advice: string }[];
  /** Those of the guides its rules send the rider to. */
  readonly cautions: readonly CautionText[];
  readonly sources: readonly SourceLink[];
}

export interface TableRuleView {
  readonly anchor: string;
  readonly number: number;
  readonly answer: string;
  readonly cells: readonly TableCellView[];
  /** Said of a rule without any test; empty for the others. */
  readonly always: string;
  readonly say: string;
  readonly guides: readonly NamedLink[];
  readonly pointsTo: readonly (NamedLink & { readonly unit: string })[];
  readonly sources: readonly SourceLink[];
}

/** A question of the form. */
export type AskView = { readonly id: string; readonly question: string } & (
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  | {
      readonly kind: 'number';
      readonly unit: string;
      readonly whole: boolean;
      readonly least?: number;
      readonly most?: number;
    }
  | { readonly kind: 'date'; readonly least?: string; readonly most?: string }
);

/** The anchor of a rule on the page of its table. */
export function ruleAnchor(rule: string): string {
  return `rule-${rule}`;
}

/** One view for each table without faults, in the order tables are listed in. */
export function tablePages(answers: Answers): TablePageView[] {
  const tables = judgedTables(answers);
  const collected = tables.map(() => new Collector());
  for (const id of answers.outputs.keys()) {
    const profile = judgedProfile(answers, id);
    const data = answers.base.profiles.get(id)?.data;
    if (!profile || !data) continue;
    for (const [index, judged] of tables.entries()) {
      if (judged.isForPlans) continue;
      const open = openOf(judged, profile);
      const near = Object.fromEntries(
        judged.entry.data.inputs.flatMap((input, at): [string, string][] => {
          if (isAsked(input) || !mayDecide(judged, at, open[at] ?? [])) return [];
          const value = numberBehind(input, profile.output);
          return [[String(at), value ? formatQuantity(value) : notMeasured()]];
        }),
      );
      const known = open.map((pieces, at) =>
        isAsked(judged.entry.data.inputs[at] as TableEntryInput) ? [] : pieces,
      );
      collected[index]?.add(id, data, known, near);
    }
  }
  return tables.map((judged, index) => tablePage(answers, judged, collected[index] ?? new Collector()));
}

/** Whether a rule tells some of the pieces of an input from the others. */
function mayDecide({ grid }: JudgedTable, input: number, pieces: readonly number[]): boolean {
  return (grid[input]?.passes ?? []).some((passes) => new Set(pieces.map((piece) => passes[piece])).size > 1);
}

/** Gathers the profiles of a table; what is known of several alike is kept once. */
class Collector {
  readonly units: string[] = [];
  readonly patterns: number[][][] = [];
  readonly profiles: ListedProfile[] = [];
  readonly #known = new Map<string, number>();

  add(
    id: string,
    data: { family: string; code: string },
    open: number[][],
    near: Record<string, string>,
  ): void {
    const key = JSON.stringify(open);
    const pattern = this.#known.get(key) ?? this.patterns.push(open) - 1;
    this.#known.set(key, pattern);
    if (!this.units.includes(data.family)) this.units.push(data.family);
    this.profiles.push({
      unit: this.units.indexOf(data.family),
      slug: id.slice(data.family.length + 1),
      code: data.code,
      pattern,
      ...(Object.keys(near).length > 0 ? { near } : {}),
    });
  }
}

function tablePage(answers: Answers, judged: JudgedTable, collected: Collector): TablePageView {
  const { entry, table, data } = judged;
  const { id } = entry;
  const listed = listingData(answers, judged, collected);
  const cells = entry.data.rules.map((_, rule) => cellsOf(judged, listed, rule));
  return {
    id,
    path: tablePath(id),
    title: entry.data.question,
    name: entry.data.name,
    description: entry.data.about,
    reading: readingRule(entry.data),
    proof: proofOf(table),
    answerLabel: entry.data.outputs.map(({ label }) => label).join(', '),
    columns: entry.data.inputs.map((input) => ({ label: input.label, asked: isAsked(input) })),
    rules: entry.data.rules.map((rule, index) => ({
      anchor: ruleAnchor(rule.id),
      number: index + 1,
      answer: answerWords(table.rules[index]?.results ?? [], data.outputs),
      cells: cells[index] ?? [],
      always: cells[index]?.every(({ any }) => any) ? alwaysWords(entry.data.hit) : '',
      say: rule.say ?? '',
      ...linksOfRule(answers, rule),
      sources: sourceLinks(answers, rule.sources),
    })),
    isForPlans: judged.isForPlans,
    asks: entry.data.inputs.flatMap((input) => askOf(input) ?? []),
    tests: judged.isForPlans ? [] : columnTests(listed, cells),
    data: listed,
    listing: lister(listed)({ pieces: new Map() }),
    settling: settlingOf(judged, collected),
    cautions: cautionTexts(
      entry.data.rules.flatMap(({ guides }) =>
        guides.flatMap((guide) => answers.base.guides.get(guide)?.data.cautions ?? []),
      ),
    ),
    sources: sourceLinks(answers, entry.data.sources),
  };
}

function alwaysWords(hit: TableEntry['hit']): string {
  return hit === 'first' || hit === 'priority'
    ? phrase('Wherever no other rule decides.')
    : phrase('In any case.');
}

function cellsOf(
  { entry, table, isForPlans }: JudgedTable,
  listed: ListingData,
  rule: number,
): readonly TableCellView[] {
  return table.inputs.map((input, at) => {
    const set = table.rules[rule]?.cells[at]?.set;
    const words = set ? setWords(set, input, entry.data.inputs[at]) : '';
    const any = words === anyWords();
    const isOfProfiles = !any && !isForPlans && listed.inputs[at]?.asked === false;
    return { label: input.label, words, any, anchor: isOfProfiles ? testAnchor(listed, at, rule) : '' };
  });
}

/** What was measured too near to a limit of some profile, and what would settle it. */
function settlingOf({ entry }: JudgedTable, { profiles }: Collector): TablePageView['settling'] {
  return entry.data.inputs.flatMap((input, at) => {
    const near = profiles.map((profile) => profile.near?.[at]).filter((one) => one !== undefined);
    if (near.length === 0) return [];
    const isMeasured = near.some((one) => one !== notMeasured());
    return [{ label: input.label, advice: settlingWords(input, isMeasured) }];
  });
}

/** The guides and profiles a rule points to. */
export function linksOfRule(
  { base }: Answers,
  { guides, profiles }: TableEntryRule,
): Pick<TableRuleView, 'guides' | 'pointsTo'> {
  return {
    guides: guides.flatMap((id) => {
      const guide = base.guides.get(id);
      return guide ? [{ text: guide.data.title, path: guidePath(id) }] : [];
    }),
    pointsTo: profiles.flatMap((id) => {
      const profile = base.profiles.get(id);
      if (!profile || !base.families.has(profile.data.family)) return [];
      return [{ text: profile.data.code, path: profilePath(id), unit: profile.data.family }];
    }),
  };
}

function askOf(input: TableEntryInput): AskView | undefined {
  switch (input.holds) {
    case 'choice':
      return { id: input.id, question: input.question, kind: 'choice', options: input.values };
    case 'yes-no':
      return { id: input.id, question: input.question, kind: 'choice', options: ['yes', 'no'] };
    case 'number': {
      const { id, question, unit = '', whole, least, most } = input;
      return { id, question, kind: 'number', unit, whole, ...defined({ least, most }) };
    }
    case 'date':
      return {
        id: input.id,
        question: input.question,
        kind: 'date',
        ...defined({ least: input.least, most: input.most }),
      };
    default:
      return undefined;
  }
}

/** Without the fields that are undefined: views are plain data. */
function defined<Fields extends object>(
  fields: Fields,
): { [Key in keyof Fields]?: Exclude<Fields[Key], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [Key in keyof Fields]?: Exclude<Fields[Key], undefined>;
  };
}

function listingData({ base }: Answers, judged: JudgedTable, collected: Collector): ListingData {
  const { entry, grid, data, table } = judged;
  return {
    ...data,
    inputs: grid.map(({ input, pieces }, at) => {
      const asked = isAsked(entry.data.inputs[at] as TableEntryInput);
      const ends = pieces.flatMap((piece) =>
        'low' in piece ? [[finite(piece.low), finite(piece.high)] as const] : [],
      );
      const isOrdered = asked && ends.length > 0;
      return {
        id: input.id,
        label: input.label,
        asked,
        pieces: pieces.length,
        ...(isOrdered ? { ends } : {}),
      };
    }),
    answers: answersInOrder(
      table.rules.map(({ results }) => results),
      data.outputs,
    ),
    units: collected.units.map((id) => ({ id, name: base.families.get(id)?.data.name ?? id })),
    patterns: collected.patterns,
    profiles: collected.profiles,
  };
}

function finite(end: number): number | null {
  return Number.isFinite(end) ? end : null;
}

/** Each answer once, in the order of the lists they are chosen from; those that are no choice as the rules have them. */
function answersInOrder(
  rules: readonly (readonly Value[])[],
  outputs: JudgedTable['data']['outputs'],
): string[] {
  const rank = (values: readonly Value[]): number[] =>
    outputs.map((output, at) => output.values.indexOf(values[at] ?? null));
  const sorted = [...rules].sort((a, b) => {
    const [one, other] = [rank(a), rank(b)];
    const at = one.findIndex((place, index) => place !== other[index]);
    return at < 0 ? 0 : (one[at] ?? 0) - (other[at] ?? 0);
  });
  const otherwise = outputs.map((output) => output.otherwise ?? null);
  return [...new Set([...sorted, otherwise].map((values) => answerWords(values, outputs)))];
}
