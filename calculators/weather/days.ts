import { hoursOfDay } from '../climate/daily-profile.ts';
import type { Series } from './series.ts';

const hour = 3600;

/** Hours of the day at which the daily profile has its lowest and its highest. */
export const lowestHour = 5;
export const highestHour = 15;

/** The lowest and the highest of a day [°C]. */
export interface LowAndHigh {
  readonly low: number;
  readonly high: number;
}

/**
 * The temperatures of the hours after one extreme up to the next: ten hours from a low at five in the morning to the
 * high at three in the afternoon, fourteen from a high to the low of the next morning. The course of an ordinary day
 * (`hoursOfDay`) between each two, so that there is no step at midnight when the days differ.
 */
function hoursTo(from: 'low' | 'high', before: number, after: number): number[] {
  const [low, high] = from === 'low' ? [before, after] : [after, before];
  const day = hoursOfDay(low, high);
  const [first, count] = from === 'low' ? [lowestHour, 10] : [highestHour, 14];
  // The profile begins at one in the morning and goes round.
  return Array.from({ length: count }, (_, index) => day[(first + index) % 24]!);
}

/**
 * An hourly series through lows and highs by turns. The first stands at its own hour of the day.
 *
 * @param first whether the first of the values is a low or a high
 * @param extremes [°C], two or more
 */
export function seriesOfExtremes(first: 'low' | 'high', extremes: readonly number[]): Series {
  const values = [extremes[0]!];
  let from = first;
  extremes.slice(1).forEach((after, index) => {
    values.push(...hoursTo(from, extremes[index]!, after));
    from = from === 'low' ? 'high' : 'low';
  });
  const clock = (first === 'low' ? lowestHour : highestHour) * hour;
  return { clock, every: hour, values: Float64Array.from(values) };
}

/** An hourly series from the low of the first day to the high of the last. */
export const seriesOfDays = (days: readonly LowAndHigh[]): Series =>
  seriesOfExtremes(
    'low',
    days.flatMap(({ low, high }) => [low, high]),
  );
