import type { Celsius } from '../quantities/temperature.ts';
import { icePoint, kelvin } from '../properties/temperature.ts';
import { radiantFilm } from './radiation.ts';

/**
 * Temperature at which a clear sky radiates downward [°C], by the air temperature near the ground [°C]:
 * T = 0.0552 T_air^1.5 in kelvin (W. C. Swinbank, Q. J. R. Meteorol. Soc. 89, 1963). For clear nights; fitted between some
 * 2 and 29 °C and used below by common practice, where it makes the sky a little colder than other fits do.
 */
export const clearSkyTemperature = (air: Celsius): Celsius => 0.0552 * kelvin(air) ** 1.5 - icePoint;

/** Emissivity of glass, of wet film and of plastic panels outside [1] (emissivity tables: 0.9 to 0.95). */
const roofEmissivity = 0.9;

/**
 * Film on the inside of a roof [W/(m²·K)]: surface resistance 0.10 m²K/W where heat flows upward, convection and radiation
 * together (ISO 6946, table of conventional surface resistances).
 */
const insideFilm = 10;

/** How a roof lies between the house and the night. */
export interface Roof {
  /** Heat resistance of the covering itself, without air films [m²·K/W]. */
  readonly resistance: number;
  /** Film of the night's air on its outside, without radiation [W/(m²·K)]. */
  readonly outsideFilm: number;
  /** How much of what a clear sky would draw is drawn [1]: 1 under a clear sky, 0 under low cloud. */
  readonly clearness: number;
}

/**
 * Temperature of the inner face of a roof at night [°C]: it takes heat from the house, and gives it to the air outside and
 * to the sky, which is the colder the clearer it is. No sun. The covering is taken to be closed to heat radiation: glass
 * is, and film is by the water that hangs on it on a cold night.
 *
 * Heat balance of the face: h_i (T_house − T) = (T − T_e) / (R + 1/(h_o + h_s)), where the outside acts as one air of
 * T_e = (h_o T_out + h_s T_sky) / (h_o + h_s) (the sol-air temperature of the ASHRAE handbooks, without sun).
 */
export function roofTemperature(
  house: Celsius,
  outside: Celsius,
  { resistance, outsideFilm, clearness }: Roof,
): Celsius {
  const sky = outside - clearness * (outside - clearSkyTemperature(outside));
  const toSky = radiantFilm(roofEmissivity, outside, sky);
  const outward = outsideFilm + toSky;
  const beyond = (outsideFilm * outside + toSky * sky) / outward;
  const through = 1 / (resistance + 1 / outward);
  return (insideFilm * house + through * beyond) / (insideFilm + through);
}
