/** What all commands share: options, output, exit codes. */
import { CannotRun } from '../base/index.ts';
import { type CheckedAnswers, textReport } from '../check/index.ts';
import type { Dialogue } from './new/dialogue.ts';

/** 0 clean or found; 1 findings, or not found; 2 the command could not run. */
export const exitCodes = { ok: 0, findings: 1, cannotRun: 2 } as const;

/** Where a command writes. Results go to `out`, everything else to `err`. */
export interface Output {
  out(text: string): void;
  err(text: string): void;
  /** Whether `out` is a terminal that takes colour. */
  readonly colour: boolean;
  /** Opens a dialogue; absent where nobody sits at a terminal. */
  readonly dialogue?: () => Dialogue;
}

export interface ContentOption {
  readonly content: string;
}

export interface JsonOption {
  readonly json?: boolean;
}

/** Prints one JSON object, indented for people. */
export function printJson(output: Output, value: object): void {
  output.out(JSON.stringify(value, undefined, 2));
}

/** Reports findings that stop a command other than `check`, on the error stream. */
export function reportFindings(output: Output, checked: CheckedAnswers, folder: string): void {
  const { findings, sourceOf, setAside } = checked;
  output.err(textReport({ findings, folder, sourceOf, setAside: setAside.length }, output.colour));
}

/** The day of the run where it runs, ISO 8601. */
export function today(): string {
  const now = new Date();
  const [month, day] = [now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0'));
  return `${now.getFullYear()}-${month}-${day}`;
}

/** Says why a command could not run, without a stack trace. Faults of the program itself are passed on. */
export function explainFailure(output: Output, error: unknown): number {
  if (!(error instanceof CannotRun)) throw error;
  output.err(`${error.message}\n→ ${error.help}`);
  return exitCodes.cannotRun;
}

/** Resolves when the person or the system asks the program to stop. */
export function interrupted(): Promise<void> {
  return new Promise((stopped) => {
    process.once('SIGINT', () => stopped());
    process.once('SIGTERM', () => stopped());
  });
}
