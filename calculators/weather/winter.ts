import { messages } from '../say.ts';
import { groundDepth, soilDiffusivity } from '../climate/ground.ts';
import { dampingDepth } from '../laws/ground.ts';
import type { Station } from '../region.ts';
import { seriesOfDays, type LowAndHigh } from './days.ts';
import type { Series } from './series.ts';

/** The months that a bench is heated in, and their days; a year that is not a leap year. North of the equator. */
export const heatingMonths = [
  { month: 10, name: messages('October'), days: 31 },
  { month: 11, name: messages('November'), days: 30 },
  { month: 12, name: messages('December'), days: 31 },
  { month: 1, name: messages('January'), days: 31 },
  { month: 2, name: messages('February'), days: 28 },
  { month: 3, name: messages('March'), days: 31 },
  { month: 4, name: messages('April'), days: 30 },
] as const;

export const heatingDays = heatingMonths.reduce((sum, { days }) => sum + days, 0);

/**
 * Swing of the weather about the ordinary course of the year: four waves of these many days, equal in height
 * (assumption). Weather repeats itself over three to five days and then does not: in the daily records of two cities
 * the days of winter stand 2.9 and 4.4 K about their month's mean and follow the day before by 0.77 and 0.66; these
 * waves give 3.5 and 4.7 K and 0.77.
 */
const waves = [5.3, 8.9, 17, 31] as const;

/** Each wave begins by this much of its length later than the one before, so that they meet at odd places. */
const phase = 0.37;

/** Values of twelve months that stand at their middles, so that straight lines between them keep each month's mean. */
function middles(means: readonly number[]): number[] {
  let middle = [...means];
  const neighbour = (month: number): number => middle[(month + 12) % 12]!;
  for (let round = 0; round < 40; round++) {
    middle = middle.map(
      (value, month) =>
        // A month's mean on straight lines: three quarters its own, an eighth of either neighbour's.
        value + means[month]! - (0.75 * value + (neighbour(month - 1) + neighbour(month + 1)) / 8),
    );
  }
  return middle;
}

/** The ordinary low and high of each day of the heating months, without the swing of the weather. */
function ordinaryDays({ months }: Station): LowAndHigh[] {
  const lows = middles(months.map(({ meanLow }) => meanLow));
  const highs = middles(months.map(({ meanHigh }) => meanHigh));
  return heatingMonths.flatMap(({ month, days }) =>
    Array.from({ length: days }, (_, day) => {
      const past = (day + 0.5) / days - 0.5;
      const [here, other] = [month - 1, (month + (past < 0 ? 10 : 12)) % 12];
      const share = Math.abs(past);
      const between = (of: readonly number[]): number => of[here]! * (1 - share) + of[other]! * share;
      return { low: between(lows), high: between(highs) };
    }),
  );
}

/** The swing of each day, of height one, with a mean of zero in each month. */
function swings(): number[] {
  const all = Array.from({ length: heatingDays }, (_, day) =>
    waves.reduce((sum, length, index) => sum + Math.sin(2 * Math.PI * (day / length + phase * index)), 0),
  );
  let first = 0;
  return heatingMonths.flatMap(({ days }) => {
    const here = all.slice(first, (first += days));
    const mean = here.reduce((sum, one) => sum + one, 0) / days;
    return here.map((one) => one - mean);
  });
}

/**
 * An ordinary winter out of what a station's record says: lows and highs of each day from 1 October to 30 April. The
 * months have their means, and the swing of the weather is as wide as makes the lowest night of the winter the usual
 * lowest of the record. Made, not measured: no winter ran so, but its cold hours add up like those of a real one
 * (degree-hours below 5 °C within 15 % of two records of four years).
 */
export function ordinaryWinter(station: Station): readonly LowAndHigh[] {
  const days = ordinaryDays(station);
  const swing = swings();
  const lowestAt = (height: number): number =>
    Math.min(...days.map(({ low }, day) => low + height * swing[day]!));
  // By halving: the lowest night falls as the swing grows. 30 K is wider than any climate's.
  let [less, more] = [0, 30];
  for (let round = 0; round < 50; round++) {
    const middle = (less + more) / 2;
    if (lowestAt(middle) > station.usualLowest) less = middle;
    else more = middle;
  }
  return days.map(({ low, high }, day) => ({
    low: low + less * swing[day]!,
    high: high + less * swing[day]!,
  }));
}

/** Outside temperature from five in the morning of 1 October to three in the afternoon of 30 April. */
export const winterSeries = (station: Station): Series => seriesOfDays(ordinaryWinter(station));

/** From 1 October to the middle of the coldest month, as a rule January [d]. */
const coldestAir = 31 + 30 + 31 + 15;

/**
 * Temperature of the ground at `groundDepth` through the heating months [°C]: the yearly wave of the air, damped and
 * late by the depth (Kusuda and Achenbach), and at its lowest what was given.
 *
 * @param lowest of the ground in the coldest weeks [°C]
 * @returns the temperature at a time from 1 October [s]
 */
export function groundThrough({ months }: Station, lowest: number): (time: number) => number {
  const means = months.map(({ meanLow, meanHigh }) => (meanLow + meanHigh) / 2);
  const depth = groundDepth / dampingDepth(soilDiffusivity);
  const amplitude = ((Math.max(...means) - Math.min(...means)) / 2) * Math.exp(-depth);
  const yearly = (2 * Math.PI) / (365.2425 * 86_400);
  const coldest = coldestAir * 86_400 + depth / yearly;
  return (time) => lowest + amplitude * (1 - Math.cos(yearly * (time - coldest)));
}
