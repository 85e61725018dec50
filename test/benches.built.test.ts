import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  eventually,
  field,
  figureNumber,
  give,
  readers,
  violationsOf,
  type Reader,
} from './support/reader.ts';

/** A reader with several benches: beginning, copying, renaming, changing over, deleting and bringing back. */

const reader = readers();

describe('several benches', () => {
  let someone: Reader;
  let page: Page;
  const length = () => field(page, 'bench', 'cable.length').inputValue();
  const names = () => page.locator('[data-benches] option').allInnerTexts();
  const shown = () => page.locator('[data-bench-name]').first().innerText();
  const status = () => page.locator('[data-status]').textContent();
  const press = (button: string) => page.locator(`.bench-tools [data-${button}]`).click();
  const choose = (label: string) => page.locator('[data-benches]').selectOption({ label });

  // One reader, whose benches add up from test to test.
  beforeAll(async () => {
    someone = await reader();
    page = await someone.open('bench/');
  });

  it('begin with the example, which cannot be deleted', async () => {
    await eventually(names).toEqual([`${await shown()} (example)`]);
    expect(await page.locator('[data-delete]').isDisabled()).toBe(true);
    expect(await page.locator('[data-bin]').isVisible()).toBe(false);
  });

  it('“New” begins one of usual values, and the cursor is in its name', async () => {
    await give(page, 'bench', 'cable.length', '31.7');
    const mine = await shown();
    await press('new');
    await eventually(shown).toBe('My bench');
    expect(await names()).toEqual(['My bench', mine]);
    expect(await length()).not.toBe('31.7');
    const name = field(page, 'bench', 'identity.name');
    expect(
      await name.evaluate((input: HTMLInputElement) => [
        input === document.activeElement,
        input.selectionEnd === input.value.length,
      ]),
    ).toEqual([true, true]);
    expect(await page.locator('[data-progress]').innerText()).toContain('You have set 1 of');
    await eventually(status).toContain('usual values');
  });

  it('“Rename” marks the name, and what is typed is the name everywhere', async () => {
    await press('rename');
    await page.keyboard.type('North row');
    await page.keyboard.press('Tab');
    await eventually(shown).toBe('North row');
    expect((await names())[0]).toBe('North row');
  });

  it('“Copy” makes another of the same values under a name of its own, and each goes its own way', async () => {
    await give(page, 'bench', 'cable.length', '25');
    await press('copy');
    await eventually(shown).toBe('North row 2');
    expect(await length()).toBe('25');
    await give(page, 'bench', 'cable.length', '26');
    await choose('North row');
    await eventually(shown).toBe('North row');
    expect(await length()).toBe('25');
    await choose('North row 2');
    await eventually(length).toBe('26');
  });

  it('the one chosen is the one that other pages show, after a reload too', async () => {
    await choose('North row');
    await eventually(length).toBe('25');
    const before = await names();
    await page.reload();
    await eventually(names).toEqual(before);
    expect(await length()).toBe('25');
    const chapter = await someone.open('chapters/winding/');
    await eventually(() => field(chapter, 'winding', 'cable.length').inputValue()).toBe('25');
    await eventually(() => figureNumber(chapter, 'winding.pitch')).toBeGreaterThan(0);
    await chapter.close();
  });

  it('undo belongs to the bench that it was done on', async () => {
    await give(page, 'bench', 'cable.length', '27');
    await choose('North row 2');
    await eventually(length).toBe('26');
    await choose('North row');
    await eventually(length).toBe('27');
    await page.locator('.bench-strip [data-undo]').click();
    await eventually(length).toBe('25');
    await choose('North row 2');
    await eventually(length).toBe('26');
  });

  it('“Delete” goes on with another, and what was deleted can be brought back at once or from the list', async () => {
    const before = await names();
    await press('delete');
    const notice = page.locator('[data-notice="deleted"]');
    await eventually(() => notice.innerText()).toContain('“North row 2” was deleted.');
    expect(await names()).toEqual(before.slice(1));
    await notice.getByRole('button', { name: /^Undo/u }).click();
    await eventually(shown).toBe('North row 2');
    expect(await length()).toBe('26');

    await press('delete');
    await eventually(names).toHaveLength(before.length - 1);
    await page.reload();
    const bin = page.locator('[data-bin]');
    await eventually(() => bin.innerText()).toContain('North row 2');
    await bin.getByRole('button', { name: 'North row 2' }).click();
    await eventually(shown).toBe('North row 2');
    expect(await length()).toBe('26');
    expect(await bin.isVisible()).toBe(false);
  });

  it('with all of them deleted the example is there', async () => {
    const count = (await names()).length;
    for (let left = count; left > 0; left--) {
      await press('delete');
      await eventually(names).toHaveLength(Math.max(left - 1, 1));
    }
    expect((await names())[0]).toMatch(/ \(example\)$/u);
    expect(await page.locator('[data-delete]').isDisabled()).toBe(true);
    expect(someone.faults).toEqual([]);
    expect(await violationsOf(page)).toEqual([]);
  });
});
