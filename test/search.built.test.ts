import { brotliCompressSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { find, type SearchIndex } from '../site/search/index-of.ts';
import { eventually, readers, violationsOf } from './support/reader.ts';
import { builtFiles, fileOfPage, readBuilt } from './support/site.ts';

/** The search in the built guide. */

const index = JSON.parse(readBuilt('search.json').toString('utf8')) as SearchIndex;
const reader = readers();

describe('the index of the search', () => {
  it('leads only to places that are there', () => {
    expect(index.findings.length).toBeGreaterThan(100);
    const files = new Set(builtFiles());
    const lost = index.findings.filter(([, , to]) => {
      const [page = '', id = ''] = to.split('#');
      if (!files.has(fileOfPage(page))) return true;
      return id !== '' && !readBuilt(fileOfPage(page)).toString('utf8').includes(`id="${id}"`);
    });
    expect(lost).toEqual([]);
  });

  it('finds headings, words, fields and calculators', () => {
    for (const kind of [/^Chapter/u, /^Glossary/u, /^Field/u, /^Calculator/u])
      expect(index.findings.some(([, where]) => kind.test(where))).toBe(true);
    const led = (question: string) => find(index, question).places.map((place) => index.findings[place]?.[2]);
    expect(led('pitch')).toContain('glossary/#pitch');
    // Words that stand in the text of a chapter alone, or in a choice of a field.
    for (const [question, page] of [
      ['GFCI', 'chapters/circuit/'],
      ['RCD', 'chapters/circuit/'],
      ['candle', 'chapters/'],
      ['alarm rings', 'chapters/'],
      ['roses', 'bench/#'],
    ] as const)
      expect(led(question).slice(0, 12).join(' '), question).toContain(page);
  });

  it('weighs at most 30 kB over the wire, and nothing until someone searches', () => {
    expect(brotliCompressSync(readBuilt('search.json')).length).toBeLessThan(30_000);
  });
});

describe('the search page', () => {
  it('loads the index at the first letter, and is walked with the keyboard', async () => {
    const someone = await reader();
    const page = await someone.open('search/');
    await page.waitForLoadState('networkidle');
    expect((await someone.allLoaded()).filter(({ path }) => path === 'search.json')).toEqual([]);
    await page.keyboard.type('heated length');
    const links = page.locator('[data-found] a');
    await eventually(() => links.first().innerText()).toBe('Heated length of the cable');
    await page.keyboard.press('ArrowDown');
    expect(await links.first().evaluate((link) => link === document.activeElement)).toBe(true);
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/bench\/#bench-cable-length$/u);
    await page.goBack();
    await eventually(() => links.first().innerText()).toBe('Heated length of the cable');
    await page.locator('input[type="search"]').fill('xyzzy');
    await eventually(() => page.locator('[data-search-said]').innerText()).toContain('Nothing found');
    expect(someone.faults).toEqual([]);
    expect(await violationsOf(page)).toEqual([]);
  });
});
