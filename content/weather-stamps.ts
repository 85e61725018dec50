import { nearestName } from '../calculators/bench/nearest.ts';
import { readStamp, readTimeOfDay, type Stamp } from '../calculators/logger/stamps.ts';
import type { Line } from './delimited.ts';

/** Where a weather file has its days and times: in one column, in two, or in one each for year, month, day and hour. */

/** Columns of the stamp that somebody has named, by their heads. */
export interface ColumnNames {
  readonly date?: string | undefined;
  readonly time?: string | undefined;
}

export type StampLayout =
  | {
      readonly ok: true;
      /** From 1; that of the data where there are no heads. */
      readonly headLine: number;
      readonly heads: readonly string[];
      /** Heads and what stands below them, where units may be. */
      readonly unitTexts: readonly string[];
      /** What stands above the heads. */
      readonly preamble: string;
      readonly data: readonly Line[];
      /** From 0. */
      readonly stampColumns: readonly number[];
      readonly stampOf: (cells: readonly string[]) => Stamp | undefined;
    }
  | { readonly ok: false; readonly line: number; readonly found: string; readonly words: string };

/** 20120131, 2012013118 and 201201311800, as services write them. */
const compact =
  /^((?:18|19|20)\d{2})(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])(?:T?([01]\d|2[0-4])(?::?([0-5]\d))?)?$/u;

function dayOf(cell: string): Stamp | undefined {
  const found = compact.exec(cell);
  if (!found) return readStamp(cell);
  const [, year, month, date, hours, minutes = '0'] = found;
  const clock = hours === undefined ? undefined : Number(hours) * 3600 + Number(minutes) * 60;
  return {
    numbers: [Number(year), Number(month), Number(date)],
    orders: ['year-first'],
    clock,
    zone: undefined,
  };
}

/** A time in a column of its own: 18:30, or the hour alone, 0 to 24. */
function timeOf(cell: string): number | undefined {
  const clock = readTimeOfDay(cell)?.clock;
  if (clock !== undefined) return clock;
  const hours = /^\d{1,2}(?:[.,]0+)?$/u.test(cell) ? Number(cell.replace(/[.,].*/u, '')) : NaN;
  if (hours <= 24) return hours * 3600;
  const hundred = /^([01]\d|2[0-4])([0-5]\d)$/u.exec(cell);
  return hundred ? Number(hundred[1]) * 3600 + Number(hundred[2]) * 60 : undefined;
}

const sampleSize = 300;

const partNames = {
  year: ['year', 'yr', 'yyyy', 'yy', 'jahr', 'año', 'année'],
  month: ['month', 'mon', 'mo', 'mm', 'monat', 'mes', 'mois'],
  day: ['day', 'dy', 'dd', 'da', 'tag', 'día', 'jour'],
  hour: ['hour', 'hr', 'hh', 'stunde', 'hora', 'heure', 'time', 'hrmn'],
} as const;

const isNamed = (head: string, names: readonly string[]): boolean =>
  names.includes(head.trim().toLowerCase());

/** The columns of year, month, day and hour, where a line of heads names them so. */
function partColumns(lines: readonly Line[]) {
  for (const line of lines.slice(0, 60)) {
    const at = (part: keyof typeof partNames): number =>
      line.cells.findIndex((cell) => isNamed(cell, partNames[part]));
    const [year, month, day, hour] = [at('year'), at('month'), at('day'), at('hour')];
    if (year >= 0 && month >= 0 && day >= 0) return { line, year, month, day, hour };
  }
  return undefined;
}

const fourFigures = (year: number): number => (year < 100 ? (year < 50 ? 2000 : 1900) + year : year);

