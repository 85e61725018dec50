import type { Celsius } from '../quantities/temperature.ts';
import { within } from '../range.ts';
import * as release from './liquid-water-release.ts';

/**
 * Plain liquid water at atmospheric pressure, from 0 °C, where it freezes, to 99 °C, just short of boiling.
 * Every function takes a temperature in °C and throws `OutOfRange` outside that range. The equations are those of
 * IAPWS SR6-08(2011); a loop lives between 0 and 60 °C, where their density is good to 1 part in 10⁶, heat capacity
 * and expansion to 0.1 %, viscosity to 1 % and conductivity to 1.8 % (the release's own estimates, from memory).
 */
export const waterRange = { from: 0, to: 99 } as const;

const liquid = (t: Celsius): void =>
  within('temperature of the water [°C]', t, waterRange.from, waterRange.to);

/** Density [kg/m³]. Highest at 3.98 °C. */
export function waterDensity(t: Celsius): number {
  liquid(t);
  return 1 / release.specificVolume(t);
}

/** Specific heat capacity [J/(kg·K)]. */
export function waterHeatCapacity(t: Celsius): number {
  liquid(t);
  return release.heatCapacity(t);
}

/** Thermal conductivity [W/(m·K)]. */
export function waterConductivity(t: Celsius): number {
  liquid(t);
  return release.conductivity(t);
}

/** Dynamic viscosity [Pa·s]. */
export function waterViscosity(t: Celsius): number {
  liquid(t);
  return release.viscosity(t);
}

/** Volume expansion (1/v)(∂v/∂T) [1/K]. Negative below 3.98 °C: water shrinks as it warms up to there. */
export function waterExpansion(t: Celsius): number {
  liquid(t);
  return release.specificVolumeSlope(t) / release.specificVolume(t);
}

/**
 * Heat that a kilogram of water gives up as it freezes at 0 °C [J/kg]: 333.43 kJ/kg, the difference of the
 * enthalpies of water and of ice Ih (IAPWS R6-95 and R10-06).
 */
export const waterFusionHeat = 333.43e3;

/** Density of ice at 0 °C and 1 atm [kg/m³]: IAPWS R10-06, check value for 273.1525 K. */
export const iceDensity = 916.721463419;

/** By how much water swells as it freezes at 0 °C [1]: what bursts a full pipe. About 9.07 %. */
export const freezingExpansion = (): number => waterDensity(0) / iceDensity - 1;
