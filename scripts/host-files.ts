import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { hostFiles, robots, sitemap } from '../site/hosts.ts';
import { serveFolder } from './serve.ts';

/** Size that previews of links are drawn for [px] (common practice, no published source). */
const previewSize = { width: 1200, height: 630 } as const;

/** The addresses of the pages of a built guide, from its top, in order. */
async function pagesIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { recursive: true });
  return entries
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.html'))
    .map((file) => file.replace(/(^|\/)index\.html$/u, '$1'))
    .sort();
}

/**
 * Writes beside a built guide what its host has to be told, and, where it is known which host that is, what search
 * engines ask for.
 *
 * @param folder the built guide
 * @param base the folder of the host that it was built for
 * @param site its whole address, with a slash at the end
 */
export async function writeHostFiles(folder: string, base: string, site: string | undefined): Promise<void> {
  const files = {
    ...hostFiles(base),
    'robots.txt': robots(site),
    ...(site === undefined ? {} : { 'sitemap.xml': sitemap(site, await pagesIn(folder)) }),
  };
  for (const [name, text] of Object.entries(files)) {
    const file = join(folder, name);
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, text);
  }
}

/** Draws the first page of a built guide as the picture that other sites show beside a link to it. */
export async function drawPreview(folder: string, base: string, browser: string): Promise<void> {
  const { chromium } = await import('playwright-core');
  const serving = await serveFolder({ folder, port: 0, base });
  const opened = await chromium.launch({
    executablePath: browser,
    args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  try {
    const context = await opened.newContext({
      serviceWorkers: 'block',
      javaScriptEnabled: false,
      colorScheme: 'light',
      viewport: previewSize,
    });
    const page = await context.newPage();
    await page.goto(serving.address);
    await page.screenshot({ path: join(folder, 'preview.png') });
  } finally {
    await opened.close();
    await serving.close();
  }
}
