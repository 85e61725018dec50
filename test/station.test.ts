import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { hoursOfDay } from '../calculators/climate/daily-profile.ts';
import { coldestGround, soilDiffusivity } from '../calculators/climate/ground.ts';
import { climateOf, ShortRecord, type Day } from '../calculators/climate/record.ts';
import { dampingDepth } from '../calculators/laws/ground.ts';
import { readStation } from '../content/station-schema.ts';
import { region } from '../scripts/region.ts';
import { station as command } from '../scripts/station.ts';
import { runAlone, runHere } from './support/command.ts';
import { root } from './support/imports.ts';
import { expectNear, expectPrinted } from './support/near.ts';

const weather = 'node_modules/vega-datasets/data/weather.csv';
const folder = mkdtempSync(join(tmpdir(), 'station-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const station = (...args: string[]) => runHere(command, root, args);

/** How the records of this guide are made. */
const made = [
  { id: 'seattle-2012-2015', name: 'Seattle' },
  { id: 'new-york-2012-2015', name: 'New York' },
] as const;
const argumentsFor = ({ id, name }: (typeof made)[number], out: string): string[] => [
  ...[
    '--file',
    weather,
    '--location',
    name,
    '--low',
    'temp_min',
    '--high',
    'temp_max',
    '--id',
    id,
    '--name',
    name,
  ],
  ...['--source', 'vega-weather'],
  '--out',
  out,
];

/** The rows of one place, split by hand: the file has no quotes. */
const rowsOf = (place: string): { date: string; high: number; low: number }[] =>
  readFileSync(join(root, weather), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','))
    .filter(([location]) => location === place)
    .map(([, date = '', , high, low]) => ({ date, high: Number(high), low: Number(low) }));

describe.each(made)('the record of $name', { timeout: 60_000 }, (one) => {
  const kept = readFileSync(join(root, 'content/stations', `${one.id}.yaml`), 'utf8');
  const read = readStation(kept, one.id);
  const record = read.ok ? read.value : undefined;
  const rows = rowsOf(one.name);

  it('is what the command makes of the data today', async () => {
    const out = join(folder, `${one.id}.yaml`);
    const ran = await station(...argumentsFor(one, out));
    expect(ran.stderr).toBe('');
    expect(ran.status).toBe(0);
    expect(readFileSync(out, 'utf8')).toBe(kept);
  });

  it('has the lows of the file, counted by hand', () => {
    expect(rows).toHaveLength(1461);
    const lowest = (from: string, to: string): number =>
      Math.min(...rows.filter(({ date }) => date >= from && date <= to).map(({ low }) => low));
    expectNear(record?.recordLowest ?? NaN, lowest('2012-01-01', '2015-12-31'), 0.05);
    // Three winters are whole: the first lacks its December, the last its January.
    const winters = [2012, 2013, 2014].map((year) => lowest(`${year}-07-01`, `${year + 1}-06-30`));
    expect(record?.winters).toBe(3);
    expectNear(record?.usualLowest ?? NaN, winters.reduce((sum, low) => sum + low) / 3, 0.05 + 1e-9);
    expect(record).toMatchObject({ firstDay: '2012-01-01', lastDay: '2015-12-31', daysMissing: 0 });
  });

  it('has the record low that was read off the file before', () => {
    // Read by another program from the same file, vega-datasets 3.2.1: −16.0 °C in New York, −7.1 °C in Seattle.
    expectPrinted(record?.recordLowest ?? NaN, one.name === 'New York' ? '-16.0' : '-7.1');
  });

  it('has the monthly means of the file', () => {
    const mean = (values: number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
    record?.months.forEach(({ meanLow, meanHigh }, index) => {
      const month = rows.filter(({ date }) => date.slice(5, 7) === String(index + 1).padStart(2, '0'));
      expectNear(meanLow, mean(month.map(({ low }) => low)), 0.05 + 1e-9);
      expectNear(meanHigh, mean(month.map(({ high }) => high)), 0.05 + 1e-9);
    });
  });

  it('leaves four hours in a thousand, and one in a hundred, below its marks', () => {
    const hours = rows.flatMap(({ low, high }) => hoursOfDay(low, high));
    expect(hours).toHaveLength(1461 * 24);
    const below = (mark: number): number => hours.filter((hour) => hour < mark).length / hours.length;
    // Marks are written to a tenth of a degree, so the count is taken at both ends of that tenth.
    for (const [mark, share] of [
      [record?.exceeded996 ?? NaN, 0.004],
      [record?.exceeded99 ?? NaN, 0.01],
    ] as const) {
      expect(below(mark - 0.05)).toBeLessThanOrEqual(share);
      expect(below(mark + 0.05)).toBeGreaterThanOrEqual(share);
    }
  });
});

describe('hoursOfDay', () => {
  // Fractions of the daily range by hour, older editions of the ASHRAE handbook, as copies print them.
  it.each([
    [1, '0.87'],
    [5, '1.00'],
    [9, '0.71'],
    [12, '0.23'],
    [15, '0.00'],
    [18, '0.21'],
    [24, '0.82'],
  ])('hour %i is %s of the range below the highest', (hour, printed) =>
    expectPrinted((20 - (hoursOfDay(10, 20)[hour - 1] ?? NaN)) / 10, printed),
  );

  it('touches the low and the high and stays between them', () => {
    const hours = hoursOfDay(-7, 3);
    expect(hours).toHaveLength(24);
    expectNear(Math.min(...hours), -7, 1e-12);
    expectNear(Math.max(...hours), 3, 1e-12);
  });
});

describe('the ground', () => {
  it('is damped over the depths that are published', () => {
    // ISO 13370, periodic penetration depth of clay and silt, sand and gravel, rock: 2.2, 3.2 and 4.2 m (from memory),
    // of 1.5 W/(m·K) and 3.0e6 J/(m³·K), 2.0 and 2.0e6, 3.5 and 2.0e6.
    expectPrinted(dampingDepth(1.5 / 3e6), '2.2');
    expectPrinted(dampingDepth(2.0 / 2e6), '3.2');
    expectPrinted(dampingDepth(3.5 / 2e6), '4.2');
    // The package groundTemp for R, in its explanation of the model: 3.17 m for 1e-6 m²/s.
    expectPrinted(dampingDepth(1e-6), '3.17');
    expect(soilDiffusivity).toBeGreaterThan(1.5 / 3e6);
    expect(soilDiffusivity).toBeLessThan(2.0 / 2e6);
  });

  it('has the coldest month’s mean at its surface and the year’s mean far down', () => {
    expectNear(coldestGround(12, 8, 0), 4, 1e-12);
    expectNear(coldestGround(12, 8, 100), 12, 1e-6);
    expectNear(coldestGround(12, 8, dampingDepth(soilDiffusivity)), 12 - 8 / Math.E, 1e-12);
  });
});

/** Days from one to another, each with the same low and high. */
function days(from: string, to: string, low = 0, high = 10): Day[] {
  const all: Day[] = [];
  for (let at = Date.parse(`${from}T00:00Z`); at <= Date.parse(`${to}T00:00Z`); at += 86_400_000)
    all.push({ date: new Date(at).toISOString().slice(0, 10), low, high });
  return all;
}

describe('climateOf', () => {
  it('counts winters across the new year, and those of the south within one', () => {
    const all = days('2010-01-01', '2013-12-31').map((day) =>
      day.date === '2011-01-10' ? { ...day, low: -12 } : day,
    );
    expect(climateOf(all)).toMatchObject({ winters: 3, usualLowest: -4, recordLowest: -12 });
    const south = days('2010-01-01', '2013-12-31').map((day) =>
      day.date === '2011-07-10' ? { ...day, low: -12 } : day,
    );
    expect(climateOf(south, 1)).toMatchObject({ winters: 4, usualLowest: -3 });
  });

  it('leaves a winter with a gap in its cold months out, and counts the gap', () => {
    const gap = (date: string): boolean => date >= '2011-01-01' && date <= '2011-01-15';
    const all = days('2010-07-01', '2012-06-30').filter(({ date }) => !gap(date));
    expect(climateOf(all)).toMatchObject({ winters: 1, daysMissing: 15 });
  });

  it('refuses a record that is too short or has too many gaps', () => {
    expect(() => climateOf([])).toThrow(ShortRecord);
    expect(() => climateOf(days('2012-01-01', '2012-06-30'))).toThrow(ShortRecord);
    expect(() => climateOf(days('2012-01-01', '2012-12-31'))).toThrow(ShortRecord);
    expect(() => climateOf(days('2012-01-01', '2014-12-31').filter((_, index) => index % 5 > 0))).toThrow(
      ShortRecord,
    );
  });
});

describe('npm run station', { timeout: 60_000 }, () => {
  const table = (...lines: string[]): string => {
    const file = join(folder, 'table.csv');
    writeFileSync(file, lines.join('\n'));
    return file;
  };
  const out = join(folder, 'out.yaml');
  const about = ['--id', 'x', '--name', 'X', '--source', 'Invented for a test.', '--out', out];

  it('helps', async () => {
    const ran = await station('--help');
    expect(ran.status).toBe(0);
    for (const flag of [
      '--file',
      '--location',
      '--low',
      '--high',
      '--date',
      '--unit',
      '--name',
      '--id',
      '--out',
    ])
      expect(ran.stdout).toContain(flag);
  });

  it('works so as a process of its own, and ends with 2 where it cannot', () => {
    const alone = (...args: string[]) => runAlone('station.ts', root, args);
    const record = join(folder, 'alone.yaml');
    expect(alone(...argumentsFor(made[0], record))).toMatchObject({ status: 0, stderr: '' });
    expect(readFileSync(record, 'utf8')).toBe(
      readFileSync(join(root, 'content/stations', `${made[0].id}.yaml`), 'utf8'),
    );
    const refused = alone('--file', 'nowhere.csv', ...about);
    expect(refused).toMatchObject({ status: 2, stdout: '' });
    expect(refused.stderr).toBe('nowhere.csv cannot be read: there is no such file or folder.\n');
  });

  it('reads degrees Fahrenheit, semicolons, decimal commas, quotes and empty cells', async () => {
    const rows = days('2010-07-01', '2012-06-30').map(({ date }) => `${date};"14,0";50,0;X`);
    rows[3] = '2010-07-04;;;X';
    rows[4] = '2010-07-05;NA;NA;X';
    const file = table('day;min;max;place', ...rows, '');
    const ran = await station(
      '--file',
      file,
      '--date',
      'day',
      '--low',
      'min',
      '--high',
      'max',
      '--unit',
      '°F',
      ...about,
    );
    expect(ran.stderr).toBe('');
    const read = readStation(readFileSync(out, 'utf8'), 'out.yaml');
    // 14 °F is −10 °C, 50 °F is 10 °C.
    expect(read).toMatchObject({ ok: true, value: { usualLowest: -10, winters: 2, daysMissing: 2 } });
    if (read.ok) expect(read.value.months[0]).toEqual({ meanLow: -10, meanHigh: 10 });
    rmSync(out);
  });

  it.each([
    ['no file', ['--file', 'nowhere.csv'], /nowhere\.csv cannot be read: there is no such file/u],
    [
      'no column',
      ['--file', weather, '--low', 'temp_mni'],
      /line 1: there is no column "temp_mni".*did you mean temp_min\?/u,
    ],
    [
      'no such place',
      ['--file', weather, '--low', 'temp_min', '--high', 'temp_max', '--location', 'Paris'],
      /only Seattle, New York/u,
    ],
    [
      'two places in one',
      ['--file', weather, '--low', 'temp_min', '--high', 'temp_max'],
      /1461 of 2922 lines have a time that an earlier line has already; --location.*: location, /u,
    ],
    ['no such unit', ['--file', weather, '--unit', 'K'], /--unit must be °C or °F/u],
    ['no such option', ['--fiel', weather], /--fiel/u],
  ])('refuses %s', async (_, args, words) => {
    const ran = await station(...args, ...about);
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(words);
    expect(ran.stderr).not.toMatch(/at .*station\.ts/u);
  });

  it.each([
    ['2012-13-01,1,2', /table\.csv, line 2, date: No line has a day that there is/u],
    ['first of May,1,2', /table\.csv, line 1: No line has a day, such as.*Found: first of May 1 2/u],
    ['2012-01-01,one,2', /line 2, low: Here must stand a number.*Found: one/u],
    ['2012-01-01,-120,2', /line 2, low: No weather station has read this.*--missing/u],
    ['2012-01-01,5,2', /line 2, low, high: The low is above the high.*Found: 5 and 2/u],
    ['2012-01-01,-999,2', /line 2, low: No line has a reading/u],
    ['2012-01-01,1,2', /too short a record: there are 1 days/u],
  ])('refuses a file of the line %s', async (line, words) => {
    const ran = await station('--file', table('date,low,high', line), ...about);
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(words);
    expect(existsSync(out)).toBe(false);
  });

  it('leaves lines out that cannot be used, and tells which and why', async () => {
    const rows = days('2010-07-01', '2012-06-30').map(({ date }) => `${date},-4,6`);
    rows[10] = '2010-07-11,9,6';
    rows[20] = '2010-07-21,minus four,6';
    rows[30] = 'total,,';
    const ran = await station(table('date,low,high', ...rows), ...about);
    expect(ran).toMatchObject({ status: 0, stderr: '' });
    expect(ran.stdout).toMatch(/Left out: table\.csv, line 12, low, high: The low is above the high/u);
    expect(ran.stdout).toMatch(/Left out: table\.csv, line 22, low: .*Found: minus four/u);
    expect(ran.stdout).toMatch(/Left out: table\.csv, line 32, date: .*Found: total/u);
    expect(ran.stdout).toMatch(/3 days missing/u);
    rmSync(out);
  });

  it('tells what it finds without writing, until the record has a name and a source', async () => {
    const rows = days('2010-07-01', '2012-06-30').map(({ date }) => `${date},-4,6`);
    const ran = await runHere(region, root, ['station', table('date,low,high', ...rows)]);
    expect(ran).toMatchObject({ status: 0, stderr: '' });
    expect(ran.stdout).toMatch(/Nothing was written.*--id, --name and --source/u);
    expect(ran.stdout).toMatch(/Mean of each winter’s lowest +−4\.0 °C \(24\.8 °F\)/u);
  });
});
