import type { Bench, FieldPath } from '../../calculators/bench/fields.ts';
import { decodeBench } from '../../content/link.ts';
import { withValues } from '../bench-value.ts';
import { announce, notice } from './notice.ts';
import { loadRegion, regionIds, stationOf } from './place.ts';
import { store } from './the-store.ts';

/** The bench in a place that this guide knows, and words on what had to be changed for that. */
async function placed(bench: Bench): Promise<{ readonly bench: Bench; readonly moved: string }> {
  const region = await loadRegion(bench.place.region);
  const station = stationOf(region, bench.place.station);
  if (region.id === bench.place.region && station.id === bench.place.station) return { bench, moved: '' };
  const unknown = regionIds.includes(bench.place.region) ? 'weather station' : 'region';
  return {
    bench: withValues(bench, { 'place.region': region.id, 'place.station': station.id }),
    moved: ` This guide does not know its ${unknown}; it now stands at ${station.name}, ${region.name}. Check that.`,
  };
}

/** Goes on with a linked bench; one of the reader's own is put away for it. */
function take(bench: Bench, set: readonly FieldPath[], moved: string): void {
  const back = store.take(bench, set);
  notice('link', `This is now the bench of the link, “${bench.identity.name}”.${moved}`, [
    {
      words: 'Undo: back to the bench before',
      take: () => {
        back();
        announce('The bench from before the link is back.');
      },
    },
  ]);
}

/**
 * Opens the bench that the address carries behind its #. The reader's own bench is never given up unasked, and a
 * link that is not whole changes nothing.
 */
export async function readLink(): Promise<void> {
  const decoded = decodeBench(location.hash);
  // Read once: a reload must not ask again, and a bookmark of the page is a bookmark of the page.
  history.replaceState(history.state, '', location.pathname + location.search);
  if (!decoded.ok) {
    notice('link', `${decoded.text} Your bench is as it was.`);
    return;
  }
  const { bench, moved } = await placed(decoded.bench);
  if (store.untouched) {
    take(bench, decoded.set, moved);
    return;
  }
  const mine = store.state.bench.identity.name;
  notice(
    'link',
    `The link holds a bench, “${bench.identity.name}”. Yours, “${mine}”, stays among your benches.`,
    [
      {
        words: 'Show the bench of the link',
        take: () => {
          take(bench, decoded.set, moved);
        },
      },
      { words: 'Keep mine', take: () => undefined },
    ],
  );
}
