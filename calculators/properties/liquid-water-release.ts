import type { Celsius } from '../quantities/temperature.ts';
import { within } from '../range.ts';
import { liquidWater } from '../tables/liquid-water.ts';
import { kelvin } from './temperature.ts';

/**
 * The equations of IAPWS SR6-08(2011) for liquid water at 0.1 MPa in the range of the release, −20 to 110 °C:
 * supercooled and superheated water included. The water of a bench is `water.ts`, which keeps to stable liquid.
 *
 *   v  = (R·10 / p) [a₅ + Σ₆¹⁰ aᵢ α^nᵢ + Σ₅¹⁰ bᵢ β^mᵢ]       α = 10/(593 − T), β = 10/(T − 232), τ = T/10, T in K
 *   cp = −R [c₃ + τ (Σ₁³ nᵢ(nᵢ+1) aᵢ α^(nᵢ+2) + Σ₁⁴ mᵢ(mᵢ+1) bᵢ β^(mᵢ+2))]
 */
const { R, a, b, c3 } = liquidWater;
const pressure = 0.1e6;
const lowest = -20;
const highest = 110;
const quantity = 'temperature of the water [°C]';

const alpha = (t: Celsius): number => 10 / (593 - kelvin(t));
const beta = (t: Celsius): number => 10 / (kelvin(t) - 232);
const volumeOfAlpha = [a[6], a[7], a[8], a[9], a[10]];
const volumeOfBeta = [b[5], b[6], b[7], b[8], b[9], b[10]];
const heatOfAlpha = [a[1], a[2], a[3]];
const heatOfBeta = [b[1], b[2], b[3], b[4]];

type Term = readonly [factor: number, exponent: number];

/** A whole power by multiplication: a solver asks for these so often that the general power function is too slow. */
function power(base: number, exponent: number): number {
  let product = base;
  for (let count = 1; count < exponent; count++) product *= base;
  return product;
}

function sum(terms: readonly Term[], term: (factor: number, exponent: number) => number): number {
  let total = 0;
  for (const one of terms) total += term(one[0], one[1]);
  return total;
}

/** Specific volume [m³/kg] at t [°C]. */
export function specificVolume(t: Celsius): number {
  within(quantity, t, lowest, highest);
  const [inA, inB] = [alpha(t), beta(t)];
  const terms =
    sum(volumeOfAlpha, (factor, n) => factor * power(inA, n)) +
    sum(volumeOfBeta, (factor, m) => factor * power(inB, m));
  return ((R * 10) / pressure) * (a[5][0] + terms);
}

/** How the specific volume changes with temperature, ∂v/∂T [m³/(kg·K)], at t [°C]. */
export function specificVolumeSlope(t: Celsius): number {
  within(quantity, t, lowest, highest);
  const [inA, inB] = [alpha(t), beta(t)];
  const terms =
    sum(volumeOfAlpha, (factor, n) => n * factor * power(inA, n + 1)) -
    sum(volumeOfBeta, (factor, m) => m * factor * power(inB, m + 1));
  return (R / pressure) * terms;
}

/** Specific heat capacity at constant pressure [J/(kg·K)] at t [°C]. */
export function heatCapacity(t: Celsius): number {
  within(quantity, t, lowest, highest);
  const [inA, inB] = [alpha(t), beta(t)];
  const terms =
    sum(heatOfAlpha, (factor, n) => n * (n + 1) * factor * power(inA, n + 2)) +
    sum(heatOfBeta, (factor, m) => m * (m + 1) * factor * power(inB, m + 2));
  return -R * (c3 + (kelvin(t) / 10) * terms);
}

const reducedTo = 300;

/** Dynamic viscosity [Pa·s] at t [°C]. */
export function viscosity(t: Celsius): number {
  within(quantity, t, lowest, highest);
  return 1e-6 * sum(liquidWater.viscosity, (factor, n) => factor * (kelvin(t) / reducedTo) ** n);
}

/** Thermal conductivity [W/(m·K)] at t [°C]; the release gives it from 0 °C only. */
export function conductivity(t: Celsius): number {
  within(quantity, t, 0, highest);
  return sum(liquidWater.conductivity, (factor, n) => factor * (kelvin(t) / reducedTo) ** n);
}
