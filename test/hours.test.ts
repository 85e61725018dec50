import { quantileSeq } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { climateOf } from '../calculators/climate/record.ts';
import { readWeather, type ReadWeather, type WeatherChoices } from '../content/weather-file.ts';
import { expectNear } from './support/near.ts';
import { hoursOfBeijing } from './support/records.ts';

const text = hoursOfBeijing();
const rows = text
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').map(Number));
const all = rows.map((row) => row[4] ?? NaN);
const two = (number = 0): string => String(number).padStart(2, '0');

type Good = Extract<ReadWeather, { ok: true }>;
function read(file: string, choices: WeatherChoices = {}): Good {
  const result = readWeather(file, 'hours.csv', choices);
  if (!result.ok) throw new Error(result.problems.map((one) => one.text).join('\n'));
  return result;
}
function refusal(file: string, choices: WeatherChoices = {}): string {
  const result = readWeather(file, 'hours.csv', choices);
  return result.ok ? 'read' : result.problems.map((one) => one.text).join('\n');
}
const climate = ({ days, hours }: Good) => climateOf(days, 7, hours);

describe('the hours of Beijing, 2010 to 2014', () => {
  const good = read(text);
  const place = climate(good);

  it('are all read', () => {
    expect(good.account).toMatchObject({
      kind: 'hours',
      unit: '°C',
      unitBy: 'values',
      every: 3600,
      lines: 43_824,
      duplicates: 0,
      leftOut: [],
    });
    expect(place).toMatchObject({ hoursUsed: 43_824, daysMissing: 0, winters: 4, recordLowest: -19 });
  });

  it('give the percentiles that another program works out of the same readings', () => {
    // mathjs, quantileSeq: between neighbours in proportion, as R's type 7.
    expectNear(place.exceeded996, Number(quantileSeq(all, 0.004)), 1e-9);
    expectNear(place.exceeded99, Number(quantileSeq(all, 0.01)), 1e-9);
  });

  it('leave 35 and 88 hours of an average year below the design temperatures', () => {
    // ASHRAE Fundamentals, climatic design information: 99.6 % and 99 % of 8,760 h are exceeded but for 35 and 88 h
    // (from memory). Readings are whole degrees, so the count is taken below and at the mark.
    const perYear = (is: (value: number) => boolean): number => all.filter(is).length / 5;
    for (const [mark, hours] of [
      [place.exceeded996, 35],
      [place.exceeded99, 88],
    ] as const) {
      expect(perYear((value) => value < mark)).toBeLessThanOrEqual(hours);
      expect(perYear((value) => value <= mark)).toBeGreaterThanOrEqual(hours);
    }
  });

  it('have degree hours, winters and months as they are counted by hand', () => {
    const below = (base: number): number =>
      (all.reduce((sum, value) => sum + (value < base ? base - value : 0), 0) / 43_824) * 365.2425 * 24;
    for (const { below: base, sum } of place.degreeHours) expectNear(sum / 3600, below(base), 1e-6);
    const lowestOf = (winter: number): number =>
      Math.min(
        ...rows
          .filter(([year = 0, month = 0]) => (month < 7 ? year - 1 : year) === winter)
          .map((row) => row[4] ?? NaN),
      );
    const lowests = [2010, 2011, 2012, 2013].map(lowestOf);
    expectNear(place.usualLowest, lowests.reduce((sum, low) => sum + low) / 4, 1e-9);
    const january = rows.filter(([, month]) => month === 1);
    const lows = new Map<string, number>();
    for (const [year, , day, , value = NaN] of january)
      lows.set(`${year}-${day}`, Math.min(value, lows.get(`${year}-${day}`) ?? Infinity));
    expectNear(
      place.months[0]?.meanLow ?? NaN,
      [...lows.values()].reduce((sum, low) => sum + low, 0) / lows.size,
      1e-9,
    );
  });

  it('have no three days with a lower mean than the snap', () => {
    let lowest = Infinity;
    for (let at = 0; at + 72 <= all.length; at++)
      lowest = Math.min(lowest, all.slice(at, at + 72).reduce((sum, value) => sum + value) / 72);
    expectNear(place.coldestSnap.mean, lowest, 1e-9);
    expect(place.coldestSnap).toMatchObject({ begins: '2010-01-04', lowest: -19 });
  });

  /** The same readings in the forms in which services and loggers write them. */
  const forms: [string, (row: number[]) => string, string, WeatherChoices?][] = [
    [
      'semicolons, day first, decimal commas',
      ([y, m, d, h, t = 0]) => `${two(d)}.${two(m)}.${y} ${two(h)}:00;${t},0`,
      'Datum;Temperatur °C',
    ],
    [
      'month first, twelve hours, °F',
      ([y, m, d, h = 0, t = 0]) =>
        `${m}/${d}/${y} ${h % 12 || 12}:00 ${h < 12 ? 'AM' : 'PM'},${(t * 1.8 + 32).toFixed(1)}`,
      'Time,Outdoor Temp (°F)',
    ],
    [
      '°F that no head tells',
      ([y, m, d, h, t = 0]) => `${y}-${two(m)}-${two(d)}T${two(h)}:00:00Z,${(t * 1.8 + 32).toFixed(1)},50`,
      'time,temp,humidity',
    ],
    [
      'compact stamps and nines',
      ([y, m, d, h, t]) => `44;${y}${two(m)}${two(d)}${two(h)};3; ${t}.0;-999;eor`,
      'STATIONS_ID;MESS_DATUM;QN_9;TT_TU;RF_TU;eor',
    ],
    [
      'day and time in two columns with tabs',
      ([y, m, d, h, t]) => `${y}/${m}/${d}\t${two(h)}:00\t${t}`,
      'Date\tTime\tAir temperature',
    ],
    [
      'blanks, and hours as bare numbers',
      ([y, m, d, h, t]) => `  ${y} ${two(m)} ${two(d)} ${two(h)}   ${t}`,
      'YYYY MM DD HH TEMP',
    ],
    [
      'a title, heads and a line of units',
      ([y, m, d, h, t]) => `${y}-${two(m)}-${two(d)} ${two(h)}:00,${t},${(t ?? 0) - 3}`,
      'Station 54511\nTime,Temperature,Dew point\n,°C,°C',
    ],
    ['without heads', ([y, m, d, h, t]) => `${y}-${two(m)}-${two(d)} ${two(h)}:00;${t}`, ''],
  ];
  it.each(forms)('say the same with %s', (_, line, head, choices = {}) => {
    const again = climate(read([...(head === '' ? [] : [head]), ...rows.map(line)].join('\r\n'), choices));
    expectNear(again.exceeded996, place.exceeded996, 0.05);
    expectNear(again.exceeded99, place.exceeded99, 0.05);
    expectNear(again.usualLowest, place.usualLowest, 0.05);
    expect(again).toMatchObject({ hoursUsed: 43_824, firstDay: '2010-01-01', lastDay: '2014-12-31' });
  });

  it('say nearly the same of every third hour, and of clocks that are put forward and back', () => {
    const third = climate(
      read(
        [
          'year,month,day,hour,TEMP',
          ...rows.filter((row) => (row[3] ?? 0) % 3 === 0).map((row) => row.join(',')),
        ].join('\n'),
      ),
    );
    // Whole degrees, and a line between readings in place of two hours: within one degree.
    expectNear(third.exceeded996, place.exceeded996, 1);
    const summer = (moment: number): boolean => {
      const date = new Date(moment);
      const sunday = (month: number) => {
        const last = new Date(Date.UTC(date.getUTCFullYear(), month + 1, 0));
        return Date.UTC(date.getUTCFullYear(), month, last.getUTCDate() - last.getUTCDay(), 1);
      };
      return moment >= sunday(2) && moment < sunday(9);
    };
    const wall = rows.map(([y = 0, m = 0, d, h = 0, t]) => {
      const moment = Date.UTC(y, m - 1, d, h);
      const shown = new Date(moment + (summer(moment) ? 3_600_000 : 0)).toISOString();
      return `${shown.slice(0, 10)} ${shown.slice(11, 16)},${t}`;
    });
    const jumping = read(['time,temp', ...wall].join('\n'));
    expect(jumping.account).toMatchObject({ clockBack: 5, clockForward: 5, duplicates: 0, filled: 0 });
    expectNear(climate(jumping).exceeded996, place.exceeded996, 1e-9);
  });

  it('are told where they have gaps, twins and slips', () => {
    const lines = text.trim().split('\n');
    lines.splice(3005, 100);
    lines.splice(5000, 2);
    lines.splice(7000, 0, lines[6999] ?? '');
    lines[9000] = '2011,1,11,3,abc';
    lines[9001] = '2011,1,11,4,NA';
    lines[9100] = '2011,2,30,4,1';
    const { account, days } = read(lines.join('\n'));
    expect(account.longestGap).toMatchObject({ hours: 100, day: '2010-05-06' });
    expect(account.duplicates).toBe(1);
    expect(account.empty).toBe(1);
    expect(account.partDays).toBe(2);
    expect(account.leftOut.map((one) => one.text)).toEqual([
      'hours.csv, line 9001, TEMP: Here must stand a number, such as -3.5; it was left out. Found: abc',
      expect.stringMatching(
        /^hours\.csv, line 9101, year: Here must stand a day and a time.*Found: 2011 2 30 4$/u,
      ),
    ]);
    expect(days).toHaveLength(1826 - 5);
  });
});

