import { cite } from '../sources.ts';

/** One year [s]: the Gregorian mean of 365.2425 days. */
const year = 365.2425 * 86_400;

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
 * Depth at which the yearly swing of the ground is 1/e of that at its surface [m]:  d = sqrt(α P / π).
 * ISO 13370 calls it the periodic penetration depth: 2.2 m for clay, 3.2 m for sand.
 *
 * @param diffusivity α [m²/s]
 */
export const dampingDepth = (diffusivity: number): number => Math.sqrt((diffusivity * year) / Math.PI);

/**
 * Lowest temperature of open ground in the year [°C]:  T = T_mean - A exp(-z / d).
 * Uniform soil without frost, snow or moving water, whose surface has the temperature of the air. Snow and a house over
 * it keep the ground warmer, so this is the safe side.
 *
 * @param mean mean air temperature of the year [°C]
 * @param amplitude half of the step from the coldest to the warmest month's mean [K]
 * @param depth z [m]
 */
export const coldestGround = (mean: number, amplitude: number, depth = groundDepth): number =>
  mean - amplitude * Math.exp(-depth / dampingDepth(soilDiffusivity));
