import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { eventually, field, figure, give, readers, unfold, type Reader } from './support/reader.ts';

/** What a page does with a key or a click: first it shows the key, then what follows from it. In order, not in time. */

const reader = readers();
let someone: Reader;
beforeAll(async () => {
  someone = await reader();
});

/** Waits until nothing on the page is still to follow the last change. */
const settled = (page: Page) => eventually(() => page.locator('[data-catching-up]').count()).toBe(0);

/** What a reader's action leaves behind at the end of its own task. */
interface Left {
  /** How many texts, attributes and nodes it has changed in what the page shows of the bench. */
  readonly changed: number;
  readonly busy: boolean;
  /** How often it has written to the browser's storage. */
  readonly written: number;
}

/** Does something to an element of the page as a reader would, and tells what has happened by the end of that very task. */
const leftBy = (page: Page, selector: string, text?: string): Promise<Left> =>
  page.evaluate(
    ([where, typed]) => {
      const element = document.querySelector<HTMLInputElement>(where);
      if (!element) throw new Error(`there is no ${where}`);
      let written = 0;
      const { setItem } = Storage.prototype;
      Storage.prototype.setItem = function (key, words) {
        written++;
        setItem.call(this, key, words);
      };
      const watcher = new MutationObserver(() => undefined);
      const shown = '[data-figure], [data-range], [data-given], [data-base], [data-unit], [data-drawing]';
      for (const part of document.querySelectorAll(`${shown}, [data-table], [data-warnings], [data-whose]`))
        watcher.observe(part, { subtree: true, childList: true, characterData: true, attributes: true });
      if (typed === undefined) element.click();
      else {
        element.value = typed;
        element.dispatchEvent(new Event('input', { bubbles: true }));
      }
      Storage.prototype.setItem = setItem;
      const changed = watcher.takeRecords().length;
      watcher.disconnect();
      return { changed, written, busy: document.querySelector('bench-calculator[aria-busy]') !== null };
    },
    [selector, text] as const,
  );

const untouched: Left = { changed: 0, written: 0, busy: true };

describe('within its own task', () => {
  it('a key shows itself and marks what follows; figures and storage come after it', async () => {
    const page = await someone.goOn('chapters/winding/');
    const before = await figure(page, 'winding.pitch').innerText();
    expect(await leftBy(page, '#winding-cable-length', '30')).toEqual(untouched);
    await settled(page);
    expect(await figure(page, 'winding.pitch').innerText()).not.toBe(before);
    await eventually(() => page.evaluate(() => localStorage.getItem('winter-bench') ?? '')).toContain(
      '"length":30',
    );
  });

  it('so do a switch of units, and a step back and forth', async () => {
    const page = await someone.goOn('chapters/winding/');
    const metric = await figure(page, 'winding.pitch').innerText();
    await leftBy(page, '#winding-cable-length', '30');
    await settled(page);
    const changed = await figure(page, 'winding.pitch').innerText();
    expect(await leftBy(page, '[data-undo]')).toEqual(untouched);
    await settled(page);
    expect(await figure(page, 'winding.pitch').innerText()).toBe(metric);
    expect(await leftBy(page, '[data-redo]')).toEqual(untouched);
    await settled(page);
    expect(await figure(page, 'winding.pitch').innerText()).toBe(changed);
    expect(await leftBy(page, 'input[name="units"][value="us"]')).toEqual(untouched);
    await settled(page);
    expect(await figure(page, 'winding.pitch').innerText()).toMatch(/in$/u);
    const units = await page.locator('#winding .suffix').allInnerTexts();
    expect(units).toContain('in');
    expect(units).not.toContain('mm');
  });

  it('and another bench', async () => {
    const page = await someone.goOn('bench/');
    await give(page, 'bench', 'frame.length', '9');
    await settled(page);
    expect((await leftBy(page, '[data-copy]')).changed).toBe(0);
    await eventually(() => page.locator('[data-bench-name]').innerText()).toMatch(/ 2$/u);
  });
});

describe('a reader who leaves at once', () => {
  it('keeps what was typed last, and the strip of the next page knows of it', async () => {
    const page = await someone.goOn('chapters/winding/');
    await page.evaluate(() => {
      const input = document.querySelector<HTMLInputElement>('#winding-cable-length');
      if (!input) throw new Error('there is no such field');
      input.value = '31';
      input.dispatchEvent(new Event('input', { bubbles: true }));
      location.assign('../../sources/');
    });
    await page.waitForURL(/sources/u);
    await page.goto(`${someone.address}bench/`);
    await unfold(page, 'bench', 'cable.length');
    await eventually(() => field(page, 'bench', 'cable.length').inputValue()).toBe('31');
    await eventually(() => page.locator('[data-filled]').innerText()).toBe('1');
    await page.locator('[data-undo]').first().click();
    await eventually(() => field(page, 'bench', 'cable.length').inputValue()).not.toBe('31');
    expect(someone.faults).toEqual([]);
  });
});

describe('what has not changed', () => {
  it('is left as it is: a wrong answer draws and fills nothing anew', async () => {
    const page = await someone.goOn('chapters/winding/');
    await give(page, 'winding', 'cable.length', '30');
    await settled(page);
    await page.evaluate(() => {
      for (const part of document.querySelectorAll('[data-drawing] svg, tbody[data-table] tr'))
        part.setAttribute('data-kept', '');
    });
    const kept = await page.locator('[data-kept]').count();
    expect(kept).toBeGreaterThan(3);
    await give(page, 'winding', 'cable.length', '30 kg');
    await eventually(() => page.locator('#winding-cable-length-error').innerText()).not.toBe('');
    await settled(page);
    expect(await page.locator('[data-kept]').count()).toBe(kept);
    expect(await page.locator('#winding[aria-busy]').count()).toBe(0);
  });
});
