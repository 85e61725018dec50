import { nearestName } from '../calculators/bench/nearest.ts';
import type { Day, HourlyRecord } from '../calculators/climate/record.ts';
import { temperatureUnitIn, type LoggedTemperatureUnit } from '../calculators/logger/columns.ts';
import { decimalOf, isNothing, valueOf, withoutUnit } from '../calculators/logger/numbers.ts';
import {
  momentOf,
  orderOf,
  type DateOrder,
  type OrderFound,
  type Stamp,
} from '../calculators/logger/stamps.ts';
import { toBase } from '../calculators/quantities/quantity.ts';
import { delimiterNames, delimiterOf, readLines, type Line } from './delimited.ts';
import { problem, type Problem } from './problem.ts';
import { stampReader, type ColumnNames } from './weather-stamps.ts';
import { matchWeatherColumns } from './weather-columns.ts';

/**
 * A file of outdoor temperatures of years: hours (or readings closer together), or the lowest and highest of each day,
 * in whatever delimited form a weather service or a logger writes. What is certain is read; what is not is asked; what
 * cannot be used is left out and told.
 */

/** What whoever gives the file has said about it. Columns by their heads. */
export interface WeatherChoices extends ColumnNames {
  readonly temperature?: string | undefined;
  readonly low?: string | undefined;
  readonly high?: string | undefined;
  readonly unit?: LoggedTemperatureUnit | undefined;
  /** Only the lines that have this in that column. */
  readonly only?: { readonly column: string; readonly value: string } | undefined;
  /** What stands where nothing was read, beside what loggers and services usually write. */
  readonly missing?: string | undefined;
  readonly dateOrder?: DateOrder | undefined;
}

/** What was read of a file and what was left out. */
export interface WeatherAccount {
  readonly delimiter: string;
  readonly kind: 'hours' | 'days';
  readonly order: OrderFound & { readonly order: DateOrder };
  /** Heads of the columns that were used. */
  readonly columns: readonly string[];
  readonly unit: LoggedTemperatureUnit;
  /** Whether somebody said the unit, the file does, or the values leave only one. */
  readonly unitBy: 'choice' | 'file' | 'values';
  readonly lines: number;
  /** Usual time between two readings [s]. */
  readonly every: number;
  /** Lines without a reading. */
  readonly empty: number;
  /** Lines whose stamp an earlier line has; the first is kept. Those of an hour that a clock went through twice apart. */
  readonly duplicates: number;
  readonly clockBack: number;
  /** Single hours that are missing early on a Sunday, as where a clock is put forward. */
  readonly clockForward: number;
  /** Hours between two readings no more than `longestFill` apart, which were put on the line between them. */
  readonly filled: number;
  /** Days of which too few hours were read for a lowest and a highest. */
  readonly partDays: number;
  /** The longest time without a reading [h], and the day on which it began. */
  readonly longestGap: { readonly hours: number; readonly day: string } | null;
  readonly leftOut: readonly Problem[];
}

