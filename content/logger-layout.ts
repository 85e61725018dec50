import { meaningsOf } from '../calculators/logger/columns.ts';
import { readStamp, readTimeOfDay, type Stamp } from '../calculators/logger/stamps.ts';
import type { Line } from './delimited.ts';

/** Where a logger's file has what: lines above, heads, perhaps units, then a stamp and values on each line. */
export interface Layout {
  /** Columns of the stamp, from 0: day and time in one, or the time in a column of its own. */
  readonly day: number;
  readonly time: number | undefined;
  /** Line of the heads, where there is one. */
  readonly headLine: number | null;
  /** One for each column; "column 2" where there is none. */
  readonly heads: readonly string[];
  /** Heads and what stands below them, where units may be. */
  readonly unitTexts: readonly string[];
  /** What stands above the heads. */
  readonly preamble: string;
  readonly data: readonly Line[];
  /** Of each line of the data. */
  readonly stamps: readonly (Stamp | undefined)[];
}

/** So many lines show how a file is laid out. */
const sampleSize = 500;
/** No logger has its stamp further to the right. */
const mostColumns = 50;

const hasTime = (cell: string | undefined): boolean => readTimeOfDay(cell ?? '')?.clock !== undefined;

function stampOf(cells: readonly string[], day: number, time: number | undefined): Stamp | undefined {
  const stamp = readStamp(cells[day] ?? '');
  if (!stamp || stamp.clock !== undefined) return stamp;
  const apart = time === undefined ? undefined : readTimeOfDay(cells[time] ?? '');
  return apart?.clock === undefined ? undefined : { ...stamp, ...apart };
}

/** The column that most lines have a day in, and the one beside it with the time, if that stands apart. */
function stampColumns(lines: readonly Line[]): Pick<Layout, 'day' | 'time'> | undefined {
  const sample = lines.slice(0, sampleSize);
  const width = Math.min(mostColumns, Math.max(0, ...sample.map(({ cells }) => cells.length)));
  let best: Pick<Layout, 'day' | 'time'> | undefined;
  let most = 0;
  for (let day = 0; day < width; day++) {
    const stamped = sample.filter(({ cells }) => readStamp(cells[day] ?? '') !== undefined);
    if (stamped.length <= most) continue;
    most = stamped.length;
    const apart = stamped.filter(({ cells }) => readStamp(cells[day] ?? '')?.clock === undefined);
    const time = [day + 1, day - 1].find(
      (column) => apart.filter(({ cells }) => hasTime(cells[column])).length > stamped.length / 2,
    );
    best = { day, time };
  }
  return best;
}

/** A cell that is a unit and nothing else: "°C", "(deg F)", "[kW]", "Watts". */
const unit =
  /^[\s([]*(?:[°º˚\uFFFD?Â]*\s*[CF]|deg(?:rees?)?\.?\s*[CF]|celsius|fahrenheit|k?wh?|watts?)[\s)\]]*$/iu;

/** A line below the heads that holds nothing but units, and perhaps the form of the stamps. */
const isUnits = ({ cells }: Line): boolean =>
  cells.some((cell) => unit.test(cell)) &&
  cells.every((cell) => unit.test(cell) || (meaningsOf(cell).length === 0 && !/time|date/iu.test(cell)));

/** So many lines are looked at in one go: a hundredth of a second's work. */
export const slice = 2000;

/**
 * Finds the parts of a file; undefined where no line has a day and a time. After each slice of lines their number so far
 * is handed out.
 */
export function* layoutOf(lines: readonly Line[]): Generator<number, Layout | undefined> {
  const columns = stampColumns(lines);
  if (!columns) return undefined;
  const { day, time } = columns;
  const first = lines.findIndex(({ cells }) => stampOf(cells, day, time) !== undefined);
  if (first < 0) return undefined;
  const data = lines.slice(first);
  const above = lines.slice(0, first);
  const width = Math.max(...data.slice(0, sampleSize).map(({ cells }) => cells.length));
  // What stands in the one or two lines before the data and is as wide as it is heads; a title is not.
  const wide = above.filter(({ cells }) => cells.filter((cell) => cell !== '').length * 2 > width);
  const lowest = above.at(-1);
  const units = lowest && isUnits(lowest) && wide.some((line) => line !== lowest) ? lowest : undefined;
  const head = wide.filter((line) => line !== units).at(-1);
  const headCells = (index: number): string => head?.cells[index] ?? '';
  const stamps: (Stamp | undefined)[] = [];
  for (const { cells } of data) {
    stamps.push(stampOf(cells, day, time));
    if (stamps.length % slice === 0) yield stamps.length;
  }
  return {
    day,
    time,
    headLine: head?.number ?? null,
    heads: Array.from({ length: width }, (_, index) => headCells(index) || `column ${index + 1}`),
    unitTexts: Array.from(
      { length: width },
      (_, index) => `${headCells(index)} ${units?.cells[index] ?? ''}`,
    ),
    preamble: above
      .filter((line) => line !== head && line !== units)
      .map(({ cells }) => cells.join(' '))
      .join('\n'),
    data,
    stamps,
  };
}
