import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { join, normalize } from 'node:path';

const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json',
  csv: 'text/csv; charset=utf-8',
  svg: 'image/svg+xml',
};

/** A folder on loopback, as a static host would serve it below a path of its own. */
export interface ServedFolder {
  /** With a slash at its end. */
  readonly address: string;
  /** The paths that were asked for, in their order. */
  readonly asked: readonly string[];
  readonly close: () => Promise<void>;
}

export async function serveFolder(folder: string, port = 0): Promise<ServedFolder> {
  const asked: string[] = [];
  const server: Server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
    asked.push(path);
    const file = path.startsWith('/site/') ? join(folder, normalize(path.slice('/site'.length))) : '';
    if (file === '' || !existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': types[file.split('.').at(-1) ?? ''] ?? 'text/plain' });
    response.end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  const bound = server.address();
  if (bound === null || typeof bound === 'string') throw new Error('the server has no port');
  return {
    address: `http://localhost:${bound.port}/site/`,
    asked,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
