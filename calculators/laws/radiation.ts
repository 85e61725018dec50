import type { Celsius } from '../quantities/temperature.ts';
import { kelvin } from '../properties/temperature.ts';
import { within } from '../range.ts';

/** Stefan–Boltzmann constant [W/(m²·K⁴)], CODATA 2018. */
export const stefanBoltzmann = 5.670374419e-8;

const fourth = (t: Celsius): number => kelvin(t) ** 4;

/**
 * Heat radiated from a surface at t1 to surroundings at t2 [W/m²], temperatures in °C:
 * q = ε σ (T1⁴ − T2⁴). Between two surfaces the emissivity is that of the pair, `exchangeEmissivity`.
 */
export const radiantFlux = (emissivity: number, t1: Celsius, t2: Celsius): number =>
  emissivity * stefanBoltzmann * (fourth(t1) - fourth(t2));

/**
 * The same as a film [W/(m²·K)], exact for these two temperatures: ε σ (T1² + T2²)(T1 + T2). Finite and continuous
 * at equal temperatures, the same with the two exchanged.
 */
export function radiantFilm(emissivity: number, t1: Celsius, t2: Celsius): number {
  const T1 = kelvin(t1);
  const T2 = kelvin(t2);
  return emissivity * stefanBoltzmann * (T1 * T1 + T2 * T2) * (T1 + T2);
}

/**
 * The emissivity of a pair of grey surfaces that see only each other, per area of the first [1]:
 * 1 / (1/ε1 + (A1/A2)(1/ε2 − 1)); parallel planes or long concentric cylinders (Incropera, from memory).
 *
 * @param areaRatio A1/A2 with the first the inner one: 1 for parallel planes, 0 for very large surroundings
 * @throws OutOfRange on an emissivity outside 0 to 1, zero excluded, or an area ratio outside 0 to 1
 */
export function exchangeEmissivity(e1: number, e2: number, areaRatio = 1): number {
  within('emissivity of the first surface', e1, Number.MIN_VALUE, 1);
  within('emissivity of the second surface', e2, Number.MIN_VALUE, 1);
  within('ratio of the areas', areaRatio, 0, 1);
  return 1 / (1 / e1 + areaRatio * (1 / e2 - 1));
}
