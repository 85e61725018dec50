import type { Station } from '../region.ts';
import { hoursOfDay } from './daily-profile.ts';
import { coldestGround } from './ground.ts';

/** A day's readings; the date as 2012-01-31, temperatures in °C. */
export interface Day {
  readonly date: string;
  readonly low: number;
  readonly high: number;
}

/** What a record of daily lows and highs says of a place. */
export type Climate = Omit<Station, 'id' | 'name' | 'source' | 'method'>;

/** The record is too short or has too many gaps to say what an ordinary winter is. */
export class ShortRecord extends RangeError {
  override name = 'ShortRecord';
}

const oneDay = 86_400_000;
const numberOf = (date: string): number => Date.parse(`${date}T00:00Z`) / oneDay;

/** Days that may be missing from the three coldest months of a winter that is counted as whole: about 5 %. */
const missingInWinter = 5;
/** Share of the days of the record that may be missing. */
const missingShare = 0.1;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The value below which this share of the values lies, between neighbours in proportion. */
function quantile(sorted: readonly number[], share: number): number {
  const at = (sorted.length - 1) * share;
  const below = sorted[Math.floor(at)] ?? NaN;
  const above = sorted[Math.ceil(at)] ?? NaN;
  return below + (above - below) * (at - Math.floor(at));
}

/** Which winter a day belongs to: the year in which that winter began. */
const winterOf = (date: string, begins: number): number =>
  Number(date.slice(0, 4)) - (Number(date.slice(5, 7)) < begins ? 1 : 0);

/** The lowest of each whole winter: one with its three coldest months, five to seven months after it began. */
function lowestOfWinters(days: readonly Day[], begins: number): number[] {
  const winters = new Map<number, Day[]>();
  for (const day of days) {
    const winter = winterOf(day.date, begins);
    const members = winters.get(winter);
    if (members) members.push(day);
    else winters.set(winter, [day]);
  }
  const coldest = [5, 6, 7].map((later) => ((begins - 1 + later) % 12) + 1);
  return [...winters.values()].flatMap((members) => {
    const inCold = members.filter(({ date }) => coldest.includes(Number(date.slice(5, 7))));
    // 90 days, 91 in a leap year; in the south the coldest months have 92.
    return inCold.length >= 90 - missingInWinter ? [Math.min(...members.map(({ low }) => low))] : [];
  });
}

/**
 * The climate of a place out of its daily lows and highs.
 *
 * The usual lowest is the mean of the lowest readings of whole winters, the record lowest that of the whole record. The
 * temperatures exceeded in 99.6 % and 99 % of all hours are of whole years, whose hours are put between each day's low
 * and high by the profile of an ordinary day. The ground is worked out from the yearly wave of the air.
 *
 * @param days in order, each once; missing ones are left out
 * @param winterBegins the month in which a new winter begins to be counted: 7, or 1 south of the equator
 * @throws ShortRecord when there is no whole year or no whole winter, or more than a tenth of the days is missing
 */
export function climateOf(days: readonly Day[], winterBegins = 7): Climate {
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) throw new ShortRecord('there are no days');
  const span = numberOf(last.date) - numberOf(first.date) + 1;
  const daysMissing = span - days.length;
  if (daysMissing > missingShare * span)
    throw new ShortRecord(`${daysMissing} of ${span} days are missing; no more than a tenth may be`);
  const years = Math.floor(span / 365);
  if (years < 1) throw new ShortRecord(`there are ${span} days; a whole year is needed`);
  const winters = lowestOfWinters(days, winterBegins);
  if (winters.length === 0) throw new ShortRecord('there is no whole winter');

  const end = numberOf(first.date) + Math.round(years * 365.2425);
  const hours = days
    .filter(({ date }) => numberOf(date) < end)
    .flatMap(({ low, high }) => hoursOfDay(low, high))
    .sort((a, b) => a - b);
  const months = Array.from({ length: 12 }, (_, index) => {
    const members = days.filter(({ date }) => Number(date.slice(5, 7)) === index + 1);
    return { meanLow: mean(members.map(({ low }) => low)), meanHigh: mean(members.map(({ high }) => high)) };
  });
  const monthMeans = months.map(({ meanLow, meanHigh }) => (meanLow + meanHigh) / 2);
  const amplitude = (Math.max(...monthMeans) - Math.min(...monthMeans)) / 2;
  return {
    firstDay: first.date,
    lastDay: last.date,
    daysMissing,
    winters: winters.length,
    usualLowest: mean(winters),
    recordLowest: Math.min(...days.map(({ low }) => low)),
    exceeded996: quantile(hours, 0.004),
    exceeded99: quantile(hours, 0.01),
    ground: coldestGround(mean(monthMeans), amplitude),
    months,
  };
}
