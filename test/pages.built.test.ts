import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { brotliCompressSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { eventually, figure, give, readers, violationsOf } from './support/reader.ts';
import { builtPages } from './support/site.ts';

/** Every page of the built guide in a browser: its policy, its accessibility, its width, its weight. */

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const pages = builtPages();
const reader = readers();

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
  readonly passes: readonly unknown[];
}

/** What axe finds: by the rules of WCAG 2.2 AA, or, where only colours are others, by the rule for contrast. */
async function accessibilityFaults(page: Page, only: 'wcag' | 'contrast'): Promise<string[]> {
  const result = await page.evaluate(async (contrast) => {
    const { axe } = globalThis as unknown as { axe: { run: (options: object) => Promise<unknown> } };
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
    const runOnly = contrast ? { type: 'rule', values: ['color-contrast'] } : { type: 'tag', values: tags };
    return axe.run({ runOnly, resultTypes: ['violations'] });
  }, only === 'contrast');
  const { violations, passes } = result as AxeResult;
  expect(passes.length).toBeGreaterThan(only === 'contrast' ? 0 : 8);
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
}

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
  it.each(pages)(
    '/%s keeps the policy, loads without a fault, is accessible in light and dark, and fits a narrow phone',
    async (path) => {
      const someone = await reader();
      const page = await someone.open(path);
      if (path === 'bench/') await page.locator('[data-progress]:not(:empty)').waitFor();
      expect(someone.faults).toEqual([]);
      expect(await violationsOf(page)).toEqual([]);
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      // Evaluated by the browser's own tools, to which the policy of the page does not apply.
      await page.evaluate(axeSource);
      expect(await accessibilityFaults(page, 'wcag')).toEqual([]);
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await accessibilityFaults(page, 'contrast')).toEqual([]);
      expect(await tooWideIn(page)).toEqual([]);
    },
  );

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
  const weight = (loaded: readonly { readonly path: string; readonly bytes: Buffer }[]) => {
    const sum = (weigh: (bytes: Buffer) => number, which: (path: string) => boolean) =>
      loaded.filter(({ path }) => which(path)).reduce((total, { bytes }) => total + weigh(bytes), 0);
    // A file whose bytes did not arrive would weigh nothing and pass.
    expect(loaded.filter(({ bytes }) => bytes.length === 0)).toEqual([]);
    return {
      script: sum(brotli, (path) => path.endsWith('.js')),
      withoutFont: sum(brotli, (path) => !isFont(path)),
      font: sum((bytes) => bytes.length, isFont),
    };
  };

  it('a chapter page: at most 14 kB of script and 40 kB in all, 70 kB with the font of its formulas', async () => {
    const someone = await reader();
    const page = await someone.open('chapters/winding/');
    await page.waitForLoadState('networkidle');
    const { script, withoutFont, font } = weight(await someone.allLoaded());
    expect(script).toBeGreaterThan(1000);
    expect(script).toBeLessThanOrEqual(14_000);
    expect(withoutFont).toBeLessThanOrEqual(40_000);
    expect(font).toBeGreaterThan(0);
    expect(withoutFont + font).toBeLessThanOrEqual(70_000);
  });

  it('a reader with a bench of their own: at most 36 kB of script on a chapter page', async () => {
    const someone = await reader();
    const page = await someone.open('chapters/winding/');
    const before = await figure(page, 'winding.pitch').innerText();
    await give(page, 'winding', 'cable.length', '30');
    await eventually(() => figure(page, 'winding.pitch').innerText()).not.toBe(before);
    await page.waitForLoadState('networkidle');
    const { script, withoutFont } = weight(await someone.allLoaded());
    expect(script).toBeLessThanOrEqual(36_000);
    expect(withoutFont).toBeLessThanOrEqual(60_000);
  });

  it('a page without formulas loads no font', async () => {
    const someone = await reader();
    const page = await someone.open('worksheet/');
    await page.waitForLoadState('networkidle');
    expect(weight(await someone.allLoaded()).font).toBe(0);
  });
});
