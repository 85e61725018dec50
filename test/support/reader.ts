import type { Browser, BrowserContext, BrowserContextOptions, Page, Response } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { serveFolder, type Serving } from '../../scripts/serve.ts';
import { dist, readBuilt, startBrowser } from './site.ts';

/** The built guide in a real browser, under the headers of a strict host: what the tests of it share. */

/** Where the guide lies on its host, as its pages were built for it. */
const base = /href="([^"]*)icon\.svg"/u.exec(readBuilt('index.html').toString('utf8'))?.[1] ?? '/';

/** The windows that pages are looked at in, in pixels of CSS: a desk’s, and a common telephone’s. */
export const windows = { desktop: { width: 1280, height: 900 }, phone: { width: 390, height: 844 } };

/** A reader: a browser profile of its own, whose faults are written down. */
export class Reader {
  readonly context: BrowserContext;
  readonly faults: string[] = [];
  readonly #responses: Response[] = [];
  #window: Page | undefined;

  /** Where the guide is served. */
  readonly address: string;

  constructor(context: BrowserContext, address: string) {
    this.context = context;
    this.address = address;
  }

  async open(path: string): Promise<Page> {
    const page = await this.#newPage();
    await page.goto(this.address + path);
    return page;
  }

  /**
   * Goes on to a page in the same window, as a new window costs more than three pages. Of the page before nothing is
   * left, neither its faults nor what it kept.
   */
  async goOn(path: string, size: keyof typeof windows = 'desktop'): Promise<Page> {
    if (this.#window) {
      // The page writes down what it has to keep when it is left: what it kept is cleared from a file without a script.
      await this.#window.goto(`${this.address}icon.svg`);
      await this.#window.evaluate(() => {
        localStorage.clear();
      });
      await this.#window.emulateMedia({ media: null, colorScheme: null });
      // To another part of the same page a browser only scrolls.
      if (path.includes('#')) await this.#window.goto('about:blank');
    }
    this.#window ??= await this.#newPage();
    await this.#window.setViewportSize(windows[size]);
    this.faults.length = 0;
    this.#responses.length = 0;
    await this.#window.goto(this.address + path);
    return this.#window;
  }

  /** Leaves the guide, and comes back to one of its pages in the same window, with what the browser has kept. */
  async comeBack(path: string): Promise<void> {
    await this.#window?.goto('about:blank');
    await this.#window?.goto(this.address + path);
  }

  async #newPage(): Promise<Page> {
    const page = await this.context.newPage();
    page.on('pageerror', (error) => this.faults.push(`error: ${error.message}`));
    page.on('console', (message) => {
      const { url } = message.location();
      // Every response of the page is looked at below. The browser's own look for this icon, which it takes now and then
      // in place of the one that the page names, is none of the page's.
      if (message.type() === 'error' && !url.endsWith('/favicon.ico'))
        this.faults.push(`console: ${message.text()} ${url}`.trim());
    });
    page.on('requestfailed', (request) => {
      // A reader who leaves a page does not wait for what it is still loading.
      if (request.failure()?.errorText !== 'net::ERR_ABORTED') this.faults.push(`failed: ${request.url()}`);
    });
    page.on('response', (response) => {
      if (response.status() >= 400) this.faults.push(`${response.status()}: ${response.url()}`);
      if (response.url().startsWith(this.address)) this.#responses.push(response);
    });
    return page;
  }

  /** Everything that the pages which are open have loaded so far, once it is all there. */
  async allLoaded(): Promise<readonly { readonly path: string; readonly bytes: Buffer }[]> {
    const loaded = this.#responses.map(async (response) => ({
      path: response.url().slice(this.address.length),
      bytes: await response.body().catch(() => Buffer.alloc(0)),
    }));
    return Promise.all(loaded);
  }
}

type OpenReader = (options?: BrowserContextOptions, script?: () => void) => Promise<Reader>;

/**
 * Serves the guide and starts a browser for the tests of a file. Gives back what makes a reader, for the time of one
 * test or, where it is made before them, of all; `script` runs before any of a page's own.
 */
