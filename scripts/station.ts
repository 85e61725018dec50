import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { stringify } from 'yaml';
import { nearestName } from '../calculators/bench/nearest.ts';
import { groundDepth } from '../calculators/climate/ground.ts';
import { climateOf, ShortRecord, type Climate, type Day } from '../calculators/climate/record.ts';
import { findUnit, toBase } from '../calculators/quantities/quantity.ts';
import { isId } from '../content/region-schema.ts';
import { isDay } from '../content/station-schema.ts';
import { BadInput, given, reasonOf, runCommand, type Surroundings } from './command.ts';
import { readTable, type Row } from './csv.ts';
import { root } from './steps.ts';

const help = `Makes a weather record for a region's stations out of a table of daily lows and highs.

  npm run station -- --file TABLE.csv --id ID --name NAME --source WORDS [options]

  --file FILE        the table: one line of column names, then a line for each day; commas, semicolons or tabs
  --id ID            what regions call the record; the file becomes content/stations/ID.yaml
  --name NAME        where it was measured
  --source WORDS     whose readings these are; or the name of one of the guide’s sources, such as vega-weather
  --location WHICH   only the lines that have this in the column "location"; or COLUMN=WHICH
  --date COLUMN      column of the day, as 2012-01-31 (date)
  --low COLUMN       column of the day's lowest temperature (low)
  --high COLUMN      column of the day's highest temperature (high)
  --unit UNIT        unit of both, °C or °F (°C)
  --missing TEXT     what stands where nothing was read, beside empty cells, NA and NaN
  --winter MONTH     number of the month in which winters begin to be counted: 7, or 1 south of the equator (7)
  --out FILE         where to write the record instead
  --help             this text
`;

/** More errors than this do not fit on a screen, and have one cause. */
const mostErrors = 10;

/** The coldest and the warmest that a weather station can have read [°C]; beyond is a slip or a mark for "missing". */
const plausible = { from: -90, to: 60 } as const;

interface Columns {
  readonly date: string;
  readonly low: string;
  readonly high: string;
}

/** The days of a table, in order; or every line that is wrong. */
function daysOf(
  rows: readonly Row[],
  columns: Columns,
  unit: string,
  missing: readonly string[],
  file: string,
): Day[] {
  const errors: string[] = [];
  const days = new Map<string, Day & { readonly line: number }>();
  const isMissing = (cell: string): boolean => missing.includes(cell);
  for (const { line, cells } of rows) {
    const wrong = (what: string): void => void errors.push(`${file}, line ${line}: ${what}`);
    const cell = (column: string): string => cells.get(column) ?? '';
    const temperature = (column: string): number => {
      const text = cell(column).replace(',', '.').replace('−', '-');
      const value = toBase('temperature', /^[-+]?\d*\.?\d+$/u.test(text) ? Number(text) : NaN, unit);
      if (Number.isNaN(value)) wrong(`${column} must be a number, such as -3.5. Found: ${cell(column)}`);
      else if (value < plausible.from || value > plausible.to)
        wrong(
          `${column} must be between ${plausible.from} °C and ${plausible.to} °C; for a mark of missing readings there is --missing. Found: ${cell(column)}`,
        );
      return value;
    };
    const date = cell(columns.date).slice(0, 10);
    if (!isDay(date)) {
      wrong(`${columns.date} must be a day, such as 2012-01-31. Found: ${cell(columns.date)}`);
      continue;
    }
    if (isMissing(cell(columns.low)) || isMissing(cell(columns.high))) continue;
    const [low, high] = [temperature(columns.low), temperature(columns.high)];
    if (low > high) wrong(`the low (${cell(columns.low)}) is above the high (${cell(columns.high)})`);
    const before = days.get(date);
    if (before)
      wrong(`${date} stands on line ${before.line} already; --location picks one place out of several`);
    days.set(date, { line, date, low, high });
  }
  if (errors.length > mostErrors)
    errors.splice(mostErrors, Infinity, `and ${errors.length - mostErrors} more`);
  if (errors.length > 0) throw new BadInput(errors.join('\n'));
  return [...days.values()]
    .map(({ date, low, high }) => ({ date, low, high }))
    .sort((one, other) => (one.date < other.date ? -1 : 1));
}

/** A tenth of a degree is what stations read. */
const degrees = (value: number): string => `${(Math.round(value * 10) / 10 + 0).toFixed(1)} °C`;

/** How what was not read was worked out, for whoever reads the record. */
const method = (winterBegins: number): string =>
  [
    'The usual lowest is the mean of the lowest reading of each winter of which the three coldest months are on the record',
    `(winters counted from month ${winterBegins}).`,
    'The temperatures exceeded in 99.6 % and 99 % of the hours are estimates:',
    'the hours of each day are put between its low and its high by the daily-range fractions of an ordinary day.',
    `The ground is an estimate: the yearly wave of the monthly means, damped down to ${groundDepth} m in moist soil.`,
  ].join(' ');

