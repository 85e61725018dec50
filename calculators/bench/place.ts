import type { Situation } from '../calculator.ts';
import { roofTemperature, type Roof } from '../laws/clear-sky.ts';
import { windFilm } from '../laws/forced-convection.ts';
import type { Celsius, Kelvins } from '../quantities/temperature.ts';
import { houseCoverings } from '../tables/benches.ts';
import { temperatureThrough, type Series } from '../weather/series.ts';
import type { Parameters } from './priors.ts';

/**
 * What surrounds a bench [°C]: the air of the house, the ground below, and the inner face of the roof above.
 *
 * The walls of the house are taken to be as warm as its air (assumption). By hand: walls 4 K colder, of which a skirt sees
 * half beside the floor, would draw on it by ½ × 4 × 4.2 ÷ (4.2 + 2.5) ≈ 1¼ K more, with a radiant film of 4.2 and an air
 * film of 2.5 W/(m²·K); with 12 K across the skirt that is a tenth more heat through it, a few hundredths of the whole.
 */
export interface Around {
  readonly house: Celsius;
  readonly ground: Celsius;
  readonly roof: Celsius;
}

/** The same through time; s from the start. */
export type Surroundings = { readonly [Of in keyof Around]: (time: number) => Celsius };

/** Outside temperature of the night that the bench is built for [°C]. */
export function designOutside({ bench, station }: Situation): Celsius {
  switch (bench.place.designNight) {
    case 'own':
      return bench.place.ownLowest ?? station.usualLowest;
    case 'record-lowest':
      return station.recordLowest;
    case 'usual-lowest':
      return station.usualLowest;
  }
}

/**
 * House air [°C] at an outside temperature: outside plus what the house keeps, and not below the minimum that a
 * heater holds, where there is one.
 *
 * @param offset house above outside [K]
 */
export function houseAir({ bench }: Situation, outside: Celsius, offset: Kelvins): Celsius {
  const unheated = outside + offset;
  if (bench.place.houseKind !== 'held' || bench.place.houseMinimum === null) return unheated;
  return Math.max(unheated, bench.place.houseMinimum);
}

/**
 * Coldest that the house may come to without power [°C]: no heater runs, the house is no warmer than outside, as on a
 * clear night, and the weather is the hardest on record, or the grower's own figure where there is one.
 */
export function coldestWithoutPower(situation: Situation): Celsius {
  const { bench, station } = situation;
  const own = bench.place.designNight === 'own' ? bench.place.ownLowest : null;
  return (own ?? station.recordLowest) + Math.min(0, bench.place.houseOffset);
}

/**
 * Surface resistances inside and outside that the published U-values of coverings contain [m²·K/W]: 0.10 where heat
 * flows upward, and 0.04 (ISO 6946, from memory).
 */
const resistanceOfAir = 0.1 + 0.04;

/** Speed of the air over the roof in a calm, hard night [m/s] (assumption). */
const calmNight = 1;

/** The roof over the bench: its covering, on a night of this clearness. */
export const roofOf = ({ bench }: Situation, clearness: number): Roof => ({
  resistance: Math.max(0, 1 / houseCoverings[bench.place.houseCovering].transmittance - resistanceOfAir),
  outsideFilm: windFilm(calmNight),
  clearness,
});

/**
 * What surrounds the bench at night at an outside temperature [°C].
 *
 * @param house air of the house where it is known better than by its offset
 */
export function around(
  situation: Situation,
  outside: Celsius,
  { houseOffset, ground, clearness }: Pick<Parameters, 'houseOffset' | 'ground' | 'clearness'>,
  house = houseAir(situation, outside, houseOffset),
): Around {
  return { house, ground, roof: roofTemperature(house, outside, roofOf(situation, clearness)) };
}

/** Surroundings that stay as they are. */
export const staying = ({ house, ground, roof }: Around): Surroundings => ({
  house: () => house,
  ground: () => ground,
  roof: () => roof,
});

/** Hours of the clock between which the sun warms a house in winter (assumption). */
const sunUp = 8 * 3600;
const sunDown = 16 * 3600;

/** How much of its midday strength the sun has at a time of day [s after midnight]: half a sine wave (assumption). */
export function sunShare(clock: number): number {
  const time = clock % 86_400;
  if (time <= sunUp || time >= sunDown) return 0;
  return Math.sin((Math.PI * (time - sunUp)) / (sunDown - sunUp));
}

/**
 * How clear the nights of a whole season are against the hard one [1]: hard nights are clear ones, and about every
 * other night is not (assumption).
 */
export const ordinaryNights = 0.5;

/**
 * What surrounds the bench through time. In weather with sun the roof is as warm as the house while the sun is high,
 * and half of the nights are cloudy.
 *
 * @param ground through time [°C], where it changes
 */
export function surroundingsThrough(
  situation: Situation,
  outside: Series,
  parameters: Parameters,
  sun: 'with-sun' | 'without-sun',
  ground: (time: number) => Celsius = () => parameters.ground,
): Surroundings {
  const house = houseThrough(situation, outside, parameters.houseOffset, sun);
  const night = roofOf(situation, parameters.clearness * (sun === 'with-sun' ? ordinaryNights : 1));
  // The roof goes very nearly straight with the air on its two sides, so that it is worked out where the weather bends.
  const roofs = Float64Array.from(outside.values, (level, index) => {
    const time = index * outside.every;
    const air = house(time);
    const below = air - roofTemperature(air, level, night);
    return air - below * (sun === 'with-sun' ? 1 - sunShare(outside.clock + time) : 1);
  });
  const roof = temperatureThrough({ ...outside, values: roofs });
  return { house, ground, roof };
}

/**
 * House air through time [°C]: outside plus the night's offset, and with the sun plus more towards midday, up to the
 * bench's own figure. A cold night is worked out without sun, which is the safe side.
 *
 * @param night house above outside at night [K]
 */
export function houseThrough(
  situation: Situation,
  outside: Series,
  night: number,
  sun: 'with-sun' | 'without-sun',
): (time: number) => number {
  const outsideAt = temperatureThrough(outside);
  // The same as `houseAir`, which is asked a hundred thousand times here.
  const least = houseAir(situation, -Infinity, 0);
  if (sun === 'without-sun') return (time) => Math.max(least, outsideAt(time) + night);
  const more = situation.bench.place.dayOffset - night;
  const { clock } = outside;
  return (time) => Math.max(least, outsideAt(time) + night + more * sunShare(clock + time));
}
