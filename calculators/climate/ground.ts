import { dampingDepth } from '../laws/ground.ts';
import type { Celsius, Kelvins } from '../quantities/temperature.ts';
import { cite } from '../sources.ts';

/**
 * Thermal diffusivity of moist soil [m²/s]: 1.2 W/(m·K) over 2.0 MJ/(m³·K). Between the clay (0.5e-6) and the sand
 * (1.0e-6) of ISO 13370.
 */
export const soilDiffusivity = 0.6e-6;

/** Depth at which the bench's network meets the ground [m]. */
export const groundDepth = 0.75;

export const groundCites = [
  cite('kusuda1965', 'yearly temperature wave in the ground'),
  cite('iso13370', 'conductivity and heat capacity of soils'),
];

/**
 * Lowest temperature of open ground in the year [°C]:  T = T_mean - A exp(-z / d).
 * Uniform soil without frost, snow or moving water, whose surface has the temperature of the air. Snow and a house over
 * it keep the ground warmer, so this is the safe side.
 *
 * @param mean mean air temperature of the year [°C]
 * @param amplitude half of the step from the coldest to the warmest month's mean [K]
 * @param depth z [m]
 */
export const coldestGround = (mean: Celsius, amplitude: Kelvins, depth = groundDepth): Celsius =>
  mean - amplitude * Math.exp(-depth / dampingDepth(soilDiffusivity));
