/** A table as JSON, for where the FEEL library does not go: tests as sets, ends at infinity as null. */
import type { ValueSet } from './sets/value-set.ts';
import type { Table } from './table.ts';

type PortableInterval = readonly [
  low: number | null,
  lowClosed: 0 | 1,
  high: number | null,
  highClosed: 0 | 1,
];

/** A test: intervals, values, whether these are those left out, whether “not known” passes. `0` for any value. */
export type PortableSet =
  | 0
  | readonly [
      intervals: readonly PortableInterval[],
      values: ValueSet['values'],
      allBut: 0 | 1,
      missing: 0 | 1,
    ];

export interface PortableTable extends Omit<Table, 'rules'> {
  readonly rules: readonly {
    readonly id: string;
    readonly sets: readonly PortableSet[];
    readonly results: Table['rules'][number]['results'];
  }[];
}

/** @throws where a test is no simple one. */
export function toPortable(table: Table): PortableTable {
  const rules = table.rules.map(({ id, cells, results }) => ({
    id,
    results,
    sets: cells.map(({ text, set }): PortableSet => {
      if (!set) throw new Error(`“${text}” of rule ${id} is no simple test`);
      if (set.allBut && set.values.length === 0 && set.missing) return 0;
      return [
        set.intervals.map(
          ({ low, lowClosed, high, highClosed }): PortableInterval => [
            Number.isFinite(low) ? low : null,
            lowClosed ? 1 : 0,
            Number.isFinite(high) ? high : null,
            highClosed ? 1 : 0,
          ],
        ),
        set.values,
        set.allBut ? 1 : 0,
        set.missing ? 1 : 0,
      ];
    }),
  }));
  return { ...table, rules };
}

/** The table again; its cells have no text. */
export function fromPortable(portable: PortableTable): Table {
  const rules = portable.rules.map(({ id, sets, results }) => ({
    id,
    results,
    cells: sets.map((set) => ({ text: '', set: setOf(set) })),
  }));
  return { ...portable, rules };
}

function setOf(portable: PortableSet): ValueSet {
  if (portable === 0) return { intervals: [], values: [], allBut: true, missing: true };
  const [intervals, values, allBut, missing] = portable;
  return {
    intervals: intervals.map(([low, lowClosed, high, highClosed]) => ({
      low: low ?? Number.NEGATIVE_INFINITY,
      lowClosed: lowClosed === 1,
      high: high ?? Number.POSITIVE_INFINITY,
      highClosed: highClosed === 1,
    })),
    values,
    allBut: allBut === 1,
    missing: missing === 1,
  };
}
