/** What to do about a profile for a plan, and why: the shape of every answer. */

/** keep · keep and correct · reflash · replace · measure first. */
export const verdicts = ['keep', 'keep-and-correct', 'reflash', 'replace', 'measure-first'] as const;
export type Verdict = (typeof verdicts)[number];

/** One line of the reasoning: what was compared, and how it came out. */
export interface Reason {
  readonly topic: 'level' | 'bass' | 'low-end' | 'rear' | 'system';
  /** `fits`, `correct` (can be put right without a reflash), `fails`, `borderline` (within uncertainty), `unknown`. */
  readonly outcome: 'fits' | 'correct' | 'fails' | 'borderline' | 'unknown';
  /** The line in a plain sentence, values and uncertainties included. */
  readonly text: string;
  /** Ids of the readings behind it. */
  readonly readings: readonly string[];
}

export interface PlanAnswer {
  readonly plan: string;
  readonly verdict: Verdict;
  /** Verdicts that are possible within uncertainty, the likeliest first; one where it is certain. */
  readonly possible: readonly Verdict[];
  /** The answer in one sentence. */
  readonly sentence: string;
  readonly reasons: readonly Reason[];
}
