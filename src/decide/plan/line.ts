/** A line of arithmetic: formula, the values put in, the result, and what it rests on. Everything a plan says is one. */
import type { CautionId } from '../../../schemas/index.ts';
import {
  type Bound,
  type Characteristic,
  type CharacteristicName,
  type Component,
  propagate,
  type Quantity,
  quantity,
  type Term,
  type Unit,
} from '../../measure/index.ts';
import { evaluate, readFormula } from './formula.ts';

/** A value put into a line. */
export interface Given {
  /** As it stands in the formula; `_` begins a subscript: `V_max`. */
  readonly symbol: string;
  readonly name: string;
  readonly quantity: Quantity;
  /** The measured value of the profile that it is, where it is one. */
  readonly characteristic?: CharacteristicName;
  /** Ids of the readings and sources it rests on. */
  readonly readings: readonly string[];
  readonly sources: readonly string[];
  /** true for the result of a line that rests on common practice. */
  readonly commonPractice: boolean;
}

export interface ArithmeticLine {
  /** Stable, for anchors and its text (views/line-texts.ts): `gain-target`. */
  readonly id: string;
  /** The symbol of the result in the formula. */
  readonly symbol: string;
  /** What the result is equal to, in the symbols of what is given: `√(P·Z)`; a rule in words where `isInWords`. */
  readonly formula: string;
  readonly isInWords: boolean;
  /** true where the result was looked up or counted by the rule in `formula`, false where it was computed by it. */
  readonly isLookedUp: boolean;
  readonly given: readonly Given[];
  readonly result: Quantity;
  readonly cautions: readonly CautionId[];
  /** true where it, or a line it is carried on from, rests on common practice with no source. */
  readonly commonPractice: boolean;
  readonly readings: readonly string[];
  readonly sources: readonly string[];
}

/** What was planned but cannot be worked out or must not be done, and why, in plain words. */
export interface Refusal {
  readonly refused: string;
}

/** A value without uncertainty: a choice, a rating, a constant. */
export function given(
  symbol: string,
  name: string,
  value: number | Quantity,
  unit: Unit,
  sources: readonly string[] = [],
): Given {
  const exact = typeof value === 'number' ? quantity(value, unit, []) : value;
  return { symbol, name, quantity: exact, readings: [], sources, commonPractice: false };
}

/** A measured value, with the readings and sources behind it. */
export function measured(symbol: string, name: string, value: Characteristic): Given {
  const { name: characteristic, readings, sources } = value;
  return { symbol, name, quantity: value, characteristic, readings, sources, commonPractice: false };
}

/** The result of another line, put into this one. */
export function carried(name: string, line: ArithmeticLine): Given {
  const { symbol, result, readings, sources, commonPractice } = line;
  return { symbol, name, quantity: result, readings, sources, commonPractice };
}

interface LineParts {
  readonly id: string;
  readonly symbol: string;
  readonly formula: string;
  readonly given: readonly Given[];
  readonly cautions?: readonly CautionId[];
  readonly commonPractice?: boolean;
}

interface LookedUpParts extends LineParts {
  readonly isInWords?: boolean;
}

interface ComputedParts extends LineParts {
  readonly unit: Unit;
  /** What the making itself adds to the uncertainty, in the unit of the result. */
  readonly own?: readonly Component[];
  readonly bound?: Bound;
}

/**
 * Works a line out by its own formula. Its uncertainty follows from those of the values given by the law of
 * propagation, first order (GUM 5.1.2), each sensitivity found by moving the value a little either way (GUM 5.1.3,
 * note 2). A symbol that is not given, or given and not used, and values out of the formula's reach are
 * the caller's error and throw: what people enter is checked where they enter it.
 */
export function workedOut(parts: ComputedParts): ArithmeticLine {
  const { unit, own = [], bound = 'exact' } = parts;
  const formula = readFormula(parts.formula);
  const values = new Map(parts.given.map((one) => [one.symbol, one.quantity.value]));
  const unused = new Set(values.keys());
  const at = (moved: string, by: number): number =>
    evaluate(formula, (symbol) => {
      const value = values.get(symbol);
      if (value === undefined) throw new Error(`${parts.id}: ${symbol} is not given`);
      unused.delete(symbol);
      return symbol === moved ? value + by : value;
    });
  const value = at('', 0);
  if (unused.size > 0) throw new Error(`${parts.id}: ${[...unused].join(', ')} is given and not used`);
  if (!Number.isFinite(value)) throw new Error(`${parts.id}: ${parts.formula} is not finite`);
  const terms = parts.given.flatMap(({ symbol, quantity: from }): Term[] => {
    if (from.standardUncertainty === 0) return [];
    const move = 1e-5 * Math.max(Math.abs(from.value), 1e-3);
    return [[(at(symbol, move) - at(symbol, -move)) / (2 * move), asTerm(from)]];
  });
  return lineWith(parts, propagate(value, unit, terms, own, bound), false);
}

/** A line whose result is looked up or counted, not computed: a gauge, a fuse, a step. */
export function lookedUp(parts: LookedUpParts, result: Quantity): ArithmeticLine {
  return lineWith(parts, result, true);
}

function lineWith(parts: LookedUpParts, result: Quantity, isLookedUp: boolean): ArithmeticLine {
  const { id, symbol, formula, isInWords = false } = parts;
  return {
    id,
    symbol,
    formula,
    isInWords,
    isLookedUp,
    given: parts.given,
    result,
    cautions: parts.cautions ?? [],
    commonPractice: (parts.commonPractice ?? false) || parts.given.some((one) => one.commonPractice),
    readings: [...new Set(parts.given.flatMap((one) => one.readings))],
    sources: [...new Set(parts.given.flatMap((one) => one.sources))],
  };
}

/** A range of steps has no budget to propagate: its standard uncertainty stands as one component. */
function asTerm(from: Quantity): Quantity {
  if (from.budget.length > 0) return from;
  const { value, unit, standardUncertainty, bound } = from;
  const part = { name: 'range', standardUncertainty, degreesOfFreedom: Number.POSITIVE_INFINITY };
  return quantity(value, unit, [part], bound);
}
