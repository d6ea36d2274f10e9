/** What the rules that fit come to, aggregations included (DMN 1.3, 8.2.11). */
import { type Answering, type Decided, type Fitting, listed } from './hit-policy.ts';
import type { Value } from './table.ts';

/** @param fitting the rules whose tests all hold, in the order of the table. */
export function decided(table: Answering, fitting: readonly Fitting[]): Decided {
  const { hitPolicy, aggregation } = table;
  const [output] = table.outputs;
  const plain = listed(table, fitting);
  if (hitPolicy !== 'collect' || aggregation === undefined || !output) return plain;
  const values = fitting.map(({ results }) => results[0] ?? null);
  const numbers = values.filter((one) => typeof one === 'number');
  const of = (value: Value): Decided => ({ ...plain, answers: [{ [output.id]: value }] });
  // Where no rule fits the default is what it comes to; without one a count is of none.
  if (fitting.length === 0) return aggregation === 'count' && plain.answers.length === 0 ? of(0) : plain;
  switch (aggregation) {
    case 'count':
      return of(values.length);
    case 'sum':
      return of(numbers.reduce((sum, one) => sum + one, 0));
    case 'min':
      return of(numbers.length === 0 ? null : Math.min(...numbers));
    case 'max':
      return of(numbers.length === 0 ? null : Math.max(...numbers));
  }
}
