import { sentence, type Sentence } from '../calculator.ts';
import { messageOf } from '../say.ts';
import { toBase } from '../quantities/quantity.ts';
import { seriesOfExtremes } from './days.ts';
import { seriesThrough, type Knot, type Series } from './series.ts';

const hour = 3600;
const day = 24 * hour;

/** Colder and warmer than anywhere that plants are grown under glass [°C]; beyond is a slip or the wrong unit. */
const plausible = { from: -60, to: 50 } as const;

/** A forecast longer than this is a guess [d], and two hours further apart than that leave a night open [h]. */
const mostDays = 14;
const furthestApart = 12;

/** What is wrong with a forecast, and where. */
export interface ForecastProblem {
  /** Counted from 1. */
  readonly line: number;
  /** What stands there. */
  readonly found: string;
  /** What may stand there, to follow "must be". */
  readonly allowed: Sentence;
}

/** A forecast as it was read. */
export interface Forecast {
  readonly series: Series;
  /** Whether it was given as lows and highs or hour by hour. */
  readonly kind: 'days' | 'hours';
}

export type TemperatureUnit = '°C' | '°F';

export type ReadForecast =
  | { readonly ok: true; readonly forecast: Forecast }
  | { readonly ok: false; readonly problem: ForecastProblem };

const number = String.raw`[+\-−–]?\d+(?:[.,]\d+)?`;
const degrees = String.raw`(${number})\s*(?:[°º]?\s*([CFcf])(?![\p{L}\d])|[°º])?`;
const date = String.raw`(\d{4}-\d{2}-\d{2})`;
const label = String.raw`(?:(?!high|max|low|min|[hl]\s)([\p{L}][\p{L}.’']*)(?:\s+\d{1,2}\.?(?=\s*:?\s+[+\-−–\p{L}\d]))?\s*:?\s+)?`;
const between = String.raw`\s*(?:\/|\||to|then|…)\s*`;
const patterns = {
  hour: new RegExp(
    String.raw`^(?:${date}[T\s]\s*)?(?:(\d{1,2}):(\d{2})(?::\d{2})?\s*([ap]m)?|(\d{1,2})\s*(h|[ap]m))\s*:?\s*${degrees}`,
    'iu',
  ),
  alone: new RegExp(`^${label}(?:low\\s+|min\\s+)?${degrees}(?:\\s+\\p{L}{3,})?[.\\s]*$`, 'iu'),
  two: new RegExp(`^${degrees}\\s*[,;\\s]\\s*${degrees}[.\\s]*$`, 'iu'),
  pair: new RegExp(`^(?:${date}\\s*:?\\s*)?${label}${degrees}${between}${degrees}`, 'iu'),
  words: new RegExp(
    String.raw`^(?:${date}\s*:?\s*)?${label}(high|max|low|min|h|l)[.:]?\s*${degrees}[\s,/]*(high|max|low|min|h|l)[.:]?\s*${degrees}`,
    'iu',
  ),
} as const;

const daysOfWeek = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
const weekday = (word: string | undefined): number =>
  word === undefined ? -1 : daysOfWeek.indexOf(word.slice(0, 3).toLowerCase());

const dayOf = (text: string): number => Date.parse(`${text}T00:00Z`) / (1000 * day);

/** One day or one hour of a forecast. */
interface Entry {
  readonly line: number;
  readonly text: string;
  readonly date: string | undefined;
  /** The days are named and follow each other, as far as their names are known. */
  readonly weekday: number;
  readonly at:
    | { readonly kind: 'days'; readonly first: number; readonly then: number }
    | { readonly kind: 'hours'; readonly clock: number; readonly value: number };
}

class Unreadable extends Error {
  readonly problem: ForecastProblem;
  constructor(line: number, found: string, allowed: Sentence) {
    super(messageOf(allowed));
    this.problem = { line, found, allowed };
  }
}

/** A figure as it was written, in °C. */
function levelOf(line: number, written: string, unit: TemperatureUnit): number {
  const value = toBase('temperature', Number(written.replace(/[−–]/u, '-').replace(',', '.')), unit);
  if (value < plausible.from || value > plausible.to)
    throw new Unreadable(
      line,
      written,
      sentence`a temperature between ${String(plausible.from)} and ${String(plausible.to)} °C (−76 and 122 °F)`,
    );
  return value;
}