function yamlOf(climate: Climate, name: string, source: string, winterBegins: number): string {
  const entry = (key: string, text: string): string =>
    stringify(
      { [key]: text },
      {
        defaultStringType: text.length > 90 ? 'BLOCK_FOLDED' : 'PLAIN',
        defaultKeyType: 'PLAIN',
        singleQuote: true,
        lineWidth: 110,
      },
    ).trimEnd();
  return `# A weather record, made by "npm run station" out of daily lows and highs. Do not edit: make it again.
${entry('name', name)}
${entry('source', source)}
${entry('method', method(winterBegins))}
firstDay: ${climate.firstDay}
lastDay: ${climate.lastDay}
daysMissing: ${climate.daysMissing}
winters: ${climate.winters}
usualLowest: ${degrees(climate.usualLowest)}
recordLowest: ${degrees(climate.recordLowest)}
exceeded996: ${degrees(climate.exceeded996)}
exceeded99: ${degrees(climate.exceeded99)}
ground: ${degrees(climate.ground)}
# January to December.
months:
${climate.months
  .map(({ meanLow, meanHigh }) => `  - meanLow: ${degrees(meanLow)}\n    meanHigh: ${degrees(meanHigh)}`)
  .join('\n')}
`;
}

function optionsOf(args: readonly string[]) {
  const text = { type: 'string' } as const;
  const { values } = parseArgs({
    args: [...args],
    strict: true,
    allowPositionals: false,
    options: {
      file: text,
      id: text,
      name: text,
      source: text,
      location: text,
      date: { ...text, default: 'date' },
      low: { ...text, default: 'low' },
      high: { ...text, default: 'high' },
      unit: { ...text, default: '°C' },
      missing: text,
      winter: { ...text, default: '7' },
      out: text,
      help: { type: 'boolean', default: false },
    },
  });
  return values;
}

function textOf(file: string, folder: string): string {
  try {
    return readFileSync(given(file, folder), 'utf8');
  } catch (error) {
    throw new BadInput(`${file} cannot be read: ${reasonOf(error)}.`);
  }
}

/** The climate of the days; a record that is too short is told as what was given. */
function climateOrRefuse(days: readonly Day[], winterBegins: number, file: string): Climate {
  try {
    return climateOf(days, winterBegins);
  } catch (error) {
    if (error instanceof ShortRecord) throw new BadInput(`${file} is too short a record: ${error.message}.`);
    throw error;
  }
}

/** Makes a weather record as `npm run station` does; see the help above. */
export function station(args: readonly string[], { folder, write }: Surroundings): void {
  const options = optionsOf(args);
  if (options.help) {
    write(help);
    return;
  }
  const { file, id, name, source, unit } = options;
  if (!file || !id || !name || !source)
    throw new BadInput('Give --file, --id, --name and --source; --help says what they are.');
  if (!isId(id)) throw new BadInput(`--id must be small letters, digits and hyphens. Found: ${id}`);
  if (!findUnit('temperature', unit)) throw new BadInput(`--unit must be °C or °F. Found: ${unit}`);
  const winterBegins = Number(options.winter);
  if (!Number.isInteger(winterBegins) || winterBegins < 1 || winterBegins > 12)
    throw new BadInput(`--winter must be the number of a month, 1 to 12. Found: ${options.winter}`);

  const { columns, rows } = readTable(textOf(file, folder));
  const [column = '', which = ''] = (options.location ?? '').includes('=')
    ? (options.location ?? '').split('=', 2)
    : ['location', options.location ?? ''];
  const wanted = [
    options.date,
    options.low,
    options.high,
    ...(options.location === undefined ? [] : [column]),
  ];
  for (const one of wanted)
    if (!columns.includes(one)) {
      const nearest = nearestName(one, columns);
      throw new BadInput(
        `${file}, line 1: there is no column "${one}", only ${columns.join(', ')}${nearest ? `; did you mean ${nearest}?` : ''}`,
      );
    }
  const chosen =
    options.location === undefined ? rows : rows.filter(({ cells }) => cells.get(column) === which);
  if (chosen.length === 0) {
    const places = [...new Set(rows.map(({ cells }) => cells.get(column) ?? ''))].slice(0, 20);
    throw new BadInput(
      options.location === undefined
        ? `${file} has no days in it`
        : `${file} has no line with "${which}" in the column ${column}, only ${places.join(', ')}`,
    );
  }
  const missing = ['', 'NA', 'NaN', ...(options.missing === undefined ? [] : [options.missing])];
  const days = daysOf(chosen, options, unit, missing, file);
  const climate = climateOrRefuse(days, winterBegins, file);
  const out =
    options.out === undefined ? join(root, 'content', 'stations', `${id}.yaml`) : given(options.out, folder);
  try {
    writeFileSync(out, yamlOf(climate, name, source, winterBegins));
  } catch (error) {
    throw new BadInput(`${out} cannot be written: ${reasonOf(error)}.`);
  }
  write(
    `${out}: ${days.length} days from ${climate.firstDay} to ${climate.lastDay}, ${climate.daysMissing} missing, ` +
      `${climate.winters} whole winters, usual lowest ${degrees(climate.usualLowest)}, record ${degrees(climate.recordLowest)}\n`,
  );
}

if (import.meta.main) await runCommand(station);
