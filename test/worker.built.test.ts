import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { eventually, field, figure, give, readers, violationsOf, type Reader } from './support/reader.ts';
import { builtFiles } from './support/site.ts';

/** What calculates apart from the page, in a browser: whose work it is, what is dropped, and what happens without it. */

/** What went to the worker and what came back, as the page saw it. */
interface Heard {
  readonly asked: { readonly kind: string; readonly turn?: number }[];
  readonly said: { readonly kind: string; readonly turn?: number; readonly id?: string }[];
}

/** Runs before the scripts of each page: writes down what the worker is asked, or takes workers away. */
function watchWorkers(): void {
  const heard: Heard = { asked: [], said: [] };
  Object.assign(globalThis, { heard });
  const { search } = location;
  if (search === '?without') Reflect.deleteProperty(globalThis, 'Worker');
  if (search === '?failing')
    globalThis.Worker = class extends EventTarget {
      constructor() {
        super();
        setTimeout(() => this.dispatchEvent(new Event('error', { cancelable: true })));
      }
      postMessage(): void {
        // A worker that never started hears nothing.
      }
      terminate(): void {
        // There is nothing to end.
      }
    } as unknown as typeof Worker;
  if (search !== '') return;
  const { Worker: Real } = globalThis;
  globalThis.Worker = class extends Real {
    constructor(address: string | URL, options?: WorkerOptions) {
      super(address, options);
      this.addEventListener('message', ({ data }) => heard.said.push(data as Heard['said'][number]));
    }
    override postMessage(ask: Heard['asked'][number]): void {
      heard.asked.push(ask);
      super.postMessage(ask);
    }
  };
}

const heardBy = (page: Page): Promise<Heard> =>
  page.evaluate(() => (globalThis as unknown as { heard: Heard }).heard);

const reader = readers();
let someone: Reader;
beforeAll(async () => {
  someone = await reader({ serviceWorkers: 'allow' }, watchWorkers);
});

/** Waits until nothing on the page is still to follow the last change, but for what is tried on request alone. */
const settled = (page: Page) =>
  eventually(() =>
    page.locator('[data-catching-up], [aria-busy], [data-behind]:not([data-how-sure] *)').count(),
  ).toBe(0);

/** Every figure of the page as it stands, and what its drawings say of themselves. */
const allShown = (page: Page): Promise<string[]> =>
  page
    .locator('[data-figure], [data-range], [data-table], [data-warnings], [data-drawing] desc')
    .evaluateAll((elements) => elements.map((element) => element.textContent.replace(/\s+/gu, '')));