describe('a weather file that does not tell', () => {
  const hours = (count: number, line: (index: number) => string): string =>
    Array.from({ length: count }, (_, index) => line(index)).join('\n');

  it.each<[string, string, RegExp, WeatherChoices?]>([
    [
      'which temperature',
      `time,indoor t,roof temp,tree temp\n${hours(30, (at) => `2020-01-01 ${two(at % 24)}:30,1,2,3`)}`,
      /line 1: "roof temp" and "tree temp" may be.*--temperature/u,
    ],
    [
      'day or month',
      `time,temp\n${hours(9, (at) => `01/02/2020 0${at + 1}:00,1`)}`,
      /line 2, time: The day or the month may come first.*--order.*Found: 01\/02\/2020 01:00/u,
    ],
    [
      'lows and highs',
      `date,mean\n${hours(9, (at) => `2020-01-0${at + 1},1`)}`,
      /needs a column of lows and one of highs/u,
    ],
    [
      'a temperature',
      `time,rain,wind\n${hours(20, (at) => `2020-01-01 ${two(at)}:00,1,2`)}`,
      /line 1: No column is called a temperature/u,
    ],
    [
      'two readings a day',
      `time,temp\n${hours(18, (at) => `2020-01-${two(1 + (at >> 1))} ${at % 2 ? '18' : '06'}:00,1`)}`,
      /must be no more than 3 h apart.*Found: one every 12 h/u,
    ],
    ['anything', '\n\n', /line 1: The file is empty/u],
    ['any day', 'a,b\n1,2\n3,4', /No line has a day, such as.*Found: 1 2/u],
    [
      'that column',
      `time,temp\n2020-01-01 10:00,1`,
      /there is no column "tmep", only time, temp; did you mean temp/u,
      { temperature: 'tmep' },
    ],
  ])('%s is refused with what to do', (_, file, words, choices = {}) => {
    expect(refusal(file, choices)).toMatch(words);
  });
});
