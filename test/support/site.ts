import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';
import { browserOrThrow } from '../../scripts/find-browser.ts';
import { root } from './imports.ts';

/** The built guide, as the tests look at it. */
export const dist = join(root, 'dist');

/** All files of the built guide, by path from its top, with `/`, in order. */
export function builtFiles(): string[] {
  try {
    statSync(join(dist, 'index.html'));
  } catch (cause) {
    throw new Error('There is no built guide in dist/. Run "npm run build" first.', { cause });
  }
  return readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(dist.length + 1)
        .replaceAll('\\', '/'),
    )
    .sort();
}

export const readBuilt = (path: string): Buffer => readFileSync(join(dist, path));

/** The addresses of all pages, from the top of the guide: "", "bench/", "404.html". */
export const builtPages = (): string[] =>
  builtFiles()
    .filter((path) => path.endsWith('.html'))
    .map((path) => path.replace(/(^|\/)index\.html$/u, '$1'));

/** The file that an address from the top of the guide stands for. */
export const fileOfPage = (page: string): string =>
  page === '' || page.endsWith('/') ? `${page}index.html` : page;

export const startBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: browserOrThrow(),
    args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
