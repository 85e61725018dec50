import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, resolve, sep } from 'node:path';
import { headers } from '../site/headers.ts';

/** What each ending of a file name in the guide stands for. */
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.yaml': 'text/yaml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.pdf': 'application/pdf',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
};

export interface Serving {
  /** Where it can be reached, with a slash at the end. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

export interface ServeOptions {
  /** The folder to serve. */
  readonly folder: string;
  /** The first port to try; 0 takes any free one. */
  readonly port: number;
  /** How many further ports may be tried when one is taken. */
  readonly tries?: number;
  /** The address to listen on; this machine alone when left out. */
  readonly host?: string;
  /** The path that the guide was built for. */
  readonly base?: string;
}

type Found = { readonly file: string; readonly size: number } | 'folder' | undefined;

async function look(file: string): Promise<Found> {
  try {
    const found = await stat(file);
    if (found.isDirectory()) return 'folder';
    return found.isFile() ? { file, size: found.size } : undefined;
  } catch {
    return undefined;
  }
}

/**
 * The path inside the folder that an address names, or undefined when the address is malformed, outside the base, or
 * tries to leave the folder.
 */
export function pathInside(folder: string, base: string, url: string): string | undefined {
  const [written = ''] = url.split(/[?#]/u);
  let path: string;
  try {
    path = decodeURIComponent(written);
  } catch {
    return undefined;
  }
  if (path.includes('\0') || path.includes('\\') || !path.startsWith(base)) return undefined;
  const top = resolve(folder);
  const file = join(top, path.slice(base.length));
  return file === top || file.startsWith(top + sep) ? file : undefined;
}

function send(
  response: ServerResponse,
  status: number,
  found: Exclude<Found, 'folder' | undefined>,
  head: boolean,
): void {
  response.writeHead(status, {
    ...headers,
    'Content-Type': types[extname(found.file).toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': found.size,
    // The guide is rebuilt while someone looks at it.
    'Cache-Control': 'no-cache',
  });
  if (head) response.end();
  else
    createReadStream(found.file)
      .on('error', () => response.destroy())
      .pipe(response);
}

function sendText(
  response: ServerResponse,
  status: number,
  text: string,
  more: Record<string, string> = {},
): void {
  response.writeHead(status, { ...headers, 'Content-Type': 'text/plain; charset=utf-8', ...more });
  response.end(`${text}\n`);
}

async function answer(
  folder: string,
  base: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const { method = 'GET', url = '/' } = request;
  const head = method === 'HEAD';
  if (method !== 'GET' && !head) {
    sendText(response, 405, 'This server only gives files out.', { Allow: 'GET, HEAD' });
    return;
  }
  if (base !== '/' && (url === '/' || `${url}/` === base)) {
    sendText(response, 302, `The guide is at ${base}`, { Location: base });
    return;
  }
  const path = pathInside(folder, base, url);
  let found = path === undefined ? undefined : await look(path);
  if (path !== undefined && found === 'folder') {
    const [before = '', query] = url.split('?');
    if (!before.endsWith('/')) {
      // Two slashes at the start would name another host.
      const own = before.replace(/^\/+/u, '/');
      sendText(response, 301, 'A folder ends with a slash.', {
        Location: `${own}/${query === undefined ? '' : `?${query}`}`,
      });
      return;
    }
    found = await look(join(path, 'index.html'));
  }
  if (found !== undefined && found !== 'folder') {
    send(response, 200, found, head);
    return;
  }
  const page = await look(join(folder, '404.html'));
  if (page !== undefined && page !== 'folder') send(response, 404, page, head);
  else sendText(response, 404, 'There is no such page.');
}

const listen = (server: Server, port: number, host: string): Promise<void> =>
  new Promise((done, fail) => {
    server.once('error', fail);
    server.listen(port, host, () => {
      server.off('error', fail);
      done();
    });
  });

/**
 * Serves the files of a folder with the headers that a host of the guide should send, and nothing from outside it.
 * @throws {Error} when every port tried is taken
 */
export async function serveFolder({
  folder,
  port,
  tries = 0,
  host = '127.0.0.1',
  base = '/',
}: ServeOptions): Promise<Serving> {
  const server = createServer((request, response) => {
    answer(resolve(folder), base, request, response).catch((problem: unknown) => {
      console.error(problem);
      response.destroy();
    });
  });
  for (let at = port; ; at++) {
    try {
      await listen(server, at, host);
      break;
    } catch (problem) {
      const taken = (problem as NodeJS.ErrnoException).code === 'EADDRINUSE';
      if (!taken) throw problem;
      if (at >= port + tries)
        throw new Error(
          `Port ${port}${tries > 0 ? ` and the ${tries} after it are` : ' is'} taken. Give another with --port.`,
          { cause: problem },
        );
    }
  }
  const { port: taken } = server.address() as AddressInfo;
  return {
    address: `http://${host === '127.0.0.1' ? 'localhost' : host}:${taken}${base}`,
    close: () =>
      new Promise((done) => {
        server.close(() => {
          done();
        });
        server.closeAllConnections();
      }),
  };
}
