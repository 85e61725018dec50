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

export const store = new Store({
  storage: browserStorage(),
  example: import.meta.env.EXAMPLE.bench,
  system: document.documentElement.dataset['units'] === 'us' ? 'us' : 'metric',
  fields: import.meta.env.FIELDS,
});

globalThis.addEventListener('storage', ({ key }) => {
  store.changedElsewhere(key);
});
