import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchColumns, meaningsOf, powerUnitIn, temperatureUnitIn } from '../calculators/logger/columns.ts';
import { logOf, powerOfCounter, resampled, type LoggedRow } from '../calculators/logger/log.ts';
import { decimalOf, valueOf, withoutUnit } from '../calculators/logger/numbers.ts';
import { momentOf, orderOf, readStamp, readTimeOfDay, type Stamp } from '../calculators/logger/stamps.ts';
import { steadiestWindow } from '../calculators/logger/window.ts';
import { expectNear } from './support/near.ts';

const utc = (text: string): number => Date.parse(`${text}Z`) / 1000;

describe('heads of columns', () => {
  it.each([
    ['Outside', 'outside'],
    ['Temp, °F (LGR S/N: 10, LBL: greenhouse air)', 'house'],
    ['T_under_bench', 'under'],
    ['Pipe surface', 'loop'],
    ['Root zone (°C)', 'roots'],
    ['Energy kWh', 'power'],
  ])('%s holds %s', (head, id) => {
    expect(meaningsOf(head)).toEqual([id]);
  });

  it.each([
    ['Temp (°C)', '°C'],
    ['Temp, Â°F', '°F'],
    ['Temp \uFFFDC', '°C'],
    ['temp_deg F', '°F'],
    ['Temperature (F)', '°F'],
    ['T [C]', '°C'],
    ['Celsius', '°C'],
    ['degrees C', '°C'],
    ['Temp', undefined],
    ['Channel', undefined],
    ['Floor', undefined],
    ['from °C to °F', undefined],
  ])('%s is in %s', (head, unit) => {
    expect(temperatureUnitIn(head)).toBe(unit);
  });

  it.each([
    ['Power (W)', 'W'],
    ['Power [kW]', 'kW'],
    ['Meter kWh', 'kWh'],
    ['counter, Wh', 'Wh'],
    ['Power', undefined],
  ])('%s counts in %s', (head, unit) => {
    expect(powerUnitIn(head)).toBe(unit);
  });

  it('that say two things, or the same twice, or nothing, are not guessed', () => {
    const heads = (...names: string[]) => names.map((head, index) => ({ number: index + 1, head }));
    expect(matchColumns(heads('pot under cover', 'house')).unclear).toEqual([
      { column: 1, head: 'pot under cover', why: 'several-meanings' },
    ]);
    expect(matchColumns(heads('pot 1', 'pot 2')).unclear.map(({ why }) => why)).toEqual([
      'said-twice',
      'said-twice',
    ]);
    expect(matchColumns(heads('channel 1', 'channel 2')).unclear.map(({ why }) => why)).toEqual([
      'nothing-known',
      'nothing-known',
    ]);
    const { columns, unclear } = matchColumns(heads('pot 1', 'pot 2', 'channel'), { 2: 'none', 3: 'loop' });
    expect(unclear).toEqual([]);
    expect(columns.map(({ holds }) => holds)).toEqual(['roots', null, 'loop']);
  });
});

