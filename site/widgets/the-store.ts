import type { ExampleBench } from '../guide.ts';
import { Store, type Storage } from './store.ts';

/** The store of this page: one bench for the whole site, starting from the example of the region. */

const benches = Object.values(
  import.meta.glob<ExampleBench>('../../content/benches/*.yaml', { eager: true, import: 'default' }),
);

function browserStorage(): Storage | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    // Forbidden by the reader's settings: the guide works on, and says that it cannot keep the bench.
    return undefined;
  }
}

const example = benches.find(({ bench }) => bench.place.region === import.meta.env.REGION);
if (!example) throw new Error(`no example bench for the region ${import.meta.env.REGION}`);

export const store = new Store({
  storage: browserStorage(),
  example: example.bench,
  system: document.documentElement.dataset['units'] === 'us' ? 'us' : 'metric',
  fields: import.meta.env.FIELDS,
});

globalThis.addEventListener('storage', ({ key }) => {
  store.changedElsewhere(key);
});
