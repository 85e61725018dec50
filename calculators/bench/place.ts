import type { Situation } from '../calculator.ts';

/** Outside temperature of the night that the bench is built for [°C]. */
export function designOutside({ bench, station }: Situation): number {
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
 * @param offset house above outside at night [K]
 */
export function houseAir({ bench }: Situation, outside: number, offset: number): number {
  const unheated = outside + offset;
  if (bench.place.houseKind !== 'held' || bench.place.houseMinimum === null) return unheated;
  return Math.max(unheated, bench.place.houseMinimum);
}
