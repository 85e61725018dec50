import { airDensity, airHeatCapacity } from '../properties/air.ts';
import {
  freezingPoint,
  highestVolumeShare,
  massShareOf,
  mixDensity,
  mixHeatCapacity,
  volumeShareFor,
} from '../properties/glycol.ts';
import { mediumEnthalpy, mediumFreezes, mediumHeatCapacity, waterShareOf } from '../properties/medium.ts';
import { waterFusionHeat } from '../properties/water.ts';
import { media } from '../tables/media.ts';
import { curveThrough, sensible, type EnthalpyCurve } from './enthalpy.ts';
import type { Bench } from './fields.ts';
import { loopVolume, loopWallMass, mediumVolume, pipeOf, topArea, underVolume } from './geometry.ts';

/** Heat that the parts of a bench hold, each as a curve against its temperature. */

/** Volume heat capacity of moist soil [J/(m³·K)]: sand and gravel 1950 kg/m³ × 1045 J/(kg·K) (EN 12524). */
const soilHeatCapacity = 1950 * 1045;

/** Timber or steel of the bench, per area of its top [J/(m²·K)] (assumption: 15 kg/m² of timber at 1600 J/(kg·K)). */
const frameHeatCapacity = 15 * 1600;

/** Leaves, stems and film of a covered canopy, per area of the top [J/(m²·K)] (assumption: as 0.5 kg/m² of water). */
const canopyHeatCapacity = 0.5 * 4190;

/** Temperature at which the heat capacities of fluid and air are taken [°C]: where common practice keeps the loop. */
const reference = 5;

/** Steps below the freezing point at which the slush of a mix is followed [K]. */
const slushSteps = [0, 0.5, 1, 2, 4, 8, 16, 32] as const;

const air = airDensity(reference) * airHeatCapacity;

/** Heat capacity of one of `layers` equal layers of the medium in all pots, thawed [J/K]. */
export const rootsThawed = (bench: Bench, layers: number): number =>
  (mediumVolume(bench) / layers) * mediumHeatCapacity(media[bench.pots.medium], bench.pots.moisture);

/** One of `layers` equal layers of the medium in all pots. */
export function rootsHold(bench: Bench, layers: number): EnthalpyCurve {
  const { medium: kind, moisture } = bench.pots;
  const medium = media[kind];
  if (waterShareOf(medium, moisture) === 0) return sensible(rootsThawed(bench, layers));
  const volume = mediumVolume(bench) / layers;
  const { from, to } = mediumFreezes;
  return curveThrough(
    [from + 1, from, to, to - 1].map((t) => ({ t, h: volume * mediumEnthalpy(medium, moisture, t) })),
  );
}

/** Share of the fluid that has turned to ice by mass [1], at a temperature [°C]; slush first, solid in the end. */
export function iceShare(bench: Bench, t: number): number {
  const { antifreeze, share } = bench.mix;
  if (antifreeze === 'none') return Math.min(1, Math.max(0, (mediumFreezes.from - t) / 0.5));
  const known = Math.min(share, highestVolumeShare(antifreeze));
  if (t >= freezingPoint(antifreeze, known)) return 0;
  // Ice is nearly pure water: what stays liquid grows stronger until its freezing point is that of the slush.
  const lowest = freezingPoint(antifreeze, highestVolumeShare(antifreeze));
  const liquid = massShareOf(antifreeze, volumeShareFor(antifreeze, Math.max(t, lowest)));
  return 1 - massShareOf(antifreeze, known) / liquid;
}

/** Temperature at which the first ice forms in the loop [°C]. */
export function loopFreezes({ mix: { antifreeze, share } }: Pick<Bench, 'mix'>): number {
  if (antifreeze === 'none') return mediumFreezes.from;
  return freezingPoint(antifreeze, Math.min(share, highestVolumeShare(antifreeze)));
}

function loopCurve(bench: Bench): EnthalpyCurve {
  const { antifreeze, share } = bench.mix;
  const known = antifreeze === 'none' ? 0 : Math.min(share, highestVolumeShare(antifreeze));
  const byMass = antifreeze === 'none' ? 0 : massShareOf(antifreeze, known);
  const mass = loopVolume(bench) * mixDensity(antifreeze, byMass, reference);
  const wall = loopWallMass(bench) * pipeOf(bench).heatCapacity;
  const capacity = mass * mixHeatCapacity(antifreeze, byMass, reference) + wall;
  const freezes = loopFreezes(bench);
  return curveThrough([
    { t: freezes + 1, h: (freezes + 1) * capacity },
    ...slushSteps.map((step) => {
      const t = freezes - step;
      const ice = mass * iceShare(bench, t);
      return { t, h: t * capacity - ice * waterFusionHeat };
    }),
  ]);
}

/**
 * What was worked out for a bench once. Each step of slush takes a search, which is most of the work of assembling a
 * bench, and ranges assemble one bench hundreds of times.
 */
const knownLoops = new WeakMap<Bench, EnthalpyCurve>();

/** Fluid and wall of the loop. */
export function loopHolds(bench: Bench): EnthalpyCurve {
  const curve = knownLoops.get(bench) ?? loopCurve(bench);
  knownLoops.set(bench, curve);
  return curve;
}

/** Air under the bench and the bench itself, which follows it at once. */
export const underHolds = (bench: Bench): EnthalpyCurve =>
  sensible(underVolume(bench) * air + topArea(bench) * frameHeatCapacity);

/** Air, leaves and film under a cover. */
export const canopyHolds = (bench: Bench): EnthalpyCurve =>
  sensible(topArea(bench) * (bench.cover.height * air + canopyHeatCapacity));

/** A layer of soil under the bench. */
export const soilHolds = (bench: Bench, thickness: number): EnthalpyCurve =>
  sensible(topArea(bench) * thickness * soilHeatCapacity);
