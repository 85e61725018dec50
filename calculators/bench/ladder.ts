import type { Region } from '../region.ts';

const fahrenheit = (level: number): number => ((level - 32) * 5) / 9;

/** Outside temperatures from a light frost to a hard one, round in the reader's units [°C]. */
export const ladder = ({ units }: Pick<Region, 'units'>): readonly number[] =>
  units === 'us' ? [32, 23, 14, 5, -4, -13].map(fahrenheit) : [0, -5, -10, -15, -20, -25];
