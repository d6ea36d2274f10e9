/** A correction as plain data: quantities work their uncertainty out when asked, and would not survive being sent. */
import type { Correction } from '../../decide/plan/equaliser/correction.ts';
import type { ArithmeticLine, Refusal } from '../../decide/plan/line.ts';
import type { Quantity } from '../../measure/quantity.ts';

export function plainCorrection(found: Correction | Refusal): Correction | Refusal {
  return 'refused' in found ? found : { ...found, lines: found.lines.map(plainLine) };
}

function plainLine(line: ArithmeticLine): ArithmeticLine {
  return {
    ...line,
    given: line.given.map((one) => ({ ...one, quantity: plainQuantity(one.quantity) })),
    result: plainQuantity(line.result),
  };
}

function plainQuantity(from: Quantity): Quantity {
  const { value, unit, standardUncertainty, coverageFactor, expandedUncertainty, bound } = from;
  return { value, unit, standardUncertainty, coverageFactor, expandedUncertainty, bound, budget: [] };
}