describe('stamps', () => {
  const evening = utc('2026-01-31T18:30:00');

  it.each([
    ['2026-01-31 18:30', 'year-first'],
    ['2026-01-31T18:30:00', 'year-first'],
    ['2026/1/31 18:30:00.000', 'year-first'],
    ['31.01.2026 18:30', 'day-first'],
    ['31/01/26 18:30:00', 'day-first'],
    ['31-1-2026, 6:30 PM', 'day-first'],
    ['1/31/2026 6:30:00 p.m.', 'month-first'],
    ['01/31/26 06:30 pm', 'month-first'],
    ['31 Jan 2026 18:30', 'day-first'],
    ['31-Jan-26 18:30', 'day-first'],
    ['January 31, 2026 18:30', 'day-first'],
  ] as const)('%s', (text, order) => {
    const stamp = readStamp(text);
    expect(stamp && momentOf(stamp, order)).toBe(evening);
  });

  it.each([
    ['12:00 AM', 0],
    ['12:30 am', 1800],
    ['12:00 PM', 12 * 3600],
    ['1:05 p.m.', 13 * 3600 + 300],
    ['24:00', 86_400],
    ['7h45', 7 * 3600 + 45 * 60],
  ])('%s is %i seconds after midnight', (text, clock) => {
    expect(readTimeOfDay(text)?.clock).toBe(clock);
  });

  it.each([
    '',
    'Total',
    '12',
    '13:61',
    '0:30 am',
    '2026-01-31 25:00',
    '32',
    '5 Foo 2026',
    '1.5',
    '21.5',
    '-3.25',
  ])('%j is no stamp', (text) => {
    expect(readStamp(text)?.clock).toBeUndefined();
  });

  it('a temperature is no time of day', () => {
    expect(readTimeOfDay('7.45')).toBeUndefined();
  });

  it('know their zone where they say it', () => {
    expect(readStamp('2026-01-31T18:30:00Z')?.zone).toBe(0);
    expect(readStamp('2026-01-31T18:30:00-05:00')?.zone).toBe(-5 * 3600);
    expect(readStamp('2026-01-31 18:30 +0930')?.zone).toBe(9.5 * 3600);
  });

  it('of days that do not exist have no moment', () => {
    const stamp = readStamp('31/02/2026 12:00') as Stamp;
    expect(momentOf(stamp, 'day-first')).toBeUndefined();
    expect(momentOf(stamp, 'month-first')).toBeUndefined();
  });

  const stampsOf = (...texts: string[]): Stamp[] => texts.map((text) => readStamp(text) as Stamp);

  it('show their order by a number that is no month, or by following each other; else it is asked', () => {
    expect(orderOf(stampsOf('31/01/2026 18:00', '01/02/2026 18:00'))).toEqual({
      order: 'day-first',
      by: 'size',
    });
    expect(orderOf(stampsOf('01/31/2026 18:00', '02/01/2026 18:00'))).toEqual({
      order: 'month-first',
      by: 'size',
    });
    expect(orderOf(stampsOf('11/03/2026 23:50', '11/04/2026 00:00'))).toEqual({
      order: 'month-first',
      by: 'sequence',
    });
    expect(orderOf(stampsOf('03/11/2026 23:50', '04/11/2026 00:00'))).toEqual({
      order: 'day-first',
      by: 'sequence',
    });
    expect(orderOf(stampsOf('03/11/2026 18:00', '03/11/2026 18:10'))).toEqual({
      order: undefined,
      possible: ['day-first', 'month-first'],
    });
    // Monthly readings, or daily ones: nobody can tell.
    expect(orderOf(stampsOf('01/02/2026 8:00', '01/03/2026 8:00', '01/04/2026 8:00')).order).toBe(
      'month-first',
    );
    expect(orderOf(stampsOf('01/02/2026 8:00', '05/06/2026 8:00')).order).toBeUndefined();
  });

  it('one damaged day among many does not decide', () => {
    const night = Array.from({ length: 30 }, (_, index) => `1/${index + 1}/2026 8:00`);
    expect(orderOf(stampsOf(...night, '40/40/2026 8:00'))).toEqual({ order: 'month-first', by: 'size' });
  });
});

describe('numbers', () => {
  const temperatures = (...cells: string[]) => decimalOf([{ cells, small: true }]);
  const powers = (...cells: string[]) => decimalOf([{ cells, small: false }]);

  it('show their decimal sign, or leave it open', () => {
    expect(temperatures('21,5', '3')).toBe(',');
    expect(temperatures('21.5', '3')).toBe('.');
    expect(temperatures('3', '4')).toBe('.');
    expect(temperatures('12,345')).toBe(',');
    expect(powers('1,234')).toBeUndefined();
    expect(powers('1,234', '1,234.5')).toBe('.');
    expect(powers('1.234', '0,5')).toBe(',');
    expect(powers('1.234', '0.125')).toBe('.');
    expect(temperatures('21,5', '21.5')).toBeUndefined();
  });

  it.each([
    ['−3,5', ',', -3.5],
    ['-3.5', '.', -3.5],
    ['1.234,5', ',', 1234.5],
    ['1,234.5', '.', 1234.5],
    ['1e3', '.', 1000],
    ['.5', '.', 0.5],
    ['abc', '.', NaN],
    ['1.2.3', '.', NaN],
    ['--', '.', NaN],
  ] as const)('%s with %s is %f', (cell, decimal, value) => {
    expect(valueOf(cell, decimal)).toBe(value);
  });

  it('may have a unit behind them', () => {
    expect(withoutUnit('12.5 °C')).toEqual({ bare: '12.5', unit: '°C' });
    expect(withoutUnit('400W')).toEqual({ bare: '400', unit: 'W' });
    expect(withoutUnit('12.5')).toEqual({ bare: '12.5', unit: '' });
  });
});

