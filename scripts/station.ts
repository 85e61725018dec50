import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { stringify } from 'yaml';
import { groundDepth } from '../calculators/climate/ground.ts';
import { climateOf, ShortRecord, type Climate } from '../calculators/climate/record.ts';
import { temperatureUnits, type LoggedTemperatureUnit } from '../calculators/logger/columns.ts';
import type { DateOrder } from '../calculators/logger/stamps.ts';
import { fromBase } from '../calculators/quantities/quantity.ts';
import { textOf } from '../content/logger-text.ts';
import { isId } from '../content/region-schema.ts';
import { weatherReading, type ReadWeather, type WeatherChoices } from '../content/weather-file.ts';
import { climateWords, weatherWords } from '../content/weather-words.ts';
import { BadInput, given, reasonOf, runCommand, type Surroundings, oneOfThese } from './command.ts';
import { root } from './steps.ts';

const help = `Makes a weather record for a region's stations out of a file of hours, or of daily lows and highs.

  npm run region -- station TABLE.csv [--id ID --name NAME --source WORDS] [options]

Without --id, --name and --source it tells what it finds and writes nothing. Days and times may have any common form,
cells may be parted by commas, semicolons, tabs, bars or blanks; "npm run station -- TABLE.csv" does the same.

  --file FILE        the table, instead of naming it first
  --id ID            what regions call the record; the file becomes content/stations/ID.yaml
  --name NAME        where it was measured
  --source WORDS     whose readings these are; or the name of one of the guide’s sources, such as vega-weather
  --location WHICH   only the lines that have this in the column "location"; or COLUMN=WHICH
  --date COLUMN      column of the day, or of day and time, where its form does not tell
  --time COLUMN      column of the time, where it stands apart
  --order WHICH      day-first or month-first, where no line tells
  --temperature COL  column of the temperature outside, where its head does not tell
  --low COLUMN       column of the day's lowest temperature
  --high COLUMN      column of the day's highest temperature
  --unit UNIT        °C or °F, where the heads do not tell
  --missing TEXT     what stands where nothing was read, beside empty cells, NA, NaN and nines such as -999
  --winter MONTH     number of the month in which winters begin to be counted: 7, or 1 south of the equator (7)
  --out FILE         where to write the record instead
  --help             this text
`;

/** Larger than this is no file of hours: thirty years of them with ten columns are a tenth of it [bytes]. */
const largestFile = 400_000_000;

/** A tenth of a degree is what stations read. */
const degrees = (value: number): string => `${(Math.round(value * 10) / 10 + 0).toFixed(1)} °C`;

/** How what was not read was worked out, for whoever reads the record. */
const method = (winterBegins: number, hourly: boolean): string =>
  [
    'The usual lowest is the mean of the lowest reading of each winter of which the three coldest months are on the record',
    `(winters counted from month ${winterBegins}).`,
    ...(hourly
      ? [
          'The temperatures exceeded in 99.6 % and 99 % of the hours are of the hours of whole years as they were read,',
          'those of one hour taken together; gaps of up to two hours are bridged.',
        ]
      : [
          'The temperatures exceeded in 99.6 % and 99 % of the hours are estimates:',
          'the hours of each day are put between its low and its high by the daily-range fractions of an ordinary day.',
        ]),
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
  const { hoursUsed, coldestSnap } = climate;
  const hourly = hoursUsed !== undefined;
  return `# A weather record, made by "npm run region -- station" out of ${hourly ? 'hourly readings' : 'daily lows and highs'}. Do not edit: make it again.
${entry('name', name)}
${entry('source', source)}
${entry('method', method(winterBegins, hourly))}
firstDay: ${climate.firstDay}
lastDay: ${climate.lastDay}
daysMissing: ${climate.daysMissing}
${hourly ? `hoursUsed: ${hoursUsed}\n` : ''}winters: ${climate.winters}
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
# In an average year, how far and how long it was colder.
degreeHours:
${climate.degreeHours
  .map(
    ({ below, sum }) =>
      `  - below: ${degrees(below)}\n    sum: ${Math.round(fromBase('degreeHours', sum, 'K·h'))} K·h`,
  )
  .join('\n')}
# The three days in a row with the lowest mean.
coldestSnap:
  begins: ${coldestSnap.begins}
  mean: ${degrees(coldestSnap.mean)}
  lowest: ${degrees(coldestSnap.lowest)}
`;
}

