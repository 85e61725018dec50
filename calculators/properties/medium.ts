import type { Celsius } from '../quantities/temperature.ts';
import { within } from '../range.ts';
import { dryMatterHeatCapacity, type Medium } from '../tables/media.ts';
import { iceConductivity, poreWaterConductivity } from './ice.ts';
import { waterFusionHeat } from './water.ts';

/**
 * A potting medium by its moisture: the share of what it holds after it was soaked and has drained, 0 to 1. Per volume in
 * the pot. Water is counted with 1000 kg/m³.
 */

/** Heat capacity of water by volume [J/(m³·K)]: 4.19 MJ/(m³·K) at 0 to 10 °C (IAPWS SR6-08). */
const waterByVolume = 4.19e6;

/** Heat capacity of ice by mass [J/(kg·K)]: 2.0 kJ/(kg·K) (EN 12524, ice at −10 °C). */
const iceHeatCapacity = 2000;

/** [kg/m³] */
const waterDensity = 1000;

/**
 * Where the water of a moist medium freezes [°C]: from 0 to half a degree below, as its salts and its finest pores
 * hold the last of it back.
 */
export const mediumFreezes = { from: 0, to: -0.5 } as const;

/** Volume of water as a share of the whole [1]. */
export function waterShareOf({ containerCapacity }: Medium, moisture: number): number {
  within('moisture of the medium [1]', moisture, 0, 1);
  return containerCapacity * moisture;
}

/** Mass per volume, water and dry matter [kg/m³]. */
export const mediumDensity = (medium: Medium, moisture: number): number =>
  medium.bulkDensity + waterDensity * waterShareOf(medium, moisture);

/**
 * Conductivity [W/(m·K)]: on a straight line between dry and container capacity, 0.05 and 0.5 for peat (Heiskanen 2000).
 * Measured on peat soils it does rise in a straight line with the water by volume (abstract, University of Moratuwa).
 */
export function mediumConductivity(medium: Medium, moisture: number): number {
  within('moisture of the medium [1]', moisture, 0, 1);
  return medium.conductivityDry + (medium.conductivityWet - medium.conductivityDry) * moisture;
}

/**
 * How many times as well a medium conducts when its water is ice [1]: (λ_ice / λ_water)^θ, with θ the share of the whole
 * that freezes. It is what the geometric mean of all that the medium is made of gives (Johansen 1975 for frozen ground,
 * from memory and seen in an open model of soils), whatever its dry matter conducts. `frozenShare` is the part of the
 * water that is ice, 0 to 1, so that the conductivity rises steadily as a layer freezes.
 *
 * Measured on peat, thawed and frozen (Kujala and others 2008): 3.0 to 3.6 times saturated, 1.5 to 2.9 times at natural
 * moisture; this gives 3.2 for soaked peat and 1.9 for soaked bark. Unsaturated, it is rather low than high, by up to a
 * third: Johansen's own line for frozen ground, λ_dry + (λ_soaked − λ_dry) S, is above it there.
 */
export function frozenConductivityRatio(medium: Medium, moisture: number, frozenShare = 1): number {
  within('share of the water that is frozen [1]', frozenShare, 0, 1);
  return (iceConductivity / poreWaterConductivity) ** (waterShareOf(medium, moisture) * frozenShare);
}

/** Conductivity frozen through [W/(m·K)]: that of the thawed medium times `frozenConductivityRatio`; range and errors there. */
export const frozenConductivity = (medium: Medium, moisture: number): number =>
  mediumConductivity(medium, moisture) * frozenConductivityRatio(medium, moisture);

const dryPart = ({ bulkDensity }: Medium): number => bulkDensity * dryMatterHeatCapacity;

/** Heat capacity by volume, thawed [J/(m³·K)]: ρ c of the dry matter and 4.19 MJ/(m³·K) of the water. */
export const mediumHeatCapacity = (medium: Medium, moisture: number): number =>
  dryPart(medium) + waterByVolume * waterShareOf(medium, moisture);

/** Heat capacity by volume, frozen [J/(m³·K)]. */
export const frozenHeatCapacity = (medium: Medium, moisture: number): number =>
  dryPart(medium) + waterDensity * iceHeatCapacity * waterShareOf(medium, moisture);

/** Heat that it gives up by volume as all its water freezes [J/m³]. */
export const mediumFusionHeat = (medium: Medium, moisture: number): number =>
  waterDensity * waterFusionHeat * waterShareOf(medium, moisture);

/**
 * Heat held by volume [J/m³] at t [°C], zero thawed at 0 °C: sensible above, its latent heat given up evenly from 0 to
 * −0.5 °C, sensible below. Continuous, and rising all the way.
 */
export function mediumEnthalpy(medium: Medium, moisture: number, t: Celsius): number {
  const { from, to } = mediumFreezes;
  const thawed = mediumHeatCapacity(medium, moisture);
  if (t >= from) return thawed * t;
  const frozen = frozenHeatCapacity(medium, moisture);
  const whole = mediumFusionHeat(medium, moisture) + ((from - to) * (thawed + frozen)) / 2;
  if (t >= to) return from * thawed - (whole * (from - t)) / (from - to);
  return from * thawed - whole - frozen * (to - t);
}
