import type { Situation } from '../calculator.ts';
import type { Celsius, Kelvins } from '../quantities/temperature.ts';
import { temperatureThrough, type Series } from '../weather/series.ts';

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
