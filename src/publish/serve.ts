/** Serves a published site as a plain web server would, to look at it before it goes out. */
import { createReadStream, existsSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join, resolve } from 'node:path';
import sirv from 'sirv';
import { CannotRun } from '../base/index.ts';
import { withSlashes } from './project.ts';
import { cacheControl, hashedFolders, isOpenFile, openFiles } from './site-headers.ts';

export interface ServeOptions {
  readonly folder: string;
  readonly basePath: string;
  readonly host: string;
  /** 0 for any free port. */
  readonly port: number;
  /** Where each language is below the base path, as the build gave it. */
  readonly folders: readonly string[];
  /** Sent with every answer: those the build gave. */
  readonly headers: Readonly<Record<string, string>>;
}

export interface Served {
  /** The address of the start page. */
  readonly address: string;
  close(): Promise<void>;
}

/**
 * Serves `folder` below the base path. Addresses outside it, and pages that are not there, get 404.html with
 * status 404.
 * @throws CannotRun where the folder holds no site or the port is taken.
 */
export async function serveFolder({
  folder,
  folders,
  basePath,
  host,
  port,
  headers,
}: ServeOptions): Promise<Served> {
  const root = resolve(folder);
  if (!existsSync(join(root, 'index.html'))) {
    throw new CannotRun(`There is no site in ${folder}.`, 'Build it first.');
  }
  const base = withSlashes(basePath);
  // The longest first: that of the first language is empty.
  const languages = folders.toSorted((a, b) => b.length - a.length);
  const languageOf = (path: string): string => languages.find((one) => path.startsWith(one)) ?? '';
  const notFound = ({ url = '/' }: IncomingMessage, response: ServerResponse): void => {
    response.writeHead(404, {
      'content-type': 'text/html;charset=utf-8',
      'cache-control': cacheControl.other,
    });
    createReadStream(join(root, languageOf(url.slice(1)), '404.html'))
      .on('error', () => response.end('Not found'))
      .pipe(response);
  };
  // `dev` reads the folder at each request, so that a build underneath is seen at once.
  const files = sirv(root, {
    dev: true,
    etag: true,
    onNoMatch: notFound,
    setHeaders: (response, path) => {
      const inLanguage = path.slice(1 + languageOf(path.slice(1)).length);
      if (hashedFolders.some((hashed) => inLanguage.startsWith(hashed))) {
        response.setHeader('cache-control', cacheControl.hashed);
      }
      if (isOpenFile(inLanguage)) response.setHeader(...openFiles.header);
    },
  });
  const server = createServer((request, response) => {
    for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { allow: 'GET, HEAD' }).end();
      return;
    }
    const url = request.url ?? '/';
    if (url === '/' || url === base.slice(0, -1)) {
      if (base !== '/') {
        response.writeHead(302, { location: base }).end();
        return;
      }
    } else if (!url.startsWith(base)) {
      notFound(request, response);
      return;
    }
    request.url = url.slice(base.length - 1) || '/';
    files(request, response);
  });
  await new Promise<void>((ready, failed) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      failed(
        error.code === 'EADDRINUSE' ? new CannotRun(`Port ${port} is taken.`, 'Name another port.') : error,
      );
    });
    server.listen(port, host, ready);
  });
  const { port: taken } = server.address() as AddressInfo;
  const shownHost = host.includes(':') ? `[${host}]` : host;
  return {
    address: `http://${shownHost}:${taken}${base}`,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}
