import { fields } from '../calculators/bench/fields.ts';
import {
  loggedIds,
  matchColumns,
  powerUnitIn,
  powerUnits,
  temperatureUnitIn,
  temperatureUnits,
  type Column,
  type LoggedId,
  type LoggedPowerUnit,
  type LoggedTemperatureUnit,
} from '../calculators/logger/columns.ts';
import {
  logOf,
  powerOfCounter,
  type Log,
  type LogAccount,
  type LoggedRow,
} from '../calculators/logger/log.ts';
import {
  decimalOf,
  isNothing,
  valueOf,
  withoutUnit,
  type DecimalSign,
} from '../calculators/logger/numbers.ts';
import { momentOf, orderOf, type DateOrder, type OrderFound } from '../calculators/logger/stamps.ts';
import { toBase } from '../calculators/quantities/quantity.ts';
import { showLimit, type Manner } from '../calculators/quantities/show.ts';
import { delimiterNames, delimiterOf, readLines } from './delimited.ts';
import { layoutOf, slice, type Layout } from './logger-layout.ts';
import { problem, type Problem } from './problem.ts';

/**
 * The file of a data logger: delimited text with a line of heads, then a stamp and a value for each sensor on every
 * line, in whatever form the logger's program writes. What is certain is read; what could mean two things is asked.
 */

/** What a reader has said about a file, where the file does not say it or could mean several things. */
export interface LoggerChoices {
  /** What columns hold, by their number from 1; `none` leaves one out. */
  readonly columns?: Readonly<Record<number, LoggedId | 'none'>>;
  readonly temperatureUnit?: LoggedTemperatureUnit;
  readonly powerUnit?: LoggedPowerUnit;
  readonly dateOrder?: DateOrder;
  readonly decimal?: DecimalSign;
}

/** Something that the file does not tell. Whoever answers puts one of `allowed` into the choices. */
export interface Question {
  readonly about: keyof LoggerChoices;
  /** Number of the column, where it is about one. */
  readonly column?: number;
  readonly text: string;
  readonly allowed: readonly string[];
}

/** What became of one column. */
export interface ColumnAccount extends Column {
  readonly unit: string | null;
  readonly read: number;
  /** Cells that are empty or hold a mark for "nothing". */
  readonly empty: number;
}

/** What was read of a file and what was left out. */
export interface LoggerAccount extends LogAccount {
  readonly delimiter: string;
  /** Line of the heads; null where the file has none. */
  readonly headLine: number | null;
  readonly rows: number;
  readonly order: DateOrder;
  readonly orderBy: 'form' | 'size' | 'sequence' | 'choice';
  readonly columns: readonly ColumnAccount[];
  /** Cells and lines that were passed over, each with its line, column, what was found and what is allowed. */
  readonly leftOut: readonly Problem[];
}

export type ReadLogger =
  | { readonly ok: true; readonly log: Log; readonly account: LoggerAccount }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly questions: readonly Question[] };

/** Longest text that is looked at [characters]: a year of minutes with ten columns is half of it. */
const longestText = 64_000_000;
/** Where more than this part of the cells of a column cannot be read, the file is not what it seems [1]. */
const mostUnreadable = 0.1;
/** More problems than this have one cause. */
const mostProblems = 10;

/** Limits are said in metric units: the file's own are not known where its limits are at stake. */
const manner: Manner = { system: 'metric', locale: 'en' };

function limitsOf(id: LoggedId): string {
  const { quantity, from, to } = fields.readings.fields[id];
  return `between ${showLimit(from, quantity, manner, 'lowest')} and ${showLimit(to, quantity, manner, 'highest')}`;
}

const labelOf = (id: LoggedId): string => fields.readings.fields[id].label;

/** A column that is read, with its unit. */
interface Held extends Column {
  readonly holds: LoggedId;
  readonly unit: string | undefined;
}

const isCounted = (unit: string | undefined): boolean => unit === 'Wh' || unit === 'kWh';

/** A value in base units; of a meter that counts up, in J. */
function inBase(holds: LoggedId, value: number, unit: string): number {
  if (holds !== 'power') return toBase('temperature', value, unit);
  if (unit === 'Wh') return toBase('energy', value / 1000, 'kWh');
  return unit === 'kWh' ? toBase('energy', value, unit) : toBase('power', value, unit);
}

/** The columns that are read, with their units: of the head, the line of units, the first cells, what stands above. */
function heldColumns(layout: Layout, columns: readonly Column[], choices: LoggerChoices): Held[] {
  return columns.flatMap((column): Held[] => {
    const { number, holds } = column;
    if (holds === null) return [];
    const find = holds === 'power' ? powerUnitIn : temperatureUnitIn;
    const inCells = layout.data
      .slice(0, 20)
      .map(({ cells }) => find(withoutUnit(cells[number - 1] ?? '').unit))
      .find((unit) => unit !== undefined);
    const said = find(layout.unitTexts[number - 1] ?? '') ?? inCells;
    const unit =
      holds === 'power'
        ? (said ?? choices.powerUnit)
        : (said ?? temperatureUnitIn(layout.preamble) ?? choices.temperatureUnit);
    return [{ ...column, holds, unit }];
  });
}

