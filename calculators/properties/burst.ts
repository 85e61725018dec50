import { toBase } from '../quantities/quantity.ts';
import type { Celsius } from '../quantities/temperature.ts';
import { within } from '../range.ts';
import { burstTable } from '../tables/burst.ts';
import type { Glycol } from './glycol.ts';

/**
 * Freeze protection and burst protection are two things. Below its freezing point a mix is slush: it hardly carries heat,
 * but it gives way, and what swells finds room in the stand-pipe. A pipe bursts when the slush sets. A loop that has to
 * go on heating needs freeze protection; one that stands idle full of mix needs burst protection at least. The table of the
 * trade is for metal pipe without air in it; drain pipe with an open stand-pipe is no worse off.
 */

/** Air temperature [°C] and share by volume [1] against bursting, from warm to cold, beginning with plain water. */
const columnsOf = (glycol: Glycol) => [
  { t: 0, share: 0 },
  ...burstTable[glycol].map(([fahrenheit, , burst]) => ({
    t: toBase('temperature', fahrenheit, '°F'),
    share: burst / 100,
  })),
];
const columns = { propylene: columnsOf('propylene'), ethylene: columnsOf('ethylene') };

/** The coldest of the table [°C]: −60 °F. */
export const coldestBurst: Celsius = toBase('temperature', burstTable.propylene.at(-1)?.[0] ?? NaN, '°F');

/**
 * The least share by volume [1] that keeps a pipe from bursting down to an air temperature [°C], straight lines between the
 * rows of the trade table and from its first row to plain water at 0 °C. Throws `OutOfRange` below −51 °C.
 */
export function burstShareFor(glycol: Glycol, t: Celsius): number {
  if (t >= 0) return 0;
  within('air temperature [°C]', t, coldestBurst, 0);
  const rows = columns[glycol];
  const colder = Math.max(
    1,
    rows.findIndex((row) => row.t <= t),
  );
  const [above, below] = [rows[colder - 1]!, rows[colder]!];
  return above.share + ((below.share - above.share) * (above.t - t)) / (above.t - below.t);
}

/** Whether a mix of this share by volume [1] holds in every cold of the table, so that its burst point lies below it. */
export const holdsBeyondTable = (glycol: Glycol, volumeShare: number): boolean =>
  volumeShare >= columns[glycol].at(-1)!.share;

/**
 * The coldest air [°C] in which a mix of this share by volume [1] does not burst its pipe: the inverse of `burstShareFor`.
 * The coldest of the table, −51 °C, for every share from 0.35 (propylene) or 0.31 (ethylene glycol) up, which the trade
 * takes to be safe at any temperature: it lies somewhere below (`holdsBeyondTable`).
 */
export function burstPoint(glycol: Glycol, volumeShare: number): Celsius {
  within(`share of ${glycol} glycol by volume [1]`, volumeShare, 0, 1);
  const rows = columns[glycol];
  // The first row that asks for more: up to it the mix holds.
  const next = rows.findIndex((row) => row.share > volumeShare);
  if (next === -1) return coldestBurst;
  const [above, below] = [rows[next - 1]!, rows[next]!];
  return above.t - ((volumeShare - above.share) / (below.share - above.share)) * (above.t - below.t);
}
