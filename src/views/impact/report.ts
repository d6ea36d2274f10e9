/** What a change does to the answers, laid out for people: what a rider would notice most stands first. */
import type { Finding } from '../../base/index.ts';
import { keeps } from '../../decide/index.ts';
import {
  type Change,
  type ProfileImpact,
  type States,
  saysSomething,
  type VerdictChange,
} from '../../impact/index.ts';
import { counted } from '../../words/index.ts';
import { codes } from '../changes/compare.ts';
import {
  combinationText,
  factTexts,
  inUnitsOfUText,
  isToldApart,
  tableTexts,
  valueTexts,
} from '../changes/words.ts';
import { verdictLabel } from '../wording.ts';
import { below, entryItems, pageItems, ruleItems } from './content-items.ts';
import { type PageChanges, pageChanges } from './pages.ts';
import type { Piece, ReportItem, ReportSection } from './report-parts.ts';

/** What the content was compared with. */
export interface ComparedWith {
  /** The revision as it was given, or how it was chosen. */
  readonly revision: string;
  /** The full name of the commit. */
  readonly commit: string;
}

export interface ImpactInput {
  readonly change: Change;
  readonly since: ComparedWith;
  /** What the rules that compare states found, exceptions applied. */
  readonly findings: readonly Finding[];
  /** How many findings exceptions have set aside. */
  readonly setAside: number;
  /** What to put before each path: the content folder, so that a place can be opened from there. */
  readonly folder: string;
}

export interface ImpactReport {
  /** What there is, in a sentence. */
  readonly summary: string;
  /** What verdicts were compared on; empty where nothing changed. */
  readonly grid: string;
  readonly sections: readonly ReportSection[];
}

/** Sections without items are left out. */
export function impactReport(input: ImpactInput): ImpactReport {
  const { change, since } = input;
  const { states, impact } = change;
  const pages = pageChanges(states);
  const compared = `Compared with ${since.revision} (${since.commit.slice(0, 12)})`;
  if (impact.entries.length === 0)
    return { summary: `${compared}, nothing has changed.`, grid: '', sections: [] };
  const sections = [
    { title: 'Answers changed without a new source', items: findingItems(input) },
    {
      title: 'Verdicts that flipped',
      items: profileItems(states, byWeight(impact.profiles, flipWeight), verdictLines),
    },
    { title: 'Tables that answer otherwise', items: tableItems(states, impact.profiles) },
    {
      title: 'Values that moved',
      items: profileItems(states, byWeight(impact.profiles, moveWeight), valueLines),
    },
    { title: 'Profiles that put out the same', items: profileItems(states, impact.profiles, twinLines) },
    { title: 'Pages', items: pageItems(pages) },
    { title: 'Rules edited', items: ruleItems(change) },
    { title: 'Entries touched', items: entryItems(change, input.folder) },
  ].filter(({ items }) => items.length > 0);
  return { summary: `${compared}: ${summaryOf(change, pages)}`, grid: gridText(change), sections };
}

/** The heaviest first; those alike stay in the order of the entries. */
function byWeight(
  profiles: readonly ProfileImpact[],
  weight: (one: ProfileImpact) => number,
): ProfileImpact[] {
  return [...profiles].sort((a, b) => weight(b) - weight(a));
}

/** A rider notices most where a profile that was kept is not, or the other way round; and a plan of plans/ most. */
function flipWeight({ verdicts }: ProfileImpact): number {
  return verdicts.reduce((sum, { plan, before, now }) => {
    const turned = keeps(before) === keeps(now) ? 1 : 2;
    return sum + (typeof plan === 'string' ? 1000 * turned : turned);
  }, 0);
}

function moveWeight({ values }: ProfileImpact): number {
  return Math.max(0, ...values.map(({ inUnitsOfU }) => Math.min(Math.abs(inUnitsOfU ?? 1), 1e9)));
}

function summaryOf({ impact }: Change, { removed }: PageChanges): string {
  const changed = impact.profiles.filter((one) => one.kind === 'changed' && saysSomething(one));
  const count = (of: (one: ProfileImpact) => number): number =>
    impact.profiles.reduce((sum, one) => sum + of(one), 0);
  const typical = count(({ verdicts }) => verdicts.filter(({ plan }) => typeof plan === 'string').length);
  const combined = count(({ verdicts }) => verdicts.length) - typical;
  const tables = count(({ tables: some }) => some.length);
  const values = count(({ values: some }) => some.filter(isToldApart).length);
  const broken = removed.filter(({ redirected }) => !redirected).length;
  const parts = [
    typical > 0 ? `${counted(typical, 'verdict')} of plans flipped` : '',
    combined > 0 ? `${counted(combined, 'verdict')} of combinations flipped` : '',
    tables > 0 ? `${counted(tables, 'answer')} of tables changed` : '',
    values > 0
      ? `${counted(values, 'value')} moved beyond ${values === 1 ? 'its' : 'their'} uncertainty`
      : '',
    broken > 0 ? `${counted(broken, 'page')} gone without a redirect` : '',
  ].filter((part) => part !== '');
  if (changed.length === 0 && parts.length === 0) return 'no answer changes.';
  if (parts.length === 0) return 'no verdict flips, and no value moves beyond its uncertainty.';
  if (changed.length === 0) return `${parts.join(', ')}.`;
  return `${parts.join(', ')}. ${counted(changed.length, 'profile')} ${changed.length === 1 ? 'says' : 'say'} something else.`;
}

