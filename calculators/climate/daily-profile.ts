import { cite } from '../sources.ts';

/**
 * How far the temperature is below the day's highest at the full hours 1 to 24, as a share of the daily range. Lowest
 * at 5 in the morning, highest at 3 in the afternoon.
 */
const belowHighest = [
  0.87, 0.92, 0.96, 0.99, 1.0, 0.98, 0.93, 0.84, 0.71, 0.56, 0.39, 0.23, 0.11, 0.03, 0.0, 0.03, 0.1, 0.21,
  0.34, 0.47, 0.58, 0.68, 0.76, 0.82,
];

export const dailyProfileCites = [
  cite('ashrae-fundamentals', 'fractions of the daily range of the older editions, from copies'),
];

/**
 * The 24 hourly temperatures of a day of which only the lowest and the highest are known [°C]. An ordinary clear day;
 * a day on which a front went through looked otherwise, though it had the same lowest and highest.
 *
 * @param low lowest of the day [°C]
 * @param high highest of the day [°C]
 */
export const hoursOfDay = (low: number, high: number): readonly number[] =>
  belowHighest.map((share) => high - share * (high - low));
