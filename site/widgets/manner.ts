import type { Manner } from '../../calculators/quantities/show.ts';
import { store } from './the-store.ts';
import { wordsHere } from './words.ts';

/** How this reader wants numbers, now. */
export function manner(): Manner {
  const locale = document.documentElement.lang;
  const words = wordsHere(locale);
  return {
    system: store.system,
    locale,
    ...(words ? { words } : {}),
    ...(store.currency === undefined ? {} : { currency: store.currency }),
  };
}
