#!/usr/bin/env node
/** The command line program: `npx readback --help`. */
import { run } from './program.ts';

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(`${text}\n`),
  err: (text) => process.stderr.write(`${text}\n`),
  colour: Boolean(process.stdout.isTTY) && !process.env.NO_COLOR,
});