/** Rows every ten minutes from a moment, with the house falling by a tenth each. */
function rowsFrom(begin: string, count: number): LoggedRow[] {
  return Array.from({ length: count }, (_, index) => ({
    line: index + 2,
    moment: utc(begin) + index * 600,
    values: { house: 5 - 0.1 * index },
  }));
}

describe('a log', () => {
  it('is sorted, keeps the first of two lines with one time, and says so', () => {
    const rows = rowsFrom('2026-01-10T20:00:00', 40);
    const [a, b] = [rows[10] as LoggedRow, rows[11] as LoggedRow];
    const mixed = [...rows.slice(0, 10), b, a, ...rows.slice(12), { ...(rows[5] as LoggedRow), line: 99 }];
    const { log, account } = logOf(mixed, true);
    expect(account.duplicates).toEqual([99]);
    expect(account.unsorted).toBe(2);
    expect(Array.from(log.times)).toEqual(rows.map((_, index) => index * 600));
    expect(log.every).toBe(600);
    log.values.house?.forEach((value, index) => expectNear(value, 5 - 0.1 * index, 1e-9));
  });

  it('turns a file round that has the newest line first', () => {
    const { log, account } = logOf(rowsFrom('2026-01-10T20:00:00', 20).reverse(), true);
    expect(account.newestFirst).toBe(true);
    expect(account.unsorted).toBe(0);
    expectNear(log.values.house?.[0] ?? NaN, 5, 1e-9);
  });

  it('tells gaps', () => {
    const rows = rowsFrom('2026-01-10T20:00:00', 40).filter((_, index) => index < 10 || index > 20);
    const { account } = logOf(rows, true);
    expect(account.gaps).toEqual([{ afterLine: 11, length: 12 * 600 }]);
  });

  // Clocks were put back in the night to 2026-10-25 in Europe, forward in that to 2026-03-29; in North America on
  // 2026-11-01 and 2026-03-08 (last Sundays, and first and second).
  it.each([
    ['2026-10-24T22:00:00', '2026-10-25T03:00:00'],
    ['2026-10-31T22:00:00', '2026-11-01T02:00:00'],
  ])('takes a clock that was put back for what it is: from %s, at %s', (begin, change) => {
    const rows = rowsFrom(begin, 60);
    const wall = rows.map((row) => (row.moment < utc(change) ? row : { ...row, moment: row.moment - 3600 }));
    for (const given of [wall, [...wall].reverse()]) {
      const { log, account } = logOf(given, true);
      expect(account.clockChanges.map(({ by }) => by)).toEqual([-3600]);
      expect(account.duplicates).toEqual([]);
      expect(account.unsorted).toBe(0);
      expect(Array.from(log.times)).toEqual(rows.map((_, index) => index * 600));
    }
  });

  it.each([
    ['2026-03-28T22:00:00', '2026-03-29T02:00:00'],
    ['2026-03-07T22:00:00', '2026-03-08T02:00:00'],
    ['2026-03-28T22:00:00', '2026-03-29T01:00:00'],
  ])('and one that was put forward: from %s, at %s', (begin, change) => {
    const rows = rowsFrom(begin, 60);
    const wall = rows.map((row) => (row.moment < utc(change) ? row : { ...row, moment: row.moment + 3600 }));
    const { log, account } = logOf(wall, true);
    expect(account.clockChanges.map(({ by }) => by)).toEqual([3600]);
    expect(account.gaps).toEqual([]);
    expect(Array.from(log.times)).toEqual(rows.map((_, index) => index * 600));
  });

  it('lets an hour that is missing on a weekday, or in universal time, be a gap', () => {
    const jump = (begin: string) =>
      rowsFrom(begin, 60).map((row, index) => (index < 24 ? row : { ...row, moment: row.moment + 3600 }));
    for (const [begin, wallClock] of [
      ['2026-01-12T22:00:00', true],
      ['2026-03-28T22:00:00', false],
    ] as const) {
      const { account } = logOf(jump(begin), wallClock);
      expect(account.clockChanges).toEqual([]);
      expect(account.gaps).toHaveLength(1);
    }
  });

  it('is resampled straight between neighbours, and not across more than an hour', () => {
    const rows = rowsFrom('2026-01-10T20:00:00', 40).filter((_, index) => index < 10 || index > 20);
    const { log } = logOf(rows, true);
    const [between, at, inGap] = resampled(log, 'house', [450, 1200, 10_000]);
    expectNear(between ?? NaN, 5 - 0.1 * 0.75, 1e-9);
    expectNear(at ?? NaN, 4.8, 1e-9);
    expect(inGap).toBeNaN();
  });

  it('of a meter that counts up gives the power between its readings', () => {
    const power = powerOfCounter([0, 600, 1200, 1800, 2400], [0, 360_000, NaN, 720_000, 100]);
    expect(power[0]).toBeNaN();
    expectNear(power[1] ?? NaN, 600, 1e-9);
    expect(power[2]).toBeNaN();
    expectNear(power[3] ?? NaN, 300, 1e-9);
    // The meter was set back.
    expect(power[4]).toBeNaN();
  });
});

