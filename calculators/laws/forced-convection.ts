import type { Celsius } from '../quantities/temperature.ts';
import { airConductivity, airDensity, airHeatCapacity, airViscosity } from '../properties/air.ts';
import { within } from '../range.ts';

/**
 * Air that is moved: a draught past a skirt or a pipe in a vented house, wind over a covering. The Nusselt functions
 * are the published correlations and throw `OutOfRange` where these end. The film functions are what a network needs
 * [W/(m²·K)]: finite for every speed from still air to 40 m/s, and zero or nearly so in still air, where natural
 * convection takes over (`mixedFilm`). Properties of air are taken at the mean of surface and air.
 */

/** From here a boundary layer along a plate is turbulent behind its laminar start [1] (Incropera, section 7.2). */
const criticalReynolds = 5e5;

/** Re^0.8 and Re^½ meet at the critical Reynolds number, within 0.1 %: 0.037 Re^0.8 − 871 = 0.664 Re^½. */
const laminarStart = 871;

const plateUnchecked = (reynolds: number, prandtl: number): number =>
  (reynolds <= criticalReynolds ? 0.664 * Math.sqrt(reynolds) : 0.037 * reynolds ** 0.8 - laminarStart) *
  Math.cbrt(prandtl);

const cylinderUnchecked = (reynolds: number, prandtl: number): number =>
  0.3 +
  ((0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25) *
    (1 + (reynolds / 282_000) ** 0.625) ** 0.8;

/**
 * Smooth flat plate along the flow, mean over its length, length scale that length: 0.664 Re^½ Pr^⅓ while all of it is
 * laminar (Pohlhausen), (0.037 Re^0.8 − 871) Pr^⅓ with a turbulent part behind (Incropera, section 7.2). Re up to
 * 1e8, Pr from 0.6 to 60. A real wall out of doors loses two to three times as much: see `windFilm`.
 */
export function plateFlowNusselt(reynolds: number, prandtl: number): number {
  within('Reynolds number of the plate', reynolds, 0, 1e8);
  within('Prandtl number', prandtl, 0.6, 60);
  return plateUnchecked(reynolds, prandtl);
}

/**
 * Cylinder across the flow, length scale its diameter: Churchill and Bernstein 1977,
 * Nu = 0.3 + 0.62 Re^½ Pr^⅓ / [1 + (0.4/Pr)^⅔]^¼ · [1 + (Re/282 000)^⅝]^⅘. For Re Pr above 0.2 and Re up to 1e7.
 */
export function cylinderFlowNusselt(reynolds: number, prandtl: number): number {
  within('Reynolds times Prandtl number of the cylinder', reynolds * prandtl, 0.2, Number.MAX_VALUE);
  within('Reynolds number of the cylinder', reynolds, 0, 1e7);
  return cylinderUnchecked(reynolds, prandtl);
}

/** Reynolds number of air at 1 atm and a mean temperature [°C] that passes a length [m] at a speed [m/s]. */
export const reynolds = (speed: number, length: number, mean: Celsius): number =>
  (speed * length * airDensity(mean)) / airViscosity(mean);

function film(
  nusselt: (reynolds: number, prandtl: number) => number,
  length: number,
  speed: number,
  surface: Celsius,
  air: Celsius,
): number {
  const mean = (surface + air) / 2;
  const conductivity = airConductivity(mean);
  const prandtl = (airViscosity(mean) * airHeatCapacity) / conductivity;
  return (nusselt(reynolds(Math.abs(speed), length, mean), prandtl) * conductivity) / length;
}

/** Film of a flat plate in a draught along it [W/(m²·K)]: length in the direction of the draught [m], speed [m/s]. */
export const plateFlowFilm = (length: number, speed: number, surface: Celsius, air: Celsius): number =>
  film(plateUnchecked, length, speed, surface, air);

/** Film of a cylinder in a draught across it [W/(m²·K)]: diameter [m], speed [m/s]. */
export const cylinderFlowFilm = (diameter: number, speed: number, surface: Celsius, air: Celsius): number =>
  film(cylinderUnchecked, diameter, speed, surface, air);

/**
 * Film of a building's outer face in wind [W/(m²·K)]: 4 + 4 v, ISO 6946, annex on surface resistances (from memory), with
 * the wind speed [m/s] near the face. Rough turbulent wind over a wall with edges, not a smooth plate in a tunnel: at 4 m/s
 * it is 20, where the plate law gives 7 for a wall of 2 m. It holds the share of natural convection already.
 */
export const windFilm = (speed: number): number => 4 + 4 * Math.abs(speed);

/**
 * Natural and forced convection at once [W/(m²·K)]: hⁿ = h_natural ⁿ + h_forcedⁿ (Churchill 1977, as Incropera, section
 * 9.9, has it), for flows that help each other or cross. n is 3 for plates; 4 fits horizontal cylinders and plates that a
 * draught crosses. A first approximation, good to some 20 %; a draught against the natural flow gives less.
 */
export function mixedFilm(natural: number, forced: number, exponent: 3 | 4 = 3): number {
  if (forced === 0) return natural;
  return exponent === 3
    ? Math.cbrt(natural ** 3 + forced ** 3)
    : Math.sqrt(Math.sqrt(natural ** 4 + forced ** 4));
}
