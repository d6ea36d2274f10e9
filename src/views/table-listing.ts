/**
 * Which profiles a table sorts under which rule and which answer, with what the rider has said so far. Plain data in,
 * plain data out: the page is made with it, and its script narrows the page with it.
 */

import { countPhrase, phrase } from '../words/index.ts';
import { decider, type Open, type Outcome, type TableData } from './table-outcomes.ts';

/** All that the script of a table’s page knows. */
export interface ListingData extends TableData {
  /** For each input: its name, and whether the rider is asked for it. */
  readonly inputs: readonly ListedInput[];
  /** The answers in words, in the order they are listed in. */
  readonly answers: readonly string[];
  readonly units: readonly { readonly id: string; readonly name: string }[];
  /** What is known of a profile, each once: for each input the pieces it may lie in; empty for what the rider is asked. */
  readonly patterns: readonly Open[];
  readonly profiles: readonly ListedProfile[];
}

export interface ListedInput {
  readonly id: string;
  readonly label: string;
  readonly asked: boolean;
  /** How many pieces there are to answer with. */
  readonly pieces: number;
  /** The ends of the pieces, of numbers and of days; null stands for no end. */
  readonly ends?: readonly (readonly [low: number | null, high: number | null])[];
}

export interface ListedProfile {
  /** Index into the units. */
  readonly unit: number;
  readonly slug: string;
  readonly code: string;
  /** Index into the patterns. */
  readonly pattern: number;
  /** The values that may lie on either side of a limit, by the index of their input: “4.00 V ± 0.06 V”. */
  readonly near?: Readonly<Record<string, string>>;
}

/** Said of a value that is not there. */
export function notMeasured(): string {
  return phrase('not measured');
}

/** What the rider has said: by the index of an input the piece his answer lies in, and a unit by its index. */
export interface Said {
  readonly pieces: ReadonlyMap<number, number>;
  readonly unit?: number;
}

export interface Listing {
  readonly rules: readonly RuleListing[];
  readonly groups: readonly AnswerGroup[];
  /** How many profiles have one answer, and how many several that are possible. */
  readonly sure: number;
  readonly open: number;
}

export interface RuleListing {
  /** Whether the rule is left: what the rider has said speaks for it, and the unit has profiles under it. */
  readonly left: boolean;
  /** Indexes of the profiles whose answer it gives. */
  readonly sure: readonly number[];
  readonly perhaps: readonly number[];
}

export interface AnswerGroup {
  readonly answer: string;
  /** The surest first. */
  readonly parts: readonly AnswerPart[];
}

export interface AnswerPart {
  /** Labels of what the rider could say that has a say in it. */
  readonly dependsOn: readonly string[];
  /** Labels of what was measured too near to a limit. */
  readonly borderline: readonly string[];
  /** Labels of what was not measured. */
  readonly unknown: readonly string[];
  readonly profiles: readonly { readonly index: number; readonly near: string }[];
}

/** Sorts the profiles under the rules and the answers of a table. */
export function lister(data: ListingData): (said: Said) => Listing {
  const decide = decider(data);
  return (said) => {
    const shown = data.profiles.flatMap((profile, index) =>
      said.unit === undefined || profile.unit === said.unit
        ? [{ index, profile, outcome: decide(openWith(data, data.patterns[profile.pattern] ?? [], said)) }]
        : [],
    );
    return {
      rules: data.rules.map((_, rule) => {
        const under = (sureness: string): number[] =>
          shown.filter(({ outcome }) => outcome.rules.get(rule) === sureness).map(({ index }) => index);
        const [sure, perhaps] = [under('sure'), under('perhaps')];
        const isFit = [...said.pieces].every(([input, piece]) => data.passes[input]?.[rule]?.[piece] === '1');
        return {
          sure,
          perhaps,
          left: isFit && (said.unit === undefined || sure.length + perhaps.length > 0),
        };
      }),
      groups: groupsOf(data, shown),
      sure: shown.filter(({ outcome }) => outcome.dependsOn.length === 0).length,
      open: shown.filter(({ outcome }) => outcome.dependsOn.length > 0).length,
    };
  };
}

function openWith({ inputs }: ListingData, pattern: Open, { pieces }: Said): Open {
  return inputs.map((input, index) => {
    if (!input.asked) return pattern[index] ?? [];
    const said = pieces.get(index);
    return said === undefined ? Array.from({ length: input.pieces }, (_, piece) => piece) : [said];
  });
}

interface Shown {
  readonly index: number;
  readonly profile: ListedProfile;
  readonly outcome: Outcome;
}

function groupsOf(data: ListingData, shown: readonly Shown[]): AnswerGroup[] {
  const groups = new Map<string, Map<string, Shown[]>>();
  for (const one of shown) {
    for (const [answer, { sureness, dependsOn }] of one.outcome.answers) {
      const parts = groups.get(answer) ?? new Map<string, Shown[]>();
      const unknown = dependsOn.map((input) => one.profile.near?.[input] === notMeasured());
      const key = sureness === 'sure' ? '' : JSON.stringify([dependsOn, unknown]);
      const known = parts.get(key);
      if (known) known.push(one);
      else parts.set(key, [one]);
      groups.set(answer, parts);
    }
  }
  const place = (answer: string): number => {
    const index = data.answers.indexOf(answer);
    return index < 0 ? data.answers.length : index;
  };
  return [...groups]
    .sort(([a], [b]) => place(a) - place(b))
    .map(([answer, parts]) => ({
      answer,
      parts: [...parts].map(([key, profiles]) => partOf(data, key, profiles)).sort(surestFirst),
    }));
}

