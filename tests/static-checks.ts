/**
 * Formatting, layers and types, beside each other on as many cores as there are. What each has to say is printed in one
 * piece; where one fails, all are heard and the exit code is 1.
 */
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';

/** The longest first, so that it is not waited for alone. */
const checks = ['types:astro', 'types:tsc', 'layers', 'lint'] as const;

/** Runs a script of package.json and prints what it said; gives whether it went well. */
function run(name: string): Promise<boolean> {
  const began = performance.now();
  const child = spawn('npm', ['run', '--silent', name], {
    stdio: ['ignore', 'pipe', 'pipe'],
    shell: process.platform === 'win32',
  });
  const said: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => said.push(chunk));
  return new Promise((done) => {
    child.on('error', (error) => {
      console.error(`✗ ${name}: ${error.message}`);
      done(false);
    });
    child.on('close', (code) => {
      const seconds = ((performance.now() - began) / 1000).toFixed(1);
      console.log(`${code === 0 ? '✓' : '✗'} ${name} (${seconds} s)`);
      process.stdout.write(Buffer.concat(said));
      done(code === 0);
    });
  });
}

// Both checks of types need what this writes.
const waiting = (await run('types:sync')) ? [...checks] : [];
const results = [waiting.length > 0];
await Promise.all(
  Array.from({ length: Math.max(1, availableParallelism()) }, async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) results.push(await run(next));
  }),
);
process.exitCode = results.every(Boolean) ? 0 : 1;