export function readers(): OpenReader {
  let serving: Serving;
  let browser: Browser;
  const contexts: BrowserContext[] = [];
  let lasting = 0;
  beforeAll(async () => {
    serving = await serveFolder({ folder: dist, port: 0, base });
    browser = await startBrowser();
  });
  beforeEach(() => {
    lasting = contexts.length;
  });
  afterEach(async () => {
    await Promise.all(contexts.splice(lasting).map((context) => context.close()));
  });
  afterAll(async () => {
    await browser.close();
    await serving.close();
  });
  return async (options = {}, script) => {
    const context = await browser.newContext({
      serviceWorkers: 'block',
      viewport: windows.desktop,
      ...options,
    });
    contexts.push(context);
    await context.addInitScript(() => {
      const seen: string[] = [];
      const shifts: string[] = [];
      Object.assign(globalThis, { violations: seen, shifts });
      document.addEventListener('securitypolicyviolation', (event) => {
        seen.push(`${event.violatedDirective}: ${event.blockedURI} ${event.sample}`);
      });
      // The parts of it that are read, as the compiler does not know this kind of entry.
      interface Shift extends PerformanceEntry {
        readonly value: number;
        readonly hadRecentInput: boolean;
        readonly sources: readonly { readonly node: Node | null }[];
      }
      new PerformanceObserver((list) => {
        for (const { value, hadRecentInput, sources } of list.getEntries() as Shift[])
          // Such figures are given in thousandths: less counts as none.
          if (!hadRecentInput && value >= 0.0005)
            shifts.push(`${value.toFixed(4)} ${(sources[0]?.node?.textContent ?? '').trim().slice(0, 60)}`);
      }).observe({ type: 'layout-shift', buffered: true });
    });
    if (script) await context.addInitScript(script);
    return new Reader(context, serving.address);
  };
}

/** What the page did against its policy. */
export const violationsOf = (page: Page): Promise<string[]> =>
  page.evaluate(() => (globalThis as unknown as { violations: string[] }).violations);

/**
 * What has moved on a page by itself since it was opened, with how much (Layout Instability, W3C Community Group Draft:
 * the share of the window that moved, times how far), once it has come to rest.
 */
export async function shiftsOf(page: Page): Promise<string[]> {
  await eventually(() => page.locator('[data-needs-script][hidden], fieldset.fields:disabled').count()).toBe(
    0,
  );
  return page.evaluate(async () => {
    // What the scripts of a page do at its start is drawn by then; entries come with the frame after.
    for (let frames = 0; frames < 3; frames++) await new Promise((drawn) => requestAnimationFrame(drawn));
    await new Promise((idle) => requestIdleCallback(idle, { timeout: 1000 }));
    await new Promise((drawn) => requestAnimationFrame(drawn));
    return (globalThis as unknown as { shifts: string[] }).shifts;
  });
}

/** The text of the figure of that name in the calculator with that id. */
export const figure = (page: Page, name: string) => page.locator(`output[data-figure="${name}"]`).first();
/** A field of the form with that id. */
export const field = (page: Page, form: string, path: string) =>
  page.locator(`#${form}-${path.replace('.', '-')}`);

/** Asks until the answer is right, for long enough on a busy machine. */
export const eventually = <T>(ask: () => Promise<T>) => expect.poll(ask, { timeout: 15_000 });

/** Text as it is seen: a narrow no-break space is a blank. */
export const seen = async (text: Promise<string>): Promise<string> =>
  (await text).replaceAll('\u202f', ' ').trim();

/** The number in a text such as "1.25 m" or "−4 °C". */
export const numberIn = (text: string): number => Number(/-?[\d.]+/u.exec(text.replace('−', '-'))?.[0]);

/** The number of the figure of that name. */
export async function figureNumber(page: Page, name: string): Promise<number> {
  return numberIn(await figure(page, name).innerText());
}

/** Opens what a field is folded into, if it is. */
export async function unfold(page: Page, form: string, path: string): Promise<void> {
  await field(page, form, path).evaluate((element) => {
    element.closest('details')?.setAttribute('open', '');
  });
}

/** Types an answer and leaves the field. */
export async function give(page: Page, form: string, path: string, text: string): Promise<void> {
  await unfold(page, form, path);
  await field(page, form, path).fill(text);
  await field(page, form, path).blur();
}
