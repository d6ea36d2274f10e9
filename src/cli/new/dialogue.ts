/** Questions at a terminal. */
import { createInterface } from 'node:readline/promises';
import { CannotRun } from '../../base/index.ts';

export interface Dialogue {
  /**
   * What was typed in answer, without the end of the line.
   * @throws CannotRun where the person stops it.
   */
  ask(question: string): Promise<string>;
  tell(text: string): void;
  close(): void;
}

/** A dialogue on the terminal. Questions go to the error stream, so that results can be taken from the other. */
export function terminalDialogue(
  input: NodeJS.ReadableStream = process.stdin,
  output: NodeJS.WritableStream = process.stderr,
): Dialogue {
  const stopped = new AbortController();
  const terminal = createInterface({ input, output });
  // Ctrl-C, and Ctrl-D or the end of the input.
  terminal.on('SIGINT', () => stopped.abort());
  terminal.on('close', () => stopped.abort());
  return {
    ask: async (question) => {
      try {
        return await terminal.question(question, { signal: stopped.signal });
      } catch (error) {
        if (!stopped.signal.aborted) throw error;
        output.write('\n');
        throw new CannotRun('Stopped. Nothing was written.', 'Run the command again to begin anew.');
      }
    },
    tell: (text) => {
      output.write(`${text}\n`);
    },
    close: () => terminal.close(),
  };
}
