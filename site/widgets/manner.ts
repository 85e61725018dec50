import type { Manner } from '../../calculators/quantities/show.ts';
import { store } from './the-store.ts';

/** How this reader wants numbers, now. */
export const manner = (): Manner => ({
  system: store.system,
  locale: document.documentElement.lang,
  ...(store.currency === undefined ? {} : { currency: store.currency }),
});
