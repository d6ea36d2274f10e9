/** Runs a command line in this process and keeps what it printed. */
import { run } from '../../src/cli/program.ts';

export interface Printed {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export async function readback(...argv: string[]): Promise<Printed> {
  const out: string[] = [];
  const err: string[] = [];
  const code = await run(argv, {
    out: (text) => out.push(text),
    err: (text) => err.push(text),
    colour: false,
  });
  return { code, out: out.join('\n'), err: err.join('\n') };
}
