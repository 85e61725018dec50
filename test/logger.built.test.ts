import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { accessibilityFaults, bringAxe } from './support/accessibility.ts';
import { root } from './support/imports.ts';
import {
  eventually,
  field,
  figure,
  numberIn,
  readers,
  seen,
  violationsOf,
  type Reader,
} from './support/reader.ts';

/** The place for a logger's file in the chapter on proof, as a reader uses it. */

const reader = readers();
let someone: Reader;
beforeAll(async () => {
  someone = await reader();
});

/** A file to drop or choose: its name and what is in it. */
const file = (name: string, text: string | Buffer) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.isBuffer(text) ? text : Buffer.from(text),
});
type Given = ReturnType<typeof file>;

const two = (value: number): string => String(value).padStart(2, '0');

/** A night of ten-minute lines from eight in the evening, at rest from four in the morning on; `line` writes one. */
const night = (line: (stamp: string, minute: number) => string): string[] =>
  Array.from({ length: 73 }, (_, index) => {
    const minute = 20 * 60 + index * 10;
    const stamp = `2026-01-${minute >= 1440 ? 15 : 14} ${two(Math.floor(minute / 60) % 24)}:${two(minute % 60)}`;
    return line(stamp, minute);
  });

/** Falls until four in the morning, and stands still from then on [°C]. */
const falling = (from: number, to: number, minute: number): number =>
  to + (from - to) * Math.max(0, (28 * 60 - minute) / (8 * 60));

const plain = [
  'Time,House °C,Under the bench °C,Pot °C,Power W',
  ...night((stamp, minute) =>
    [stamp, falling(9, 4, minute), falling(13, 8, minute), falling(12, 9, minute), 600]
      .map((cell) => (typeof cell === 'number' ? cell.toFixed(1) : cell))
      .join(','),
  ),
].join('\n');

const result = (page: Page) => page.locator('[data-logger-result]');
const take = (page: Page) => page.locator('[data-logger-take]');

async function openChapter(): Promise<Page> {
  const page = await someone.goOn('chapters/proof/');
  await take(page).waitFor({ state: 'visible' });
  return page;
}

async function choose(page: Page, given: Given): Promise<void> {
  await page.locator('[data-logger-input]').setInputFiles(given);
  await result(page).getByText(given.name).first().waitFor();
}

/** Drops a file, as a hand with a mouse does. */
async function drop(page: Page, given: Given): Promise<void> {
  const transfer = await page.evaluateHandle(
    ({ name, text }) => {
      const data = new DataTransfer();
      data.items.add(new File([text], name, { type: 'text/csv' }));
      return data;
    },
    { name: given.name, text: given.buffer.toString('utf8') },
  );
  await page.locator('logger-file').dispatchEvent('drop', { dataTransfer: transfer });
  await result(page).getByText(given.name).first().waitFor();
}

const mean = async (page: Page, label: string): Promise<string> =>
  seen(result(page).locator('.logger-means div', { hasText: label }).locator('dd').innerText());

const given = (page: Page, name: string) => field(page, 'readings', `readings.${name}`).inputValue();

