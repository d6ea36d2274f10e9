/** A line as it is read aloud: the formula in symbols, the same with its values put in, and the result. */
import { formatQuantity, formatValue, type Quantity } from '../../measure/index.ts';
import { withSymbols } from './formula.ts';
import type { ArithmeticLine } from './line.ts';

export interface WrittenLine {
  /** `V_full = √(P·Z)`. */
  readonly symbols: string;
  /** `√(50 W·4 Ω)`; undefined where the result was looked up by a rule in words. */
  readonly values: string | undefined;
  /** `14.14 V`, with its uncertainty where it has one. */
  readonly result: string;
}

/** Writes a line with the project's own formats. */
export function written({ symbol, formula, isLookedUp, given, result }: ArithmeticLine): WrittenLine {
  const values = new Map(given.map((one) => [one.symbol, putIn(one.quantity)]));
  return {
    symbols: `${symbol} = ${formula}`,
    values: isLookedUp ? undefined : withSymbols(formula, (one) => values.get(one) ?? one),
    result: formatQuantity(result),
  };
}

/** A value without uncertainty is written as it was entered, to six digits; a negative one in brackets. */
function putIn(value: Quantity): string {
  const isPlain = !(value.expandedUncertainty > 0) && !['step', 'Hz', 'AWG'].includes(value.unit);
  const text = isPlain ? plain(value) : formatValue({ ...shown(value), bound: 'exact' });
  return value.value < 0 ? `(${text})` : text;
}

function plain({ value, unit }: Quantity): string {
  const digits = String(Number(value.toPrecision(6))).replace('-', '−');
  return unit === '1' ? digits : `${digits}\u00a0${unit}`;
}

/** Uncertainties follow when asked for: asked for here, so that the copy has them. */
function shown({
  value,
  unit,
  standardUncertainty,
  coverageFactor,
  expandedUncertainty,
  bound,
  budget,
}: Quantity): Quantity {
  return { value, unit, standardUncertainty, coverageFactor, expandedUncertainty, bound, budget };
}
