/** Serves a built site as the web servers do that it is put on: the build's headers, and text compressed with gzip. */
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.xml': 'application/xml',
  '.png': 'image/png',
};

export interface Served {
  /** Scheme, host and port, without a slash at the end. */
  readonly origin: string;
  close(): Promise<void>;
}

/** @param headers sent with every answer: those the build gave. The site must be built for the path `/`. */
export async function serveCompressed(
  folder: string,
  headers: Readonly<Record<string, string>>,
): Promise<Served> {
  const server = createServer(async ({ url = '/' }, response) => {
    const { pathname } = new URL(url, 'http://localhost');
    const path = pathname.endsWith('/') ? `${pathname}index.html` : pathname;
    const file = join(folder, join('/', decodeURIComponent(path)));
    const type = types[extname(file)] ?? 'application/octet-stream';
    try {
      const body = await readFile(file);
      const isText = /^text|json|xml/.test(type);
      response.writeHead(200, {
        ...headers,
        'content-type': type,
        'cache-control': path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
        ...(isText ? { 'content-encoding': 'gzip', vary: 'accept-encoding' } : {}),
      });
      response.end(isText ? gzipSync(body) : body);
    } catch {
      response.writeHead(404, headers).end();
    }
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}