function optionsOf(args: readonly string[]) {
  const text = { type: 'string' } as const;
  const { values, positionals } = parseArgs({
    args: [...args],
    strict: true,
    allowPositionals: true,
    options: {
      file: text,
      id: text,
      name: text,
      source: text,
      location: text,
      date: text,
      time: text,
      order: text,
      temperature: text,
      low: text,
      high: text,
      unit: text,
      missing: text,
      winter: { ...text, default: '7' },
      out: text,
      help: { type: 'boolean', default: false },
    },
  });
  const [file, ...more] = [...positionals, ...(values.file === undefined ? [] : [values.file])];
  if (more.length > 0) throw new BadInput(`One file at a time. Found: ${[file, ...more].join(' ')}`);
  return { ...values, file };
}

function textIn(file: string, folder: string): string {
  const path = given(file, folder);
  try {
    if (statSync(path).size > largestFile)
      throw new BadInput(`${file} is too large: ${largestFile / 1e6} MB is the most.`);
    return textOf(readFileSync(path));
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw new BadInput(`${file} cannot be read: ${reasonOf(error)}.`);
  }
}

/** One of some words, or a complaint. */
function oneOf<T extends string>(option: string, value: string | undefined, allowed: readonly T[]) {
  const found = allowed.find((one) => one === value);
  if (value !== undefined && found === undefined)
    throw new BadInput(`--${option} must be ${oneOfThese(allowed)}. Found: ${value}`);
  return found;
}

function choicesOf(options: ReturnType<typeof optionsOf>): WeatherChoices {
  const { location, date, time, temperature, low, high, missing } = options;
  const at = location?.indexOf('=') ?? -1;
  return {
    date,
    time,
    temperature,
    low,
    high,
    missing,
    unit: oneOf<LoggedTemperatureUnit>('unit', options.unit, temperatureUnits),
    dateOrder: oneOf<DateOrder>('order', options.order, ['day-first', 'month-first', 'year-first']),
    only:
      location === undefined
        ? undefined
        : at < 0
          ? { column: 'location', value: location }
          : { column: location.slice(0, at), value: location.slice(at + 1) },
  };
}

/** Reads the file; a person who watches sees how far it is. */
function readShown(text: string, file: string, choices: WeatherChoices, at: Surroundings): ReadWeather {
  const steps = weatherReading(text, file, choices);
  let shown = -1;
  for (;;) {
    const { done, value } = steps.next();
    if (done) {
      if (at.terminal && shown >= 0) at.write('\r\u001B[K');
      return value;
    }
    const percent = Math.floor(value * 100);
    if (at.terminal && percent > shown) at.write(`\r${file}: ${percent} %`);
    shown = percent;
  }
}

/** The climate of a file; a record that is too short is told as what was given. */
function climateOrRefuse(read: ReadWeather, winterBegins: number, file: string): Climate {
  if (!read.ok) throw new BadInput(read.problems.map(({ text }) => text).join('\n'));
  try {
    return climateOf(read.days, winterBegins, read.hours);
  } catch (error) {
    if (error instanceof ShortRecord) throw new BadInput(`${file} is too short a record: ${error.message}.`);
    throw error;
  }
}

/** Makes a weather record as `npm run region -- station` does; see the help above. */
export function station(args: readonly string[], surroundings: Surroundings): void {
  const { folder, write } = surroundings;
  const options = optionsOf(args);
  if (options.help) {
    write(help);
    return;
  }
  const { file, id, name, source } = options;
  if (!file) throw new BadInput('Name the file; --help says what else there is.');
  if (id !== undefined && !isId(id))
    throw new BadInput(`--id must be small letters, digits and hyphens. Found: ${id}`);
  const winterBegins = Number(options.winter);
  if (!Number.isInteger(winterBegins) || winterBegins < 1 || winterBegins > 12)
    throw new BadInput(`--winter must be the number of a month, 1 to 12. Found: ${options.winter}`);

  const read = readShown(textIn(file, folder), basename(file), choicesOf(options), surroundings);
  const climate = climateOrRefuse(read, winterBegins, file);
  const told = read.ok ? weatherWords(read.account) : [];
  const words = [...told, '', ...climateWords(climate)].map((line) => `${line}\n`).join('');
  if (!id || !name || !source) {
    write(
      `${words}\nNothing was written. To make a record of it, give --id, --name and --source; --help says what they are.\n`,
    );
    return;
  }
  const out =
    options.out === undefined ? join(root, 'content', 'stations', `${id}.yaml`) : given(options.out, folder);
  try {
    writeFileSync(out, yamlOf(climate, name, source, winterBegins));
  } catch (error) {
    throw new BadInput(`${out} cannot be written: ${reasonOf(error)}.`);
  }
  write(`${words}\nWritten: ${out}\n`);
}

if (import.meta.main) await runCommand(station);
