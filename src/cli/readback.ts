#!/usr/bin/env node
/** The command line program: `npx readback --help`. */
import { terminalDialogue } from './new/dialogue.ts';
import { run } from './program.ts';

// A reader that has seen enough, such as head, closes its end: that is no fault to report.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(`${text}\n`),
  err: (text) => process.stderr.write(`${text}\n`),
  colour: Boolean(process.stdout.isTTY) && !process.env.NO_COLOR,
  ...(process.stdin.isTTY && process.stderr.isTTY && { dialogue: () => terminalDialogue() }),
});
