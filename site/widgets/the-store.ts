import { Store, type Storage } from './store.ts';

/** The store of this page: one bench for the whole site, starting from the example of the region. */

function browserStorage(): Storage | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    // Forbidden by the reader's settings: the guide works on, and says that it cannot keep the bench.
    return undefined;
  }
}

/** How long what was typed may be without a copy in the browser's storage while the page is busy [ms]. */
const longestWait = 500;

const customs = import.meta.env.CUSTOMS;
const usual = { units: 'metric', paper: 'a4' } as const;

export const store = new Store({
  storage: browserStorage(),
  example: import.meta.env.EXAMPLE.bench,
  async fresh() {
    const { startBench } = await import('../../calculators/bench/start.ts');
    const { region, station } = import.meta.env.EXAMPLE.bench.place;
    return startBench(region, station);
  },
  customs: (region) => customs[region] ?? customs[import.meta.env.REGION] ?? usual,
  fields: import.meta.env.FIELDS,
  whenIdle(write) {
    // Not every browser says when it is idle.
    if ('requestIdleCallback' in globalThis) requestIdleCallback(write, { timeout: longestWait });
    else setTimeout(write);
  },
});

/** Nothing is lost by leaving at once, nor by putting a telephone away. */
globalThis.addEventListener('pagehide', () => {
  store.writeAll();
});
document.addEventListener('visibilitychange', () => {
  if (document.hidden) store.writeAll();
});

globalThis.addEventListener('storage', ({ key }) => {
  store.changedElsewhere(key);
});
