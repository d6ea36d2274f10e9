/** The check: every rule over one content folder; findings in the order of files and lines. */
import { type Answers, readAnswers } from '../answers.ts';
import {
  type ContentFiles,
  compareFindings,
  type Finding,
  FolderFiles,
  type Memory,
  noMemory,
  remembered,
} from '../base/index.ts';
import { type Change, changeOf, type Rename } from '../impact/index.ts';
import type { KeptOutputs } from '../kept-outputs.ts';
import { withoutReadings } from './claims.ts';
import { applyExceptions } from './exceptions.ts';
import type { Rule, RuleFinding, RuleInput } from './rule.ts';
import { rules } from './rules/index.ts';
import { type SourceLookup, sourceTexts } from './source-texts.ts';

export { countFindings, type FindingCounts, isFailing } from './counts.ts';
export { githubReport } from './reporters/github.ts';
export { htmlReport } from './reporters/html.ts';
export { jsonFinding, jsonReport } from './reporters/json.ts';
export type { Report, RuleAddress } from './reporters/report.ts';
export { editsOf, rulesReport, ruleText, ruleTitles } from './reporters/rules.ts';
export { sarifReport } from './reporters/sarif.ts';
export { textReport } from './reporters/text.ts';
export type { Rule, RuleExample } from './rule.ts';
export { rules } from './rules/index.ts';
export { newSince } from './since.ts';
export type { SourceLookup } from './source-texts.ts';

/** Outputs a check needs at hand at once: those of one large family and a few more. */
export const outputsAtOnce = 1000;

export interface CheckedAnswers {
  readonly answers: Answers;
  readonly findings: readonly Finding[];
  /** Whether every entry could be read as its schema wants it; contradictions between entries are no matter here. */
  readonly readable: boolean;
  /** Whether every entry is there: none was left out because it could not be read. */
  readonly whole: boolean;
  /** What exceptions have set aside. */
  readonly setAside: readonly Finding[];
  /** The text of the files that findings point into. */
  readonly sourceOf: SourceLookup;
}

export interface CheckSettings {
  /** The day of the run, ISO 8601, to tell which exceptions have expired; without it none has. */
  readonly today?: string;
  /** What earlier runs found out. */
  readonly memory?: Memory;
  /** How many outputs are kept at once; all of them where absent. */
  readonly outputsAtOnce?: number;
  /** Outputs of earlier runs in this process. */
  readonly kept?: KeptOutputs;
  /** Told of the answers before the rules run over them, and waited for. */
  readonly whenRead?: (read: Pick<CheckedAnswers, 'answers' | 'readable'>) => Promise<void>;
  /** An earlier state of the content, for the rules that compare states. */
  readonly earlier?: EarlierState;
}

export interface EarlierState {
  readonly checked: Pick<CheckedAnswers, 'answers' | 'whole'>;
  readonly renames: readonly Rename[];
}

/**
 * Reads a content folder, computes its answers and runs every rule over them, then sets aside what
 * exceptions say.
 * @throws CannotRun where the folder cannot be read.
 */
export async function checkContent(
  from: string | ContentFiles,
  { today, memory = noMemory, outputsAtOnce: most, kept, whenRead, earlier }: CheckSettings = {},
): Promise<CheckedAnswers> {
  const content = typeof from === 'string' ? new FolderFiles(from) : from;
  const { answers, findings: readerFindings } = await readAnswers(content, memory, most, kept);
  const readable = !readerFindings.some(({ severity }) => severity === 'error');
  await whenRead?.({ answers, readable });
  const remember: RuleInput['remember'] = (inputs, make) => remembered(memory, inputs, make);
  const whole = isWhole(readerFindings);
  const change =
    earlier?.checked.whole && whole ? changeOf(earlier.checked.answers, answers, earlier.renames) : undefined;
  const input: RuleInput = { answers, readerFindings, remember, change };
  const found = checkAnswers(input, most);
  const sourceOf = sourceTexts(content, found);
  const exceptions = applyExceptions(answers.base, found, sourceOf, today, comparing);
  const ruleIds = rules.map((rule) => rule.id);
  const ofExceptions = rules.flatMap((rule) =>
    rule.aboutExceptions ? rule.check({ ...input, exceptions, ruleIds }) : [],
  );
  if (ofExceptions.length === 0) {
    return { answers, findings: exceptions.kept, readable, whole, setAside: exceptions.setAside, sourceOf };
  }
  const findings = [...exceptions.kept, ...ofExceptions].sort(compareFindings);
  const setAside = exceptions.setAside;
  return { answers, findings, readable, whole, setAside, sourceOf: sourceTexts(content, findings) };
}

