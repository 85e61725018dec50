/**
 * Makes the whole guide as one PDF, with contents, running heads, page numbers and bookmarks, by printing its page
 * /book/ with an installed Chromium: `npm run book -- [--region ID] [--out FILE]`.
 */
import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { given } from './command.ts';
import { findBrowser } from './find-browser.ts';
import { serveFolder } from './serve.ts';
import { readOptions, runTask, TaskProblem } from './steps.ts';

/** Where a build puts the book, from the top of the guide. */
export const bookFile = 'book/winter-bench-guide.pdf';

/** The page, counted from 1, on which each of these elements lies that a link in a PDF leads to, by its id. */
async function pagesOf(pdf: Uint8Array, ids: readonly string[]): Promise<ReadonlyMap<string, number>> {
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const task = getDocument({ data: new Uint8Array(pdf), useSystemFonts: false });
  const file = await task.promise;
  const pages = new Map<string, number>();
  for (const id of ids) {
    const [page] = ((await file.getDestination(id)) ?? []) as [{ num: number; gen: number }?];
    if (page) pages.set(id, (await file.getPageIndex(page)) + 1);
  }
  await task.destroy();
  return pages;
}

/**
 * Prints the book of a built guide into it: once to learn which page each chapter begins on, and once more with the
 * numbers in the contents.
 *
 * @param folder the built guide
 * @param base the path on the host that it was built for
 * @param browser the path of a Chromium, which is started at once
 * @param ready waits until the page of the book is written, with the styles that it asks for
 */
export async function printBook(
  folder: string,
  base: string,
  browser: string,
  ready: () => Promise<void>,
): Promise<void> {
  const { chromium } = await import('playwright-core');
  const serving = await serveFolder({ folder, port: 0, base });
  const opened = await chromium.launch({
    executablePath: browser,
    args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  try {
    // The figures of the example are in the page; its scripts would only work them out again.
    const context = await opened.newContext({ serviceWorkers: 'block', javaScriptEnabled: false });
    const page = await context.newPage();
    await ready();
    await page.goto(`${serving.address}book/`);
    const paper = await page.evaluate((top) => {
      const article = document.querySelector<HTMLElement>('article[data-guide]');
      const guide = article?.dataset['guide'] ?? top;
      // A link out of the book leads to the guide where it is published, not to this machine.
      for (const link of document.querySelectorAll<HTMLAnchorElement>('a[href]'))
        if (!link.getAttribute('href')?.startsWith('#') && link.href.startsWith(top))
          link.href = guide.replace(/\/?$/u, '/') + link.href.slice(top.length);
      return article?.dataset['paper'] ?? 'a4';
    }, serving.address);
    await page.evaluate(() => document.fonts.ready);
    const format = paper === 'letter' ? 'Letter' : 'A4';
    const ids = await page
      .locator('[data-page-of]')
      .evaluateAll((places) => places.map((place) => place.getAttribute('data-page-of') ?? ''));
    // Nothing need be seen of it, and no tags be made: it breaks into the same pages in a fraction of the time.
    await page.evaluate(() => {
      document.body.style.visibility = 'hidden';
    });
    const pages = await pagesOf(await page.pdf({ format }), ids);
    await page.evaluate((found) => {
      document.body.style.visibility = '';
      for (const place of document.querySelectorAll<HTMLElement>('[data-page-of]'))
        place.textContent = String(found[place.dataset['pageOf'] ?? ''] ?? '');
    }, Object.fromEntries(pages));
    const file = join(folder, bookFile);
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, await page.pdf({ format, printBackground: true, outline: true, tagged: true }));
  } finally {
    await opened.close();
    await serving.close();
  }
}

if (import.meta.main)
  await runTask(async () => {
    const { region, out = 'winter-bench-guide.pdf' } = readOptions({
      region: { type: 'string' },
      out: { type: 'string' },
    });
    if (!findBrowser())
      throw new TaskProblem(
        'The book is printed by a browser, and no Chromium or Chrome was found on this machine. Install one, or set CHROME_PATH to where it is. Without one, open the page /book/ of the guide in any browser and print it there: it then lacks page numbers in its contents.',
      );
    const { buildGuide, outFolder } = await import('./build.ts');
    await buildGuide({ region });
    await copyFile(join(outFolder, bookFile), given(out));
    console.log(`\nThe book: ${out}`);
  });