describe('figures are worked out apart from the page', () => {
  it.each(['season', 'night', 'outage', 'winding'])(
    'chapter %s: by a worker, with the very answers that the build had',
    async (chapter) => {
      const page = await someone.goOn(`chapters/${chapter}/`);
      const built = await allShown(page);
      expect(built.length).toBeGreaterThan(10);
      expect(page.workers()).toHaveLength(0);
      const form = (await page.locator('bench-calculator').first().getAttribute('id')) ?? '';
      const input = field(page, form, 'frame.length');
      const path = (await input.count()) > 0 ? 'frame.length' : 'cable.length';
      const before = await field(page, form, path).inputValue();
      await give(page, form, path, String(Number(before) * 1.1));
      await settled(page);
      expect(await allShown(page)).not.toEqual(built);
      expect(page.workers().map((worker) => new URL(worker.url()).pathname)).toEqual([
        expect.stringMatching(/assets\/worker\/calculating\.[^/]+\.js$/u),
      ]);
      await give(page, form, path, before);
      await settled(page);
      expect(await allShown(page)).toEqual(built);
      expect(someone.faults).toEqual([]);
      expect(await violationsOf(page)).toEqual([]);
    },
  );

  it('the newest bench wins: what is asked in between is dropped, and nothing of it is shown', async () => {
    const page = await someone.goOn('chapters/season/');
    // As fast as no hand types: each bench as soon as the one before has been asked for, long before it is answered.
    await field(page, 'season', 'money.tariff').evaluate(async (input: HTMLInputElement) => {
      const { heard } = globalThis as unknown as { heard: Heard };
      const asked = (): number => heard.asked.filter(({ kind }) => kind === 'answers').length;
      for (let cent = 31; cent < 39; cent++) {
        const before = asked();
        input.value = `0.${cent}`;
        input.dispatchEvent(new Event('input', { bubbles: true }));
        for (let waits = 0; waits < 500 && asked() === before; waits++)
          await new Promise((resolve) => setTimeout(resolve, 10));
      }
    });
    await settled(page);
    const { asked, said } = await heardBy(page);
    const turns = asked.filter(({ kind }) => kind === 'answers').map(({ turn }) => turn);
    const seasons = said.filter(({ kind, id }) => kind === 'answer' && id === 'season');
    expect(turns.length).toBeGreaterThanOrEqual(8);
    expect(seasons.length).toBeLessThan(turns.length);
    expect(seasons.at(-1)?.turn).toBe(turns.at(-1));
    const shown = await allShown(page);
    await page.reload();
    await eventually(async () => (await heardBy(page)).said.length).toBeGreaterThan(0);
    await settled(page);
    expect(await allShown(page)).toEqual(shown);
    expect(someone.faults).toEqual([]);
  });

  it('a change of units, and a step back, ask for nothing that is known', async () => {
    const page = await someone.goOn('chapters/winding/');
    await give(page, 'winding', 'cable.length', '30');
    await settled(page);
    const metric = await figure(page, 'winding.pitch').innerText();
    const { length } = (await heardBy(page)).asked;
    await page.locator('input[name="units"][value="us"]').check();
    await eventually(() => figure(page, 'winding.pitch').innerText()).toMatch(/in$/u);
    await page.locator('input[name="units"][value="metric"]').check();
    await eventually(() => figure(page, 'winding.pitch').innerText()).toBe(metric);
    await give(page, 'winding', 'cable.length', '31');
    await settled(page);
    await page.locator('[data-undo]').first().click();
    await eventually(() => figure(page, 'winding.pitch').innerText()).toBe(metric);
    expect((await heardBy(page)).asked).toHaveLength(length + 1);
  });

  it('what is out of date says so and is read out when it is there, and nothing moves', async () => {
    const page = await someone.goOn('chapters/season/');
    await page.evaluate(() => {
      const moved: number[] = [];
      const marked: string[] = [];
      Object.assign(globalThis, { moved, marked });
      const form = document.querySelector('#season');
      const headline = form?.querySelector('.headline');
      new MutationObserver(() => {
        marked.push(form?.getAttribute('aria-busy') ?? 'done');
        moved.push(headline?.getBoundingClientRect().height ?? 0);
      }).observe(form ?? document, { attributes: true, attributeFilter: ['aria-busy'] });
    });
    await field(page, 'season', 'money.tariff').fill('0.37');
    await settled(page);
    const { moved, marked } = await page.evaluate(() => {
      const here = globalThis as unknown as { moved: number[]; marked: string[] };
      return { moved: here.moved, marked: here.marked };
    });
    expect([...new Set(marked)]).toEqual(['true', 'done']);
    expect(new Set(moved).size).toBe(1);
    const headline = await page.locator('#season .headline output').innerText();
    await eventually(() => page.locator('[data-status]').textContent()).toContain(headline);
  });
});

