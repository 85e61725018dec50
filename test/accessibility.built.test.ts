import { beforeAll, describe, expect, it } from 'vitest';
import { accessibilityFaults, bringAxe } from './support/accessibility.ts';
import { readers, shiftsOf, violationsOf, type Reader } from './support/reader.ts';
import { builtPages } from './support/site.ts';

/** Every page of the built guide on a desk: its policy, its accessibility in light and in dark, that it holds still. */

const reader = readers();

describe('every page', () => {
  let walker: Reader;
  beforeAll(async () => {
    walker = await reader();
  });

  it.each(builtPages())(
    '/%s keeps the policy, loads without a fault, holds still, and is accessible in light and dark',
    async (path) => {
      const page = await walker.goOn(path);

      expect(await shiftsOf(page)).toEqual([]);
      expect(walker.faults).toEqual([]);
      expect(await violationsOf(page)).toEqual([]);
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      await bringAxe(page);
      expect(await accessibilityFaults(page, 'all')).toEqual([]);
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await accessibilityFaults(page, 'contrast')).toEqual([]);
    },
  );

  it('the contrast of a single faint word is found, wherever it stands, in light and in dark', async () => {
    const page = await walker.goOn('checks/');
    // One long table is enough to look through, four times.
    await page.evaluate(() => {
      const long = [...document.querySelectorAll('main table')].filter(
        (table) => table.querySelectorAll('tbody tr').length > 40,
      );
      for (const section of document.querySelectorAll('main section'))
        if (!long[0] || !section.contains(long[0])) section.remove();
    });
    await bringAxe(page);
    expect(await accessibilityFaults(page, 'all')).toEqual([]);
    // In the middle of a table whose rows repeat: a cell with words of its own.
    const cell = page.locator('tbody tr:nth-child(11) td', { hasNot: page.locator('*'), hasText: /\w{2}/u });
    // The policy forbids a style attribute; a property may be set.
    await cell.last().evaluate((one: HTMLElement) => (one.style.color = 'rgb(128 128 128 / 20%)'));
    const wrong = /^color-contrast: <td/u;
    for (const [colorScheme, what, long] of [
      ['light', 'all', undefined],
      // As on a page of thousands of words.
      ['light', 'all', 0],
      ['dark', 'contrast', undefined],
    ] as const) {
      await page.emulateMedia({ colorScheme });
      const faults = await accessibilityFaults(page, what, long);
      expect(faults, colorScheme).toHaveLength(1);
      expect(faults[0]).toMatch(wrong);
    }
  });
});
