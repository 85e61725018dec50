import type { Station } from '../region.ts';
import { seriesThrough, type Knot, type Series } from './series.ts';
import { hoursOfDay } from '../climate/daily-profile.ts';

const hour = 3600;

/** The shape of a cold snap. Hours are those of the clock; everything but the lowest and its length is an assumption. */
export interface Snap {
  /** [°C] */
  readonly lowest: number;
  /** How long it stays at the lowest [h]. */
  readonly hoursAtLowest: number;
  /** Low and high of the days before and after [°C]. */
  readonly mildLow: number;
  readonly mildHigh: number;
  /** From the last mild afternoon down to the lowest, and back up [h]. */
  readonly fall: number;
  readonly rise: number;
  /** How far the day between recovers: 0 not at all, 1 to the mild high [1]. */
  readonly dayBetween: number;
  /** How much less cold the second night is: 0 as cold as the first, 1 an ordinary night [1]. */
  readonly secondNight: number;
}

/** A front that goes through in the afternoon and has the cold there by ten at night (assumptions). */
const usualShape = { fall: 7, rise: 7, dayBetween: 0.5, secondNight: 0.5 } as const;

/** The month of a station with the lowest mean. */
export const coldestMonth = ({ months }: Station): Station['months'][number] =>
  months.reduce((coldest, month) =>
    month.meanLow + month.meanHigh < coldest.meanLow + coldest.meanHigh ? month : coldest,
  );

/**
 * The snap that a bench at this station is built for: ordinary weather of the coldest month, the drop, the lowest, half
 * a recovery, a second night half as cold, and ordinary weather again.
 *
 * @param lowest outside [°C]
 * @param hoursAtLowest [h]
 */
export function snapAt(station: Station, lowest: number, hoursAtLowest: number): Snap {
  const { meanLow, meanHigh } = coldestMonth(station);
  // A night that is built for may be milder than an ordinary one; then there is no drop.
  const mildLow = Math.max(meanLow, lowest);
  return { lowest, hoursAtLowest, mildLow, mildHigh: Math.max(meanHigh, mildLow), ...usualShape };
}

/** Hour of the clock at which a snap's record begins; the drop begins at 15, three in the afternoon. */
export const snapBegins = 9;

/** Hours from the beginning of the record to the first hour at the lowest. */
export const hoursToLowest = ({ fall }: Snap): number => 15 - snapBegins + fall;

/**
 * Outside temperature through a cold snap, from nine in the morning of the last mild day: six hours of mild day, the
 * drop, the lowest, the rise to the day between, the second night for as long as from ten at night to eight in the
 * morning, the rise to a mild afternoon, and the ordinary night after it. 72 hours with ten hours at the lowest.
 */
export function snapSeries(snap: Snap): Series {
  const { lowest, hoursAtLowest, mildLow, mildHigh, fall, rise, dayBetween, secondNight } = snap;
  const between = lowest + dayBetween * (mildHigh - lowest);
  const second = lowest + secondNight * (mildLow - lowest);
  const mild = hoursOfDay(mildLow, mildHigh);
  const knots: Knot[] = [];
  let time = 0;
  const go = (hours: number, value: number): void => {
    time += hours * hour;
    knots.push({ time, value });
  };
  go(0, mild[snapBegins - 1]!);
  for (let clock = snapBegins + 1; clock <= 15; clock++) go(1, mild[clock - 1]!);
  go(fall, lowest);
  go(hoursAtLowest, lowest);
  go(rise, between);
  go(7, second);
  go(10, second);
  go(7, mildHigh);
  for (let index = 1; index <= 18; index++) go(1, mild[(15 + index - 1) % 24]!);
  return seriesThrough(knots, snapBegins * hour, hour / 2);
}
