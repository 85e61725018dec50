import type { Celsius } from '../quantities/temperature.ts';
import { within } from '../range.ts';
import { icePoint, kelvin } from './temperature.ts';

/**
 * Dry air at one atmosphere. The plain functions of one number are for the inside of a solver: they allocate nothing
 * and do not check their range. `air` gathers them for everybody else and does check.
 *
 * Viscosity and conductivity are those of the US Standard Atmosphere 1976, density the ideal gas with its gas
 * constant. From −75 to 120 °C they agree with printed tables of air to: density 0.2 %, viscosity 1.3 %,
 * conductivity and Prandtl number 3 % (the tables differ among themselves by as much), kinematic viscosity 1.4 %.
 */

/** Standard atmosphere [Pa], exact by definition. */
export const standardPressure = 101_325;

/** Specific gas constant of dry air [J/(kg·K)]: 8314.32 / 28.9644, US Standard Atmosphere 1976. */
const gasConstant = 287.053;

/** Specific heat capacity [J/(kg·K)]: within 0.2 % from −40 to 60 °C, 0.5 % to 120 °C (Çengel, table A-15). */
export const airHeatCapacity = 1006;

/** Density [kg/m³] at t [°C]. */
export const airDensity = (t: Celsius): number => standardPressure / (gasConstant * kelvin(t));

/** Dynamic viscosity [Pa·s] at t [°C]: Sutherland's law, 1.458e-6 T^1.5 / (T + 110.4). */
export function airViscosity(t: Celsius): number {
  const T = t + icePoint;
  return (1.458e-6 * T * Math.sqrt(T)) / (T + 110.4);
}

/** 10^(−12/T) is e^(−12 ln 10 / T), which takes half the time. */
const twelveTens = 12 * Math.LN10;

/** Thermal conductivity [W/(m·K)] at t [°C]: 2.64638e-3 T^1.5 / (T + 245.4 · 10^(−12/T)). */
export function airConductivity(t: Celsius): number {
  const T = t + icePoint;
  return (2.64638e-3 * T * Math.sqrt(T)) / (T + 245.4 * Math.exp(-twelveTens / T));
}

/** Prandtl number at t [°C]. */
export const airPrandtl = (t: Celsius): number => (airViscosity(t) * airHeatCapacity) / airConductivity(t);

export interface Air {
  /** [kg/m³] */
  readonly density: number;
  /** At constant pressure [J/(kg·K)]. */
  readonly heatCapacity: number;
  /** [W/(m·K)] */
  readonly conductivity: number;
  /** Dynamic [Pa·s]. */
  readonly viscosity: number;
  /** [m²/s] */
  readonly kinematicViscosity: number;
  readonly prandtl: number;
  /** Volume expansion of an ideal gas, 1/T [1/K]. */
  readonly expansion: number;
}

/** The range of `air` [°C]. */
export const airRange = { from: -75, to: 120 } as const;

/** Dry air at 1 atm and t [°C], −75 to 120 °C. Throws `OutOfRange` outside. */
export function air(t: Celsius): Air {
  within('temperature of the air [°C]', t, airRange.from, airRange.to);
  const density = airDensity(t);
  const viscosity = airViscosity(t);
  return {
    density,
    heatCapacity: airHeatCapacity,
    conductivity: airConductivity(t),
    viscosity,
    kinematicViscosity: viscosity / density,
    prandtl: airPrandtl(t),
    expansion: 1 / kelvin(t),
  };
}
