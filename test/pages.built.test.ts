import { brotliCompressSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { eventually, figure, give, readers, shiftsOf, violationsOf, type Reader } from './support/reader.ts';
import { builtPages } from './support/site.ts';

/** Every page of the built guide on a phone: that it holds still, its width, its policy, its weight. */

const pages = builtPages();
const reader = readers();

/** Whether the page is wider than a phone of 320 px, in each system of units that it can be shown in. */
async function tooWideIn(page: Page): Promise<string[]> {
  await page.setViewportSize({ width: 320, height: 640 });
  const switches = page.locator('input[name="units"]');
  const systems = await switches.evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
  const tooWide: string[] = [];
  for (const system of systems.length > 0 ? systems : ['none']) {
    if (system !== 'none') await page.locator(`input[name="units"][value="${system}"]`).check();
    const { inside, whole } = await page.evaluate(() => ({
      inside: document.documentElement.clientWidth,
      whole: document.documentElement.scrollWidth,
    }));
    if (whole > inside) tooWide.push(`${whole} px in units: ${system}`);
  }
  return tooWide;
}

describe('every page', () => {
  let walker: Reader;
  beforeAll(async () => {
    walker = await reader();
  });

  it.each(pages)(
    '/%s loads on a phone without a fault, holds still, and fits a narrower one',
    async (path) => {
      const page = await walker.goOn(path, 'phone');
      expect(await shiftsOf(page)).toEqual([]);
      expect(walker.faults).toEqual([]);
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      expect(await tooWideIn(page)).toEqual([]);
    },
  );

  it('a page that moves by itself is found', async () => {
    const page = await walker.goOn('sources/', 'phone');
    expect(await shiftsOf(page)).toEqual([]);
    await page.evaluate(() => document.querySelector('h1')?.before(document.createElement('hr')));
    expect(await shiftsOf(page)).not.toEqual([]);
  });

  it('the policy is in force: what it forbids does not happen', async () => {
    const page = await (await reader()).open('');
    await page
      .evaluate(() => {
        const script = document.createElement('script');
        script.textContent = 'globalThis.ran = true;';
        try {
          document.body.append(script);
        } catch {
          // Trusted types refuse the text; that is the point.
        }
      })
      .catch(() => undefined);
    expect(await page.evaluate(() => 'ran' in globalThis)).toBe(false);
    expect(await violationsOf(page)).not.toEqual([]);
  });
});

describe('budgets', () => {
  const brotli = (bytes: Buffer): number => brotliCompressSync(bytes).length;
  const isFont = (path: string) => path.endsWith('.woff2');
  /** What calculates apart from the page: loaded when someone steps into a form, and never in the page's way. */
  const isWorker = (path: string) => path.startsWith('assets/worker/');
  const weight = (loaded: readonly { readonly path: string; readonly bytes: Buffer }[]) => {
    const sum = (weigh: (bytes: Buffer) => number, which: (path: string) => boolean) =>
      loaded.filter(({ path }) => which(path)).reduce((total, { bytes }) => total + weigh(bytes), 0);
    // A file whose bytes did not arrive would weigh nothing and pass.
    expect(loaded.filter(({ bytes }) => bytes.length === 0)).toEqual([]);
    return {
      script: sum(brotli, (path) => path.endsWith('.js') && !isWorker(path)),
      worker: sum(brotli, isWorker),
      withoutFont: sum(brotli, (path) => !isFont(path) && !isWorker(path)),
      font: sum((bytes) => bytes.length, isFont),
    };
  };

  it('a chapter page: at most 20 kB of script and 40 kB in all, 75 kB with the font of all formulas', async () => {
    const someone = await reader();
    const page = await someone.open('chapters/winding/');
    await page.waitForLoadState('networkidle');
    const { script, worker, withoutFont, font } = weight(await someone.allLoaded());
    expect(worker).toBe(0);
    expect(script).toBeGreaterThan(1000);
    expect(script).toBeLessThanOrEqual(20_000);
    expect(withoutFont).toBeLessThanOrEqual(40_000);
    expect(font).toBeGreaterThan(0);
    // One font for the whole guide, cut to the letters of its formulas: each chapter that brings letters adds to it.
    expect(withoutFont + font).toBeLessThanOrEqual(75_000);
  });

  it('a reader with a bench of their own: at most 32 kB of script on a chapter page with its drawings loaded, and 55 kB beside it that calculates', async () => {
    const someone = await reader();
    const page = await someone.open('chapters/winding/');
    const before = await figure(page, 'winding.pitch').innerText();
    await give(page, 'winding', 'cable.length', '30');
    await eventually(() => figure(page, 'winding.pitch').innerText()).not.toBe(before);
    await page.waitForLoadState('networkidle');
    const { script, worker, withoutFont } = weight(await someone.allLoaded());
    expect(script).toBeLessThanOrEqual(32_000);
    // The running result takes the whole thermal network, and its range all uncertain inputs.
    expect(worker).toBeGreaterThan(10_000);
    expect(worker).toBeLessThanOrEqual(55_000);
    expect(withoutFont).toBeLessThanOrEqual(60_000);
  });

  it('a page without formulas loads no font', async () => {
    const someone = await reader();
    const page = await someone.open('worksheet/');
    await page.waitForLoadState('networkidle');
    expect(weight(await someone.allLoaded()).font).toBe(0);
  });
});
