/** A reading of a sheet against the schema of readings: faults are told at the cells they come from. */
import { type Reading, readingSchema } from '../../schemas/index.ts';
import { type Positions, validate } from '../base/index.ts';
import { columnLetters } from './cell.ts';
import type { SheetReading } from './repeats.ts';

export interface BoundsFault {
  /** `B7`, or the row alone. */
  readonly place: string;
  readonly problem: string;
  readonly help: string;
}

/** What the schema has against a reading; empty for a sound one. @param columnOf a field's column, -1 without one. */
export function boundsFaults(
  reading: SheetReading,
  columnOf: (field: keyof Reading) => number,
): readonly BoundsFault[] {
  const { row, line, at: _, ...data } = reading;
  if (readingSchema.safeParse(data).success) return [];
  const positions: Positions = {
    place: ([field]) => {
      const column = columnOf(String(field) as keyof Reading) + 1;
      return { file: '', line, column, endLine: line, endColumn: 1 };
    },
    sourceOf: () => undefined,
    restOfLine: () => '',
    oddNumbers: [],
  };
  const { findings } = validate(readingSchema, data, positions, 'reading');
  return findings.map(({ place, message, help }) => ({
    place: place.column > 0 ? `${columnLetters(place.column - 1)}${row}` : String(row),
    problem: message.replace(/\.$/, ''),
    help,
  }));
}
