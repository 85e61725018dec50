/**
 * Measures how soon the built pages answer their reader: interaction to next paint with the processor slowed four
 * times, for keys, clicks and folds, `npm run bench-pages -- [page …]`. Each page is tried three times, and the run that
 * was disturbed least counts, as machines are busy. Beside it stands a fixed piece of arithmetic done by the same page
 * in the same minute, slowed as much: compare the multiples between runs. Nothing fails here, and no test measures time.
 */
import { chromium, type Browser, type Page } from 'playwright-core';
import { outFolder } from './build.ts';
import { browserOrThrow } from './find-browser.ts';
import { serveFolder } from './serve.ts';
import { runTask } from './steps.ts';

/** How much the processor is slowed: a middling telephone against a desk's machine. */
const slowed = 4;

/** The most that an interaction may take on its way to the screen [ms]. */
const budget = 100;

const runs = 3;

/** Keys come about as fast as a practised hand types digits [ms]. */
const betweenKeys = 120;

const pages = [
  'bench/',
  ...['winding', 'season', 'night', 'outage', 'circuit', 'antifreeze'].map((id) => `chapters/${id}/`),
  'worksheet/',
];

/** The part of an entry that is read (W3C Event Timing), as the compiler does not know it. */
interface Interaction extends PerformanceEntry {
  readonly interactionId: number;
}

/** What a reader does, by name; each counts the interactions that it is made of. */
type Deed = (page: Page) => Promise<void>;

const formField = 'bench-calculator input[inputmode="decimal"]:visible';

const deeds: Readonly<Record<string, Deed>> = {
  async typing(page) {
    const field = page.locator(formField).first();
    if ((await field.count()) === 0) return;
    const value = Number((await field.inputValue()).replaceAll(/[^\d.]/gu, '')) || 3;
    await field.click();
    for (const times of [1.1, 0.9, 1.05]) {
      await page.keyboard.press('Control+A');
      await page.keyboard.type(String(Number((value * times).toFixed(2))), { delay: betweenKeys });
      await page.keyboard.press('Tab');
      await page.waitForTimeout(400);
      await field.focus();
    }
  },
  async undo(page) {
    for (const what of ['[data-undo]', '[data-redo]']) {
      const button = page.locator(`${what}:enabled`).first();
      if ((await button.count()) > 0) await button.click();
      await page.waitForTimeout(600);
    }
  },
  async units(page) {
    for (const system of ['us', 'metric']) {
      const radio = page.locator(`input[name="units"][value="${system}"]`);
      if ((await radio.count()) > 0) await radio.check();
      await page.waitForTimeout(1000);
    }
  },
  async folds(page) {
    for (const fold of (await page.locator('main summary:visible').all()).slice(0, 3)) {
      await fold.click();
      await page.waitForTimeout(300);
    }
  },
  async benches(page) {
    for (const what of ['[data-new]', '[data-copy]', '[data-delete]']) {
      const button = page.locator(`${what}:enabled`).first();
      if ((await button.count()) > 0) await button.click();
      await page.waitForTimeout(800);
    }
  },
};

interface Measured {
  readonly page: string;
  /** The slowest interaction of each kind [ms]. */
  readonly slowest: Readonly<Record<string, number>>;
  /** How long the same page takes for the fixed arithmetic [ms]. */
  readonly reference: number;
}

const worst = ({ slowest }: Measured): number => Math.max(0, ...Object.values(slowest));

async function measure(browser: Browser, address: string, path: string): Promise<Measured> {
  const context = await browser.newContext({
    serviceWorkers: 'block',
    viewport: { width: 1280, height: 900 },
  });
  const page = await context.newPage();
  await page.addInitScript(() => {
    const seen: number[] = [];
    Object.assign(globalThis, { seen });
    new PerformanceObserver((list) => {
      for (const { interactionId, duration } of list.getEntries() as Interaction[])
        if (interactionId > 0) seen.push(duration);
    }).observe({ type: 'event', durationThreshold: 16, buffered: true } as PerformanceObserverInit);
  });
  await page.goto(address + path);
  await page.waitForLoadState('networkidle');
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowed });
  const reference = await page.evaluate(() => {
    const began = performance.now();
    let sum = 0;
    for (let step = 1; step <= 1_000_000; step++) sum += Math.sqrt(step * 1.000001 + sum * 1e-9);
    return sum > 0 ? performance.now() - began : NaN;
  });
  const slowest: Record<string, number> = {};
  for (const [name, deed] of Object.entries(deeds)) {
    await deed(page);
    await page.waitForTimeout(500);
    const took = await page.evaluate(() => (globalThis as unknown as { seen: number[] }).seen.splice(0));
    if (took.length > 0) slowest[name] = Math.max(...took);
  }
  await context.close();
  return { page: path, slowest, reference };
}

function print(rows: readonly Measured[]): void {
  const kinds = Object.keys(deeds);
  console.log(
    `Interaction to next paint [ms], processor slowed ${slowed} times, budget ${budget} ms, best of ${runs} runs\n`,
  );
  console.log(
    ['page'.padEnd(22), ...[...kinds, 'worst', '× reference'].map((head) => head.padStart(11))].join(''),
  );
  for (const row of rows) {
    const most = worst(row);
    const cells = [
      ...kinds.map((kind) => (row.slowest[kind] === undefined ? '–' : String(row.slowest[kind]))),
      String(most),
      (most / row.reference).toPrecision(2),
    ];
    console.log(
      `${row.page.padEnd(22)}${cells.map((cell) => cell.padStart(11)).join('')}  ${most <= budget ? 'within' : 'OVER'}`,
    );
  }
}

if (import.meta.main)
  await runTask(async () => {
    const asked = process.argv.slice(2);
    const serving = await serveFolder({ folder: outFolder, port: 0, base: '/' });
    const browser = await chromium.launch({
      executablePath: browserOrThrow(),
      args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'],
    });
    try {
      const rows: Measured[] = [];
      for (const page of asked.length > 0 ? asked : pages) {
        const tried: Measured[] = [];
        for (let run = 0; run < runs; run++) tried.push(await measure(browser, serving.address, page));
        tried.sort((one, other) => worst(one) - worst(other));
        if (tried[0]) rows.push(tried[0]);
      }
      print(rows);
    } finally {
      await browser.close();
      await serving.close();
    }
  });
