import { inSlices, startOver, type Work } from './slices.ts';
import { store } from './the-store.ts';

/**
 * What of the page follows the bench. The store tells of a change within the key's own task; what shows it comes after
 * the key itself is on the screen.
 */

const following: Work[] = [];

store.subscribe(() => {
  startOver();
  for (const show of following) void inSlices(show);
});

/** Has this shown after every change of the bench or of the units. What it shows must not hang on how often it is called. */
export function follow(show: Work): void {
  following.push(show);
}
