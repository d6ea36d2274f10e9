/** A line of arithmetic: formula, the values put in, the result, and what it rests on. Everything a plan says is one. */
import type { CautionId } from '../../../schemas/index.ts';
import {
  type Bound,
  type Characteristic,
  type Component,
  propagate,
  type Quantity,
  quantity,
  type Term,
  type Unit,
} from '../../measure/index.ts';

/** A value put into a line. */
export interface Given {
  /** As it stands in the formula; `_` begins a subscript: `V_max`. */
  readonly symbol: string;
  readonly name: string;
  readonly quantity: Quantity;
  /** Ids of the readings and sources it rests on. */
  readonly readings: readonly string[];
  readonly sources: readonly string[];
}

export interface ArithmeticLine {
  /** Stable, for anchors: `gain-target`. */
  readonly id: string;
  readonly title: string;
  /** The symbol of the result in the formula. */
  readonly symbol: string;
  /** What the result is equal to, in the symbols of what is given: `√(P·Z)`. `lg` is the logarithm to base 10. */
  readonly formula: string;
  readonly given: readonly Given[];
  readonly result: Quantity;
  readonly cautions: readonly CautionId[];
  /** What it assumes, and where the formula comes from. */
  readonly note: string;
  /** true where it rests on common practice, with no source. */
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
  return { symbol, name, quantity: exact, readings: [], sources };
}

/** A measured value, with the readings and sources behind it. */
export function measured(symbol: string, name: string, value: Characteristic): Given {
  return { symbol, name, quantity: value, readings: value.readings, sources: value.sources };
}

/** The result of another line, put into this one. */
export function carried(name: string, line: ArithmeticLine): Given {
  const { symbol, result, readings, sources } = line;
  return { symbol, name, quantity: result, readings, sources };
}

/** What a line is made of: either `compute`, from which its uncertainty follows, or a `result` found otherwise. */
interface LineParts {
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  readonly formula: string;
  readonly given: readonly Given[];
  readonly unit: Unit;
  /** The result from the values given, in their order; smooth near them. */
  readonly compute: (...values: readonly number[]) => number;
  /** What the making itself adds to the uncertainty, in the unit of the result. */
  readonly own?: readonly Component[];
  readonly bound?: Bound;
  readonly cautions?: readonly CautionId[];
  readonly note: string;
  readonly commonPractice?: boolean;
}

/**
 * Works a line out. Its uncertainty follows from those of the values given by the law of propagation, first order
 * (GUM 5.1.2), each sensitivity found by moving the value a little either way (GUM 5.1.3, note 2).
 */
export function workedOut(parts: LineParts): ArithmeticLine {
  const { compute, unit, own = [], bound = 'exact' } = parts;
  const values = parts.given.map((one) => one.quantity.value);
  const terms = parts.given.flatMap(({ quantity: from }, index): Term[] => {
    if (from.standardUncertainty === 0) return [];
    return [[sensitivity(compute, values, index), asTerm(from)]];
  });
  return lineWith(parts, propagate(compute(...values), unit, terms, own, bound));
}

/** A line whose result is looked up or counted, not computed: a gauge, a fuse, a step. */
export function lookedUp(
  parts: Omit<LineParts, 'compute' | 'unit' | 'own' | 'bound'>,
  result: Quantity,
): ArithmeticLine {
  return lineWith(parts, result);
}

type Told = Omit<LineParts, 'compute' | 'unit' | 'own' | 'bound'>;

function lineWith(parts: Told, result: Quantity): ArithmeticLine {
  const { id, title, symbol, formula, note } = parts;
  return {
    id,
    title,
    symbol,
    formula,
    given: parts.given,
    result,
    cautions: parts.cautions ?? [],
    note,
    commonPractice: parts.commonPractice ?? false,
    readings: [...new Set(parts.given.flatMap((one) => one.readings))],
    sources: [...new Set(parts.given.flatMap((one) => one.sources))],
  };
}

function sensitivity(
  compute: (...values: readonly number[]) => number,
  values: readonly number[],
  index: number,
): number {
  const value = values[index] ?? 0;
  const move = 1e-5 * Math.max(Math.abs(value), 1e-3);
  const moved = (by: number): number => compute(...values.with(index, value + by));
  return (moved(move) - moved(-move)) / (2 * move);
}

/** A range of steps has no budget to propagate: its standard uncertainty stands as one component. */
function asTerm(from: Quantity): Quantity {
  if (from.budget.length > 0) return from;
  const { value, unit, standardUncertainty, bound } = from;
  const part = { name: 'range', standardUncertainty, degreesOfFreedom: Number.POSITIVE_INFINITY };
  return quantity(value, unit, [part], bound);
}
