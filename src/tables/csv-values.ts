/** Cells of a CSV table as tests and answers. What may be meant in two ways is a fault, not a guess. */
import { unaryTest } from 'feelin';
import type { CsvCell, CsvFile } from './csv-cells.ts';
import { unquoted } from './dmn/feel-text.ts';
import { renamed } from './dmn/names.ts';
import { feelTest } from './entry/feel-test.ts';
import type { FileFault, Span } from './file-fault.ts';
import { daysOf } from './sets/days.ts';
import { heldBy, readTest } from './sets/read-test.ts';
import type { Value, ValueType } from './table.ts';

/** Reads the cells of one file, and gathers their faults. */
export class CsvValues {
  readonly faults: FileFault[] = [];
  readonly #delimiter: CsvFile['delimiter'];

  constructor(delimiter: CsvFile['delimiter']) {
    this.#delimiter = delimiter;
  }

  fault(cell: CsvCell | undefined, message: string, help: string): void {
    this.faults.push({ span: cell?.span ?? nowhere, message, help });
  }

  /** The test in FEEL. @param names words → ids of the inputs, for tests that use another one. */
  test(cell: CsvCell | undefined, type: ValueType | undefined, names: ReadonlyMap<string, string>): string {
    if (!cell || cell.text === '') return '-';
    if (!type) return cell.text;
    if (type.kind === 'number' && this.#isUnclear(cell)) return '-';
    const text = type.kind === 'yes-no' ? cell.text.toLowerCase() : cell.text;
    const test = feelTest(text, type);
    if (readTest(test, type).beyond === undefined) return test;
    const expression = renamed(test, names);
    const unknown = unknownName(expression, names.values());
    if (unknown !== undefined) {
      const message = `“${unknown}” is neither a value of this column nor the name of another.`;
      this.fault(cell, message, `This column holds ${heldBy(type)}.`);
    }
    return expression;
  }

  /** A comma between digits is a decimal comma, or one of thousands, or sets two values apart: it is not guessed at. */
  #isUnclear(cell: CsvCell): boolean {
    const comma = /(?<![\w.])\d+,\d+|\d\.\d+,\d+(?!\d*\.)/.exec(cell.text)?.[0];
    if (comma !== undefined) {
      this.fault(
        cell,
        `“${comma}” can be one number with a decimal comma, or two numbers.`,
        `Write a number with a point, ${comma.replace(',', '.')}, and several with a blank after the comma, ${comma.replace(',', ', ')}.`,
      );
      return true;
    }
    const thousands =
      this.#delimiter === ';' ? /(?<![\w.,])\d{1,3}\.\d{3}(?![\d.])/.exec(cell.text)?.[0] : undefined;
    if (thousands === undefined) return false;
    this.fault(
      cell,
      `“${thousands}” can be ${thousands.replace('.', '')} or ${Number(thousands)}: this file is one of a spreadsheet that writes commas for points.`,
      `Write ${thousands.replace('.', '')}, or ${thousands}0.`,
    );
    return true;
  }

  answer(cell: CsvCell, type: ValueType): Value {
    const { text } = cell;
    if (text === '') return null;
    switch (type.kind) {
      case 'number':
        return this.#number(cell);
      case 'yes-no':
        if (/^(yes|true)$/i.test(text)) return true;
        if (/^(no|false)$/i.test(text)) return false;
        this.fault(cell, `“${text}” is neither yes nor no.`, 'Write yes or no.');
        return null;
      case 'date':
        if (daysOf(text) !== undefined) return text;
        this.fault(
          cell,
          `“${text}” is no date as tables write them.`,
          'Write 2026-03-14, and format the cell as text.',
        );
        return null;
      default:
        return /^"(?:[^"\\]|\\.)*"$/s.test(text) ? unquoted(text) : text;
    }
  }

  #number(cell: CsvCell): number | null {
    const { text } = cell;
    // A spreadsheet that sets cells apart by semicolons does so because its comma is that of decimals.
    const european = this.#delimiter === ';' && /^-?\d+,\d+$/.test(text);
    if (european) return Number(text.replace(',', '.'));
    if (this.#isUnclear(cell)) return null;
    if (/^-?(\d+(\.\d+)?|\.\d+)$/.test(text)) return Number(text);
    this.fault(cell, `“${text}” is no number.`, 'Write a number without its unit and with a point: 3.9.');
    return null;
  }

  /** What the tests of a column without brackets are of. */
  testsType(rows: CsvFile['rows'], at: number): ValueType {
    const texts = rows.map((row) => row[at]?.text ?? '').filter((text) => text !== '' && text !== '-');
    const candidates: readonly ValueType[] = [{ kind: 'number' }, { kind: 'yes-no' }, { kind: 'date' }];
    const fits = (type: ValueType): boolean =>
      texts.every((text) => {
        const lower = type.kind === 'yes-no' ? text.toLowerCase() : text;
        return readTest(feelTest(lower, type), type).set !== undefined;
      });
    const found = candidates.find(fits);
    if (found) return found;
    const words = texts.flatMap((text) =>
      (/^not\s*\((.*)\)$/s.exec(text)?.[1] ?? text).split(',').map((one) => one.trim()),
    );
    if (words.every((one) => /^[\p{L}\p{N}][\p{L}\p{N} -]*$/u.test(one))) {
      return { kind: 'choice', values: [...new Set(words)] };
    }
    return { kind: 'text' };
  }

  answersType(rows: CsvFile['rows'], at: number): ValueType {
    const texts = rows.map((row) => row[at]?.text ?? '').filter((text) => text !== '');
    const number = this.#delimiter === ';' ? /^-?\d+([.,]\d+)?$/ : /^-?\d+(\.\d+)?$/;
    if (texts.length > 0 && texts.every((text) => number.test(text))) return { kind: 'number' };
    if (texts.length > 0 && texts.every((text) => /^(yes|no|true|false)$/i.test(text)))
      return { kind: 'yes-no' };
    return { kind: 'text' };
  }
}

/** A name a test uses that is none of these. */
function unknownName(test: string, known: Iterable<string>): string | undefined {
  const context = Object.fromEntries([...known].map((id) => [id, null]));
  try {
    const { warnings } = unaryTest(test, { ...context, '?': null });
    const unknown = warnings.find(({ type }) => /^NO_(VARIABLE|FUNCTION)_FOUND$/.test(type));
    return unknown && test.slice(unknown.position?.from ?? 0, unknown.position?.to ?? test.length);
  } catch {
    // It cannot be read at all, which reading the table says better.
    return undefined;
  }
}

export const nowhere: Span = { start: 0, end: 0 };
