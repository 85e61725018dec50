import type { Celsius } from '../quantities/temperature.ts';
import { horizontalFilm } from './natural-convection.ts';
import { radiantFilm } from './radiation.ts';

/** Emissivity of leaves [1]: 0.94 to 0.99, from memory (Campbell and Norman, An Introduction to Environmental Biophysics). */
const leafEmissivity = 0.96;

/**
 * Temperature of a level leaf at night [°C]. Its upper side radiates to what is overhead, a cold cover or the sky; its lower
 * side sees plants as warm as the air; the air warms both sides by natural convection. So it lies between the two, and dew
 * or frost falls on it before the air is saturated: compare it with `dewPoint`. Sap and evaporation are left out.
 *
 * @param air and overhead temperatures [°C]
 * @param width of the leaf [m]; length scale of the film is a quarter of it, as of a disc
 */
export function leafTemperature(air: Celsius, overhead: Celsius, width: number): Celsius {
  /** What the leaf takes up [W/m²] at a temperature: falls steadily as it warms, so halving finds the balance. */
  const gain = (leaf: Celsius): number => {
    const convection =
      horizontalFilm(width / 4, leaf, air, 'up') + horizontalFilm(width / 4, leaf, air, 'down');
    return (
      (convection + radiantFilm(leafEmissivity, leaf, air)) * (air - leaf) +
      radiantFilm(leafEmissivity, leaf, overhead) * (overhead - leaf)
    );
  };
  let [low, high] = [Math.min(air, overhead), Math.max(air, overhead)];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (gain(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
