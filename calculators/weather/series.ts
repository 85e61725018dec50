/** Outside temperature through time, at even distances; between two values it runs straight. */
export interface Series {
  /** Time of day of the first value [s after midnight]. */
  readonly clock: number;
  /** Distance of the values [s]. */
  readonly every: number;
  /** [°C] */
  readonly values: ArrayLike<number>;
}

const hour = 3600;

/** From the first value to the last [s]. */
export const lengthOf = ({ every, values }: Series): number => (values.length - 1) * every;

/** The temperature at a time from the first value [s]; before it and after the last one it stays as it was [°C]. */
export function temperatureThrough(series: Series): (time: number) => number {
  const { every } = series;
  const values = Float64Array.from(series.values);
  const last = values.length - 1;
  return (time) => {
    const at = time / every;
    if (!(at > 0)) return values[0]!;
    if (at >= last) return values[last]!;
    const before = Math.floor(at);
    const from = values[before]!;
    return from + (values[before + 1]! - from) * (at - before);
  };
}

/** A value at a time [s from the start]. */
export interface Knot {
  readonly time: number;
  readonly value: number;
}

/**
 * Values at even distances on the straight lines between knots, from the first knot to the last.
 *
 * @param knots two or more, rising in time
 * @param clock time of day at the first knot [s after midnight]
 */
export function seriesThrough(knots: readonly Knot[], clock: number, every = hour): Series {
  const start = knots[0]!.time;
  const count = Math.floor((knots.at(-1)!.time - start) / every + 1e-9) + 1;
  let next = 1;
  const values = Float64Array.from({ length: count }, (_, index) => {
    const time = start + index * every;
    while (next < knots.length - 1 && knots[next]!.time < time) next++;
    const [a, b] = [knots[next - 1]!, knots[next]!];
    return a.value + ((b.value - a.value) * (time - a.time)) / (b.time - a.time);
  });
  return { clock, every, values };
}

/** An hourly record with what was done about its gaps. */
export interface HourlySeries {
  readonly series: Series;
  /** Hours without a reading that lie on a straight line between their neighbours. */
  readonly bridged: number;
  /** Gaps too long for a straight line: index of the first hour missing, and how many. */
  readonly gaps: readonly { readonly from: number; readonly hours: number }[];
}

/** A gap of as many hours is bridged by a straight line (assumption: a quarter of a day). */
export const longestBridge = 6;

/**
 * A series out of hourly readings. A gap of up to `longestBridge` hours is bridged; longer ones are told, and whoever
 * asked decides whether a record with them will do: it is bridged there too, or held level at an end.
 *
 * @param readings [°C]; null or NaN where there is none
 * @param clock time of day of the first [s after midnight]
 * @throws RangeError when nothing was read at all
 */
export function hourlySeries(readings: ArrayLike<number | null>, clock: number): HourlySeries {
  const read = Float64Array.from({ length: readings.length }, (_, index) => readings[index] ?? NaN);
  const knots = Array.from(read, (value, index) => ({ time: index, value })).filter(
    ({ value }) => !Number.isNaN(value),
  );
  const [first, last] = [knots[0], knots.at(-1)];
  if (!first || !last) throw new RangeError('there is no reading in this record');
  const gaps: { from: number; hours: number }[] = [];
  let bridged = 0;
  const fill = (from: number, to: number, value: (index: number) => number): void => {
    if (to === from) return;
    for (let index = from; index < to; index++) read[index] = value(index);
    if (to - from <= longestBridge) bridged += to - from;
    else gaps.push({ from, hours: to - from });
  };
  fill(0, first.time, () => first.value);
  knots.slice(1).forEach((b, index) => {
    const a = knots[index]!;
    fill(a.time + 1, b.time, (time) => a.value + ((b.value - a.value) * (time - a.time)) / (b.time - a.time));
  });
  fill(last.time + 1, read.length, () => last.value);
  return { series: { clock, every: hour, values: read }, bridged, gaps };
}
