/** A server between browser and site that can be made to keep a rider waiting. */
import { request as ask, createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface SlowProxy {
  /** The site's address as seen through it. */
  readonly address: string;
  /** While true, nothing is answered. */
  isStuck: boolean;
  close(): Promise<void>;
}

/** Passes everything on to the site at `target`. */
export async function slowProxy(target: string): Promise<SlowProxy> {
  const { host, pathname } = new URL(target);
  const state = { isStuck: false };
  const server = createServer((request, response) => {
    if (state.isStuck) return;
    const passed = ask(
      `http://${host}${request.url}`,
      { method: request.method, headers: request.headers },
      (answer) => {
        response.writeHead(answer.statusCode ?? 502, answer.headers);
        answer.pipe(response);
      },
    );
    passed.on('error', () => response.destroy());
    request.pipe(passed);
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  return Object.assign(state, {
    address: `http://127.0.0.1:${port}${pathname}`,
    close: () =>
      new Promise<void>((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  });
}
