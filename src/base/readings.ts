/** Reads a session's readings.csv into columns, each row checked and its line kept. */
import { CsvError, parse } from 'csv-parse/sync';
import { channels, type Reading, readingColumns, readingSchema } from '../../schemas/index.ts';
import type { Finding, Place } from './finding.ts';
import { nearest } from './nearest.ts';
import type { TextFile } from './text-file.ts';
import { validate } from './validate.ts';
import type { DataPath, Positions } from './yaml.ts';

/** One reading with the session it belongs to and an id that names its row: `2026-03-quay:17`. */
export interface BenchReading extends Reading {
  readonly id: string;
  readonly session: string;
}

/** The readings of one session, kept by column so that a million of them stay small. */
export class ReadingTable {
  readonly session: string;
  readonly source: TextFile;
  readonly profiles: readonly string[];
  readonly #rows: RowColumns;
  readonly #rowsOfProfile: ReadonlyMap<string, readonly number[]>;

  constructor(session: string, source: TextFile, rows: RowColumns) {
    this.session = session;
    this.source = source;
    this.#rows = rows;
    const rowsOfProfile = new Map<string, number[]>();
    rows.profile.forEach((profile, row) => {
      const known = rowsOfProfile.get(profile);
      if (known) known.push(row);
      else rowsOfProfile.set(profile, [row]);
    });
    this.#rowsOfProfile = rowsOfProfile;
    this.profiles = [...rowsOfProfile.keys()];
  }

  get length(): number {
    return this.#rows.profile.length;
  }

  /** The readings of one profile in the order of the sheet; none where the session did not measure it. */
  readingsOf(profile: string): BenchReading[] {
    return (this.#rowsOfProfile.get(profile) ?? []).map((row) => this.reading(row));
  }

  /** The reading in row `row`, 0 for the first. */
  reading(row: number): BenchReading {
    const rows = this.#rows;
    const thdPercent = rows.thdPercent[row] ?? Number.NaN;
    return {
      id: `${this.session}:${rows.line[row] ?? 0}`,
      session: this.session,
      profile: rows.profile[row] ?? '',
      channel: channels[rows.channel[row] ?? 0] ?? 'FL',
      step: rows.step[row] ?? Number.NaN,
      hz: rows.hz[row] ?? Number.NaN,
      voltsRms: rows.voltsRms[row] ?? Number.NaN,
      thdPercent: Number.isNaN(thdPercent) ? null : thdPercent,
      repeat: rows.repeat[row] ?? 1,
    };
  }

  /** The table without some readings, by id, and the profiles they were of; itself where it has none of them. */
  without(readingIds: ReadonlySet<string>): [table: ReadingTable, profiles: ReadonlySet<string>] {
    const profiles = new Set<string>();
    const kept: number[] = [];
    this.#rows.line.forEach((line, row) => {
      if (readingIds.has(`${this.session}:${line}`)) profiles.add(this.#rows.profile[row] ?? '');
      else kept.push(row);
    });
    if (profiles.size === 0) return [this, profiles];
    const { profile, channel, step, hz, voltsRms, thdPercent, repeat, line } = this.#rows;
    const rows: RowColumns = {
      profile: kept.map((row) => profile[row] ?? ''),
      channel: kept.map((row) => channel[row] ?? 0),
      step: kept.map((row) => step[row] ?? Number.NaN),
      hz: kept.map((row) => hz[row] ?? Number.NaN),
      voltsRms: kept.map((row) => voltsRms[row] ?? Number.NaN),
      thdPercent: kept.map((row) => thdPercent[row] ?? Number.NaN),
      repeat: kept.map((row) => repeat[row] ?? 1),
      line: kept.map((row) => line[row] ?? 0),
    };
    return [new ReadingTable(this.session, this.source, rows), profiles];
  }

  /** The place of one cell of a reading, by its id, or of its whole row. */
  place(readingId: string, column?: keyof Reading): Place {
    const line = Number(readingId.slice(readingId.lastIndexOf(':') + 1));
    return cellPlace(this.source, line, column === undefined ? -1 : readingColumns.indexOf(column));
  }
}

export interface RowColumns {
  readonly profile: string[];
  readonly channel: number[];
  readonly step: number[];
  readonly hz: number[];
  readonly voltsRms: number[];
  readonly thdPercent: number[];
  readonly repeat: number[];
  readonly line: number[];
}

/**
 * Parses the sheet of one session. The header must hold exactly the known columns, in their order; a row
 * that fails gives a finding at its cell and is left out.
 */
