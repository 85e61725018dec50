import type { Station } from '../region.ts';
import { hoursOfDay } from './daily-profile.ts';
import { coldestGround } from './ground.ts';

/** A day's readings; the date as 2012-01-31, temperatures in °C. */
export interface Day {
  readonly date: string;
  readonly low: number;
  readonly high: number;
}

/** What a record of daily lows and highs says of a place, or one of hours with the lows and highs of its days. */
export type Climate = Omit<Station, 'id' | 'name' | 'source' | 'method' | 'degreeHours' | 'coldestSnap'> & {
  readonly degreeHours: NonNullable<Station['degreeHours']>;
  readonly coldestSnap: NonNullable<Station['coldestSnap']>;
};

/** Readings of full hours by the clock of the place; NaN where there is none. */
export interface HourlyRecord {
  /** The hour of the first reading, in hours since 1970. */
  readonly begin: number;
  /** [°C] */
  readonly values: Float64Array;
}

/** Below these the degree hours are counted [°C]: frost, and what benches of hardy and of tender plants are held at. */
const degreeHourBases = [0, 5, 10, 15] as const;

/** A cold snap is told by three days, as long as the one that a bench is tried in (`weather/cold-snap.ts`) [h]. */
const snapHours = 72;
/** Of these hours so many must have a reading. */
const snapRead = 60;

/** The record is too short or has too many gaps to say what an ordinary winter is. */
export class ShortRecord extends RangeError {
  override name = 'ShortRecord';
}

/** [ms] */
const oneDay = 86_400_000;
/** Mean length of a year of the calendar. */
const daysOfYear = 365.2425;
const dateOf = (day: number): string => new Date(day * oneDay).toISOString().slice(0, 10);
const numberOf = (date: string): number => Date.parse(`${date}T00:00Z`) / oneDay;

/** Days that may be missing from the three coldest months of a winter that is counted as whole: about 5 %. */
const missingInWinter = 5;
/** Share of the days of the record that may be missing. */
const missingShare = 0.1;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The value below which this share of the values lies, between neighbours in proportion. */
function quantile(sorted: ArrayLike<number>, share: number): number {
  const at = (sorted.length - 1) * share;
  const below = sorted[Math.floor(at)] ?? NaN;
  const above = sorted[Math.ceil(at)] ?? NaN;
  return below + (above - below) * (at - Math.floor(at));
}

/** The hours of days of which only the lows and highs are known: the profile of an ordinary day. */
function hoursOfDays(days: readonly Day[]): HourlyRecord {
  const begin = numberOf(days[0]?.date ?? '') * 24;
  const end = (numberOf(days.at(-1)?.date ?? '') + 1) * 24;
  const values = new Float64Array(end - begin).fill(NaN);
  for (const { date, low, high } of days)
    hoursOfDay(low, high).forEach((value, hour) => (values[numberOf(date) * 24 - begin + hour] = value));
  return { begin, values };
}

/** Degree hours of an average year below a temperature [K·s], of the hours that were read. */
function degreeHoursBelow(base: number, hours: Float64Array): number {
  const short = hours.reduce((sum, value) => sum + Math.max(0, base - value), 0);
  return ((short / hours.length) * daysOfYear * oneDay) / 1000;
}

/** The three days in a row with the lowest mean. */
function coldestSnap({ begin, values }: HourlyRecord): Climate['coldestSnap'] {
  let [sum, read, best, at] = [0, 0, Infinity, 0];
  for (let index = 0; index < values.length; index++) {
    const [comes, goes] = [values[index] ?? NaN, values[index - snapHours] ?? NaN];
    if (!Number.isNaN(comes)) [sum, read] = [sum + comes, read + 1];
    if (!Number.isNaN(goes)) [sum, read] = [sum - goes, read - 1];
    if (read >= snapRead && sum / read < best) [best, at] = [sum / read, index + 1 - snapHours];
  }
  const within = values.slice(Math.max(0, at), at + snapHours).filter((value) => !Number.isNaN(value));
  return { begins: dateOf(Math.floor((begin + at) / 24)), mean: best, lowest: Math.min(...within) };
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
 * The climate of a place out of its daily lows and highs, and of its hours where they were read.
 *
 * The usual lowest is the mean of the lowest readings of whole winters, the record lowest that of the whole record. The
 * temperatures exceeded in 99.6 % and 99 % of all hours, and the degree hours, are of whole years; where no hours were
 * read they are put between each day's low and high by the profile of an ordinary day. The ground is worked out from the
 * yearly wave of the air.
 *
 * @param days in order, each once; missing ones are left out
 * @param winterBegins the month in which a new winter begins to be counted: 7, or 1 south of the equator
 * @param read the hours of those days, where they were read
 * @throws ShortRecord when there is no whole year or no whole winter, or more than a tenth of the days is missing
 */
export function climateOf(days: readonly Day[], winterBegins = 7, read?: HourlyRecord): Climate {
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

  const record = read ?? hoursOfDays(days);
  const begin = numberOf(first.date) * 24;
  const end = begin + Math.round(years * daysOfYear) * 24;
  const hours = record.values
    .subarray(Math.max(0, begin - record.begin), Math.max(0, end - record.begin))
    .filter((value) => !Number.isNaN(value))
    .sort();
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
    ...(read ? { hoursUsed: hours.length } : {}),
    degreeHours: degreeHourBases.map((below) => ({ below, sum: degreeHoursBelow(below, hours) })),
    coldestSnap: coldestSnap(record),
  };
}