const barely = (layout: Layout, { number }: Column): string[] =>
  layout.data.map(({ cells }) => withoutUnit(cells[number - 1] ?? '').bare);

/** What the file itself does not tell. */
function questionsOf(
  layout: Layout,
  held: readonly Held[],
  order: OrderFound,
  decimal: DecimalSign | undefined,
): Question[] {
  const questions: Question[] = [];
  if (order.order === undefined) {
    const example = layout.data[0]?.cells[layout.day] ?? '';
    const text = `Does the day or the month come first in “${example}”?`;
    questions.push({ about: 'dateOrder', text, allowed: order.possible });
  }
  if (decimal === undefined) {
    const example = held.flatMap((column) => barely(layout, column)).find((cell) => /[.,]\d{3}$/u.test(cell));
    const text = `Which sign stands before the decimals, as in “${example ?? ''}”?`;
    questions.push({ about: 'decimal', text, allowed: ['.', ','] });
  }
  const bare = held.filter(({ unit }) => unit === undefined);
  const temperature = bare.find(({ holds }) => holds !== 'power');
  if (temperature) {
    const text = `In which unit are the temperatures, such as “${temperature.head}”?`;
    questions.push({ about: 'temperatureUnit', text, allowed: temperatureUnits });
  }
  const power = bare.find(({ holds }) => holds === 'power');
  if (power) {
    const text = `In which unit is “${power.head}”? A meter that counts up is in Wh or kWh.`;
    questions.push({ about: 'powerUnit', text, allowed: powerUnits });
  }
  return questions;
}

interface Rows {
  readonly rows: readonly LoggedRow[];
  readonly columns: readonly { readonly read: number; readonly empty: number }[];
  readonly leftOut: readonly Problem[];
  /** Much that cannot be read is a sign that the file was taken for something that it is not. */
  readonly broken: boolean;
}

/** Reads every line; what cannot be read is passed over and told. Hands out the number of lines after each slice. */
function* rowsOf(
  layout: Layout,
  held: readonly Held[],
  order: DateOrder,
  decimal: DecimalSign,
  file: string,
): Generator<number, Rows> {
  const { data, stamps, day, time, heads } = layout;
  const leftOut: Problem[] = [];
  const counted = held.map((column) => ({ column, count: { read: 0, empty: 0, wrong: 0 } }));
  const rows: LoggedRow[] = [];
  for (const [index, { number: line, cells }] of data.entries()) {
    if (index % slice === slice - 1) yield index + 1;
    const stamp = stamps[index];
    const moment = stamp?.clock === undefined ? undefined : momentOf(stamp, order);
    if (stamp === undefined || moment === undefined) {
      const found = [cells[day], time === undefined ? '' : cells[time]].join(' ').trim();
      const at = {
        file,
        line,
        field: heads[day] ?? '',
        found,
        allowed: 'a day and a time as on other lines',
      };
      leftOut.push(problem(at, 'The line must have a day and a time as the others have; it was left out'));
      continue;
    }
    const values: Partial<Record<LoggedId, number>> = {};
    counted.forEach(({ column: { number, head, holds, unit = '' }, count }) => {
      const cell = cells[number - 1] ?? '';
      if (isNothing(cell)) {
        count.empty++;
        return;
      }
      const value = valueOf(withoutUnit(cell).bare, decimal);
      const base = Number.isNaN(value) ? NaN : inBase(holds, value, unit);
      const { from, to } = fields.readings.fields[holds];
      const inside = isCounted(unit) ? base >= 0 : base >= from && base <= to;
      if (inside) {
        count.read++;
        values[holds] = base;
        return;
      }
      count.wrong++;
      const allowed = Number.isNaN(base) ? 'a number' : isCounted(unit) ? '0 or more' : limitsOf(holds);
      const words = `${labelOf(holds)} must be ${allowed}; it was left out`;
      leftOut.push(problem({ file, line, field: head, found: cell, allowed }, words));
    });
    rows.push({ line, moment: moment - (stamp.zone ?? 0), values });
  }
  return {
    rows,
    columns: counted.map(({ count }) => count),
    leftOut,
    broken:
      rows.length < 2 ||
      data.length - rows.length > mostUnreadable * data.length ||
      counted.some(({ count: { read, wrong } }) => wrong > mostUnreadable * (read + wrong)),
  };
}

/** How the work on a file is parted: cells, stamps, bare numbers, rows [1]. */
const parts = { lines: 0.3, stamps: 0.3, bare: 0.1, rows: 0.3 } as const;

/**
 * Reads the text of a logger's file, slice by slice: after each it hands out how much of the work is done [1], so that a
 * page can show it and answer in between.
 *
 * @param text all of it
 * @param file its name, for the problems
 * @param choices what the reader has said about it
 */
