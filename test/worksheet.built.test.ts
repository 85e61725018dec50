import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { allFields } from '../calculators/bench/all-fields.ts';
import { answer } from '../calculators/index.ts';
import { readBenchFile } from '../content/bench-file.ts';
import { benchAddress } from '../content/link.ts';
import { filesOf } from '../scripts/content-files.ts';
import { ensureFonts } from '../scripts/fonts.ts';
import { edition } from '../site/edition.ts';
import { drawWorksheet } from '../site/worksheet/worksheet.ts';
import { eventually, readers, violationsOf } from './support/reader.ts';
import { regions } from './support/regions.ts';

/** The page of the worksheet in the hands of a reader, in one window. */

const reader = readers();

/** The worksheet that the page makes of the example bench, made here. */
async function madeHere(): Promise<Uint8Array> {
  const file = filesOf('benches').find(({ file: name }) => name.includes('first-row'));
  const read = file && readBenchFile(file.text, file.file, regions);
  if (!read?.ok) throw new Error('the example cannot be read');
  const { bench } = read;
  const region = regions.find(({ id }) => id === bench.place.region);
  const station = region?.stations.find(({ id }) => id === bench.place.station);
  if (!region || !station) throw new Error('the example stands nowhere');
  const situation = { bench, region, station };
  return drawWorksheet({
    situation,
    answers: answer(situation),
    manner: { system: region.units, locale: region.languages[0] ?? 'en' },
    paper: region.paper,
    fonts: await ensureFonts(),
    link: benchAddress(region.guide, bench, []),
    version: edition,
    assumed: allFields.map(({ path }) => path),
    leaveOut: [],
  });
}

it('shows every side before it is printed, follows what is chosen, and makes the bytes that Node makes', async () => {
  const someone = await reader();
  const page = await someone.open('worksheet/');
  const sides = page.locator('svg.sheet-page');
  const state = page.locator('[data-draw-state]');
  await page.waitForLoadState('networkidle');
  expect(await sides.count()).toBe(0);
  const scripts = async () => (await someone.allLoaded()).filter(({ path }) => path.endsWith('.js'));
  const before = (await scripts()).reduce((sum, { bytes }) => sum + bytes.length, 0);
  expect(before).toBeLessThan(150_000);

  await page.locator('[data-show]').click();
  await eventually(() => state.innerText()).toContain('is shown below');
  const all = await sides.count();
  expect(all).toBeGreaterThanOrEqual(4);
  expect((await scripts()).reduce((sum, { bytes }) => sum + bytes.length, 0)).toBeGreaterThan(400_000);
  expect(await sides.nth(0).getAttribute('aria-label')).toBe('First row · side one: build');
  for (const [side, words] of ['Winding the cable', 'The power fails', 'Weekly log', 'Cautions'].entries())
    expect(await sides.nth(side).textContent()).toContain(words);
  // Every line of words is inside its page.
  const outside = await sides.evaluateAll((pages) =>
    pages.flatMap((one) => {
      const box = one.getBoundingClientRect();
      return [...one.querySelectorAll('text')]
        .filter((text) => {
          const own = text.getBoundingClientRect();
          return own.left < box.left || own.right > box.right || own.bottom > box.bottom || own.width === 0;
        })
        .map(({ textContent }) => textContent);
    }),
  );
  expect(outside).toEqual([]);
  expect(await page.locator('[data-print]').getAttribute('href')).toMatch(/^blob:/u);

  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.locator('[data-draw]').click(),
  ]);
  const made = readFileSync(await download.path());
  expect(made.equals(await madeHere())).toBe(true);

  await page.locator('input[name="part"][value="log"]').uncheck();
  await eventually(() => sides.count()).toBe(all - 1);
  await eventually(() => state.innerText()).toContain(`is shown below: ${all - 1} sides`);
  await page.locator('input[name="paper"][value="letter"]').check();
  await eventually(() => sides.nth(0).getAttribute('viewBox')).toBe('0 0 612 792');
  expect(someone.faults).toEqual([]);
  expect(await violationsOf(page)).toEqual([]);
}, 180_000);
