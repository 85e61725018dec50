import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { request, type IncomingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { policyLine } from '../site/headers.ts';
import { serveFolder, type Serving } from '../scripts/serve.ts';

let around: string;
let serving: Serving;

beforeAll(async () => {
  around = await mkdtemp(join(tmpdir(), 'served-'));
  const folder = join(around, 'dist');
  await mkdir(join(folder, 'chapter'), { recursive: true });
  await writeFile(join(around, 'secret.txt'), 'secret');
  await mkdir(join(around, 'dist-other'));
  await writeFile(join(around, 'dist-other', 'secret.txt'), 'secret');
  await writeFile(join(folder, 'index.html'), '<p>Start</p>');
  await writeFile(join(folder, '404.html'), '<p>Nothing here</p>');
  await writeFile(join(folder, 'chapter', 'index.html'), '<p>Chapter</p>');
  await writeFile(join(folder, 'sheet of mine.pdf'), '%PDF-');
  serving = await serveFolder({ folder, port: 0 });
});

afterAll(async () => {
  await serving.close();
  await rm(around, { recursive: true });
});

/** Asks for a path exactly as it is written; `fetch` would tidy it first. */
const ask = (path: string, method = 'GET') =>
  new Promise<{ status: number; text: string; headers: IncomingHttpHeaders }>((done, fail) => {
    const { hostname, port } = new URL(serving.address);
    request({ hostname, port, path, method }, (response) => {
      let text = '';
      response.setEncoding('utf8');
      response.on('data', (part: string) => (text += part));
      response.on('end', () => {
        done({ status: response.statusCode ?? 0, text, headers: response.headers });
      });
    })
      .on('error', fail)
      .end();
  });

describe('the server of the built guide', () => {
  it('gives a page, its type and the strict policy', async () => {
    const { status, text, headers } = await ask('/');
    expect([status, text]).toEqual([200, '<p>Start</p>']);
    expect(headers['content-type']).toBe('text/html; charset=utf-8');
    expect(headers['content-security-policy']).toBe(policyLine);
    expect(policyLine).toContain("frame-ancestors 'none'");
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['strict-transport-security']).toBeUndefined();
  });

  it('gives a PDF whose name has blanks', async () => {
    const { status, headers } = await ask('/sheet%20of%20mine.pdf?download');
    expect([status, headers['content-type'], headers['content-length']]).toEqual([
      200,
      'application/pdf',
      '5',
    ]);
  });

  it('sends a folder without its slash to the one with it, query kept', async () => {
    const { status, headers } = await ask('/chapter?b=1');
    expect([status, headers.location]).toEqual([301, '/chapter/?b=1']);
    expect((await ask('/chapter/')).text).toBe('<p>Chapter</p>');
  });

  it('never sends a reader to another host', async () => {
    const { headers } = await ask('//chapter');
    expect(headers.location ?? '/').not.toMatch(/^\/\//u);
  });

  it('answers what is not there with the page for it and status 404', async () => {
    const { status, text, headers } = await ask('/nothing');
    expect([status, text]).toEqual([404, '<p>Nothing here</p>']);
    expect(headers['content-security-policy']).toBe(policyLine);
  });

  it.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/chapter/../../secret.txt',
    '/..%5csecret.txt',
    '/../dist-other/secret.txt',
    '/%00',
    '/%E0%A4%A',
    '//etc/passwd',
    '/index.html%00.png',
  ])('gives nothing from outside the folder: %s', async (path) => {
    const { status, text } = await ask(path);
    expect(status).toBe(404);
    expect(text).not.toContain('secret');
  });

  it('answers HEAD without a body and refuses to be written to', async () => {
    expect(await ask('/', 'HEAD')).toMatchObject({ status: 200, text: '' });
    expect(await ask('/', 'POST')).toMatchObject({ status: 405 });
  });

  it('takes the next port when one is taken, and says so when none is free', async () => {
    const port = Number(new URL(serving.address).port);
    const next = await serveFolder({ folder: around, port, tries: 5 });
    expect(Number(new URL(next.address).port)).toBeGreaterThan(port);
    await next.close();
    await expect(serveFolder({ folder: around, port })).rejects.toThrow(/taken/u);
  });

  it('serves a guide that was built for a path below it', async () => {
    const below = await serveFolder({ folder: join(around, 'dist'), port: 0, base: '/winter/' });
    const page = async (path: string) => {
      const response = await fetch(new URL(path, below.address));
      return [response.status, new URL(response.url).pathname];
    };
    expect(await page('/winter/chapter/')).toEqual([200, '/winter/chapter/']);
    expect(await page('/winter')).toEqual([200, '/winter/']);
    expect(await page('/')).toEqual([200, '/winter/']);
    expect(await page('/chapter/')).toEqual([404, '/chapter/']);
    await below.close();
  });
});