describe('a logger’s file', () => {
  it('is not needed: the example’s night stands there, with what it changes', async () => {
    const page = await openChapter();
    expect(await mean(page, 'House temperature read')).toMatch(/°C$/u);
    const shown = page.locator('night-says [data-night="example"] svg');
    expect(await shown.count()).toBe(4);
    expect(await page.locator('[data-night-figure]').first().innerText()).toMatch(/−?\d/u);
    expect(someone.faults).toEqual([]);
  });

  it('dropped, it is read, drawn, and its means go into the readings with one button and out with one step', async () => {
    const page = await openChapter();
    const before = await figure(page, 'readings.coldestRoots').innerText();
    await drop(page, file('night.csv', plain));
    expect(await mean(page, 'House temperature read')).toBe('4.0 °C');
    expect(await mean(page, 'Temperature read under the bench')).toBe('8.0 °C');
    expect(await mean(page, 'Mean power read')).toBe('600 W');
    expect(await result(page).innerText()).toContain('73 lines were read');
    // Nothing of the bench has changed yet.
    expect(await given(page, 'house')).toBe('');
    await take(page).click();
    await eventually(() => given(page, 'house')).toBe('4');
    await eventually(() => given(page, 'under')).toBe('8');
    await eventually(() => figure(page, 'readings.coldestRoots').innerText()).not.toBe(before);
    // 600 W over 8 less 4 K, by hand.
    await eventually(async () =>
      numberIn(await seen(figure(page, 'readings.lossPerDegree').innerText())),
    ).toBe(150);
    await page.locator('night-says [data-night="own"] svg').first().waitFor({ state: 'visible' });
    expect(await page.locator('night-says [data-night="example"]').isVisible()).toBe(false);
    await page.locator('[data-notice="logger"] button', { hasText: 'Undo' }).click();
    await eventually(() => given(page, 'house')).toBe('');
    await eventually(() => figure(page, 'readings.coldestRoots').innerText()).toBe(before);
    await page.locator('night-says [data-night="example"]').waitFor({ state: 'visible' });
    expect(someone.faults).toEqual([]);
    expect(await violationsOf(page)).toEqual([]);
  });

  it('never writes over readings without asking', async () => {
    const page = await openChapter();
    await field(page, 'readings', 'readings.house').fill('7');
    await field(page, 'readings', 'readings.house').blur();
    await choose(page, file('night.csv', plain));
    await take(page).click();
    const ask = page.locator('[data-logger-ask]');
    await ask.waitFor({ state: 'visible' });
    expect(await seen(ask.innerText())).toContain('House temperature read: 7.0 °C becomes 4.0 °C');
    await ask.locator('[data-logger-keep]').click();
    expect(await given(page, 'house')).toBe('7');
    await take(page).click();
    await ask.locator('[data-logger-replace]').click();
    await eventually(() => given(page, 'house')).toBe('4');
    await page.locator('[data-undo]').first().click();
    await eventually(() => given(page, 'house')).toBe('7');
  });

  it('says what is wrong with a file that is none, and loses nothing', async () => {
    const page = await openChapter();
    await field(page, 'readings', 'readings.house').fill('7');
    await field(page, 'readings', 'readings.house').blur();
    await choose(page, file('letter.csv', 'Dear grower,\nit was cold last night.\n'));
    const problems = page.locator('[data-logger-problems]');
    const text = await problems.innerText();
    expect(text).toContain('letter.csv, line 1');
    expect(text).toContain('2026-01-31 18:30');
    expect(text).toContain('Found: Dear grower');
    expect(await take(page).isDisabled()).toBe(true);
    expect(await given(page, 'house')).toBe('7');
    await eventually(() => problems.evaluate((one) => one === document.activeElement)).toBe(true);
    await page.locator('[data-logger-example]').click();
    await result(page).getByText('invented night').waitFor();
    expect(await take(page).isDisabled()).toBe(false);
  });

  it('by keys alone: what the heads do not tell is asked, columns can be changed, what was pasted is read', async () => {
    const page = await openChapter();
    const bare = plain.replace('Time,House °C,Under the bench °C,Pot °C,Power W', 'Time,T1 °C,T2 °C,T3 °C,P');
    await page.locator('.logger-paste summary').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('logger-pasted');
    await page.keyboard.insertText(bare);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    // The first question has the focus; each answer reads the file again, and the focus stays with its column.
    const focused = () =>
      page.evaluate(() => {
        const { loggerColumn = '', loggerAbout = '' } = (document.activeElement as HTMLElement).dataset;
        return `${loggerColumn} ${loggerAbout}`.trim();
      });
    await eventually(focused).toBe('2 columns');
    for (const [column, word] of [
      ['2', 'House'],
      ['3', 'Under'],
      ['4', 'Roots'],
    ] as const) {
      const select = result(page).locator(`select[data-logger-column="${column}"]`);
      await select.focus();
      // Its first letter is enough, as no two choices begin with the same one.
      await page.keyboard.press(word.charAt(0));
      // Read again: the focus is on the same column of the table that stands there now.
      await eventually(focused).toBe(column);
      await eventually(() =>
        select.evaluate((one) => (one as HTMLSelectElement).selectedOptions[0]?.text ?? ''),
      ).toContain(word);
    }
    await result(page).locator('select[data-logger-column="5"]').focus();
    await page.keyboard.press('P');
    // Of a power without a unit it is asked, and the question has the focus.
    await eventually(focused).toBe('powerUnit');
    await page.keyboard.press('W');
    await eventually(() => result(page).locator('.logger-means').count()).toBe(1);
    expect(await mean(page, 'House temperature read')).toBe('4.0 °C');
    // The pot was the house after all.
    const column = result(page).locator('select[data-logger-column="4"]');
    await column.focus();
    await page.keyboard.press('N');
    await eventually(() => result(page).locator('.logger-means').innerText()).not.toContain(
      'Root temperature',
    );
    await eventually(focused).toBe('4');
    expect(someone.faults).toEqual([]);
  });

  const heads = ['House', 'Under the bench', 'Pot', 'Power'];
  const nasty: readonly (readonly [name: string, given: () => Given, says: readonly string[]])[] = [
    [
      'semicolons, decimal commas, a mark at its head and lines that end with CR LF',
      () =>
        file(
          'excel.csv',
          `\uFEFFZeit;House °C;Under the bench °C;Pot °C;Power W\r\n${night((stamp, minute) => `${stamp};${[falling(9, 4, minute), falling(13, 8, minute), falling(12, 9, minute)].map((value) => value.toFixed(1).replace('.', ',')).join(';')};600`).join('\r\n')}\r\n`,
        ),
      ['parted by a semicolon'],
    ],
    [
      'tabs and °F, in the one-byte code of western Windows',
      () =>
        file(
          'tabs.txt',
          Buffer.from(
            [
              `Time\t${heads.map((head) => (head === 'Power' ? 'Power W' : `${head} °F`)).join('\t')}`,
              ...night(
                (stamp, minute) =>
                  `${stamp}\t${[falling(9, 4, minute), falling(13, 8, minute), falling(12, 9, minute)].map((value) => (value * 1.8 + 32).toFixed(1)).join('\t')}\t600`,
              ),
            ].join('\n'),
            'latin1',
          ),
        ),
      ['parted by a tab', 'in °F'],
    ],
    [
      'UTF-16, as spreadsheets save “Unicode text”',
      () => file('unicode.txt', Buffer.from(`\uFEFF${plain.replaceAll(',', '\t')}`, 'utf16le')),
      ['parted by a tab'],
    ],
    [
      'a gap, a stamp twice and cells that are no numbers',
      () =>
        file(
          'holes.csv',
          plain
            .split('\n')
            .flatMap((line, index) => {
              if (index > 10 && index < 20) return [];
              if (index === 5) return [line, line];
              return [index === 8 ? line.replace(/,[\d.]+,600\.0$/u, ',9x1,600.0') : line];
            })
            .join('\n'),
        ),
      ['There is a gap', 'had a time that another had already', 'line 10, Pot °C', 'Found: 9x1'],
    ],
  ];
  it.each(nasty)('with %s', async (_, make, says) => {
    const page = await openChapter();
    const one = make();
    await choose(page, one);
    await eventually(() => result(page).locator('.logger-means').count()).toBe(1);
    const text = await result(page).innerText();
    for (const words of says) expect(text).toContain(words);
    expect(await mean(page, 'House temperature read')).toBe('4.0 °C');
    expect(await mean(page, 'Temperature read under the bench')).toBe('8.0 °C');
    expect(someone.faults).toEqual([]);
  });

  it('of a megabyte lets the page answer while it is read, with a bar that moves', async () => {
    const page = await openChapter();
    const lines: string[] = ['Time,House °C,Under the bench °C,Pot °C,Power W'];
    for (let at = Date.UTC(2025, 10, 1); lines.length < 24_000; at += 120_000) {
      const minute = (at / 60_000) % 1440;
      const cold = 4 + 3 * Math.cos(((minute - 900) / 720) * Math.PI);
      const stamp = new Date(at).toISOString().slice(0, 16).replace('T', ' ');
      lines.push(`${stamp},${cold.toFixed(2)},${(cold + 4).toFixed(2)},${(cold + 5).toFixed(2)},600.0`);
    }
    const big = lines.join('\n');
    expect(big.length).toBeGreaterThan(900_000);
    // While it is read, the page must come to its turn again and again.
    await page.evaluate(() => {
      const bar = document.querySelector<HTMLProgressElement>('[data-logger-progress] progress');
      const seenBar = new Set<number>();
      let turns = 0;
      const look = () => {
        const shown = document.querySelector<HTMLElement>('[data-logger-progress]')?.hidden === false;
        if (shown) {
          turns++;
          seenBar.add(bar?.value ?? 0);
        }
        Object.assign(globalThis, { looked: { turns, values: seenBar.size } });
        setTimeout(look);
      };
      look();
    });
    await choose(page, file('winter.csv', big));
    await eventually(() => result(page).locator('.logger-means').count()).toBe(1);
    const { turns, values } = await page.evaluate(
      () => (globalThis as unknown as { looked: { turns: number; values: number } }).looked,
    );
    expect(turns).toBeGreaterThan(5);
    expect(values).toBeGreaterThan(5);
    expect(await result(page).innerText()).toContain('23999 lines were read');
  });

  it('follows the switch of units, its own words and the example’s drawings', async () => {
    const page = await openChapter();
    await page.locator('input[name="units"][value="us"]').check();
    await eventually(() => mean(page, 'House temperature read')).toMatch(/°F$/u);
    await eventually(() =>
      page.locator('night-says [data-night="example"] svg').first().textContent(),
    ).toContain('°F');
    expect(await page.locator('[data-night-figure]').first().innerText()).toContain('°F');
  });

  it('is accessible with a file open, with questions, with problems, and before it writes over readings', async () => {
    const page = await openChapter();
    await bringAxe(page);
    await choose(page, file('night.csv', plain));
    await take(page).click();
    await choose(page, file('other.csv', plain.replaceAll(',600', ',580')));
    await take(page).click();
    await page.locator('[data-logger-ask]').waitFor({ state: 'visible' });
    expect(await accessibilityFaults(page, 'all')).toEqual([]);
    await choose(page, file('bare.csv', plain.replace(/^.*\n/u, 'Time,a,b,c,d\n')));
    expect(await accessibilityFaults(page, 'all')).toEqual([]);
    await choose(page, file('letter.csv', 'no log\n'));
    expect(await accessibilityFaults(page, 'all')).toEqual([]);
  });

  it('of the example can be had as it is, and is what the repository holds', async () => {
    const page = await openChapter();
    const address = await page.locator('logger-file a[download]').getAttribute('href');
    const text = await page.evaluate(async (href) => (await fetch(href)).text(), address ?? '');
    const name = (address ?? '').replace(/^.*\//u, '');
    expect(text).toBe(readFileSync(join(root, 'content', 'logs', name), 'utf8'));
    expect(text.split('\n')[0]).toContain('Invented for this guide');
  });
});
