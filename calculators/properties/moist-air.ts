import type { Celsius } from '../quantities/temperature.ts';
import { within } from '../range.ts';
import { airHeatCapacity, standardPressure } from './air.ts';
import { kelvin } from './temperature.ts';

/**
 * Water vapour in air: how much it holds, and when a film or a leaf runs wet. Hyland and Wexler 1983 as the ASHRAE
 * Handbook Fundamentals 2017, chapter 1, equations 5 and 6, prints them. Temperatures in °C, −100 to 200 °C; pressures
 * in Pa.
 */
const range = { from: -100, to: 200 } as const;

/** Triple point of water [°C], where the branches over ice and over water meet. */
const triplePoint = 0.01;

/** Saturation pressure of water vapour [Pa], over ice below 0.01 °C and over water above. Throws `OutOfRange`. */
export function saturationPressure(t: Celsius): number {
  within('temperature of the air [°C]', t, range.from, range.to);
  const T = kelvin(t);
  const logarithm =
    t <= triplePoint
      ? -5.6745359e3 / T +
        6.3925247 -
        9.677843e-3 * T +
        6.2215701e-7 * T ** 2 +
        2.0747825e-9 * T ** 3 -
        9.484024e-13 * T ** 4 +
        4.1635019 * Math.log(T)
      : -5.8002206e3 / T +
        1.3914993 -
        4.8640239e-2 * T +
        4.1764768e-5 * T ** 2 -
        1.4452093e-8 * T ** 3 +
        6.5459673 * Math.log(T);
  return Math.exp(logarithm);
}

/** Ratio of the molar masses of water and dry air [1] (ASHRAE 2017, chapter 1, equation 20). */
const molarRatio = 0.621945;

/** Mass of vapour per mass of dry air at saturation [1], at t [°C] and a total pressure [Pa]. */
export function saturationHumidity(t: Celsius, pressure = standardPressure): number {
  const vapour = saturationPressure(t);
  return (molarRatio * vapour) / (pressure - vapour);
}

/** Specific gas constant of dry air [J/(kg·K)], as in `air.ts`, and of water vapour. */
const dryConstant = 287.053;
const vapourConstant = dryConstant / molarRatio;

/** Specific heat capacity of water vapour [J/(kg·K)]: 1860 (ASHRAE 2017, chapter 1, equation 30). */
const vapourHeatCapacity = 1860;

/** Mass of vapour per mass of dry air [1] of air at t [°C] with a relative humidity of 0 to 1. */
export function humidityRatio(t: Celsius, relativeHumidity: number, pressure = standardPressure): number {
  within('relative humidity [1]', relativeHumidity, 0, 1);
  const vapour = relativeHumidity * saturationPressure(t);
  return (molarRatio * vapour) / (pressure - vapour);
}

/**
 * Density [kg/m³] of air at t [°C] with a relative humidity of 0 to 1: the two ideal gases together. Vapour makes air
 * lighter: saturated by 0.2 % at 0 °C, 0.5 % at 10 °C, 0.9 % at 20 °C.
 *
 * Viscosity, conductivity and Prandtl number are left to dry air (`air.ts`): by Wilke's rule for mixed gases (from
 * memory) saturated vapour takes 0.3 % off the viscosity at 0 °C, 0.6 % at 10 °C and 1.2 % at 20 °C, and half of that off
 * the conductivity: less than tables of dry air differ among themselves.
 */
export function moistDensity(t: Celsius, relativeHumidity: number, pressure = standardPressure): number {
  within('relative humidity [1]', relativeHumidity, 0, 1);
  const vapour = relativeHumidity * saturationPressure(t);
  return (pressure - vapour) / (dryConstant * kelvin(t)) + vapour / (vapourConstant * kelvin(t));
}

/** Specific heat capacity [J/(kg·K)] per mass of the moist air, at t [°C] with a relative humidity of 0 to 1. */
export function moistHeatCapacity(t: Celsius, relativeHumidity: number): number {
  const ratio = humidityRatio(t, relativeHumidity);
  return (airHeatCapacity + ratio * vapourHeatCapacity) / (1 + ratio);
}

/**
 * Dew point [°C] of air at t [°C] with a relative humidity of 0 to 1, zero excluded: where its vapour is
 * saturated. Below 0 °C it is the frost point. Throws `OutOfRange` for air so dry that it lies below −100 °C.
 */
export function dewPoint(t: Celsius, relativeHumidity: number): Celsius {
  within('relative humidity [1]', relativeHumidity, Number.MIN_VALUE, 1);
  const vapour = relativeHumidity * saturationPressure(t);
  within('vapour pressure [Pa]', vapour, saturationPressure(range.from), Number.MAX_VALUE);
  let low: number = range.from;
  let high = t;
  // The saturation pressure rises steadily with temperature, so halving the interval always closes in.
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (saturationPressure(middle) < vapour) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Temperature [°C] of the inner face of a wall or film with air at `inside` and `outside`: Ti − (U/hi)(Ti − To), with
 * its transmittance U and inside film hi, both in W/(m²·K). It runs wet where this is below the dew point.
 */
export const innerFace = (
  inside: Celsius,
  outside: Celsius,
  transmittance: number,
  insideFilm: number,
): Celsius => inside - (transmittance / insideFilm) * (inside - outside);