describe('how sure the night is', () => {
  const tables = (page: Page) =>
    page
      .locator('[data-sure-table], [data-sure-drawing] desc')
      .evaluateAll((all) => all.map((one) => one.textContent.replace(/\s+/gu, '')));
  const state = (page: Page) => page.locator('[data-sure-state]').innerText();

  it('two hundred benches like the example, tried here, come to what the build had', async () => {
    const page = await someone.goOn('chapters/night/');
    const built = await tables(page);
    expect(built).toHaveLength(4);
    await page.locator('[data-sure-table]').evaluateAll((all) => {
      for (const one of all) one.replaceChildren();
    });
    await page.evaluate(() => {
      const values: number[] = [];
      Object.assign(globalThis, { values });
      new MutationObserver(() => {
        values.push(document.querySelector<HTMLProgressElement>('#how-sure-done')?.value ?? -1);
      }).observe(document.querySelector('[data-sure-state]') ?? document, { childList: true });
    });
    await page.locator('[data-sure-try]').click();
    await eventually(() => state(page)).toBe('200 of 200 tried');
    expect(await tables(page)).toEqual(built);
    const values = await page.evaluate(() => (globalThis as unknown as { values: number[] }).values);
    expect(values.length).toBeGreaterThan(3);
    expect(values).toEqual(values.toSorted((one, other) => one - other));
    expect(await page.locator('[data-status]').textContent()).toContain('All benches are tried');
  });

  it('can be stopped, leaves what was there, and is grey where the bench has changed', async () => {
    const page = await someone.goOn('chapters/night/');
    const built = await tables(page);
    await page.evaluate(() => {
      const line = document.querySelector('[data-sure-state]');
      new MutationObserver((_, observer) => {
        if (!/^[1-9]\d* of/u.test(line?.textContent ?? '')) return;
        observer.disconnect();
        document.querySelector<HTMLButtonElement>('[data-sure-stop]')?.click();
      }).observe(line ?? document, { childList: true });
    });
    await page.locator('[data-sure-try]').click();
    await eventually(() => state(page)).toMatch(/^Stopped after [1-9]\d*; nothing has changed$/u);
    expect(await page.locator('[data-sure-try]').isEnabled()).toBe(true);
    expect(await tables(page)).toEqual(built);
    await give(page, 'night', 'place.coldHours', '20');
    await eventually(() => page.locator('[data-sure-table][data-behind]').count()).toBe(2);
    expect(await page.locator('[data-sure-whose]').innerText()).toContain('still the ranges of the example');
    await page.locator('[data-sure-try]').click();
    await eventually(() => state(page)).toBe('200 of 200 tried');
    expect(await tables(page)).not.toEqual(built);
    expect(await page.locator('[data-sure-table][data-behind]').count()).toBe(0);
    expect(await page.locator('[data-sure-whose]').innerText()).toBe('These are the ranges of your bench.');
    expect(someone.faults).toEqual([]);
    expect(await violationsOf(page)).toEqual([]);
  });
});

describe('where the browser starts no worker', () => {
  it.each(['without', 'failing'])(
    '(%s) the page works with the same file, and the reader sees no error',
    async (how) => {
      const page = await someone.goOn(`chapters/winding/?${how}`);
      const before = await figure(page, 'winding.pitch').innerText();
      await give(page, 'winding', 'cable.length', '30');
      await eventually(() => figure(page, 'winding.pitch').innerText()).not.toBe(before);
      await give(page, 'winding', 'cable.length', '38');
      await eventually(() => figure(page, 'winding.pitch').innerText()).toBe(before);
      await settled(page);
      expect(page.workers()).toHaveLength(0);
      expect(await page.locator('[data-notice]').count()).toBe(0);
      expect(someone.faults).toEqual([]);
      expect(await violationsOf(page)).toEqual([]);
    },
  );
});

describe('the files of what calculates', () => {
  it('lie in a folder of their own, and no page brings them along', () => {
    const files = builtFiles().filter((path) => path.startsWith('assets/worker/'));
    expect(files.some((path) => path.includes('/calculating.'))).toBe(true);
    expect(files.some((path) => path.includes('/season.'))).toBe(true);
  });

  it('are kept for use without a network', async () => {
    const page = await someone.goOn('chapters/winding/');
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.reload();
    await someone.context.setOffline(true);
    await page.goto(`${someone.address}chapters/outage/`);
    const built = await allShown(page);
    await give(page, 'outage', 'frame.length', '4');
    await settled(page);
    expect(await allShown(page)).not.toEqual(built);
    expect(page.workers()).toHaveLength(1);
    await someone.context.setOffline(false);
    expect(someone.faults).toEqual([]);
  });
});
