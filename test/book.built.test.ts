import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { bookFile } from '../scripts/book.ts';
import { dist, readBuilt } from './support/site.ts';

/** The whole guide on one page, and the PDF that a browser prints of it. */

const html = readBuilt('book/index.html').toString('utf8');
const path = join(dist, bookFile);
const plain = (text: string) =>
  text
    .replace(/<[^>]*>/gu, '')
    .replaceAll('&#39;', '’')
    .replace(/\s+/gu, ' ')
    .trim();
const chapters = [...html.matchAll(/<h2 id="chapter--([^"]+)">([\s\S]*?)<\/h2>/gu)].map(
  ([, id = '', title = '']) => ({ id, title: plain(title) }),
);
const textOf = (page: number) =>
  execFileSync('pdftotext', ['-f', `${page}`, '-l', `${page}`, '-layout', path, '-'], { encoding: 'utf8' });

describe('the guide on one page', () => {
  it('has every id once, and every link inside it leads somewhere', () => {
    const ids = [...html.matchAll(/\sid="([^"]*)"/gu)].map(([, id = '']) => id);
    expect(ids.length).toBeGreaterThan(20);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    const targets = [...html.matchAll(/\shref="#([^"]+)"/gu)].map(([, id = '']) => id);
    expect(targets.length).toBeGreaterThan(10);
    expect(targets.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('has calculators as tables that are filled, and nothing to fill in', () => {
    const article = /<article[\s\S]*<\/article>/u.exec(html)?.[0] ?? '';
    expect(article).toMatch(/<output data-figure="winding\.pitch"[^>]*>[^<]*\d/u);
    expect(article).not.toMatch(/<(?:input|select|textarea|button)\b/u);
  });
});

describe('the guide as a PDF', () => {
  it('is sound, tagged, and has a page for every number in its contents', async () => {
    execFileSync('qpdf', ['--check', path]);
    const info = execFileSync('pdfinfo', [path], { encoding: 'utf8' });
    expect(info).toMatch(/^Tagged: +yes$/mu);
    expect(chapters.length).toBeGreaterThan(0);
    const contents = textOf(2);
    for (const { title } of chapters) {
      const line = contents.split('\n').find((one) => one.replace(/\s+/gu, ' ').includes(title.slice(0, 40)));
      const page = Number(/(\d+)\s*$/u.exec(line ?? '')?.[1]);
      expect(page, title).toBeGreaterThan(2);
      // The heading on that page, and the running head above it.
      const there = textOf(page).replace(/\s+/gu, ' ');
      expect(there).toContain(`${title} The winter bench guide`);
      expect(there.split(title).length, title).toBeGreaterThan(2);
      expect(textOf(page - 1).replace(/\s+/gu, ' ')).not.toContain(`${title} The winter bench guide`);
    }
  });

  it('has a bookmark for every chapter, and no link to the machine that printed it', async () => {
    const task = getDocument({ data: new Uint8Array(readBuilt(bookFile)) });
    const file = await task.promise;
    const outline = (await file.getOutline()) as unknown as readonly Bookmark[];
    interface Bookmark {
      readonly title: string;
      readonly items: readonly Bookmark[];
    }
    const words = (items: readonly Bookmark[]): string[] =>
      items.flatMap(({ title, items: below }) => [title.replace(/\s+/gu, ''), ...words(below)]);
    for (const { title } of chapters) expect(words(outline)).toContain(title.replace(/\s+/gu, ''));
    const links: string[] = [];
    for (let number = 1; number <= file.numPages; number++)
      for (const one of await (await file.getPage(number)).getAnnotations())
        if (typeof one.url === 'string') links.push(one.url);
    expect(links.filter((link) => /localhost|127\.0\.0\.1/u.test(link))).toEqual([]);
    await task.destroy();
  });
});