/** Reads one entry off the front of a text. */
function entryAt(
  text: string,
  line: number,
  unit: TemperatureUnit | null,
): Entry & { readonly length: number } {
  const level = (written: string, own: string | undefined, other?: string): number => {
    const letter = (own ?? other)?.toUpperCase();
    const meant = letter === undefined ? unit : (`°${letter}` as TemperatureUnit);
    if (meant === null)
      throw new Unreadable(
        line,
        written,
        sentence`followed by °C or °F, since this forecast has figures in both`,
      );
    return levelOf(line, written, meant);
  };
  const hours = patterns.hour.exec(text);
  if (hours) {
    const [all, date, h1, minutes, half1, h2, half2, written = '', own] = hours;
    const half = (half1 ?? half2)?.toLowerCase();
    const read = Number(h1 ?? h2);
    const twelve = half === 'am' || half === 'pm';
    if (twelve ? read < 1 || read > 12 : read > 24 || Number(minutes ?? 0) > 59)
      throw new Unreadable(
        line,
        all,
        sentence`an hour of the clock, such as 18:00 or 6 pm, and a temperature`,
      );
    const clock = (twelve ? (read % 12) + (half === 'pm' ? 12 : 0) : read) * hour + Number(minutes ?? 0) * 60;
    const at = { kind: 'hours', clock, value: level(written, own) } as const;
    return { line, text: all.trim(), date, weekday: -1, at, length: all.length };
  }
  const pair = patterns.pair.exec(text);
  if (pair) {
    const [all, date, word, one = '', unit1, other = '', unit2] = pair;
    const at = { kind: 'days', first: level(one, unit1, unit2), then: level(other, unit2, unit1) } as const;
    return { line, text: all.trim(), date, weekday: weekday(word), at, length: all.length };
  }
  const words = patterns.words.exec(text);
  if (words) {
    const [all, date, word, name = '', one = '', unit1, , other = '', unit2] = words;
    const values = [level(one, unit1, unit2), level(other, unit2, unit1)] as const;
    // In words the order says nothing: the high of the day, then the low of its night.
    const [first, then] = /^(?:h|ma)/iu.test(name) ? values : [values[1], values[0]];
    return {
      line,
      text: all.trim(),
      date,
      weekday: weekday(word),
      at: { kind: 'days', first, then },
      length: all.length,
    };
  }
  const [stretch = text] = /^\S+(?:\s+\S+)?/u.exec(text) ?? [];
  throw new Unreadable(
    line,
    stretch,
    sentence`the low of tonight alone, such as “-3”, a high and the low of the night after it, such as “Mon 5/-3”, or an hour and a temperature, such as “18:00 -2”`,
  );
}

/**
 * A text that is one figure alone, tonight's low, or two alone of which the first is the higher: this afternoon's high
 * and tonight's low. Null for anything else.
 */
function loneNight(text: string, usual: TemperatureUnit, usualHigh: number): Series | null {
  const trimmed = text.trim();
  const unit = commonUnit(trimmed, usual);
  if (unit === null) return null;
  const [, , one] = patterns.alone.exec(trimmed) ?? [];
  const [, first, , second] = patterns.two.exec(trimmed) ?? [];
  const written = one ?? second;
  if (written === undefined) return null;
  const low = levelOf(1, written, unit);
  const high = first === undefined ? Math.max(low, usualHigh) : levelOf(1, first, unit);
  return high < low ? null : seriesOfExtremes('high', [high, low, high]);
}

/** The unit of figures without one: that of the others, where these agree; null where they do not. */
function commonUnit(text: string, usual: TemperatureUnit): TemperatureUnit | null {
  const written = new Set(
    [...text.matchAll(/\d\s*[°º]?\s*([CF])(?![\p{L}\d])/giu)].map(([, letter = '']) => letter.toUpperCase()),
  );
  if (written.size > 1) return null;
  return written.has('C') ? '°C' : written.has('F') ? '°F' : usual;
}

function entriesOf(text: string, usual: TemperatureUnit): Entry[] {
  const unit = commonUnit(text, usual);
  const entries: Entry[] = [];
  text.split(/\r?\n/u).forEach((whole, index) => {
    let rest = whole.replace(/^[\s,;]+/u, '');
    while (rest !== '') {
      const { length, ...entry } = entryAt(rest, index + 1, unit);
      entries.push(entry);
      rest = rest.slice(length).replace(/^[\s,;]+/u, '');
    }
  });
  return entries;
}

/** Where the days have dates or names, each must be the day after the one before. */
function mustFollow(before: Entry, { date, weekday: name, line, text }: Entry): void {
  const dates = before.date !== undefined && date !== undefined ? dayOf(date) - dayOf(before.date) : 1;
  const names = before.weekday >= 0 && name >= 0 ? (name - before.weekday + 7) % 7 : 1;
  if (dates !== 1 || names !== 1) throw new Unreadable(line, text, sentence`the day after “${before.text}”`);
}