/** Said even where no verdict flipped: on what they were compared. */
function gridText({ states, impact: { grid } }: Change): string {
  const profiles = [...states.now.base.profiles.keys()].filter((id) => states.now.outputs.has(id)).length;
  const of = (plans: number): string => formatCount(plans * profiles);
  const leftOut = grid.leftOut > 0 ? ` ${formatCount(grid.leftOut)} further combinations were left out.` : '';
  const plans = `${counted(grid.typical, 'plan')} (${of(grid.typical)} verdicts)`;
  const combinations = `${counted(grid.combinations, 'combination')} of an amplifier class, or none, with a class of front speakers, and the same or none behind (${of(grid.combinations)} verdicts)`;
  const on = grid.combinations > 0 ? `${plans} and ${combinations}` : plans;
  return `Verdicts are compared for ${counted(profiles, 'profile')}, on ${on}.${leftOut}`;
}

function formatCount(count: number): string {
  return count.toLocaleString('en');
}

function findingItems({ findings, folder, setAside }: ImpactInput): ReportItem[] {
  const items = findings.map(
    ({ place, message, help }): ReportItem => ({
      title: [{ code: `${below(folder, place.file)}:${place.line}:${place.column}` }],
      lines: [[message], [help]],
    }),
  );
  if (setAside === 0) return items;
  return [...items, { title: [`Set aside by exceptions: ${setAside}`], lines: [] }];
}

function profileItems(
  states: States,
  profiles: readonly ProfileImpact[],
  linesOf: (states: States, one: ProfileImpact) => (readonly Piece[])[],
): ReportItem[] {
  return profiles.flatMap((one) => {
    const lines = linesOf(states, one);
    return lines.length === 0 ? [] : [{ title: profileTitle(states, one.profile), lines }];
  });
}

/** “KN-2093, Moorlight”. */
function profileTitle({ now, before }: States, id: string): Piece[] {
  const of = now.base.profiles.has(id) ? now : before;
  const data = of.base.profiles.get(id)?.data;
  const family = of.base.families.get(data?.family ?? '')?.data.name ?? data?.family;
  return [{ code: data?.code ?? id }, ...(family === undefined ? [] : [`, ${family}`])];
}

function verdictLines(states: States, { verdicts }: ProfileImpact): (readonly Piece[])[] {
  const went = ({ before, now }: VerdictChange): string => `${verdictLabel(before)} → ${verdictLabel(now)}`;
  const lines = verdicts.flatMap((one) =>
    typeof one.plan === 'string'
      ? [[`${states.now.base.plans.get(one.plan)?.data.name ?? one.plan}: ${went(one)}`]]
      : [],
  );
  const combined = Map.groupBy(
    verdicts.filter(({ plan }) => typeof plan !== 'string'),
    went,
  );
  return [
    ...lines,
    ...[...combined].map(([text, some]) => {
      const [first] = some;
      const example = first && typeof first.plan !== 'string' ? combinationText(states, first.plan) : '';
      return [`${counted(some.length, 'combination')}, such as ${example}: ${text}`];
    }),
  ];
}

function tableItems(states: States, profiles: readonly ProfileImpact[]): ReportItem[] {
  const all = profiles.flatMap((one) => one.tables.map((table) => ({ one, table })));
  return [...Map.groupBy(all, ({ table }) => table.table)].map(([id, some]) => ({
    title: [states.now.base.tables.get(id)?.data.question ?? id],
    lines: some.map(({ one, table }) => {
      const { was, is, where } = tableTexts(states, table);
      const rules = `${ruleText(table.before.rules)} → ${ruleText(table.now.rules)}`;
      return [
        ...profileTitle(states, one.profile),
        `: ${where === '' ? '' : `${where}: `}${was} → ${is}; rules: `,
        { code: rules },
      ];
    }),
  }));
}

function ruleText(rules: readonly string[]): string {
  return rules.length === 0 ? 'none' : rules.join(', ');
}

function valueLines(_: States, { values, facts, code, formerCode }: ProfileImpact): (readonly Piece[])[] {
  const within = values.filter((one) => !isToldApart(one)).length;
  return [
    ...(formerCode === undefined ? [] : [['Code: ', { code: formerCode }, ' → ', { code }]]),
    ...values.filter(isToldApart).map((one) => {
      const { label, was, is } = valueTexts(one);
      const times = inUnitsOfUText(one);
      return [`${label}: ${was} → ${is}${times === '' ? '' : ` (${times})`}`];
    }),
    ...facts.map((one) => {
      const { label, was, is } = factTexts(one);
      return [`${label}: ${was} → ${is}`];
    }),
    ...(within > 0
      ? [[`${counted(within, 'value')} moved within ${within === 1 ? 'its' : 'their'} uncertainty`]]
      : []),
  ];
}

function twinLines(states: States, { twins }: ProfileImpact): (readonly Piece[])[] {
  return twins
    ? [['As ', { code: codes(states, twins.before) }, ' → as ', { code: codes(states, twins.now) }]]
    : [];
}