/** Finds the stamps of a file by a sample of its lines. */
export function stampReader(lines: readonly Line[], names: ColumnNames): StampLayout {
  const sample = lines.slice(0, sampleSize);
  const width = Math.max(...sample.map(({ cells }) => cells.length));
  const columns = Array.from({ length: width }, (_, at) => at);
  const examples = '2026-01-31 18:00, 31/01/2026, 1/31/2026 6:00 PM, 20260131 or columns year, month and day';
  const fail = (words: string, found = ''): StampLayout => ({
    ok: false,
    line: lines[0]?.number ?? 1,
    found,
    words,
  });

  const ready = (
    stampColumns: readonly number[],
    stampOf: (cells: readonly string[]) => Stamp | undefined,
  ): StampLayout => {
    const first = lines.findIndex(({ cells }) => stampOf(cells) !== undefined);
    if (first < 0) return fail(`No line has a day, such as ${examples}`, lines[1]?.cells.join(' ') ?? '');
    const above = lines.slice(0, first);
    // Heads are as wide as the data, with a unit in the line between or without; a title is not.
    const wide = above.filter(({ cells }) => cells.filter((cell) => cell !== '').length * 2 > width);
    const isUnits = ({ cells }: Line): boolean =>
      cells.some((cell) => /^\W*(?:[°º˚]?\s?[CF]|deg.*)\W*$/iu.test(cell)) && wide.length > 1;
    const head = wide.filter((line) => !isUnits(line)).at(-1);
    const below = wide.filter((line) => line !== head && isUnits(line));
    return {
      ok: true,
      headLine: head?.number ?? lines[first]?.number ?? 1,
      heads: columns.map((at) => (head?.cells[at] ?? '') || `column ${at + 1}`),
      unitTexts: columns.map((at) => [head, ...below].map((line) => line?.cells[at] ?? '').join(' ')),
      preamble: above
        .filter((line) => line !== head)
        .map(({ cells }) => cells.join(' '))
        .join('\n'),
      data: lines.slice(first),
      stampColumns,
      stampOf,
    };
  };

  const byName = (name: string): number | undefined => {
    for (const { cells } of lines.slice(0, 60)) if (cells.includes(name)) return cells.indexOf(name);
    return undefined;
  };
  for (const name of [names.date, names.time])
    if (name !== undefined && byName(name) === undefined) {
      const heads = lines[0]?.cells ?? [];
      const nearest = nearestName(name, heads);
      return fail(
        `there is no column "${name}", only ${heads.join(', ')}${nearest === undefined ? '' : `; did you mean ${nearest}?`}`,
      );
    }

  const parts = names.date === undefined ? partColumns(lines) : undefined;
  if (parts) {
    const { year, month, day, hour } = parts;
    const whole = /^\d{1,4}(?:\.0+)?$/u;
    return ready([year, month, day, ...(hour < 0 ? [] : [hour])], (cells): Stamp | undefined => {
      const texts = [cells[year] ?? '', cells[month] ?? '', cells[day] ?? ''];
      if (!texts.every((text) => whole.test(text))) return undefined;
      const clock = hour < 0 ? undefined : timeOf(cells[hour] ?? '');
      if (hour >= 0 && clock === undefined) return undefined;
      const [y = 0, m = 0, d = 0] = texts.map(Number);
      return { numbers: [fourFigures(y), m, d], orders: ['year-first'], clock, zone: undefined };
    });
  }

  const count = (at: number, is: (cell: string) => boolean): number =>
    sample.filter(({ cells }) => is(cells[at] ?? '')).length;
  const counts = columns.map((at) => count(at, (cell) => dayOf(cell) !== undefined));
  const most = Math.max(0, ...counts);
  const date = names.date === undefined ? counts.indexOf(most) : byName(names.date);
  if (date === undefined || (most === 0 && names.date === undefined))
    return fail(`No line has a day, such as ${examples}`, sample[1]?.cells.join(' ') ?? '');
  const withClock = count(date, (cell) => dayOf(cell)?.clock !== undefined);
  if (withClock > most / 2) return ready([date], (cells) => dayOf(cells[date] ?? ''));
  // The time stands beside the day, or in a column whose head says so.
  const isHours = (at: number): boolean =>
    sample.some(({ cells }) => isNamed(cells[at] ?? '', [...partNames.hour, 'uhrzeit', 'time of day']));
  const time =
    names.time === undefined
      ? columns.find(
          (at) =>
            at !== date &&
            ((Math.abs(at - date) === 1 &&
              count(at, (cell) => readTimeOfDay(cell)?.clock !== undefined) > most / 2) ||
              (isHours(at) && count(at, (cell) => timeOf(cell) !== undefined) > most / 2)),
        )
      : byName(names.time);
  if (time === undefined) return ready([date], (cells) => dayOf(cells[date] ?? ''));
  return ready([date, time], (cells) => {
    const stamp = dayOf(cells[date] ?? '');
    const clock = timeOf(cells[time] ?? '');
    return stamp && clock !== undefined ? { ...stamp, clock } : undefined;
  });
}
