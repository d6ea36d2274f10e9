/** Starts nginx, where it is installed, on a configuration the build wrote. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { type NginxOptions, nginxConfiguration } from '../../src/publish/nginx.ts';

/** Debian keeps it outside the path of ordinary users. */
const path = `${process.env.PATH ?? ''}:/usr/sbin:/usr/local/sbin`;

export function hasNginx(): boolean {
  return spawnSync('nginx', ['-v'], { env: { PATH: path } }).status === 0;
}

export interface Nginx {
  /** Scheme, host and port, without a slash at the end. */
  readonly origin: string;
  close(): Promise<void>;
}

export async function startNginx(options: Omit<NginxOptions, 'listen'>): Promise<Nginx> {
  const work = await mkdtemp(join(tmpdir(), 'readback-nginx-'));
  const port = await freePort();
  const server = await nginxConfiguration({ ...options, listen: `127.0.0.1:${port}` });
  const temporary = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi']
    .map((name) => `${name}_temp_path ${work}/${name};`)
    .join(' ');
  // The site lies in a folder of the one who runs the tests: so the server runs as the same.
  const user = process.getuid?.() === 0 ? 'user root;' : '';
  await writeFile(
    join(work, 'nginx.conf'),
    `${user} pid ${work}/nginx.pid; error_log ${work}/error.log; daemon off; worker_processes 2;
events { worker_connections 1024; }
http { access_log off; sendfile on; ${temporary}
${server}
}
`,
  );
  const child = spawn('nginx', ['-p', work, '-c', join(work, 'nginx.conf')], {
    env: { PATH: path },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const errors: string[] = [];
  child.stderr.on('data', (chunk: Buffer) => errors.push(String(chunk)));
  const origin = `http://127.0.0.1:${port}`;
  for (let attempt = 0; ; attempt += 1) {
    if (child.exitCode !== null) throw new Error(`nginx did not start: ${errors.join('')}`);
    const answered = await fetch(origin).then(
      () => true,
      () => false,
    );
    if (answered) break;
    if (attempt > 200) throw new Error('nginx does not answer');
    await wait(50);
  }
  return {
    origin,
    close: async () => {
      await stopped(child);
      await rm(work, { recursive: true, force: true });
    },
  };
}

function stopped(child: ChildProcess): Promise<void> {
  return new Promise((done) => {
    child.once('exit', () => done());
    child.kill('SIGTERM');
  });
}

/** A port no one listens on, below those the system gives to connections: none of these takes it meanwhile. */
export function freePort(): Promise<number> {
  const port = 15_000 + Math.floor(15_000 * Math.random());
  return new Promise((found, failed) => {
    const probe = createServer().once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') freePort().then(found, failed);
      else failed(error);
    });
    probe.listen(port, '127.0.0.1', () => probe.close(() => found(port)));
  });
}
