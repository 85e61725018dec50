import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync, constants } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { workerFile, writeServiceWorker } from '../scripts/offline.ts';
import { serveFolder, type Serving } from '../scripts/serve.ts';
import { field, figure, give, eventually } from './support/reader.ts';
import { builtFiles, builtPages, dist, readBuilt, startBrowser } from './support/site.ts';

/** The guide without a network, in a browser that keeps it; and what pages weigh that show no calculator. */

const base = /href="([^"]*)icon\.svg"/u.exec(readBuilt('index.html').toString('utf8'))?.[1] ?? '/';
const source = readBuilt(workerFile).toString('utf8');
const kept = JSON.parse(/^const files = (\{.*\});$/mu.exec(source)?.[1] ?? '{}') as Record<string, string>;
const fileOf = (address: string) =>
  address === '' || address.endsWith('/') ? `${address}index.html` : address;

describe('what is kept for use without a network', () => {
  it('is every page and all that pages load, by the hash of its content', () => {
    for (const page of builtPages()) expect(Object.keys(kept)).toContain(page);
    for (const file of builtFiles().filter((path) => path.startsWith('assets/')))
      expect(Object.keys(kept)).toContain(file);
    for (const [address, hash] of Object.entries(kept)) {
      const digest = createHash('sha256')
        .update(readBuilt(fileOf(address)))
        .digest('hex');
      expect(digest.startsWith(hash), address).toBe(true);
      expect(hash).toMatch(/^[\da-f]{16}$/u);
    }
  });

  it('is under 1.5 MB over the wire', () => {
    // Packed beforehand, at brotli's highest step, which takes a test half a minute; on 200 files of the guide it came to
    // 0.905 of this one.
    const params = { [constants.BROTLI_PARAM_QUALITY]: 9 };
    const atHighest = 0.905;
    const packed = Object.keys(kept).map(
      (address) => brotliCompressSync(readBuilt(fileOf(address)), { params }).length,
    );
    const sum = packed.reduce((total, one) => total + one, 0);
    expect(sum).toBeGreaterThan(100_000);
    expect(atHighest * sum).toBeLessThan(1_500_000);
  });
});

describe('a page without calculators', () => {
  it.each(['index.html', 'sources/index.html', 'office/index.html', '404.html'])(
    '%s loads under 2 kB of script',
    (page) => {
      const scripts = [
        ...readBuilt(page)
          .toString('utf8')
          .matchAll(/<script[^>]*\ssrc="([^"]*)"/gu),
      ];
      expect(scripts.length).toBeGreaterThan(0);
      const seen = new Set<string>();
      const weigh = (path: string): number => {
        if (seen.has(path)) return 0;
        seen.add(path);
        const bytes = readBuilt(path);
        const more = [...bytes.toString('utf8').matchAll(/(?:from|^import|;import)\s*"\.\/([^"]+)"/gu)];
        return more.reduce(
          (sum, [, name]) => sum + weigh(`assets/${name}`),
          brotliCompressSync(bytes).length,
        );
      };
      const sum = scripts.reduce((total, [, src = '']) => total + weigh(src.slice(base.length)), 0);
      expect(sum).toBeGreaterThan(500);
      expect(sum).toBeLessThan(2000);
    },
  );
});

describe('in a browser', () => {
  const folder = mkdtempSync(join(tmpdir(), 'winter-bench-offline-'));
  let browser: Browser;
  let serving: Serving;
  const serve = (port: number) => serveFolder({ folder, port, base });

  beforeAll(async () => {
    cpSync(dist, folder, { recursive: true });
    [serving, browser] = await Promise.all([serve(0), startBrowser()]);
  });
  afterAll(async () => {
    await Promise.all([browser.close(), serving.close()]);
    rmSync(folder, { recursive: true, force: true });
  });

  const faults: string[] = [];
  async function open(path: string): Promise<Page> {
    const context = await browser.newContext();
    const page = await context.newPage();
    page.on('pageerror', ({ message }) => faults.push(message));
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(message.text());
    });
    await page.goto(serving.address + path);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    return page;
  }

  it('after one visit every page works with the host gone, and so does a new version once the host is back', async () => {
    const page = await open('');
    const port = Number(new URL(serving.address).port);
    await serving.close();
    await page.goto(`${serving.address}chapters/winding/`);
    const before = await figure(page, 'winding.pitch').innerText();
    await give(page, 'winding', 'cable.length', '30');
    await eventually(() => figure(page, 'winding.pitch').innerText()).not.toBe(before);
    await page.goto(`${serving.address}sources/#incropera`);
    expect(await page.locator('h1').innerText()).toBe('Sources');
    await page.goto(`${serving.address}bench/`);
    expect(await page.locator('#bench-cable-length').inputValue()).toBe('30');

    // What is not kept says so, in the guide's own words.
    for (const path of ['nothing/', 'worksheets/first-row.pdf']) {
      await page.goto(serving.address + path);
      expect(await page.locator('h1').innerText(), path).toBe('There is no page here');
      await page.locator('main a', { hasText: 'Your bench' }).click();
      await eventually(() => page.locator('h1').innerText()).toBe('Your bench');
    }
    // The browser tells its console of an address that is not there, as it does with a host.
    expect(faults.splice(0).filter((fault) => !fault.includes('404'))).toEqual([]);

    // The host comes back with another version of one page.
    const file = join(folder, 'bench/index.html');
    writeFileSync(file, readFileSync(file, 'utf8').replace('<h1>Your bench</h1>', '<h1>Your new bench</h1>'));
    await writeServiceWorker(folder);
    serving = await serve(port);
    await page.goto(`${serving.address}bench/`);
    const notice = page.locator('[data-notice="new-version"]');
    await notice.waitFor();
    // Until the reader takes it up, nothing of it shows, and what is being typed stays.
    expect(await page.locator('h1').innerText()).toBe('Your bench');
    await field(page, 'bench', 'pots.count').fill('4oo');
    await Promise.all([
      page.waitForEvent('load'),
      notice.getByRole('button', { name: 'Use it now' }).click(),
    ]);
    await eventually(() => page.locator('h1').innerText()).toBe('Your new bench');
    expect(await field(page, 'bench', 'pots.count').inputValue()).toBe('4oo');
    expect(await field(page, 'bench', 'cable.length').inputValue()).toBe('30');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('the strip says on a page without calculators what it says on others, and its buttons work', async () => {
    const page = await open('chapters/winding/');
    await give(page, 'winding', 'cable.length', '30');
    await eventually(() => page.locator('[data-filled]').innerText()).toBe('1');
    await page.goto(`${serving.address}sources/../office/`);
    await page.goto(`${serving.address}worksheet/`);
    await page.goto(serving.address);
    await eventually(() => page.locator('[data-filled]').innerText()).toBe('1');
    expect(await page.locator('[data-whose]').innerText()).toContain('your bench');
    await page.locator('.bench-strip [data-undo]').click();
    await eventually(() => page.locator('[data-filled]').innerText()).toBe('0');
    expect(await page.locator('.bench-strip [data-redo]').isEnabled()).toBe(true);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
