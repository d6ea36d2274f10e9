/** Thresholds closer together than the value is known: which side it lies on is chance. */
import type { Space } from './space.ts';

export interface FineThresholds {
  readonly input: string;
  /** The ends, in the unit of the input; equal where a rule asks for exactly one value. */
  readonly low: number;
  readonly high: number;
  /** Expanded uncertainty of the input’s values, in its unit. */
  readonly uncertainty: number;
  /** The rules whose tests have these ends, in the order of the table. */
  readonly rules: readonly string[];
}

/** 4.1 − 4 is a little less than 0.1 in binary: differences this much smaller than U are equal to it. */
const rounding = 1e-9;

/**
 * Neighbouring thresholds of an input less than its uncertainty apart. An end is a threshold where some rule lets through
 * values on one side of it and not on the other.
 * @param uncertainty expanded uncertainty by input id, each in the unit of its input.
 */
export function* fineThresholdsIn(
  space: Space,
  uncertainty: Readonly<Record<string, number>>,
): Generator<FineThresholds> {
  for (const { input, pieces, passes } of space.grid) {
    const limit = uncertainty[input.id];
    if (limit === undefined || input.type.kind !== 'number') continue;
    const thresholds: {
      readonly at: number;
      readonly rules: readonly number[];
      readonly exactly: number[];
    }[] = [];
    for (const [index, piece] of pieces.entries()) {
      if (!('low' in piece) || piece.low !== piece.high) continue;
      const passesAt = (rule: number, other: number): boolean => {
        const next = pieces[other];
        return next !== undefined && 'low' in next
          ? passes[rule]?.[other] === 1
          : passes[rule]?.[index] === 1;
      };
      const sides = (rule: number): boolean[] => [-1, 0, 1].map((step) => passesAt(rule, index + step));
      const rules = [...passes.keys()].filter((rule) => new Set(sides(rule)).size > 1);
      const exactly = rules.filter((rule) => {
        const [before, on, after] = sides(rule);
        return on && !before && !after;
      });
      if (rules.length > 0) thresholds.push({ at: piece.low, rules, exactly });
    }
    const ids = (some: readonly number[]): string[] =>
      [...new Set(some)].sort((a, b) => a - b).map((rule) => space.table.rules[rule]?.id ?? '');
    const about = { input: input.id, uncertainty: limit };
    for (const [index, { at, rules, exactly }] of thresholds.entries()) {
      if (exactly.length > 0 && limit > 0) yield { ...about, low: at, high: at, rules: ids(exactly) };
      const next = thresholds[index + 1];
      if (next && next.at - at < limit * (1 - rounding)) {
        yield { ...about, low: at, high: next.at, rules: ids([...rules, ...next.rules]) };
      }
    }
  }
}
