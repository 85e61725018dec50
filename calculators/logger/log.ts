import { loggedIds, type LoggedId } from './columns.ts';

/** A line of a logger's file as it was read. */
export interface LoggedRow {
  readonly line: number;
  /** By the clock on the wall, or by universal time where the file says so [s]. */
  readonly moment: number;
  /** In base units; left out where nothing was read. */
  readonly values: Readonly<Partial<Record<LoggedId, number>>>;
}

/** What a logger recorded: rising times, one value or none for each. */
export interface Log {
  /** By the clock that the file began with [s since 1970]. */
  readonly begin: number;
  /** True seconds since the beginning. */
  readonly times: Float64Array;
  /** By what the column holds; NaN where nothing was read. Columns that the file does not have are left out. */
  readonly values: Readonly<Partial<Record<LoggedId, Float64Array>>>;
  /** Usual time between two rows [s]. */
  readonly every: number;
}

/** The clock on the wall was put forward or back by an hour; the line is the first after that. */
export interface ClockChange {
  readonly line: number;
  readonly by: 3600 | -3600;
}

/** What had to be put right to make a log of the rows. */
export interface LogAccount {
  /** Lines whose stamp an earlier line has; the first is kept. */
  readonly duplicates: readonly number[];
  /** Lines that stand before a line that is older. */
  readonly unsorted: number;
  readonly newestFirst: boolean;
  readonly clockChanges: readonly ClockChange[];
  /** Longer than two rows: from the line before, so many seconds. */
  readonly gaps: readonly { readonly afterLine: number; readonly length: number }[];
}

/** The middle of some numbers. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}

const hour = 3600;

/** Clocks are put forward and back on a Sunday between midnight and four in the morning, in most of the world. */
function mayChangeClock(moment: number): boolean {
  const date = new Date(moment * 1000);
  return date.getUTCDay() === 0 && date.getUTCHours() < 4;
}

/**
 * Where the clock on the wall jumped. Back: the stamps step back by an hour and go through it again. Forward: exactly
 * one hour of a Sunday morning is missing. Rows that are out of order in any other way leave no way to tell, and then
 * nothing is changed.
 */
function clockChangesIn(rows: readonly LoggedRow[], every: number): ClockChange[] {
  const changes: ClockChange[] = [];
  let astray = false;
  const slack = Math.min(every / 2, 300);
  for (let index = 1; index < rows.length; index++) {
    const [before, after] = [rows[index - 1]!, rows[index]!];
    const step = after.moment - before.moment;
    const back = Math.abs(step - (every - hour)) <= slack && step < 0;
    const forward = Math.abs(step - (every + hour)) <= slack;
    if (back && mayChangeClock(after.moment)) changes.push({ line: after.line, by: -3600 });
    else if (forward && every < hour && mayChangeClock(after.moment) && mayChangeClock(before.moment + every))
      changes.push({ line: after.line, by: 3600 });
    else if (step < 0) astray = true;
  }
  return astray ? [] : changes;
}

/**
 * Puts the rows of a file in order: newest first is turned round, clock changes are taken out, the rest is sorted, of
 * rows with one stamp the first is kept.
 *
 * @param wallClock whether stamps are by a clock that may be put forward and back
 */
export function logOf(
  given: readonly LoggedRow[],
  wallClock: boolean,
): { readonly log: Log; readonly account: LogAccount } {
  const steps = given.slice(1).map((row, index) => row.moment - given[index]!.moment);
  const newestFirst = steps.filter((step) => step < 0).length > steps.length / 2;
  const rows = newestFirst ? [...given].reverse() : given;
  const every = median(steps.map(Math.abs).filter((step) => step > 0)) || hour;

  const clockChanges = wallClock ? clockChangesIn(rows, every) : [];
  const changeAt = new Map(clockChanges.map(({ line, by }) => [line, by]));
  let ahead = 0;
  let unsorted = 0;
  const timed = rows.map((row) => {
    ahead += changeAt.get(row.line) ?? 0;
    return { ...row, moment: row.moment - ahead };
  });
  for (let index = 1; index < timed.length; index++)
    if (timed[index]!.moment < timed[index - 1]!.moment) unsorted++;
  const sorted = [...timed].sort((one, other) => one.moment - other.moment);

  const duplicates: number[] = [];
  const kept: LoggedRow[] = [];
  const gaps: { afterLine: number; length: number }[] = [];
  for (const row of sorted) {
    const before = kept.at(-1);
    if (before?.moment === row.moment) {
      duplicates.push(row.line);
      continue;
    }
    if (before && row.moment - before.moment > 2.5 * every)
      gaps.push({ afterLine: before.line, length: row.moment - before.moment });
    kept.push(row);
  }
  const begin = kept[0]?.moment ?? 0;
  const columns = loggedIds.filter((id) => kept.some(({ values }) => values[id] !== undefined));
  return {
    log: {
      begin,
      times: Float64Array.from(kept, ({ moment }) => moment - begin),
      values: Object.fromEntries(
        columns.map((id) => [id, Float64Array.from(kept, ({ values }) => values[id] ?? NaN)]),
      ),
      every,
    },
    account: { duplicates, unsorted, newestFirst, clockChanges, gaps },
  };
}

/** Readings further apart than this are not joined by a line [s] (assumption). */
const longestJoin = hour;

/**
 * A column at even times: straight between the readings on either side, NaN where they are more than an hour apart.
 *
 * @param times rising [s]
 */
export function resampled({ times: own, values }: Log, id: LoggedId, times: ArrayLike<number>): Float64Array {
  const column = values[id];
  const result = new Float64Array(times.length).fill(NaN);
  if (!column) return result;
  // Only rows that have a value.
  const known: number[] = [];
  column.forEach((value, index) => {
    if (!Number.isNaN(value)) known.push(index);
  });
  let place = 0;
  for (let index = 0; index < times.length; index++) {
    const time = times[index]!;
    while (place < known.length && own[known[place]!]! < time) place++;
    const after = known[place];
    const before = known[place - 1];
    if (after !== undefined && own[after] === time) result[index] = column[after]!;
    else if (after !== undefined && before !== undefined && own[after]! - own[before]! <= longestJoin) {
      const share = (time - own[before]!) / (own[after]! - own[before]!);
      result[index] = column[before]! + share * (column[after]! - column[before]!);
    }
  }
  return result;
}

/**
 * Mean power between the readings of a meter that counts up [W], set at the end of each interval; NaN before the first,
 * and where the meter was set back.
 *
 * @param times [s]
 * @param counted [J]
 */
export function powerOfCounter(times: ArrayLike<number>, counted: ArrayLike<number>): Float64Array {
  const power = new Float64Array(times.length).fill(NaN);
  let last = -1;
  for (let index = 0; index < times.length; index++) {
    if (Number.isNaN(counted[index]!)) continue;
    if (last >= 0 && counted[index]! >= counted[last]!)
      power[index] = (counted[index]! - counted[last]!) / (times[index]! - times[last]!);
    last = index;
  }
  return power;
}
