import type { Celsius } from '../quantities/temperature.ts';
import { airDensity, airHeatCapacity } from '../properties/air.ts';
import { saturationHumidity } from '../properties/moist-air.ts';
import { kelvin } from '../properties/temperature.ts';
import { gravity } from './gravity.ts';

/** Air that changes places because warm air is lighter. Areas in m², heights in m, temperatures in °C. */

/** Discharge coefficient of a sharp-edged slot [1]: about 0.6 (handbook practice, from memory). */
export const dischargeCoefficient = 0.6;

/**
 * Two openings that the same air passes one after the other, as one [m²]: 1/A² = 1/a² + 1/b². Zero if one is shut.
 */
export const openingsInSeries = (a: number, b: number): number =>
  a === 0 || b === 0 ? 0 : (a * b) / Math.hypot(a, b);

/**
 * Air driven by buoyancy through an opening low down and one high up [m³/s]: q = Cd A √(2 g H |ΔT| / T).
 *
 * @param area the two openings in series, see `openingsInSeries`
 * @param height from the middle of the lower to the middle of the upper opening
 * @param warm and cold: the air on the two sides; T is their mean in kelvin
 */
export const buoyantFlow = (area: number, height: number, warm: Celsius, cold: Celsius): number =>
  dischargeCoefficient *
  area *
  Math.sqrt((2 * gravity * height * Math.abs(warm - cold)) / kelvin((warm + cold) / 2));

/** Heat that a flow of air [m³/s] at t [°C] carries per degree [W/K]: ρ cp q. */
export const flowConductance = (flow: number, t: Celsius): number => airDensity(t) * airHeatCapacity * flow;

/** Heat that a kilogram of water takes up to become vapour [J/kg]: 2501 kJ/kg at 0 °C (ASHRAE 2017, chapter 1). */
const vaporisationHeat = 2.501e6;

/**
 * Mean temperatures between which the vapour is followed [°C]; beyond, as on a solver’s way, the ends are taken, so that
 * the factor is finite for any two temperatures.
 */
const vapourRange = { from: -60, to: 60 } as const;

/**
 * Least and largest difference over which the rise of humidity is taken [K]: nearer together its slope hardly changes,
 * further apart no bench and its house are.
 */
const slopeOver = 0.2;
const steepest = 60;

/**
 * By how much the vapour that leaking air carries off adds to its heat [1]: 1 + m r ΔW / (cp ΔT), with ΔW the rise of
 * saturated humidity between the two temperatures [°C].
 *
 * @param share m: the part of that rise which the air takes up on its way [1]
 */
export function vapourFactor(warm: Celsius, cold: Celsius, share: number): number {
  const mean = Math.min(vapourRange.to, Math.max(vapourRange.from, (warm + cold) / 2));
  const half = Math.min(steepest, Math.max(Math.abs(warm - cold), slopeOver)) / 2;
  const rise = saturationHumidity(mean + half) - saturationHumidity(mean - half);
  return 1 + (share * vaporisationHeat * rise) / (airHeatCapacity * 2 * half);
}
