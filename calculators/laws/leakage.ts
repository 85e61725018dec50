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
 * Mean temperatures between which the vapour is followed [°C]; beyond, as on a solver’s way, the ends are taken.
 */
const vapourRange = { from: -60, to: 60 } as const;

/**
 * Least and largest difference over which the rise of humidity is taken [K]: nearer together its slope hardly changes,
 * further apart no bench and its house are.
 */
const slopeOver = { least: 0.2, most: 60 } as const;

/** Rise of saturated humidity from `cold` to `warm` for each degree between them [1/K]. */
export function humiditySlope(warm: Celsius, cold: Celsius): number {
  const mean = Math.min(vapourRange.to, Math.max(vapourRange.from, (warm + cold) / 2));
  const apart = Math.min(slopeOver.most, Math.max(Math.abs(warm - cold), slopeOver.least));
  return (saturationHumidity(mean + apart / 2) - saturationHumidity(mean - apart / 2)) / apart;
}

/** A wet face that air sweeps: its film [W/(m²·K)] and area [m²], and its temperature [°C]. */
export interface WetFace {
  readonly film: number;
  readonly area: number;
  readonly t: Celsius;
}

/**
 * Heat that wet faces lose as water evaporates into air on its way through, for each per degree above the place that the
 * air comes from [W/K]. Mixed air of humidity W takes h A / cp (W_sat(t) − W) off each, by the Lewis relation between heat
 * and mass transfer (ASHRAE Handbook Fundamentals, chapter 6: h / (h_m cp) is 1 for water in air, within a tenth; from
 * memory), and leaves with what it then holds. So a face gives no more than its own temperature can saturate, however warm
 * the air is that blows past it.
 *
 * @param flow of dry air [kg/s]
 * @param enters temperature at which the air that comes in is saturated [°C]
 */
export function evaporation(flow: number, enters: Celsius, faces: readonly WetFace[]): number[] {
  if (!(flow > 0)) return faces.map(() => 0);
  let all = 0;
  for (const { film, area } of faces) all += (film * area) / airHeatCapacity;
  const carried = flow / (flow + all);
  return faces.map(
    ({ film, area, t }) =>
      vaporisationHeat * carried * ((film * area) / airHeatCapacity) * humiditySlope(t, enters),
  );
}
