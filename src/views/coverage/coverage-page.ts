/** The view model of the page that says what is measured and what is not. */
import type { Answers } from '../../answers.ts';
import type { Entry } from '../../base/index.ts';
import { formatQuantity } from '../../measure/index.ts';
import { andList, countPhrase } from '../../words/index.ts';
import { profilePath, unitPath, valueAnchor } from '../paths.ts';
import { characteristicLabel } from '../wording.ts';
import { type BenchSheetView, benchSheets } from './bench-sheet.ts';
import { type CoverageCounts, type CoverageState, countsOf, familyCoverage } from './coverage.ts';
import type { OpenAnswer } from './open-answers.ts';
import { decidingValue, type Wanted, wantedOf } from './wanted.ts';
import { readingsFor } from './wanted-readings.ts';

export interface CoverageRow {
  readonly label: string;
  readonly counts: CoverageCounts;
  /** Profiles it is missing of. */
  readonly missingOf: readonly CodeLink[];
}

export interface CodeLink {
  readonly code: string;
  readonly path: string;
}

export interface FamilyCoverageView {
  readonly id: string;
  readonly name: string;
  readonly path: string;
  /** “Ordwick 2006–2013, Pellmoor 2008–2014”. */
  readonly fitment: string;
  readonly profiles: number;
  /** All values of all its profiles. */
  readonly counts: CoverageCounts;
  readonly rows: readonly CoverageRow[];
}

/** One unit in the model years in which it came in the same model lines. */
export interface YearRow {
  readonly from: number;
  readonly years: string;
  readonly unit: string;
  /** The anchor of the unit’s table. */
  readonly anchor: string;
  readonly models: string;
  readonly counts: CoverageCounts;
}

export interface WantedRow {
  readonly code: string;
  readonly unit: string;
  /** Where its value stands, or what is missing of it. */
  readonly path: string;
  readonly label: string;
  readonly state: Wanted['state'];
  /** The value with its uncertainty; empty where it is missing. */
  readonly value: string;
  readonly settles: number;
  readonly hasASay: number;
  readonly readings: number;
  readonly answers: readonly { readonly text: string; readonly path: string; readonly settled: boolean }[];
}

export interface CoverageView {
  readonly families: readonly FamilyCoverageView[];
  /** By year, then as units are listed. */
  readonly years: readonly YearRow[];
  readonly wanted: readonly WantedRow[];
  /** Answers that wait for a reading: plans and tables, all profiles. */
  readonly open: { readonly plans: number; readonly tables: number };
  readonly sheets: readonly BenchSheetView[];
}

/** The anchor of a unit’s table. */
export function coverageAnchor(family: string): string {
  return `unit-${family}`;
}

/** All that the pages of coverage show. */
export function coverageView(answers: Answers): CoverageView {
  const wanted = wantedOf(answers);
  const open = new Set(wanted.flatMap(({ settles, hasASay }) => [...settles, ...hasASay]));
  const openOf = (kind: OpenAnswer['of']): number => [...open].filter((one) => one.of === kind).length;
  const families = [...answers.base.families.values()];
  return {
    families: families.map((family) => familyView(answers, family)),
    years: yearRows(answers, families),
    wanted: wanted.flatMap((one) => wantedRow(answers, one) ?? []),
    open: { plans: openOf('plan'), tables: openOf('table') },
    sheets: benchSheets(answers, wanted),
  };
}

function familyView(answers: Answers, { id, data }: Entry<'families'>): FamilyCoverageView {
  const coverage = familyCoverage(answers, id);
  const codeLink = (profile: string): CodeLink => ({
    code: answers.base.profiles.get(profile)?.data.code ?? profile,
    path: `${profilePath(profile)}#missing`,
  });
  return {
    id,
    name: data.name,
    path: unitPath(id),
    fitment: data.fitment
      .map(({ model, fromYear, toYear }) => `${model} ${years(fromYear, toYear)}`)
      .join(', '),
    profiles: answers.base.profilesOfFamily.get(id)?.length ?? 0,
    counts: countsOf(coverage),
    rows: [...coverage].map(([name, states]) => ({
      label: characteristicLabel(name),
      counts: lengthsOf(states),
      missingOf: states.missing.map(codeLink),
    })),
  };
}

function lengthsOf(states: Readonly<Record<CoverageState, readonly string[]>>): CoverageCounts {
  return {
    confirmed: states.confirmed.length,
    single: states.single.length,
    missing: states.missing.length,
    'not-applicable': states['not-applicable'].length,
  };
}

function years(from: number, to: number): string {
  return from === to ? `${from}` : `${from}–${to}`;
}

function yearRows(answers: Answers, families: readonly Entry<'families'>[]): YearRow[] {
  const rows = families.flatMap(({ id, data }) => {
    const shared = {
      unit: data.name,
      anchor: coverageAnchor(id),
      counts: countsOf(familyCoverage(answers, id)),
    };
    return runsOfYears(data.fitment).map((run) => ({
      ...shared,
      from: run.from,
      years: years(run.from, run.to),
      models: run.models.join(', '),
    }));
  });
  return rows.sort((a, b) => a.from - b.from);
}

interface RunOfYears {
  readonly from: number;
  readonly to: number;
  readonly models: readonly string[];
}

/** Model years in a row with the same model lines; years between with none are left out. */
export function runsOfYears(fitment: Entry<'families'>['data']['fitment']): RunOfYears[] {
  const runs: RunOfYears[] = [];
  const first = Math.min(...fitment.map(({ fromYear }) => fromYear));
  const last = Math.max(...fitment.map(({ toYear }) => toYear));
  for (let year = first; year <= last; year += 1) {
    const models = [
      ...new Set(
        fitment
          .filter(({ fromYear, toYear }) => fromYear <= year && year <= toYear)
          .map(({ model }) => model),
      ),
    ];
    const before = runs.at(-1);
    if (models.length === 0) continue;
    if (before && before.to === year - 1 && before.models.join('\n') === models.join('\n')) {
      runs[runs.length - 1] = { ...before, to: year };
    } else runs.push({ from: year, to: year, models });
  }
  return runs;
}

function wantedRow(answers: Answers, wanted: Wanted): WantedRow | undefined {
  const { profile, characteristic, state, settles, hasASay } = wanted;
  const entry = answers.base.profiles.get(profile);
  const output = answers.outputs.get(profile);
  if (!entry || !output) return undefined;
  const value = decidingValue(output, characteristic);
  const anchor = state === 'missing' ? 'missing' : valueAnchor(characteristic);
  const link = (settled: boolean) => (one: OpenAnswer) => ({ text: one.name, path: one.path, settled });
  return {
    code: entry.data.code,
    unit: answers.base.families.get(entry.data.family)?.data.name ?? '',
    path: `${profilePath(profile)}#${anchor}`,
    label: characteristicLabel(characteristic),
    state,
    value: value ? formatQuantity(value) : '',
    settles: settles.length,
    hasASay: hasASay.length,
    readings: readingsFor(answers, wanted).length,
    answers: [...settles.map(link(true)), ...hasASay.map(link(false))],
  };
}

/** How many answers wait, in words: “5 plan answers and 3 table answers”. */
export function openWords({ plans, tables }: CoverageView['open']): string {
  return andList([
    countPhrase(plans, '{count}\u00a0plan answer', '{count}\u00a0plan answers'),
    countPhrase(tables, '{count}\u00a0table answer', '{count}\u00a0table answers'),
  ]);
}
