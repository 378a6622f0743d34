import { createServer, type IncomingMessage } from 'node:http';
import { resolve } from 'node:path';
import { isInside, leadsOut } from './inside.ts';
import { readPlainFile } from './read-plain-file.ts';

/** A folder that is served to this machine alone. */
export interface ServedFolder {
  /** With a slash at its end. */
  readonly address: string;
  readonly close: () => void;
}

/** What a catalogue is made of; nothing else is served. */
const kinds: Readonly<Record<string, string>> = {
  css: 'text/css; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  json: 'application/json',
  svg: 'image/svg+xml',
};
const largestFile = 1 << 27;

/**
 * Serves the files of a folder on loopback, as they are when they are asked for; port 0 takes any that is free. A page elsewhere
 * that has its own name lead here is refused, so that it cannot read them. Throws what the system says.
 */
export async function serveFolder(folder: string, port: number): Promise<ServedFolder> {
  const server = createServer((request, response) => {
    const file = servedFile(folder, request);
    const headers = { 'Cache-Control': 'no-store', 'X-Content-Type-Options': 'nosniff' };
    if (typeof file === 'number') response.writeHead(file, headers).end();
    else response.writeHead(200, { ...headers, 'Content-Type': file.kind }).end(file.bytes);
  });
  await new Promise<void>((listening, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', listening);
  });
  const bound = server.address();
  const at = typeof bound === 'object' && bound !== null ? bound.port : port;
  return {
    address: `http://localhost:${at}/`,
    close: () => {
      server.closeAllConnections();
      server.close();
    },
  };
}

/** A file that is asked for, or the status of HTTP that says why there is none. */
function servedFile(
  folder: string,
  { headers, method, url }: IncomingMessage,
): { readonly kind: string; readonly bytes: Uint8Array } | 404 | 405 | 421 {
  if (!/^(?:localhost|127\.0\.0\.1)(?::\d+)?$/.test(headers.host ?? '')) return 421;
  if (method !== 'GET' && method !== 'HEAD') return 405;
  const path = pathOf(url ?? '/');
  const kind = kinds[path.split('.').at(-1) ?? ''];
  const file = resolve(folder, path);
  try {
    if (kind === undefined || !isInside(file, folder) || leadsOut(path, folder)) return 404;
    const read = readPlainFile(file, largestFile);
    return read.ok ? { kind, bytes: read.value } : 404;
  } catch {
    return 404;
  }
}

/** Relative to the folder; of the root its first page. */
function pathOf(url: string): string {
  try {
    const path = decodeURIComponent(new URL(url, 'http://localhost').pathname).slice(1);
    return path === '' ? 'index.html' : path;
  } catch {
    return '';
  }
}