export function* loggerReading(
  text: string,
  file: string,
  choices: LoggerChoices = {},
): Generator<number, ReadLogger> {
  let before = 0;
  /** Hands on what a part of the work says of itself, as a share of the whole. */
  const share = function* <T>(
    steps: Generator<number, T>,
    part: number,
    whole: number,
  ): Generator<number, T> {
    for (;;) {
      const { done, value } = steps.next();
      if (done) {
        before += part;
        yield before;
        return value;
      }
      yield before + (part * value) / Math.max(1, whole);
    }
  };
  const fail = (line: number, found: string, allowed: string, words: string): ReadLogger => ({
    ok: false,
    problems: [problem({ file, line, field: '', found, allowed }, words)],
    questions: [],
  });
  const wanted = 'delimited text: a line of heads, then a day, a time and values on each line';
  if (text.length > longestText)
    return fail(1, `${text.length} characters`, `${longestText} characters`, 'The file is too long');
  const plain = text.replace(/^\uFEFF/u, '');
  if (
    plain
      .slice(0, 10_000)
      .match(/\p{Cc}/gu)
      ?.some((sign) => !'\t\r\n'.includes(sign))
  )
    return fail(1, 'control characters', wanted, 'The file must be text: export it as CSV from its program');
  const delimiter = delimiterOf(plain);
  const lines = yield* share(readLines(plain, delimiter), parts.lines, plain.length);
  const first = lines[0];
  if (!first) return fail(1, '', wanted, 'The file is empty');
  const layout = yield* share(layoutOf(lines), parts.stamps, lines.length);
  if (!layout) {
    const examples = '2026-01-31 18:30, 31/01/2026 18:30 or 1/31/2026 6:30 PM';
    return fail(
      first.number,
      first.cells.join(' '),
      examples,
      `No line has a day and a time, such as ${examples}`,
    );
  }

  const { columns, unclear } = matchColumns(
    layout.heads
      .map((head, index) => ({ number: index + 1, head }))
      .filter(({ number }) => number - 1 !== layout.day && number - 1 !== layout.time),
    choices.columns,
  );
  const held = heldColumns(layout, columns, choices);
  const found = orderOf(layout.stamps.filter((stamp) => stamp !== undefined));
  if (found.order === undefined && found.possible.length === 0) {
    const [line = first] = layout.data;
    const text = line.cells[layout.day] ?? '';
    return fail(line.number, text, 'a day of the calendar', 'No line has a day that there is');
  }
  const order: OrderFound =
    found.order === undefined && choices.dateOrder && found.possible.includes(choices.dateOrder)
      ? { order: choices.dateOrder, by: 'choice' }
      : found;
  const bare: { cells: string[]; small: boolean }[] = [];
  for (const column of held) {
    bare.push({ cells: barely(layout, column), small: column.holds !== 'power' });
    yield before + (parts.bare * bare.length) / held.length;
  }
  before += parts.bare;
  const decimal = choices.decimal ?? decimalOf(bare);
  const questions: Question[] = [
    ...unclear.map(({ column, head }) => ({
      about: 'columns' as const,
      column,
      text: `What does the column “${head}” hold?`,
      allowed: [...loggedIds, 'none'],
    })),
    ...questionsOf(layout, held, order, decimal),
  ];
  if (questions.length > 0 || order.order === undefined || decimal === undefined)
    return { ok: false, problems: [], questions };
  if (held.length === 0)
    return fail(
      layout.headLine ?? first.number,
      layout.heads.join(', '),
      loggedIds.join(', '),
      'No column is read',
    );

  const read = yield* share(rowsOf(layout, held, order.order, decimal, file), parts.rows, layout.data.length);
  if (read.broken) {
    const problems = read.leftOut.slice(0, mostProblems);
    return problems.length > 0
      ? { ok: false, problems, questions: [] }
      : fail(
          layout.data[0]?.number ?? 1,
          `${read.rows.length}`,
          '2 or more',
          'The file must have two lines or more',
        );
  }
  // Stamps with a zone are true times already; so are those of a head that names one.
  const zone = layout.stamps.find((stamp) => stamp?.zone !== undefined)?.zone;
  const wallClock = zone === undefined && !/\b(?:GMT|UTC)\b/u.test(layout.heads[layout.day] ?? '');
  const { log, account } = logOf(
    read.rows.map((row) => ({ ...row, moment: row.moment + (zone ?? 0) })),
    wallClock,
  );
  const { power } = log.values;
  const counted = held.some(({ unit }) => isCounted(unit)) && power;
  return {
    ok: true,
    log: counted ? { ...log, values: { ...log.values, power: powerOfCounter(log.times, power) } } : log,
    account: {
      ...account,
      delimiter: delimiterNames[delimiter],
      headLine: layout.headLine,
      rows: log.times.length,
      order: order.order,
      orderBy: order.by,
      columns: columns.map((column) => {
        const which = held.findIndex(({ number }) => number === column.number);
        const { read: count = 0, empty = 0 } = read.columns[which] ?? {};
        return { ...column, unit: held[which]?.unit ?? null, read: count, empty };
      }),
      leftOut: read.leftOut,
    },
  };
}

/** `loggerReading` in one go. */
export function readLoggerFile(text: string, file: string, choices: LoggerChoices = {}): ReadLogger {
  const steps = loggerReading(text, file, choices);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
