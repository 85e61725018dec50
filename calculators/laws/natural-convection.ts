import type { Celsius } from '../quantities/temperature.ts';
import { airConductivity, airDensity, airHeatCapacity, airViscosity } from '../properties/air.ts';
import { icePoint } from '../properties/temperature.ts';
import { within } from '../range.ts';
import { gravity } from './gravity.ts';

/**
 * Natural convection. The Nusselt functions are the published correlations and throw `OutOfRange` where these end.
 * The film functions are what a network of air at 1 atm needs [W/(m²·K)]: for every pair of surface temperatures from
 * −60 to 120 °C and every length from 2 mm to 60 m they are finite, positive and continuous, through equal
 * temperatures too, and never throw. Where the correlation's Rayleigh range ends each says what is done instead.
 * Properties of air are taken at the mean of surface and surroundings, expansion as 1/T of that mean.
 */

const highestRayleigh = 1e12;

/** Ra^(1/6), the quick way: these functions run many thousand times in a steady state. */
const sixthRoot = (rayleigh: number): number => Math.cbrt(Math.sqrt(rayleigh));

/** A product takes a tenth of the time of a power, which these laws are asked for a million times a winter. */
const squared = (root: number): number => root * root;
const cubed = (root: number): number => root * root * root;

const cylinderUnchecked = (rayleigh: number, prandtl: number): number =>
  squared(0.6 + (0.387 * sixthRoot(rayleigh)) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27));

const verticalUnchecked = (rayleigh: number, prandtl: number): number =>
  squared(0.825 + (0.387 * sixthRoot(rayleigh)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27));

/**
 * Long horizontal cylinder, length scale its diameter: Churchill and Chu 1975,
 * Nu = {0.60 + 0.387 Ra^(1/6) / [1 + (0.559/Pr)^(9/16)]^(8/27)}². Up to Ra = 1e12; it tends to 0.36 at Ra = 0.
 */
export function cylinderNusselt(rayleigh: number, prandtl: number): number {
  within('Rayleigh number of the cylinder', rayleigh, 0, highestRayleigh);
  return cylinderUnchecked(rayleigh, prandtl);
}

/**
 * Vertical plate, length scale its height: Churchill and Chu 1975,
 * Nu = {0.825 + 0.387 Ra^(1/6) / [1 + (0.492/Pr)^(9/16)]^(8/27)}². Up to Ra = 1e12; it tends to 0.68 at Ra = 0.
 */
export function verticalPlateNusselt(rayleigh: number, prandtl: number): number {
  within('Rayleigh number of the vertical plate', rayleigh, 0, highestRayleigh);
  return verticalUnchecked(rayleigh, prandtl);
}

/** `unstable`: a warm face up or a cold face down. `stable`: a warm face down or a cold face up. */
export type Layering = 'unstable' | 'stable';

/**
 * Pure conduction from an isothermal disc in an insulated plane: shape factor 2 D (Incropera, table 4.1), so that
 * with the length scale area / perimeter = D / 4 the Nusselt number is 2/π.
 */
const conductionOnly = 2 / Math.PI;

/** Where handbooks leave the quarter-power law for the third-power law: the earliest and the latest of them. */
const [turbulentFrom, turbulentTo] = [1e7, 2e7] as const;

function unstableUnchecked(rayleigh: number): number {
  const laminar = 0.54 * Math.sqrt(Math.sqrt(rayleigh));
  if (rayleigh <= turbulentFrom) return Math.max(conductionOnly, laminar);
  const turbulent = 0.15 * Math.cbrt(rayleigh);
  if (rayleigh >= turbulentTo) return turbulent;
  return laminar + ((turbulent - laminar) * (rayleigh - turbulentFrom)) / (turbulentTo - turbulentFrom);
}

const stableUnchecked = (rayleigh: number): number =>
  Math.max(conductionOnly, 0.27 * Math.sqrt(Math.sqrt(rayleigh)));

/**
 * Horizontal plate, length scale area / perimeter: McAdams 1954 in the form of today's handbooks. Unstable
 * 0.54 Ra^¼, then 0.15 Ra^⅓; stable 0.27 Ra^¼. The two unstable laws are 6 % apart where they meet, which some
 * handbooks put at Ra = 1e7 and McAdams himself at 2e7: between these the one fades into the other, without a step.
 * Below 1e4 (unstable) and 1e5 (stable), where the handbooks begin, the quarter-power law goes on down to pure
 * conduction from a disc, Nu = 2/π. Ends at 1e11 (unstable) and 1e10 (stable): `OutOfRange`.
 */
export function plateNusselt(rayleigh: number, layering: Layering): number {
  const stable = layering === 'stable';
  within('Rayleigh number of the horizontal plate', rayleigh, 0, stable ? 1e10 : 1e11);
  return stable ? stableUnchecked(rayleigh) : unstableUnchecked(rayleigh);
}