function ofDays(entries: readonly Entry[]): Series {
  const days = entries.map(({ at, line, text }) => {
    if (at.kind !== 'days')
      throw new Unreadable(line, text, sentence`a high and a low, as the entries before it are`);
    return { line, text, first: at.first, then: at.then };
  });
  entries.slice(1).forEach((entry, index) => mustFollow(entries[index]!, entry));
  if (days.length > mostDays)
    throw new Unreadable(
      days[mostDays]!.line,
      days[mostDays]!.text,
      sentence`no more than ${String(mostDays)} days`,
    );
  // A figure and then a lower one: the afternoon and the night after it. The other way round: morning, then afternoon.
  const [decides] = days.filter(({ first, then }) => first !== then);
  const falling = decides === undefined || decides.first > decides.then;
  for (const { line, text, first, then } of days)
    if (falling ? then > first : first > then)
      throw new Unreadable(
        line,
        text,
        falling
          ? sentence`a high and then a low, as in the days before`
          : sentence`a low and then a high, as in the days before`,
      );
  const extremes = days.flatMap(({ first, then }) => [first, then]);
  // Until the next extreme nothing is known: as if another day like the last one followed.
  const next = days.at(-1)!.first;
  return seriesOfExtremes(falling ? 'high' : 'low', [...extremes, next]);
}

function ofHours(entries: readonly Entry[]): Series {
  const knots: Knot[] = [];
  let days = 0;
  entries.forEach(({ at, line, text, date }, index) => {
    if (at.kind !== 'hours')
      throw new Unreadable(line, text, sentence`an hour and a temperature, as the entries before it are`);
    const before = entries[index - 1];
    if (before?.at.kind === 'hours') {
      if (before.date !== undefined && date !== undefined) days += dayOf(date) - dayOf(before.date);
      // Without a date an hour that is not later is that of the next day.
      else if (at.clock <= before.at.clock) days += 1;
    }
    const time = days * day + at.clock;
    const apart = time - (knots.at(-1)?.time ?? time - hour);
    if (apart <= 0 || apart > furthestApart * hour)
      throw new Unreadable(
        line,
        text,
        sentence`later than “${before?.text ?? ''}”, by no more than ${String(furthestApart)} hours`,
      );
    knots.push({ time, value: at.value });
  });
  const [first, last] = [knots[0]!, knots.at(-1)!];
  if (last.time - first.time > mostDays * day)
    throw new Unreadable(
      entries.at(-1)!.line,
      entries.at(-1)!.text,
      sentence`no more than ${String(mostDays)} days after the first`,
    );
  if (knots.length < 2)
    throw new Unreadable(entries[0]!.line, entries[0]!.text, sentence`followed by at least one more hour`);
  return seriesThrough(knots, first.time % day, hour / 2);
}

/**
 * Reads a forecast as people type or paste it.
 *
 * Day by day, one after the other, on lines or with commas, semicolons or blanks between: "Mon 5/-3, Tue 2/-8". The
 * figures stand in the order of time: a high at three in the afternoon and then the low of the night after it, at five
 * in the morning; or, where each day's first figure is the lower one, the low of the morning and then the high. "high 5
 * low -3" is the same in words. Names of days and dates may be left out; where they stand they must follow each other.
 * Or hour by hour: "18:00 2, 9 pm -1, 2026-01-12 00:00 -4", where an hour that is not later is that of the next day.
 * A figure with °C or °F behind it, or with a letter alone, is in that unit, and so are those without. A comma inside a
 * figure is a decimal comma.
 *
 * @param unit where no figure has one
 * @param usualHigh of an ordinary afternoon [°C]: with it a single figure is read as the low of the night to come, after an
 *   afternoon as warm as that, or as that low where it is milder; and two figures alone as tonight's high and low
 */
export function readForecast(text: string, unit: TemperatureUnit, usualHigh?: number): ReadForecast {
  try {
    const plain = text.replace(/\bminus\s*(?=\d)/giu, '-');
    const night = usualHigh === undefined ? null : loneNight(plain, unit, usualHigh);
    if (night) return { ok: true, forecast: { kind: 'days', series: night } };
    const entries = entriesOf(plain, unit);
    const [first] = entries;
    if (!first) throw new Unreadable(1, '', sentence`a forecast, such as “Mon 5/-3, Tue 2/-8”`);
    const { kind } = first.at;
    return { ok: true, forecast: { kind, series: kind === 'days' ? ofDays(entries) : ofHours(entries) } };
  } catch (error) {
    if (error instanceof Unreadable) return { ok: false, problem: error.problem };
    throw error;
  }
}