/** The rules that compare states. */
const comparing = rules.filter((rule) => rule.comparesStates).map(({ id }) => id);

/**
 * Whether the reader could take in every entry. One that it left out takes its answers along, which would look like
 * a change; a link that leads nowhere leaves its entry where it is.
 */
export function isWhole(readerFindings: readonly Finding[]): boolean {
  return readerFindings.every(({ rule, severity }) => severity !== 'error' || rule === 'dangling-link');
}

/** What the rules that compare states find in a change, exceptions applied; the others are not run. */
export function checkChange(
  from: string | ContentFiles,
  change: Change,
  today?: string,
): Pick<CheckedAnswers, 'findings' | 'setAside' | 'sourceOf'> {
  const content = typeof from === 'string' ? new FolderFiles(from) : from;
  const answers = change.states.now;
  const input: RuleInput = { answers, readerFindings: [], remember: (_, make) => make(), change };
  const found = rules.flatMap((rule) => (rule.comparesStates ? rule.check(input) : [])).sort(compareFindings);
  const sourceOf = sourceTexts(content, found);
  const { kept, setAside } = applyExceptions(answers.base, found, sourceOf, today, comparing);
  return { findings: kept, setAside, sourceOf };
}

/**
 * Runs every rule over answers that have been read already, before exceptions. A row of a sheet is named once,
 * by the first rule that finds fault with it, and readings a rule has claimed are not shown to those after it:
 * one slip would else be reported as each of its consequences.
 */
function checkAnswers(input: RuleInput, mostOutputs: number | undefined): Finding[] {
  const { answers } = input;
  // Family by family, so that the outputs of one family only need be at hand.
  for (const family of answers.base.profilesOfFamily.keys()) {
    for (const rule of rules) rule.lookAt?.(input, family);
  }
  const namedRows = new Map<string, string>();
  const claimed = new Set<string>();
  const findings: Finding[] = [];
  let unclaimed = answers;
  for (const rule of rules) {
    if (rule.aboutExceptions) continue;
    const before = claimed.size;
    for (const { claims = [], ...finding } of findingsOf(rule, input, unclaimed)) {
      if (!isNamed(finding, namedRows)) findings.push(finding);
      for (const id of claims) claimed.add(id);
    }
    if (claimed.size > before) unclaimed = withoutReadings(answers, claimed, mostOutputs);
  }
  return findings.sort(compareFindings);
}

/**
 * What a rule finds once the claimed readings are out of its sight. Their absence is no fault, though: what
 * it finds only without them does not count.
 */
function findingsOf(rule: Rule, input: RuleInput, unclaimed: Answers): RuleFinding[] {
  const found = rule.check(input);
  if (!rule.judgesReadings || unclaimed === input.answers || found.length === 0) return found;
  const files = new Set(found.map(({ place }) => place.file));
  // Not what earlier runs know: they know the sheets as a whole.
  const again: RuleInput = { ...input, answers: unclaimed, remember: (_, make) => make() };
  for (const family of unclaimed.base.profilesOfFamily.keys()) rule.lookAt?.(again, family);
  return rule.check(again).filter(({ place }) => files.has(place.file));
}

/** Whether a finding is about a row of a sheet that another rule has named. */
function isNamed({ rule, place }: Finding, namedRows: Map<string, string>): boolean {
  if (!place.file.endsWith('.csv')) return false;
  const row = `${place.file}:${place.line}`;
  const first = namedRows.get(row) ?? rule;
  namedRows.set(row, first);
  return first !== rule;
}
