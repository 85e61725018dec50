import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveFolder, type Serving } from '../scripts/serve.ts';
import { root } from './support/imports.ts';
import { readPdf } from './support/pdf.ts';
import { eventually, figure, give } from './support/reader.ts';
import { startBrowser } from './support/site.ts';

/** The guide of another region, built for a folder of a host that is known, as an office would have it. */
const folder = join(root, '.cache/test/winter');
const base = '/winter/';
const site = `https://guide.example${base}`;
const files = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
const pages = files.filter((file) => file.endsWith('.html'));
const read = (file: string): string => readFileSync(join(folder, file), 'utf8');

describe('every page of a guide under a path', () => {
  it.each(pages)('%s links to nothing outside of it and says where it lies', (page) => {
    const html = read(page);
    const own = [...html.matchAll(/\s(?:href|src)="([^"#][^"]*)"/gu)].map(([, to = '']) => to);
    // Sources and the guide's own address are linked for readers; nothing is loaded from there.
    for (const to of own.filter((one) => !/^(?:https?:|mailto:)/u.test(one)))
      expect(to.startsWith(base)).toBe(true);
    for (const [tag] of html.matchAll(/<(?:script|img|source|iframe|object|embed)\b[^>]*>/gu))
      expect(tag).not.toMatch(/(?:src|srcset|data)="(?:https?:)?\/\//u);
    for (const [tag] of html.matchAll(/<link\b[^>]*>/gu))
      expect(tag).toMatch(/rel="canonical"|href="\/winter\//u);
    const canonical = /<link rel="canonical" href="([^"]*)"/u.exec(html)?.[1] ?? '';
    expect(canonical.startsWith(site)).toBe(true);
    const value = (name: string) =>
      new RegExp(`<meta property="og:${name}" content="([^"]*)"`, 'u').exec(html)?.[1];
    expect(value('url')).toBe(canonical);
    expect(value('image')).toBe(`${site}preview.png`);
    expect(value('title')?.length).toBeGreaterThan(3);
    expect(value('description')?.length).toBeGreaterThan(20);
  });

  it('the map for search engines names pages that are there', () => {
    const addresses = [...read('sitemap.xml').matchAll(/<loc>(.*?)<\/loc>/gu)].map(([, to = '']) => to);
    expect(addresses.length).toBeGreaterThan(30);
    for (const to of addresses) {
      expect(to.startsWith(site)).toBe(true);
      expect(pages).toContain(`${to.slice(site.length)}index.html`);
    }
  });

  it('has the office’s own words where they belong, and its colours in a file', () => {
    expect(read('index.html')).toContain('Tallow County: Benches to look at');
    expect(read('chapters/outage/index.html')).toMatch(
      /<div class="caution"[^>]*>\s*<p class="caution-title">Tallow County: Freezing rain/u,
    );
    expect(read('chapters/winding/index.html')).not.toContain('Freezing rain (invented)');
    expect(read('index.html')).toContain('href="/winter/region.css"');
    expect(read('region.css')).toContain('--water: #174d2c');
  });

  it('knows its own region alone', () => {
    expect(files.filter((file) => file.startsWith('benches/'))).toEqual(['benches/north-house.yaml']);
    expect(files.filter((file) => /estermark/u.test(file))).toEqual([]);
  });
});

describe('a reader of a guide under a path', () => {
  let browser: Browser;
  let serving: Serving;
  beforeAll(async () => {
    browser = await startBrowser();
    serving = await serveFolder({ folder, port: 0, base });
  });
  afterAll(async () => {
    await browser.close();
    await serving.close();
  });

  it('finds the programs’ list of figures and sources, whose files are there', async () => {
    const { origin } = new URL(serving.address);
    const link = /<link rel="alternate" type="application\/json" href="([^"]*)"/u.exec(
      read('index.html'),
    )?.[1];
    expect(link).toBe('/winter/data.json');
    const data = (await (await fetch(origin + (link ?? ''))).json()) as {
      examples: { bench: string; worksheet: string; figures: string }[];
      benchSchema: string;
      figures: Record<string, { unit: string; sources: string[]; reference: string }>;
      sources: Record<string, unknown>;
    };
    const figures = Object.values(data.figures);
    expect(figures.length).toBeGreaterThan(50);
    for (const { sources } of figures) for (const one of sources) expect(data.sources).toHaveProperty([one]);
    const named = [
      data.benchSchema,
      ...data.examples.flatMap((one) => Object.values(one).filter((to) => typeof to === 'string')),
    ];
    for (const to of [...named, ...new Set(figures.map(({ reference }) => reference))])
      expect((await fetch(origin + to)).status, to).toBe(200);
  });

  it('gets the page for what is not there, with its styles', async () => {
    const answer = await fetch(`${serving.address}no/such/page/`);
    expect(answer.status).toBe(404);
    const html = await answer.text();
    const styles = [...html.matchAll(/<link rel="stylesheet" href="([^"]*)"/gu)].map(([, to = '']) => to);
    expect(styles.length).toBeGreaterThan(0);
    for (const to of styles) expect((await fetch(new URL(to, serving.address))).status).toBe(200);
  });

  it('comes once, and has pages, figures and a worksheet of their own after the network is cut', async () => {
    const context = await browser.newContext({ acceptDownloads: true });
    const elsewhere: string[] = [];
    const { origin } = new URL(serving.address);
    context.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith(origin) && !/^(?:data|blob):/u.test(url)) elsewhere.push(url);
    });
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('pageerror', ({ message }) => faults.push(message));
    await page.goto(serving.address);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await context.setOffline(true);
    await serving.close();

    await page.goto(`${serving.address}chapters/winding/`);
    const before = await figure(page, 'winding.pitch').innerText();
    await give(page, 'winding', 'cable.length', '100');
    await eventually(() => figure(page, 'winding.pitch').innerText()).not.toBe(before);
    await page.goto(`${serving.address}worksheet/`);
    await page.locator('[data-draw]').waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 90_000 }),
      page.locator('[data-draw]').click(),
    ]);
    const pdf = readFileSync(await download.path());
    const { pages: sheets } = await readPdf(pdf);
    const text = sheets.map((sheet) => sheet.text).join('\n');
    // Of this region: its office, its paper, and the code that leads to where its guide lies.
    expect(text).toContain('Tallow County Extension Office');
    expect(text).toMatch(/100(?:\.0)?\s?ft/u);
    expect(elsewhere).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });
});
