import type { Celsius } from '../quantities/temperature.ts';
import { within } from '../range.ts';
import {
  freezingPointAshrae,
  freezingPointMelinder,
  highestVolumeShare,
  massShareOf,
  type Glycol,
} from './glycol.ts';

/**
 * Making a mix that is already in the loop stronger or weaker. Volumes in m³, shares by volume [1]. Volumes are taken to add
 * up; mixing shrinks them by a per cent or so, which makes a mix by as much stronger than it was meant to be.
 */

/** Shares that the published sources find for one freezing point [1]. */
export interface PresentShare {
  /** The lowest: whoever corrects a mix by it errs towards too much antifreeze. */
  readonly least: number;
  readonly most: number;
}

/** The share at which a falling function of the share comes down to a temperature, by halving. */
function shareWhere(freezing: (share: number) => Celsius, highest: number, t: Celsius): number {
  let [low, high] = [0, highest];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (freezing(middle) > t) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * What share of glycol a mix has whose first ice was seen at a temperature [°C]: by ASHRAE 2001 and by Melinder 2010, which
 * differ by up to two percentage points. None at or above 0 °C. A refractometer or a jar in a freezer gives the reading.
 * Throws `OutOfRange` where the sources end.
 */
export function shareThatFreezesAt(glycol: Glycol, t: Celsius): PresentShare {
  if (t >= 0) return { least: 0, most: 0 };
  const highest = highestVolumeShare(glycol);
  const sources = [
    (share: number): Celsius => freezingPointAshrae(glycol, share),
    (share: number): Celsius => freezingPointMelinder(glycol, massShareOf(glycol, share)),
  ];
  const coldest = Math.max(...sources.map((freezing) => freezing(highest)));
  within(`freezing point of ${glycol} glycol [°C]`, t, coldest, 0);
  const shares = sources.map((freezing) => shareWhere(freezing, highest, t));
  return { least: Math.min(...shares), most: Math.max(...shares) };
}

/**
 * How much of `filling` makes `volume` of a mix as strong as wanted when it is poured on top of it [m³]: there has to be
 * room for it. V (w − p) / (f − w), with the shares present, wanted and of the filling: 1 for concentrate, 0 for water.
 * Null where that filling cannot do it.
 */
export function addOnTop(volume: number, present: number, wanted: number, filling = 1): number | null {
  if (wanted === present) return 0;
  const added = (volume * (wanted - present)) / (filling - wanted);
  return Number.isFinite(added) && added > 0 ? added : null;
}

/**
 * How much of a full loop has to be drained and replaced by `filling` [m³]: V (w − p) / (f − p). Never more than the loop
 * holds; null where that filling cannot do it.
 */
export function drainAndReplace(volume: number, present: number, wanted: number, filling = 1): number | null {
  if (wanted === present) return 0;
  const replaced = (volume * (wanted - present)) / (filling - present);
  return replaced > 0 && replaced <= volume ? replaced : null;
}

/** Share by volume of two mixes poured together [1]. */
export const shareOfBoth = (volume: number, share: number, otherVolume: number, otherShare: number): number =>
  (volume * share + otherVolume * otherShare) / (volume + otherVolume);