export type ReadWeather =
  | {
      readonly ok: true;
      readonly days: readonly Day[];
      readonly hours: HourlyRecord | undefined;
      readonly account: WeatherAccount;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The coldest and the warmest that a weather station has read, rounded outwards [°C] (WMO's records, from memory). */
const plausible = { from: -90, to: 60 } as const;
/** What services write for "no reading": nines, beyond what any station reads. */
const nines = /^[-+−]?9{2,5}(?:[.,][09]+)?$/u;

const hour = 3600;
const day = 24;
/** Readings further apart than this miss the coldest hour of a night [s] (assumption). */
const longestStep = 3 * hour;
/** A gap between readings of this length is bridged by a straight line [h] (assumption). */
const longestFill = 3;
/** A day counts when this part of its hours was read [1] (assumption). */
const dayRead = 0.8;
/** Where more than this part of the lines cannot be used, the file is not what it seems [1]. */
const mostUnusable = 0.1;
/** More problems than this have one cause. */
const mostProblems = 10;

const dateOf = (dayNumber: number): string =>
  new Date(dayNumber * day * hour * 1000).toISOString().slice(0, 10);

/** A Sunday between midnight and four in the morning, when clocks are put forward and back in most of the world. */
function mayChangeClock(moment: number): boolean {
  const date = new Date(moment * 1000);
  return date.getUTCDay() === 0 && date.getUTCHours() < 4;
}

/** The readings of a file by the clock that it was written by; for a file of days a low and a high. */
interface Readings {
  readonly moments: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** The middle of the steps forward, of the first of them. */
function usualStep(moments: Float64Array): number {
  const steps: number[] = [];
  for (let index = 1; index < moments.length && steps.length < 5000; index++) {
    const step = Math.abs((moments[index] ?? NaN) - (moments[index - 1] ?? NaN));
    if (step > 0) steps.push(step);
  }
  steps.sort((one, other) => one - other);
  return steps[Math.floor(steps.length / 2)] ?? NaN;
}

/** Hours on a grid, with short gaps bridged; and the days that have enough of them. */
function gridOf({ moments, low }: Readings, every: number) {
  let [first, last] = [Infinity, -Infinity];
  for (const moment of moments) [first, last] = [Math.min(first, moment), Math.max(last, moment)];
  const begin = Math.floor(first / hour);
  const length = Math.floor(last / hour) - begin + 1;
  const sums = new Float64Array(length);
  const counts = new Uint32Array(length);
  const days = new Map<number, { low: number; high: number }>();
  moments.forEach((moment, index) => {
    const at = Math.floor(moment / hour) - begin;
    const value = low[index] ?? NaN;
    sums[at] = (sums[at] ?? 0) + value;
    counts[at] = (counts[at] ?? 0) + 1;
    const date = Math.floor((at + begin) / day);
    const known = days.get(date);
    if (known) [known.low, known.high] = [Math.min(known.low, value), Math.max(known.high, value)];
    else days.set(date, { low: value, high: value });
  });
  const values = sums.map((sum, at) => (counts[at] === 0 ? NaN : sum / (counts[at] ?? NaN)));
  let [filled, clockForward, before] = [0, 0, 0];
  let longestGap: WeatherAccount['longestGap'] = null;
  for (let at = 1; at < length; at++) {
    if (counts[at] === 0) continue;
    const gap = at - before;
    const [from, to] = [values[before] ?? NaN, values[at] ?? NaN];
    if (gap > 1 && gap <= longestFill) {
      for (let between = before + 1; between < at; between++)
        values[between] = from + ((to - from) * (between - before)) / gap;
      if (every <= hour) {
        const missedAt = (begin + before + 1) * hour;
        if (gap === 2 && mayChangeClock(missedAt)) clockForward++;
        else filled += gap - 1;
      }
    } else if (gap > longestFill && gap - 1 > (longestGap?.hours ?? 0))
      longestGap = { hours: gap - 1, day: dateOf(Math.floor((begin + before + 1) / day)) };
    before = at;
  }
  const readOn = new Map<number, number>();
  values.forEach((value, at) => {
    if (Number.isNaN(value)) return;
    const date = Math.floor((at + begin) / day);
    readOn.set(date, (readOn.get(date) ?? 0) + 1);
  });
  const whole = [...days].filter(([date]) => (readOn.get(date) ?? 0) >= dayRead * day);
  return {
    hours: { begin, values },
    days: whole
      .sort(([one], [other]) => one - other)
      .map(([date, extremes]): Day => ({ date: dateOf(date), ...extremes })),
    partDays: days.size - whole.length,
    filled,
    clockForward,
    longestGap,
  };
}

/** Blanks between cells are made tabs, where a file has nothing else between them. */
function parted(text: string): { readonly text: string; readonly delimiter: ReturnType<typeof delimiterOf> } {
  const delimiter = delimiterOf(text);
  const sample = text.slice(0, 100_000).split(/\r?\n/u, 50);
  const has = (sign: string) => sample.filter((line) => line.includes(sign)).length > sample.length / 2;
  const blanks = sample.filter((line) => line.trim().split(/\s+/u).length > 2).length > sample.length / 2;
  if (has(delimiter) || !blanks) return { text, delimiter };
  return { text: text.replaceAll(/^[ \t]+|[ \t]+$/gmu, '').replaceAll(/[ \t]+/gu, '\t'), delimiter: '\t' };
}

/** How the work on a file is parted: cells, stamps, values [1]. */
const parts = { lines: 0.4, stamps: 0.35, values: 0.25 } as const;
/** So many lines are looked at in one go: some milliseconds' work. */
const slice = 5000;

/**
 * Reads the text of a weather file; after each slice of it hands out how much of the work is done [1].
 *
 * @param whole all of it
 * @param file its name, for the problems
 * @param choices what is said about it
 */
export function* weatherReading(
  whole: string,
  file: string,
  choices: WeatherChoices = {},
): Generator<number, ReadWeather> {
  const fail = (line: number, field: string, found: string, words: string, allowed = ''): ReadWeather => ({
    ok: false,
    problems: [problem({ file, line, field, found, allowed }, words)],
  });
  const { text, delimiter } = parted(whole.replace(/^\uFEFF/u, ''));
  const reading = readLines(text, delimiter);
  let lines: Line[];
  for (;;) {
    const { done, value } = reading.next();
    if (done) {
      lines = value;
      break;
    }
    yield (parts.lines * value) / Math.max(1, text.length);
  }
  if (lines.length === 0) return fail(1, '', '', 'The file is empty');

  const layout = stampReader(lines, choices);
  if (!layout.ok) return fail(layout.line, '', layout.found, layout.words);
  const { heads, headLine, unitTexts, preamble, stampOf, stampColumns } = layout;
  const place = (name: string): number => heads.indexOf(name);
  const named = [choices.temperature, choices.low, choices.high, choices.only?.column];
  const unknown = named.find((name) => name !== undefined && place(name) < 0);
  if (unknown !== undefined) {
    const nearest = nearestName(unknown, heads);
    const words = `there is no column "${unknown}", only ${heads.join(', ')}${nearest === undefined ? '' : `; did you mean ${nearest}?`}`;
    return fail(headLine, '', '', words);
  }
  let { data } = layout;
  if (choices.only) {
    const { column, value } = choices.only;
    const at = place(column);
    const chosen = data.filter(({ cells }) => cells[at] === value);
    if (chosen.length === 0) {
      const there = [...new Set(data.map(({ cells }) => cells[at] ?? ''))].slice(0, 20);
      return fail(
        headLine,
        '',
        '',
        `no line has "${value}" in the column ${column}, only ${there.join(', ')}`,
      );
    }
    data = chosen;
  }

  const stamps: (Stamp | undefined)[] = [];
  for (const { cells } of data) {
    stamps.push(stampOf(cells));
    if (stamps.length % slice === 0) yield parts.lines + (parts.stamps * stamps.length) / data.length;
  }
  const found = orderOf(stamps.filter((stamp) => stamp !== undefined));
  const order =
    found.order === undefined && choices.dateOrder && found.possible.includes(choices.dateOrder)
      ? ({ order: choices.dateOrder, by: 'choice' } as const)
      : found;
  if (order.order === undefined) {
    const example = stampColumns.map((at) => data[0]?.cells[at] ?? '').join(' ');
    return fail(
      data[0]?.number ?? headLine,
      heads[stampColumns[0] ?? 0] ?? '',
      example,
      order.possible.length === 0
        ? 'No line has a day that there is'
        : 'The day or the month may come first, and no line tells which: say --order day-first or month-first',
      order.possible.join(' or '),
    );
  }

  // One reading a day, or a time on every line.
  const timed = stamps.some((stamp) => stamp?.clock !== undefined && stamp.clock > 0);
  const matched = matchWeatherColumns(heads, stampColumns, timed ? 'hours' : 'days', choices);
  if (!matched.ok) return fail(headLine, '', heads.join(', '), matched.words);
  const kind = matched.kind;
  const columns = matched.columns.map(place);
  const bare = columns.map((at) => ({
    cells: data.map(({ cells }) => withoutUnit(cells[at] ?? '').bare),
    small: true,
  }));
  const decimal = decimalOf(bare) ?? '.';
  yield parts.lines + parts.stamps;

  const leftOut: Problem[] = [];
  let leftOutCount = 0;
  const leave = (line: number, field: string, cell: string, words: string, allowed = ''): void => {
    leftOutCount++;
    if (leftOut.length < mostProblems)
      leftOut.push(problem({ file, line, field, found: cell, allowed }, words));
  };
  const isEmpty = (cell: string): boolean => isNothing(cell) || nines.test(cell) || cell === choices.missing;

  // In the file's own unit first: a year in °F that has a summer goes beyond what °C can be.
  const numbers = bare.map(({ cells }) =>
    Float64Array.from(cells, (cell) => (isEmpty(cell) ? NaN : valueOf(cell, decimal))),
  );
  const said = columns.map((at) => temperatureUnitIn(unitTexts[at] ?? '')).find((unit) => unit !== undefined);
  const inFile = said ?? temperatureUnitIn(preamble);
  let hot = 0;
  let cold = 0;
  for (const value of numbers.at(-1) ?? []) {
    if (value > plausible.to && value < 140) hot++;
    if (value <= plausible.to) cold++;
  }
  const unit = choices.unit ?? inFile ?? (hot > cold / 50 ? '°F' : '°C');
  const unitBy = choices.unit ? 'choice' : inFile ? 'file' : 'values';

  const kept = { moments: [] as number[], low: [] as number[], high: [] as number[] };
  const seen = new Set<number>();
  let [empty, duplicates, clockBack, usable] = [0, 0, 0, 0];
  const forms = kind === 'days' ? 'a day, such as 2012-01-31' : 'a day and a time, such as 2012-01-31 18:00';
  const [lowName = '', highName = lowName] = matched.columns;
  for (const [index, { number: line, cells }] of data.entries()) {
    if (index % slice === slice - 1) yield parts.lines + parts.stamps + (parts.values * index) / data.length;
    const stamp = stamps[index];
    const moment = stamp && momentOf(stamp, order.order);
    if (moment === undefined) {
      const cell = stampColumns
        .map((at) => cells[at] ?? '')
        .join(' ')
        .trim();
      leave(line, heads[stampColumns[0] ?? 0] ?? '', cell, `Here must stand ${forms}; the line was left out`);
      continue;
    }
    const values = columns.map((at, which) => {
      const cell = cells[at] ?? '';
      if (isEmpty(cell)) return undefined;
      const value = toBase('temperature', numbers[which]?.[index] ?? NaN, unit);
      const name = matched.columns[which] ?? '';
      if (Number.isNaN(value))
        leave(line, name, cell, 'Here must stand a number, such as -3.5; it was left out');
      else if (value < plausible.from || value > plausible.to) {
        const words = `No weather station has read this: it must be between ${plausible.from} °C and ${plausible.to} °C, and was left out; for a mark of missing readings there is --missing`;
        leave(line, name, cell, words);
        return NaN;
      }
      return value;
    });
    if (values.some((value) => value === undefined)) {
      empty++;
      continue;
    }
    const [low = NaN, high = low] = values;
    if (Number.isNaN(low) || Number.isNaN(high)) continue;
    if (low > high) {
      const shown = `${cells[columns[0] ?? 0]} and ${cells[columns[1] ?? 0]}`;
      leave(line, `${lowName}, ${highName}`, shown, 'The low is above the high; the day was left out');
      continue;
    }
    const stampMoment = kind === 'days' ? Math.floor(moment / (day * hour)) : moment;
    usable++;
    if (seen.has(stampMoment)) {
      if (kind === 'hours' && mayChangeClock(moment)) clockBack++;
      else duplicates++;
      continue;
    }
    seen.add(stampMoment);
    kept.moments.push(moment);
    kept.low.push(low);
    kept.high.push(high);
  }
  if (duplicates > mostUnusable * usable) {
    const few = heads.filter((_, at) => {
      const kinds = new Set(data.slice(0, 200_000).map(({ cells }) => cells[at] ?? ''));
      return !stampColumns.includes(at) && kinds.size > 1 && kinds.size <= 20;
    });
    const allowed = few.length === 0 ? '' : `; columns that may name the place: ${few.join(', ')}`;
    const words = `${duplicates} of ${data.length} lines have a time that an earlier line has already; --location picks one place out of several${allowed}`;
    return fail(data[0]?.number ?? headLine, '', '', words);
  }
  if (leftOutCount > mostUnusable * data.length || kept.moments.length === 0)
    return leftOut.length > 0
      ? { ok: false, problems: leftOut }
      : fail(data[0]?.number ?? headLine, lowName, '', 'No line has a reading');

  const readings: Readings = {
    moments: Float64Array.from(kept.moments),
    low: Float64Array.from(kept.low),
    high: Float64Array.from(kept.high),
  };
  const every = usualStep(readings.moments);
  const account = {
    delimiter: delimiterNames[delimiter],
    kind,
    order,
    columns: matched.columns,
    unit,
    unitBy,
    lines: data.length,
    every,
    empty,
    duplicates,
    clockBack,
    leftOut: [
      ...leftOut,
      ...(leftOutCount > leftOut.length
        ? [
            problem(
              { file, line: leftOut.at(-1)?.line ?? 1, field: '', found: '', allowed: '' },
              `and ${leftOutCount - leftOut.length} more places after this one`,
            ),
          ]
        : []),
    ],
  } as const;
  if (kind === 'days') {
    const days = kept.moments
      .map((moment, index): Day => ({
        date: dateOf(Math.floor(moment / (day * hour))),
        low: kept.low[index] ?? NaN,
        high: kept.high[index] ?? NaN,
      }))
      .sort((one, other) => (one.date < other.date ? -1 : 1));
    return {
      ok: true,
      days,
      hours: undefined,
      account: { ...account, clockForward: 0, filled: 0, partDays: 0, longestGap: null },
    };
  }
  if (every > longestStep)
    return fail(
      data[1]?.number ?? headLine,
      '',
      `one every ${Math.round(every / 360) / 10} h`,
      'Readings must be no more than 3 h apart, or be the lowest and highest of days, as the coldest hours would be missed',
    );
  const { hours, days, ...told } = gridOf(readings, every);
  return { ok: true, days, hours, account: { ...account, ...told } };
}

/** `weatherReading` in one go. */
export function readWeather(text: string, file: string, choices: WeatherChoices = {}): ReadWeather {
  const steps = weatherReading(text, file, choices);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
