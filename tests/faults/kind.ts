/** What a kind of mistake is, and how the findings it leads to are judged. */
import type { Finding } from '../../src/base/index.ts';
import type { Demo, Edit } from './demo.ts';
import type { Dice } from './dice.ts';

/** A place the check may point at: a file and lines in it as they are after the edit. */
export interface Expected {
  readonly file: string;
  readonly lines: readonly number[] | 'any';
}

export interface Mistake {
  /** The change in words, for the report. */
  readonly what: string;
  readonly edits: readonly Edit[];
  /** Where the person has to look: the first finding must be at one of these. */
  readonly places: readonly Expected[];
}

export interface FaultKind {
  readonly name: string;
  /** The rule that must speak first; several where the same words are right from each of them. */
  readonly rule: string | readonly string[];
  /** What in the base contradicts the mistake: without it, no check could find it. */
  readonly shownBy: string;
  /** Findings beside those of `rule` at `places` that may come with it; {@link usualEchoes} where absent. */
  readonly mostEchoes?: number;
  readonly make: (dice: Dice, demo: Demo) => Mistake;
}

/** One mistake may lead to this many other findings before it counts as badly reported. */
export const usualEchoes = 2;

export type Outcome = 'found' | 'missed' | 'other rule first' | 'other place first' | 'too many echoes';

export interface Judgement {
  readonly kind: string;
  readonly what: string;
  readonly outcome: Outcome;
  /** Failing findings beside those that were to be made. */
  readonly echoes: number;
  /** The first failing findings, as text. */
  readonly findings: readonly string[];
}

/** What a mistake leads the check to say, judged. */
export function judgement(kind: FaultKind, mistake: Mistake, findings: readonly Finding[]): Judgement {
  const failing = failingOf(findings);
  const rules = typeof kind.rule === 'string' ? [kind.rule] : kind.rule;
  const isExpected = (one: Finding): boolean =>
    rules.includes(one.rule) && mistake.places.some((place) => isAt(one, place));
  const echoes = failing.filter((one) => !isExpected(one)).length;
  const [first] = failing;
  let outcome: Outcome = 'found';
  if (!first) outcome = 'missed';
  else if (!rules.includes(first.rule)) outcome = 'other rule first';
  else if (!isExpected(first)) outcome = 'other place first';
  else if (echoes > (kind.mostEchoes ?? usualEchoes)) outcome = 'too many echoes';
  return { kind: kind.name, what: mistake.what, outcome, echoes, findings: shown(failing) };
}

/** Errors and warnings: what fails a check. */
export function failingOf(findings: readonly Finding[]): Finding[] {
  return findings.filter((one) => one.severity !== 'note');
}

/** The first few findings as a person would quote them. */
export function shown(findings: readonly Finding[]): string[] {
  return findings
    .slice(0, 4)
    .map(({ rule, place, message }) => `${place.file}:${place.line} ${rule}: ${message}`);
}

function isAt({ place }: Finding, { file, lines }: Expected): boolean {
  return place.file === file && (lines === 'any' || lines.includes(place.line));
}

/** A mistake on one line. */
export function onLine(demo: Demo, file: string, line: number, text: string): Mistake {
  return {
    what: `${file}:${line} “${demo.lines(file)[line - 1]}” → “${text}”`,
    edits: [demo.withLine(file, line, text)],
    places: [{ file, lines: [line] }],
  };
}
