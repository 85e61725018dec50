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
});

globalThis.addEventListener('storage', ({ key }) => {
  store.changedElsewhere(key);
});