export function readReadings(
  source: TextFile,
  session: string,
): { table: ReadingTable; findings: readonly Finding[] } {
  const rows: RowColumns = {
    profile: [],
    channel: [],
    step: [],
    hz: [],
    voltsRms: [],
    thdPercent: [],
    repeat: [],
    line: [],
  };
  const findings: Finding[] = [];
  let header: string[] | undefined;
  let lastLine = 0;
  const readRow = (cells: string[], line: number): void => {
    if (!header) {
      header = cells;
      findings.push(...headerFindings(source, cells, line));
      return;
    }
    if (cells.length !== readingColumns.length) {
      findings.push(
        rowFinding(
          cellPlace(source, line, -1),
          `This row has ${cells.length} cells; the header has ${readingColumns.length}.`,
          cells.length > readingColumns.length && cells.some((cell) => /^\d+$/.test(cell))
            ? 'Look for a decimal comma: numbers are written with a point.'
            : 'Give every column a cell, even an empty one.',
        ),
      );
      return;
    }
    const reading = readingOf(cells);
    const checked = readingSchema.safeParse(reading);
    if (checked.success) {
      rows.profile.push(checked.data.profile);
      rows.channel.push(channels.indexOf(checked.data.channel));
      rows.step.push(checked.data.step);
      rows.hz.push(checked.data.hz);
      rows.voltsRms.push(checked.data.voltsRms);
      rows.thdPercent.push(checked.data.thdPercent ?? Number.NaN);
      rows.repeat.push(checked.data.repeat);
      rows.line.push(line);
    } else {
      findings.push(
        ...validate<Reading>(readingSchema, reading, new CellPositions(source, line, cells), 'reading')
          .findings,
      );
    }
  };
  const loneReturn = /\r(?!\n)/.exec(source.text);
  if (loneReturn) {
    const finding = rowFinding(
      source.place(loneReturn.index),
      'A line ends here in a way only very old programs write.',
      'Save the sheet again as CSV with ordinary line ends.',
    );
    return { table: new ReadingTable(session, source, rows), findings: [finding] };
  }
  try {
    parse(source.text, {
      record_delimiter: ['\n', '\r\n'],
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      on_record: (record: string[], { lines }) => {
        if (record.some((cell) => cell.includes('\n'))) throw new UnclosedQuote();
        readRow(record, lines);
        lastLine = lines;
        return null;
      },
    });
  } catch (error) {
    if (!(error instanceof CsvError || error instanceof UnclosedQuote)) throw error;
    findings.push(
      rowFinding(
        cellPlace(source, lineOfQuote(source, lastLine + 1), -1),
        'This row cannot be read as CSV: a quotation mark is out of place.',
        'Take the quotation marks out of this row; no cell of a sheet needs them.',
      ),
    );
  }
  if (!header) {
    findings.push(
      rowFinding(
        source.place(0),
        'This sheet is empty.',
        `Begin it with the line ${readingColumns.join(',')}, then one line a reading.`,
      ),
    );
  }
  return { table: new ReadingTable(session, source, rows), findings };
}

/** A quoted cell that runs on over a line end: nothing after it can be trusted. */
class UnclosedQuote extends Error {}

/** The first line from `line` on that holds a quotation mark. */
function lineOfQuote(source: TextFile, line: number): number {
  for (let at = line; at <= source.lineCount; at += 1) if (source.lineText(at).includes('"')) return at;
  return Math.min(line, source.lineCount);
}

/** The row as data for the schema: numbers where a cell is a plain decimal number, the cell's text elsewhere. */
function readingOf(cells: readonly string[]): Record<string, string | number | null> {
  const [profile = '', channel = '', step = '', hz = '', voltsRms = '', thdPercent = '', repeat = ''] = cells;
  return {
    profile,
    channel,
    step: number(step),
    hz: number(hz),
    voltsRms: number(voltsRms),
    thdPercent: thdPercent === '' ? null : number(thdPercent),
    repeat: number(repeat),
  };
}

const decimalNumber = /^-?\d+(\.\d+)?([eE][-+]?\d+)?$/;

function number(cell: string): number | string {
  return decimalNumber.test(cell) ? Number(cell) : cell;
}

function headerFindings(source: TextFile, cells: readonly string[], line: number): Finding[] {
  return readingColumns.flatMap((wanted, index) => {
    const found = cells[index];
    if (found === wanted) return [];
    const unknown = found !== undefined && !(readingColumns as readonly string[]).includes(found);
    const guess = unknown ? nearest(found, readingColumns) : undefined;
    return [
      {
        ...rowFinding(
          cellPlace(source, line, found === undefined ? -1 : index),
          found === undefined
            ? `The column “${wanted}” is missing.`
            : `Column ${index + 1} is called “${found}” where “${wanted}” is expected.`,
          guess
            ? `Did you mean “${guess}”? The columns are: ${readingColumns.join(',')}.`
            : `The columns are, in this order: ${readingColumns.join(',')}.`,
        ),
        rule: unknown ? 'unknown-key' : 'schema',
      },
    ];
  });
}

function rowFinding(place: Place, message: string, help: string): Finding {
  return { rule: 'syntax', severity: 'error', place, message, help, related: [] };
}

/** Lets the validation of a row point at its cells. */
class CellPositions implements Positions {
  readonly #source: TextFile;
  readonly #line: number;
  readonly #cells: readonly string[];

  constructor(source: TextFile, line: number, cells: readonly string[]) {
    this.#source = source;
    this.#line = line;
    this.#cells = cells;
  }

  place(path: DataPath): Place {
    return cellPlace(this.#source, this.#line, columnIndex(path));
  }

  sourceOf(path: DataPath): string | undefined {
    return this.#cells[columnIndex(path)];
  }
}

function columnIndex(path: DataPath): number {
  return (readingColumns as readonly PropertyKey[]).indexOf(path[0] ?? '');
}

/** The place of cell `index` of a line, or of the whole line for -1. Quoted cells may hold commas. */
function cellPlace(source: TextFile, line: number, index: number): Place {
  const text = source.lineText(line);
  let start = 0;
  let end = text.length;
  if (index >= 0) {
    let cell = 0;
    let quoted = false;
    end = text.length;
    for (let at = 0; at < text.length; at += 1) {
      if (text[at] === '"') quoted = !quoted;
      else if (text[at] === ',' && !quoted) {
        if (cell === index) {
          end = at;
          break;
        }
        cell += 1;
        start = at + 1;
      }
    }
  }
  return { file: source.file, line, column: start + 1, endLine: line, endColumn: end + 1 };
}