/** Rayleigh number of air whose viscosity and conductivity are already known. */
function rayleighOf(
  length: number,
  difference: number,
  mean: Celsius,
  viscosity: number,
  conductivity: number,
): number {
  const density = airDensity(mean);
  return (
    (gravity * Math.abs(difference) * cubed(length) * density * density * airHeatCapacity) /
    ((mean + icePoint) * viscosity * conductivity)
  );
}

/**
 * Rayleigh number in air at 1 atm: Ra = g β |ΔT| L³ ρ² cp / (μ k), for a length [m] and two temperatures [°C],
 * properties at their mean and β = 1/T.
 */
export function rayleigh(length: number, warm: Celsius, cold: Celsius): number {
  const mean = (warm + cold) / 2;
  return rayleighOf(length, warm - cold, mean, airViscosity(mean), airConductivity(mean));
}

/** The film [W/(m²·K)] of a body in air whose Nusselt number depends on Rayleigh and Prandtl number. */
function film(
  nusselt: (rayleigh: number, prandtl: number) => number,
  length: number,
  surface: Celsius,
  surroundings: Celsius,
): number {
  const mean = (surface + surroundings) / 2;
  const viscosity = airViscosity(mean);
  const conductivity = airConductivity(mean);
  const rayleigh = rayleighOf(length, surface - surroundings, mean, viscosity, conductivity);
  return (nusselt(rayleigh, (viscosity * airHeatCapacity) / conductivity) * conductivity) / length;
}

/**
 * Film of a long horizontal cylinder [W/(m²·K)]; diameter [m], temperatures [°C]. Beyond Ra = 1e12 (a cylinder of
 * more than 3 m) the correlation goes on along its own third-power asymptote, h independent of size.
 */
export const cylinderFilm = (diameter: number, surface: Celsius, surroundings: Celsius): number =>
  film(cylinderUnchecked, diameter, surface, surroundings);

/**
 * Film of a vertical plate [W/(m²·K)]; height [m], temperatures [°C]. Beyond Ra = 1e12 the correlation goes on
 * along its own third-power asymptote, h independent of height.
 */
export const verticalFilm = (height: number, surface: Celsius, surroundings: Celsius): number =>
  film(verticalUnchecked, height, surface, surroundings);

/**
 * Film of a horizontal plate [W/(m²·K)]; length = area / perimeter [m], temperatures [°C], and the side that the
 * face looks to. Beyond the correlation: unstable, the third-power law goes on, h independent of size; stable, the
 * quarter-power law goes on; near equal temperatures pure conduction (see `plateNusselt`), the same from both sides.
 */
export function horizontalFilm(
  length: number,
  surface: Celsius,
  surroundings: Celsius,
  facing: 'up' | 'down',
): number {
  const unstable = surface > surroundings === (facing === 'up');
  return film(unstable ? unstableUnchecked : stableUnchecked, length, surface, surroundings);
}

/**
 * Convection across a closed, upright air gap, face to face [W/(m²·K)]; thickness and height [m], temperatures of
 * the two faces [°C]. ElSherbiny, Raithby and Hollands 1982 (from memory): the largest of
 * 0.0605 Ra^⅓, {1 + [0.104 Ra^0.293 / (1 + (6310/Ra)^1.36)]³}^⅓ and 0.242 (Ra/A)^0.272 with A = height / thickness;
 * never below pure conduction. Published for Ra to 2e7 and A from 5 to 110; beyond, the third-power law goes on.
 */
export function airGapFilm(thickness: number, height: number, oneFace: Celsius, otherFace: Celsius): number {
  const conduction = airConductivity((oneFace + otherFace) / 2) / thickness;
  const ra = rayleigh(thickness, oneFace, otherFace);
  if (ra === 0) return conduction;
  const transition = (0.104 * ra ** 0.293) / (1 + (6310 / ra) ** 1.36);
  const nusselt = Math.max(
    0.0605 * Math.cbrt(ra),
    Math.cbrt(1 + cubed(transition)),
    0.242 * ((ra * thickness) / height) ** 0.272,
  );
  return nusselt * conduction;
}

/**
 * Convection across a closed, level air gap, face to face [W/(m²·K)]; thickness [m], temperatures [°C]. Pure
 * conduction with the upper face warmer; otherwise Hollands et al. 1976 (from memory):
 * Nu = 1 + 1.44 [1 − 1708/Ra]⁺ + [(Ra/5830)^⅓ − 1]⁺. Published for Ra to 1e8; beyond, the third-power law goes on.
 */
export function levelGapFilm(thickness: number, lowerFace: Celsius, upperFace: Celsius): number {
  const conduction = airConductivity((lowerFace + upperFace) / 2) / thickness;
  if (lowerFace <= upperFace) return conduction;
  const ra = rayleigh(thickness, lowerFace, upperFace);
  return conduction * (1 + 1.44 * Math.max(0, 1 - 1708 / ra) + Math.max(0, Math.cbrt(ra / 5830) - 1));
}
