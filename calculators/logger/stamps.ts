/**
 * Days and times as loggers write them. Times are those of the clock on the wall, as seconds since 1970 as if that clock
 * had always shown universal time; what the clock was put forward or back by is found later.
 */

export type DateOrder = 'year-first' | 'day-first' | 'month-first';

export interface Stamp {
  /** The three numbers of the day as they stand; of a month by its name, its number in the middle. */
  readonly numbers: readonly [number, number, number];
  /** What the numbers can be. */
  readonly orders: readonly DateOrder[];
  /** Seconds after midnight; undefined where there is no time. */
  readonly clock: number | undefined;
  /** Seconds that the clock is ahead of universal time, where it is said. */
  readonly zone: number | undefined;
}

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'] as const;

const day = String.raw`(?:(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})|(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4}|\d{2})|(\d{1,2})[-/. ]*(\p{L}{3,9})\.?[-/., ]*(\d{4}|\d{2})|(\p{L}{3,9})\.?[-/. ]*(\d{1,2}),?[-/. ]+(\d{4}))`;
const time = String.raw`(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d{1,9})?)?(?:\s*([ap])\.?\s?m\.?)?(?:\s*(Z|UTC|GMT)|\s*([+-])(\d{2}):?(\d{2}))?`;
const whole = new RegExp(String.raw`^(?:${day})(?:(?:T|,?\s+)(?:${time}))?$`, 'iu');
// In a column of its own a point would make a time of a temperature.
const timeAlone = new RegExp(String.raw`^(?:${time.replaceAll(':.', ':')})$`, 'iu');

const monthOf = (name: string): number => months.indexOf(name.slice(0, 3).toLowerCase() as 'jan') + 1;

/** Two figures of a year are those of this century: no logger is older. */
const fullYear = (text: string): number => (text.length <= 2 ? 2000 + Number(text) : Number(text));

/** Seconds after midnight and the zone, of the eight parts that `time` finds; undefined where they are no time. */
function clockOf(parts: readonly (string | undefined)[]): Pick<Stamp, 'clock' | 'zone'> | undefined {
  const [hours, minutes, seconds = '0', half, universal, sign, zoneHours, zoneMinutes] = parts;
  if (hours === undefined) return { clock: undefined, zone: undefined };
  let hour = Number(hours);
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return undefined;
    // Twelve at night is 12 a.m., the first hour of the day.
    hour = (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  }
  const clock = hour * 3600 + Number(minutes) * 60 + Number(seconds);
  if (hour > 24 || Number(minutes) > 59 || Number(seconds) > 60 || clock > 86_400) return undefined;
  const away = Number(zoneHours ?? 0) * 3600 + Number(zoneMinutes ?? 0) * 60;
  const zone = universal !== undefined ? 0 : sign === undefined ? undefined : sign === '-' ? -away : away;
  return { clock, zone };
}

/** Reads a day, with or without a time behind it; undefined where the text is none. */
export function readStamp(text: string): Stamp | undefined {
  const found = whole.exec(text.trim().replace(/\s+/gu, ' '));
  if (!found) return undefined;
  const [, y1, y2, y3, d1, d2, d3, n1, nName, n3, mName, m2, m3, ...rest] = found;
  const clock = clockOf(rest);
  if (!clock) return undefined;
  if (y1 !== undefined)
    return { numbers: [Number(y1), Number(y2), Number(y3)], orders: ['year-first'], ...clock };
  if (d1 !== undefined)
    return {
      numbers: [Number(d1), Number(d2), fullYear(d3 ?? '')],
      orders: ['day-first', 'month-first'],
      ...clock,
    };
  const name = nName ?? mName ?? '';
  if (monthOf(name) === 0) return undefined;
  const numbers = [Number(n1 ?? m2), monthOf(name), fullYear(n3 ?? m3 ?? '')] as const;
  return { numbers, orders: ['day-first'], ...clock };
}

/** Reads a time that stands in a column of its own. */
export function readTimeOfDay(text: string): Pick<Stamp, 'clock' | 'zone'> | undefined {
  const found = timeAlone.exec(text.trim().replace(/\s+/gu, ' '));
  return found ? clockOf(found.slice(1)) : undefined;
}

/** The moment of a stamp read in an order [s]; undefined where there is no such day. */
export function momentOf({ numbers, clock = 0 }: Stamp, order: DateOrder): number | undefined {
  const [a, b, c] = numbers;
  const [year, month, dayOfMonth] =
    order === 'year-first' ? [a, b, c] : order === 'day-first' ? [c, b, a] : [c, a, b];
  const at = Date.UTC(year, month - 1, dayOfMonth);
  const back = new Date(at);
  if (back.getUTCMonth() !== month - 1 || back.getUTCDate() !== dayOfMonth) return undefined;
  return at / 1000 + clock;
}

/** How an order of day and month was found out. */
export type OrderFound =
  | { readonly order: DateOrder; readonly by: 'form' | 'size' | 'sequence' | 'choice' }
  /** Either could be meant, and the stamps do not tell. */
  | { readonly order: undefined; readonly possible: readonly DateOrder[] };

/** Stamps that follow each other are no further apart than this; in the wrong order they are weeks apart [s]. */
const nearby = 3 * 86_400;
const weeksApart = 20 * 86_400;

/** The longest time without a stamp [s]. */
function widestGap(moments: readonly number[]): number {
  const sorted = Float64Array.from(moments).sort();
  let widest = 0;
  for (let index = 1; index < sorted.length; index++)
    widest = Math.max(widest, sorted[index]! - sorted[index - 1]!);
  return widest;
}

/**
 * The order in which the stamps of a file are to be read: by their form; because a number is too large for a month; or
 * because only one makes them follow each other. Where both would do, it is for the reader to say. A damaged stamp
 * among many decides nothing.
 */
export function orderOf(stamps: readonly Stamp[]): OrderFound {
  const orders: readonly DateOrder[] = ['year-first', 'day-first', 'month-first'];
  const tried = orders.map((order) => {
    const formed = stamps.filter((stamp) => stamp.orders.includes(order));
    const moments = formed.flatMap((stamp) => momentOf(stamp, order) ?? []);
    return { order, formed: formed.length, read: moments.length, gap: widestGap(moments) };
  });
  const most = Math.max(...tried.map(({ read }) => read));
  if (most === 0) return { order: undefined, possible: [] };
  const best = tried.filter(({ read }) => read === most);
  const [first, second] = best;
  if (first && !second) {
    const alike = tried.filter(({ formed }) => formed === first.formed).length > 1;
    return { order: first.order, by: alike ? 'size' : 'form' };
  }
  const [near, ...far] = best.sort((one, other) => one.gap - other.gap);
  if (near && near.gap <= nearby && far.every(({ gap }) => gap >= weeksApart))
    return { order: near.order, by: 'sequence' };
  return { order: undefined, possible: best.map(({ order }) => order) };
}
