/** Reads a session's readings.csv into columns, each row checked and its line kept. */
import { type Channel, channels, type Reading, readingColumns, readingSchema } from '../../schemas/index.ts';
import { CheckedRows, rowData } from './checked-cells.ts';
import { clipped } from './field-words.ts';
import type { Finding, Place } from './finding.ts';
import { nearest } from './nearest.ts';
import { eachRow, MisplacedQuote } from './sheet-rows.ts';
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
  /** The profiles of the sheet, in the order they first appear. */
  readonly profiles: readonly string[];
  readonly #readRows: () => ReadingColumns;
  #readColumns: ReadingColumns | undefined;
  #rowsOfProfile: ReadonlyMap<string, readonly number[]> | undefined;

  /** @param readRows reads the sheet where its profiles are known from an earlier run: most are not asked more. */
  constructor(
    session: string,
    source: TextFile,
    profiles: readonly string[],
    readRows: () => ReadingColumns,
  ) {
    this.session = session;
    this.source = source;
    this.profiles = profiles;
    this.#readRows = readRows;
  }

  /** A digest of the whole sheet. */
  get digest(): string {
    return this.source.digest;
  }

  get length(): number {
    return this.#rows.line.length;
  }

  get #rows(): ReadingColumns {
    this.#readColumns ??= this.#readRows();
    return this.#readColumns;
  }

  /** The readings of one profile in the order of the sheet; none where the session did not measure it. */
  readingsOf(profile: string): BenchReading[] {
    return (this.#byProfile().get(profile) ?? []).map((row) => this.reading(row));
  }

  /** The reading in row `row`, 0 for the first. */
  reading(row: number): BenchReading {
    return new TableReading(this.session, this.#rows, row);
  }

  /** The table without some readings, by id; itself where it has none of them. */
  without(readingIds: ReadonlySet<string>): ReadingTable {
    const prefix = `${this.session}:`;
    const lines = new Set<number>();
    for (const id of readingIds) if (id.startsWith(prefix)) lines.add(Number(id.slice(prefix.length)));
    if (lines.size === 0) return this;
    // Most are never asked for their rows.
    return new ReadingTable(this.session, this.source, this.profiles, () => withoutLines(this.#rows, lines));
  }

  /** The place of one cell of a reading, by its id, or of its whole row. */
  place(readingId: string, column?: keyof Reading): Place {
    const line = Number(readingId.slice(readingId.lastIndexOf(':') + 1));
    return cellPlace(this.source, line, column === undefined ? -1 : readingColumns.indexOf(column));
  }

  #byProfile(): ReadonlyMap<string, readonly number[]> {
    if (this.#rowsOfProfile) return this.#rowsOfProfile;
    const rows: number[][] = this.profiles.map(() => []);
    this.#rows.profile.forEach((profile, row) => {
      rows[profile]?.push(row);
    });
    this.#rowsOfProfile = new Map(this.profiles.map((profile, at) => [profile, rows[at] ?? []]));
    return this.#rowsOfProfile;
  }
}

/** The cells of a sheet, one array a column; names are kept once. */
export interface ReadingColumns {
  readonly profiles: readonly string[];
  /** Places in `profiles`. */
  readonly profile: Uint32Array;
  /** Places in the list of channels. */
  readonly channel: Uint8Array;
  readonly step: Uint16Array;
  readonly hz: Float64Array;
  readonly voltsRms: Float64Array;
  /** Not a number where none was read. */
  readonly thdPercent: Float64Array;
  readonly repeat: Uint32Array;
  readonly line: Uint32Array;
}

function withoutLines(
  { profiles, line, ...columns }: ReadingColumns,
  lines: ReadonlySet<number>,
): ReadingColumns {
  const isKept = (_: number, row: number): boolean => !lines.has(line[row] ?? 0);
  return {
    profiles,
    profile: columns.profile.filter(isKept),
    channel: columns.channel.filter(isKept),
    step: columns.step.filter(isKept),
    hz: columns.hz.filter(isKept),
    voltsRms: columns.voltsRms.filter(isKept),
    thdPercent: columns.thdPercent.filter(isKept),
    repeat: columns.repeat.filter(isKept),
    line: line.filter(isKept),
  };
}

/** One row of the columns. Its id is only written out where it is asked for. */
class TableReading implements BenchReading {
  readonly session: string;
  readonly profile: string;
  readonly channel: Channel;
  readonly step: number;
  readonly hz: number;
  readonly voltsRms: number;
  readonly thdPercent: number | null;
  readonly repeat: number;
  readonly #line: number;

  constructor(session: string, rows: ReadingColumns, row: number) {
    const thdPercent = rows.thdPercent[row] ?? Number.NaN;
    this.session = session;
    this.profile = rows.profiles[rows.profile[row] ?? 0] ?? '';
    this.channel = channels[rows.channel[row] ?? 0] ?? 'FL';
    this.step = rows.step[row] ?? Number.NaN;
    this.hz = rows.hz[row] ?? Number.NaN;
    this.voltsRms = rows.voltsRms[row] ?? Number.NaN;
    this.thdPercent = Number.isNaN(thdPercent) ? null : thdPercent;
    this.repeat = rows.repeat[row] ?? 1;
    this.#line = rows.line[row] ?? 0;
  }

  get id(): string {
    return `${this.session}:${this.#line}`;
  }
}

/** Columns while they grow. */
class GrowingColumns {
  readonly #places = new Map<string, number>();
  readonly #profile: number[] = [];
  readonly #channel: number[] = [];
  readonly #step: number[] = [];
  readonly #hz: number[] = [];
  readonly #voltsRms: number[] = [];
  readonly #thdPercent: number[] = [];
  readonly #repeat: number[] = [];
  readonly #line: number[] = [];

  add(reading: Reading, line: number): void {
    let place = this.#places.get(reading.profile);
    if (place === undefined) {
      place = this.#places.size;
      this.#places.set(reading.profile, place);
    }
    this.#profile.push(place);
    this.#channel.push(channels.indexOf(reading.channel));
    this.#step.push(reading.step);
    this.#hz.push(reading.hz);
    this.#voltsRms.push(reading.voltsRms);
    this.#thdPercent.push(reading.thdPercent ?? Number.NaN);
    this.#repeat.push(reading.repeat);
    this.#line.push(line);
  }

  columns(): ReadingColumns {
    return {
      profiles: [...this.#places.keys()],
      profile: Uint32Array.from(this.#profile),
      channel: Uint8Array.from(this.#channel),
      step: Uint16Array.from(this.#step),
      hz: Float64Array.from(this.#hz),
      voltsRms: Float64Array.from(this.#voltsRms),
      thdPercent: Float64Array.from(this.#thdPercent),
      repeat: Uint32Array.from(this.#repeat),
      line: Uint32Array.from(this.#line),
    };
  }
}

/**
 * Parses the sheet of one session. The header must hold exactly the known columns, in their order; where it
 * does not, but for a misspelt name, no row is read: a number would be taken for another. A row that fails
 * gives a finding at its cell and is left out.
 */
export function readReadings(
  source: TextFile,
  session: string,
): { table: ReadingTable; findings: readonly Finding[] } {
  const { columns, findings } = readColumns(source);
  return { table: new ReadingTable(session, source, columns.profiles, () => columns), findings };
}

/** A sheet read before without a finding: its rows are read when they are asked for. */
export function knownReadings(source: TextFile, session: string, profiles: readonly string[]): ReadingTable {
  return new ReadingTable(session, source, profiles, () => readColumns(source).columns);
}

function readColumns(source: TextFile): { columns: ReadingColumns; findings: readonly Finding[] } {
  const rows = new GrowingColumns();
  const checked = new CheckedRows();
  const findings: Finding[] = [];
  let header: string[] | undefined;
  let lastLine = 0;
  const readRow = (cells: string[], line: number): void => {
    if (!header) {
      header = cells;
      findings.push(...headerFindings(source, cells, line));
      return;
    }
    if (!namesColumns(header)) return;
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
    const reading = checked.reading(cells);
    if (reading) {
      rows.add(reading, line);
    } else {
      const positions = new CellPositions(source, line, cells);
      findings.push(...validate<Reading>(readingSchema, rowData(cells), positions, 'reading').findings);
    }
  };
  const loneReturn = /\r(?!\n)/.exec(source.text);
  if (loneReturn) {
    const finding = rowFinding(
      source.place(loneReturn.index),
      'A line ends here in a way only very old programs write.',
      'Save the sheet again as CSV with ordinary line ends.',
    );
    return { columns: rows.columns(), findings: [finding] };
  }
  try {
    eachRow(source.text, (cells, line) => {
      readRow(cells, line);
      lastLine = line;
    });
  } catch (error) {
    if (!(error instanceof MisplacedQuote)) throw error;
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
  return { columns: rows.columns(), findings };
}

/** The first line from `line` on that holds a quotation mark. */
function lineOfQuote(source: TextFile, line: number): number {
  for (let at = line; at <= source.lineCount; at += 1) if (source.lineText(at).includes('"')) return at;
  return Math.min(line, source.lineCount);
}

/** Whether a header has the known columns in their places, each by its name or one that is near it and no other’s. */
function namesColumns(cells: readonly string[]): boolean {
  return (
    cells.length === readingColumns.length &&
    readingColumns.every((wanted, index) => {
      const found = cells[index] ?? '';
      return found === wanted || (!isColumn(found) && nearest(found, readingColumns) === wanted);
    })
  );
}

function isColumn(name: string): boolean {
  return (readingColumns as readonly string[]).includes(name);
}

function headerFindings(source: TextFile, cells: readonly string[], line: number): Finding[] {
  const [only = ''] = cells;
  const separator = cells.length === 1 ? /[;\t]/.exec(only)?.[0] : undefined;
  if (separator) {
    return [
      rowFinding(
        cellPlace(source, line, -1),
        `The cells of this sheet are separated by ${separator === ';' ? 'semicolons' : 'tabs'}, not by commas.`,
        'Save it again as CSV with commas between the cells and points for the decimals.',
      ),
    ];
  }
  if (!cells.some(isColumn)) {
    return [
      {
        ...rowFinding(
          cellPlace(source, line, -1),
          'This line does not name the columns.',
          `Begin the sheet with the line ${readingColumns.join(',')}.`,
        ),
        rule: 'schema',
      },
    ];
  }
  // However many there are, they are one mistake: a sheet of something else, or with columns of its own.
  const more = cells.length - readingColumns.length;
  const further =
    more <= 0
      ? []
      : [
          {
            ...rowFinding(
              cellPlace(source, line, readingColumns.length),
              `Column ${readingColumns.length + 1}, “${clipped(cells[readingColumns.length] ?? '')}”, is none of a sheet${more === 1 ? '' : `, nor are the ${more - 1} behind it`}.`,
              `Delete ${more === 1 ? 'it' : 'them'}. The columns are, in this order: ${readingColumns.join(',')}.`,
            ),
            rule: 'unknown-key',
          },
        ];
  return [...further, ...knownColumnFindings(source, cells, line)];
}

function knownColumnFindings(source: TextFile, cells: readonly string[], line: number): Finding[] {
  return readingColumns.flatMap((wanted, index) => {
    const found = cells[index];
    if (found === wanted) return [];
    const unknown = found !== undefined && !isColumn(found);
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

  restOfLine(): string {
    return '';
  }

  /** A cell is read as plain figures or not at all. */
  readonly oddNumbers = [];
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
