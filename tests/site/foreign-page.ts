/** A page of someone else, on another port: what the code field is put into. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface ForeignSite {
  /** The page with the field in it. */
  readonly address: string;
  /** The same page without it. */
  readonly bare: string;
  close(): Promise<void>;
}

export interface ForeignOptions {
  readonly site: string;
  /** What stands between the element’s tags. */
  readonly inside?: string;
  readonly attributes?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

/** Serves the page. Its own styles are such as would spoil what they reach. */
export async function foreignSite({
  site,
  inside = `<a href="${site}">Look up your code</a>`,
  attributes = '',
  headers = {},
}: ForeignOptions): Promise<ForeignSite> {
  const field = `<readback-code-field ${attributes}>${inside}</readback-code-field>
    <script async src="${site}embed/code-field.js"></script>`;
  const page = (content: string): string => `<!doctype html><html lang="en"><head><title>A club’s page</title>
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <link rel="icon" href="data:,"><link rel="stylesheet" href="/club.css"></head>
    <body><main><h1>A club’s page</h1>${content}<p>More of the club.</p></main></body></html>`;
  const server = createServer(({ url }, response) => {
    if (url === '/club.css') {
      response.writeHead(200, { 'content-type': 'text/css' });
      response.end(
        `html { color-scheme: light dark; background: Canvas; font-size: 62.5% }
         input, button, li, p, a { font: italic 7px serif } main { font-size: 17px }`,
      );
      return;
    }
    response.writeHead(200, { 'content-type': 'text/html; charset=utf-8', ...headers });
    response.end(page(url === '/bare' ? '' : field));
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  return {
    address,
    bare: `${address}bare`,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}