function partOf({ inputs }: ListingData, key: string, profiles: readonly Shown[]): AnswerPart {
  const [deciding, isUnknown] = key === '' ? [[], []] : (JSON.parse(key) as [number[], boolean[]]);
  const labels = (asked: boolean, unknown: boolean): string[] =>
    deciding.flatMap((index, at) => {
      const input = inputs[index];
      return input?.asked === asked && isUnknown[at] === unknown ? [input.label] : [];
    });
  return {
    dependsOn: labels(true, false),
    borderline: labels(false, false),
    unknown: labels(false, true),
    profiles: profiles.map(({ index, profile }) => ({
      index,
      near: deciding.flatMap((input) => shownNear(profile, input)).join(', '),
    })),
  };
}

/** That it was not measured is said above the profiles. */
function shownNear({ near }: ListedProfile, input: number): string[] {
  const value = near?.[input];
  return value === undefined || value === notMeasured() ? [] : [value];
}

function surestFirst(a: AnswerPart, b: AnswerPart): number {
  return (
    a.unknown.length - b.unknown.length ||
    a.borderline.length - b.borderline.length ||
    a.dependsOn.length - b.dependsOn.length ||
    b.profiles.length - a.profiles.length
  );
}

/** Whether the profiles of a part have its answer whatever else turns out. */
export function isSure({ dependsOn, borderline, unknown }: AnswerPart): boolean {
  return dependsOn.length + borderline.length + unknown.length === 0;
}

/** Why the profiles of a part are where they are, in a line. */
export function partWords(part: AnswerPart): string {
  if (isSure(part)) return phrase('Surely');
  const { dependsOn, borderline, unknown } = part;
  const parts = [
    ...(dependsOn.length > 0 ? [phrase('depending on: {labels}', { labels: dependsOn.join(', ') })] : []),
    ...(borderline.length > 0 ? [phrase('borderline: {labels}', { labels: borderline.join(', ') })] : []),
    ...(unknown.length > 0 ? [phrase('not measured: {labels}', { labels: unknown.join(', ') })] : []),
  ];
  return phrase('Perhaps, {why}', { why: parts.join('; ') });
}

/** Some of the profiles, as they are listed: under their units, in the order of the units. */
export interface UnitList {
  readonly unit: string;
  readonly profiles: readonly { readonly code: string; readonly path: string; readonly note: string }[];
}

/** Lists profiles under their units. @returns also how many are beyond what is listed at once. */
export function byUnit(
  data: ListingData,
  profiles: readonly { readonly index: number; readonly note: string }[],
): { readonly lists: readonly UnitList[]; readonly more: number } {
  const listed = profiles.slice(0, mostListed);
  const lists = data.units.flatMap(({ id, name }, unit): UnitList[] => {
    const own = listed.flatMap(({ index, note }) => {
      const profile = data.profiles[index];
      if (profile?.unit !== unit) return [];
      return [{ code: profile.code, path: `${id}/${profile.slug}/`, note }];
    });
    return own.length === 0 ? [] : [{ unit: name, profiles: own }];
  });
  return { lists, more: profiles.length - listed.length };
}

/** The profiles under a rule, the sure ones first. */
export function underRule({
  sure,
  perhaps,
}: RuleListing): { readonly index: number; readonly note: string }[] {
  return [
    ...sure.map((index) => ({ index, note: '' })),
    ...perhaps.map((index) => ({ index, note: sure.length === 0 ? '' : phrase('perhaps') })),
  ];
}

/** What stands in place of profiles that are too many to be listed. */
export function moreWords(more: number): string {
  return phrase('and {more}\u00a0more: say what you plan, or choose a unit.', { more });
}

/** How many profiles a group has, in words. */
export function groupWords({ parts }: AnswerGroup): string {
  const count = (sure: boolean): number =>
    parts.filter((part) => isSure(part) === sure).reduce((sum, { profiles }) => sum + profiles.length, 0);
  return underWords(count(true), count(false));
}

/** How many profiles come under a rule, in words. */
export function underWords(sure: number, perhaps: number): string {
  if (sure + perhaps === 0) return phrase('No profile comes under it');
  if (perhaps === 0)
    return countPhrase(sure, '{count}\u00a0profile, surely', '{count}\u00a0profiles, surely');
  return sure === 0
    ? countPhrase(perhaps, '{count}\u00a0profile, perhaps', '{count}\u00a0profiles, perhaps')
    : countPhrase(
        sure + perhaps,
        '{count}\u00a0profile: {sure} surely, {perhaps} perhaps',
        '{count}\u00a0profiles: {sure} surely, {perhaps} perhaps',
        { sure, perhaps },
      );
}

/** How many profiles pass a test, in words. */
export function passWords(sure: number, perhaps: number): string {
  return sure + perhaps === 0 ? phrase('no profile passes it') : underWords(sure, perhaps);
}

/** How far the answers have narrowed it down. */
export function leftWords(rules: number, left: number, { sure, open }: Listing): string {
  const some =
    left === rules
      ? countPhrase(rules, 'The one rule is left.', 'All {count}\u00a0rules are left.')
      : countPhrase(
          left,
          '{count} of {rules}\u00a0rules is left.',
          '{count} of {rules}\u00a0rules are left.',
          {
            rules,
          },
        );
  const settled =
    open === 0
      ? countPhrase(
          sure,
          '{count}\u00a0profile settled, none is open.',
          '{count}\u00a0profiles settled, none is open.',
        )
      : countPhrase(
          sure,
          '{count}\u00a0profile settled, {open} still open.',
          '{count}\u00a0profiles settled, {open} still open.',
          { open },
        );
  return `${some} ${settled}`;
}

/** More than these are not listed at once: a page for a phone. */
export const mostListed = 150;