describe('the steadiest hours of a night', () => {
  const begin = utc('2026-01-10T16:00:00');
  /** A log of a night: falling until four in the morning, still for two and a half hours, then rising. */
  const night = (house: (hour: number) => number, power: (index: number) => number, count = 97) =>
    logOf(
      Array.from({ length: count }, (_, index) => {
        const over = house(16 + index / 6);
        return {
          line: index + 2,
          moment: begin + index * 600,
          values: { house: over, under: over + 4, roots: over + 3, power: power(index) },
        };
      }),
      true,
    ).log;
  const still = (hour: number): number =>
    hour < 28 ? 2 + (28 - hour) : hour < 30.6 ? 2 : 2 + 3 * (hour - 30.6);

  it('are where nothing changes', () => {
    const window = steadiestWindow(night(still, (index) => (index % 3 === 0 ? 0 : 600)));
    if (!('readings' in window)) throw new Error('a window is there');
    const { from, to, readings, change } = window;
    expect(from).toBeGreaterThanOrEqual(utc('2026-01-11T04:00:00'));
    expect(to).toBeLessThanOrEqual(utc('2026-01-11T06:40:00'));
    expectNear(readings.house ?? NaN, 2, 1e-9);
    expectNear(readings.roots ?? NaN, 5, 1e-9);
    expectNear(readings.rootsEarlier ?? NaN, 5, 1e-9);
    expectNear(readings.power ?? NaN, 400, 1e-9);
    expect(readings.running).toBe('switching');
    expectNear(change.under ?? NaN, 0, 1e-9);
    expect(readings.outside).toBeNull();
  });

  it('give the fall of the roots over two hours', () => {
    const window = steadiestWindow(
      night(
        (hour) => 10 - 0.3 * (hour - 16),
        () => 500,
      ),
    );
    if (!('readings' in window)) throw new Error('a window is there');
    expectNear((window.readings.roots ?? NaN) - (window.readings.rootsEarlier ?? NaN), -0.6, 1e-9);
    // Means of ten minutes are even for a thermostat that goes on and off in three.
    expect(window.readings.running).toBe('not-watched');
  });

  it('know a cable that was on all the time, where every minute was read', () => {
    const minutes = Array.from({ length: 600 }, (_, index) => ({
      line: index + 2,
      moment: utc('2026-01-10T20:00:00') + index * 60,
      values: { house: 3, under: 7, power: 500 },
    }));
    expect(steadiestWindow(logOf(minutes, true).log)).toMatchObject({
      readings: { running: 'on', power: 500 },
    });
  });

  it('are not by day, not across a gap, and not without what is needed', () => {
    expect(steadiestWindow(night(still, () => 500, 30))).toEqual({ missing: [] });
    const holes = night(still, () => 500);
    holes.values.house?.fill(NaN, 30, 60);
    holes.values.house?.fill(NaN, 66);
    expect(steadiestWindow(holes)).toEqual({ missing: [] });
    const { under: _under, roots: _roots, ...rest } = holes.values;
    expect(steadiestWindow({ ...holes, values: rest })).toEqual({ missing: ['bench'] });
    expect(steadiestWindow({ ...holes, values: {} })).toEqual({
      missing: ['power', 'surroundings', 'bench'],
    });
  });

  it('whatever the night, lie in it and hold means of what was logged', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 97, maxLength: 97 }),
        (wiggle) => {
          const window = steadiestWindow(
            night(
              (hour) => 3 + (wiggle[Math.round((hour - 16) * 6)] ?? 0),
              () => 300,
            ),
          );
          if (!('readings' in window)) throw new Error('a window is there');
          expect(window.to - window.from).toBe(7200);
          const clock = window.from % 86_400;
          expect(clock >= 22 * 3600 || clock <= 5 * 3600).toBe(true);
          expect(window.readings.house).toBeGreaterThanOrEqual(1);
          expect(window.readings.house).toBeLessThanOrEqual(5);
        },
      ),
      { numRuns: 40 },
    );
  });
});
