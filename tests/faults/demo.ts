/** The demo base in memory: its files as lines, its readings as rows, and what the check computes of it. */
import type { Session } from '../../schemas/index.ts';
import { type Answers, readAnswers } from '../../src/answers.ts';
import { MemoryFiles } from '../../src/base/index.ts';
import { areAlike } from '../../src/measure/group.ts';
import { filesOf } from '../check/example-base.ts';

export type Files = ReadonlyMap<string, string | Uint8Array>;

/** A file as it is to be; `content` undefined takes it away. */
export interface Edit {
  readonly file: string;
  readonly content: string | Uint8Array | undefined;
}

/** One row of a sheet, cells as they are written. */
export interface Row {
  readonly file: string;
  readonly session: string;
  /** 1-based line in the sheet. */
  readonly line: number;
  readonly profile: string;
  readonly channel: string;
  readonly step: number;
  readonly hz: number;
  readonly volts: string;
  readonly thd: string;
  readonly repeat: number;
}

/** A line of a file that matched a pattern. */
export interface LineMatch {
  readonly file: string;
  /** 1-based. */
  readonly line: number;
  readonly text: string;
  readonly match: RegExpExecArray;
}

export class Demo {
  readonly files: ReadonlyMap<string, string>;
  readonly answers: Answers;
  readonly rows: readonly Row[];
  readonly #lines = new Map<string, readonly string[]>();

  private constructor(files: ReadonlyMap<string, string>, answers: Answers) {
    this.files = files;
    this.answers = answers;
    this.rows = [...files.keys()]
      .filter((file) => file.endsWith('/readings.csv'))
      .flatMap((file) => this.#rowsOf(file));
  }

  static async read(folder = 'content'): Promise<Demo> {
    const files = await filesOf(folder);
    const sorted = new Map([...files].sort(([a], [b]) => (a < b ? -1 : 1)));
    const { answers } = await readAnswers(new MemoryFiles('content', sorted));
    return new Demo(sorted, answers);
  }

  text(file: string): string {
    const text = this.files.get(file);
    if (text === undefined) throw new Error(`the demo has no file ${file}`);
    return text;
  }

  lines(file: string): readonly string[] {
    const known = this.#lines.get(file);
    if (known) return known;
    const lines = this.text(file).split('\n');
    this.#lines.set(file, lines);
    return lines;
  }

  /** Files whose path matches, in order. */
  list(pattern: RegExp): string[] {
    return [...this.files.keys()].filter((file) => pattern.test(file));
  }

  /** Every line that matches, in the files whose path does. */
  linesWhere(files: RegExp, pattern: RegExp): LineMatch[] {
    return this.list(files).flatMap((file) =>
      this.lines(file).flatMap((text, index) => {
        const match = pattern.exec(text);
        return match ? [{ file, line: index + 1, text, match }] : [];
      }),
    );
  }

  /** The one line of a file that matches. */
  lineOf(file: string, pattern: RegExp): number {
    const index = this.lines(file).findIndex((text) => pattern.test(text));
    if (index === -1) throw new Error(`${file} has no line ${pattern}`);
    return index + 1;
  }

  /** The file with lines replaced (by number; several lines in one string, or none for undefined). */
  withLines(file: string, changes: ReadonlyMap<number, string | undefined>): Edit {
    const content = this.lines(file)
      .flatMap((text, index) => {
        if (!changes.has(index + 1)) return [text];
        const change = changes.get(index + 1);
        return change === undefined ? [] : [change];
      })
      .join('\n');
    return { file, content };
  }

  withLine(file: string, line: number, text: string | undefined): Edit {
    return this.withLines(file, new Map([[line, text]]));
  }

  /** The sheet of `rows` (all of one file) with each changed. */
  withRows(rows: readonly Row[], change: (row: Row) => Partial<Row>): Edit {
    const [first] = rows;
    if (!first) throw new Error('no rows to change');
    return this.withLines(
      first.file,
      new Map(rows.map((row) => [row.line, rowText({ ...row, ...change(row) })])),
    );
  }

  session(id: string): Session {
    const session = this.answers.base.outputs.get(id);
    if (!session) throw new Error(`the demo has no session ${id}`);
    return session.data;
  }

  /** The other sessions that measured a profile under conditions like those of `session`. */
  likeSessions(session: string, profile: string): string[] {
    return (this.answers.base.sessionsOfProfile.get(profile) ?? [])
      .filter((one) => one.id !== session && areAlike(one.data, this.session(session)))
      .map((one) => one.id);
  }

  /** The highest clean step of a profile, less its uncertainty; 0 where none is known. */
  cleanStep(profile: string): number {
    const step = this.answers.outputs
      .get(profile)
      ?.characteristics.find((one) => one.name === 'highest-clean-step');
    return step ? Math.floor(step.value - step.expandedUncertainty) : 0;
  }

  #rowsOf(file: string): Row[] {
    const session = file.split('/')[1] ?? '';
    return this.lines(file).flatMap((text, index): Row[] => {
      if (index === 0 || text === '') return [];
      const [profile = '', channel = '', step, hz, volts = '', thd = '', repeat] = text.split(',');
      return [
        {
          file,
          session,
          line: index + 1,
          profile,
          channel,
          step: Number(step),
          hz: Number(hz),
          volts,
          thd,
          repeat: Number(repeat),
        },
      ];
    });
  }
}

/** A row as the sheet has it. */
export function rowText({ profile, channel, step, hz, volts, thd, repeat }: Row): string {
  return [profile, channel, step, hz, volts, thd, repeat].join(',');
}

/** The demo's files after edits. */
export function edited(files: Files, edits: readonly Edit[]): Map<string, string | Uint8Array> {
  const after = new Map(files);
  for (const { file, content } of edits) {
    if (content === undefined) after.delete(file);
    else after.set(file, content);
  }
  return after;
}
