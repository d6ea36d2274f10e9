/** What a rule of the check is. One file a rule, in `rules/`. */
import type { Answers } from '../answers.ts';
import {
  type Base,
  type Entry,
  type Finding,
  familyOutputsDigest,
  type ReadingTable,
  type Severity,
  sheetDigest,
} from '../base/index.ts';
import type { Change } from '../impact/index.ts';
import type { ExceptionUse } from './exceptions.ts';

export interface RuleInput {
  readonly answers: Answers;
  /** What the reader of the base found, for the rules about files and their shape. */
  readonly readerFindings: readonly Finding[];
  /**
   * What earlier runs found out. `inputs` name the computation and hold a digest of everything it follows from
   * (scopes.ts); what is made must survive JSON.
   */
  readonly remember: <T>(inputs: readonly string[], make: () => T) => T;
  /** What exceptions did to the findings of the other rules; only given to rules about exceptions. */
  readonly exceptions?: ExceptionUse;
  /** What the answers were before, where the content is compared with an earlier state. */
  readonly change?: Change | undefined;
  /** The ids of all rules; only given to rules about exceptions. */
  readonly ruleIds?: readonly string[];
}

/**
 * A finding of a rule about readings may claim readings, by id: those it speaks for. One slip shows in many
 * places, as readings, as an offset of sessions, as a contradicted statement. So the rules that come after
 * and judge readings (`judgesReadings`) are shown the answers as they are without what has been claimed.
 */
export interface RuleFinding extends Finding {
  readonly claims?: readonly string[];
}

export interface Rule {
  /** Lower-case words joined by hyphens; every finding of the rule bears it. */
  readonly id: string;
  /** The rule as one sentence that holds when nothing is wrong. */
  readonly title: string;
  /** One paragraph for contributors: what is checked, why, and what to do. */
  readonly explanation: string;
  /** What its findings weigh; `note` never fails a check. */
  readonly severity: Severity;
  /** What it finds fault with, beside what is right: shown to contributors, and held to by a test each. */
  readonly examples: readonly [RuleExample, ...RuleExample[]];
  /** What it has to look at family by family, before `check` is asked. */
  readonly lookAt?: (input: RuleInput, family: string) => void;
  /** Whether it is about exceptions, and so runs after all others. */
  readonly aboutExceptions?: true;
  /** True where it needs an earlier state of the content: it says nothing without `--since`. */
  readonly comparesStates?: true;
  /** True where its findings follow from readings: it is not shown those that earlier rules have claimed. */
  readonly judgesReadings?: true;
  readonly check: (input: RuleInput) => RuleFinding[];
}

/**
 * A mistake in the example base (`src/check/example-base/`), which is itself without fault. Put in place of
 * `good`, `bad` makes the rule speak once, and no other rule with it.
 */
export interface RuleExample {
  /** What went wrong, in words: “a code without quotes”. */
  readonly title: string;
  /** The file of the example base it is made in. */
  readonly file: string;
  /** Text that stands in the file once, and is right; empty where `bad` is a whole new file. */
  readonly good: string;
  /** What stands there instead. */
  readonly bad: string;
  /** The text the finding points at, in `bad` unless `foundIn` names another file. Absent: the beginning of `bad`. */
  readonly foundAt?: string;
  readonly foundIn?: string;
  /** Edits that come with it, where one place alone does not make the mistake. */
  readonly also?: readonly { readonly file: string; readonly good: string; readonly bad: string }[];
}

/** A rule whose findings the reader of the base has made already. */
export function readerRule(rule: Omit<Rule, 'check'>): Rule {
  return {
    ...rule,
    check: ({ readerFindings }) => readerFindings.filter((finding) => finding.rule === rule.id),
  };
}

/** What a rule of outputs is made of: see {@link outputRule}. */
export interface OutputRule<T> extends Omit<Rule, 'check' | 'lookAt'> {
  /** Digests of what it follows from besides the outputs of the family's profiles. */
  readonly follows: (answers: Answers, family: string) => readonly string[];
  /** What it finds out about one family; survives JSON. */
  readonly ofFamily: (answers: Answers, family: string) => T;
  readonly conclude: (found: readonly T[]) => RuleFinding[];
}

/**
 * A rule over the outputs of profiles: looked at family by family, remembered between runs, and concluded over
 * all families together.
 */
export function outputRule<T>({ follows, ofFamily, conclude, ...rule }: OutputRule<T>): Rule {
  const found = new WeakMap<Answers, T[]>();
  return {
    ...rule,
    lookAt: ({ answers, remember }, family) => {
      const inputs = [
        rule.id,
        family,
        familyOutputsDigest(answers.base, family),
        ...follows(answers, family),
      ];
      const of = found.get(answers) ?? [];
      of.push(remember(inputs, () => ofFamily(answers, family)));
      found.set(answers, of);
    },
    check: ({ answers }) => conclude(found.get(answers) ?? []),
  };
}

/** What a rule of single sheets is made of: see {@link sheetRule}. */
export interface SheetRule extends Omit<Rule, 'check' | 'lookAt'> {
  readonly ofSheet: (base: Base, session: Entry<'outputs'>, table: ReadingTable) => RuleFinding[];
}

/** A rule that judges each sheet with its session and the units in it, and remembers it between runs. */
export function sheetRule({ ofSheet, ...rule }: SheetRule): Rule {
  return {
    ...rule,
    check: ({ answers: { base }, remember }) =>
      [...base.readings.values()].flatMap((table) => {
        const session = base.outputs.get(table.session);
        if (!session) return [];
        return remember([rule.id, table.session, sheetDigest(base, table)], () =>
          ofSheet(base, session, table),
        );
      }),
  };
}
