import type { Celsius } from '../quantities/temperature.ts';
import { within } from '../range.ts';
import { airConductivity, airHeatCapacity, airViscosity, standardPressure } from './air.ts';
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
        6.3925247 +
        T * (-9.677843e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 - T * 9.484024e-13))) +
        4.1635019 * Math.log(T)
      : -5.8002206e3 / T +
        1.3914993 +
        T * (-4.8640239e-2 + T * (4.1764768e-5 - T * 1.4452093e-8)) +
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

/** Critical temperature of water [K] (IAPWS R6-95), which the two releases below divide by. */
const criticalTemperature = 647.096;

/** Viscosity of water vapour as a thin gas [Pa·s]: IAPWS R12-08, equation 11 (from memory; an open library agrees). */
function vapourViscosity(t: Celsius): number {
  const T = kelvin(t) / criticalTemperature;
  return (1e-4 * Math.sqrt(T)) / (1.67752 + 2.20462 / T + 0.6366564 / T ** 2 - 0.241605 / T ** 3);
}

/** Conductivity of water vapour as a thin gas [W/(m·K)]: IAPWS R15-11, equation 16 (standing as above). */
function vapourConductivity(t: Celsius): number {
  const T = kelvin(t) / criticalTemperature;
  const below =
    2.443221e-3 + 1.323095e-2 / T + 6.770357e-3 / T ** 2 - 3.454586e-3 / T ** 3 + 4.096266e-4 / T ** 4;
  return (1e-3 * Math.sqrt(T)) / below;
}

/** Wilke's factor [1]: how much one gas is in the way of another, by their viscosities and molar masses. */
const hindrance = (viscosityRatio: number, massRatio: number): number =>
  (1 + Math.sqrt(viscosityRatio) * massRatio ** -0.25) ** 2 / Math.sqrt(8 * (1 + massRatio));

/** Dry air and vapour, each made less by what of the other is in its way: Wilke 1950, used for conductivity as well. */
function mixed(t: Celsius, relativeHumidity: number, ofAir: number, ofVapour: number): number {
  within('temperature of the moist air [°C]', t, transportRange.from, transportRange.to);
  within('relative humidity [1]', relativeHumidity, 0, 1);
  const vapour = (relativeHumidity * saturationPressure(t)) / standardPressure;
  const dry = 1 - vapour;
  const ratio = airViscosity(t) / vapourViscosity(t);
  return (
    (dry * ofAir) / (dry + vapour * hindrance(ratio, 1 / molarRatio)) +
    (vapour * ofVapour) / (vapour + dry * hindrance(1 / ratio, molarRatio))
  );
}

/** Where the three functions below hold [°C]: what a bench meets, and as far as they were compared with an open library. */
export const transportRange = { from: -40, to: 60 } as const;

/**
 * Dynamic viscosity [Pa·s] of air at 1 atm, −40 to 60 °C, with a relative humidity of 0 to 1: within 1 % of published
 * values up to 20 °C, 2.5 % at 60 °C, where these differ among themselves by as much. Saturated air has 0.3 % less than dry
 * air at 0 °C, 0.6 % at 10 °C, 1.2 % at 20 °C and 9 % at 60 °C; the films of the guide are for dry air, as up to 20 °C tables
 * of dry air differ by more. Throws `OutOfRange`.
 */
export const moistViscosity = (t: Celsius, relativeHumidity: number): number =>
  mixed(t, relativeHumidity, airViscosity(t), vapourViscosity(t));

/**
 * Thermal conductivity [W/(m·K)] of air at 1 atm, −40 to 60 °C, with a relative humidity of 0 to 1: within 1.5 % of published
 * values up to 20 °C, 3 % at 60 °C. Saturated air has 0.7 % less than dry air at 20 °C, 5 % at 60 °C. Throws `OutOfRange`.
 */
export const moistConductivity = (t: Celsius, relativeHumidity: number): number =>
  mixed(t, relativeHumidity, airConductivity(t), vapourConductivity(t));

/** Prandtl number [1] of air at 1 atm, −40 to 60 °C, with a relative humidity of 0 to 1. Throws `OutOfRange`. */
export const moistPrandtl = (t: Celsius, relativeHumidity: number): number =>
  (moistViscosity(t, relativeHumidity) * moistHeatCapacity(t, relativeHumidity)) /
  moistConductivity(t, relativeHumidity);

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
