import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { houseThrough, sunShare } from '../calculators/bench/place.ts';
import { hoursOfDay } from '../calculators/climate/daily-profile.ts';
import { climateOf } from '../calculators/climate/record.ts';
import { clockWords, hourWords } from '../calculators/weather/clock.ts';
import { sentenceText } from '../site/widgets/text.ts';
import { coldestMonth, snapAt, snapSeries } from '../calculators/weather/cold-snap.ts';
import { seriesOfDays, seriesOfExtremes } from '../calculators/weather/days.ts';
import {
  hourlySeries,
  lengthOf,
  longestBridge,
  seriesThrough,
  temperatureThrough,
} from '../calculators/weather/series.ts';
import { groundThrough, heatingDays, heatingMonths, ordinaryWinter } from '../calculators/weather/winter.ts';
import { expectNear } from './support/near.ts';
import { dailyRecord } from './support/records.ts';
import { inventedStation, situation } from './support/situations.ts';

const hour = 3600;
const temperature = fc.double({ min: -40, max: 40, noNaN: true });

describe('a series', () => {
  it('runs straight between its values and stays level beyond them', () => {
    const at = temperatureThrough({ clock: 0, every: hour, values: [4, 2, -6] });
    expect([-hour, 0, hour / 2, hour, 1.25 * hour, 2 * hour, 9 * hour].map(at)).toEqual([
      4, 4, 3, 2, 0, -6, -6,
    ]);
  });

  it('through knots passes through each of them', () => {
    const knots = [
      { time: 100, value: 5 },
      { time: 100 + 3 * hour, value: -1 },
      { time: 100 + 4 * hour, value: 3 },
    ];
    const series = seriesThrough(knots, 0, hour);
    expect(Array.from(series.values)).toEqual([5, 3, 1, -1, 3]);
    expect(lengthOf(series)).toBe(4 * hour);
  });

  it('of an hourly record bridges short gaps and tells long ones', () => {
    const record = [1, null, 3, ...Array.from({ length: longestBridge + 1 }, () => NaN), 11, null];
    const { series, bridged, gaps } = hourlySeries(record, 5 * hour);
    expect(Array.from(series.values)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 11]);
    expect(bridged).toBe(2);
    expect(gaps).toEqual([{ from: 3, hours: longestBridge + 1 }]);
    expect(() => hourlySeries([null, NaN], 0)).toThrow(RangeError);
  });
});

describe('a day of which the low and the high are known', () => {
  it('takes the course of the published fractions when the days are alike', () => {
    const series = seriesOfDays([
      { low: -4, high: 6 },
      { low: -4, high: 6 },
      { low: -4, high: 6 },
    ]);
    const day = hoursOfDay(-4, 6);
    Array.from(series.values).forEach((t, index) => {
      expectNear(t, day[(5 + index - 1) % 24] ?? NaN, 1e-12, `hour ${index}`);
    });
  });

  it('has no step at midnight, and each low and high at its own hour, whatever the days', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(temperature, temperature), { minLength: 2, maxLength: 9 }), (pairs) => {
        const days = pairs.map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) }));
        const { values, clock } = seriesOfDays(days);
        expect(clock).toBe(5 * hour);
        days.forEach(({ low, high }, day) => {
          expectNear(values[24 * day] ?? NaN, low, 1e-12);
          expectNear(values[24 * day + 10] ?? NaN, high, 1e-12);
        });
        const lowest = Math.min(...days.map(({ low }) => low));
        const highest = Math.max(...days.map(({ high }) => high));
        Array.from(values).forEach((t, index) => {
          expect(t).toBeGreaterThanOrEqual(lowest - 1e-9);
          expect(t).toBeLessThanOrEqual(highest + 1e-9);
          // The steepest hour of the published fractions takes 0.17 of the range.
          const before = values[index - 1] ?? t;
          expect(Math.abs(t - before)).toBeLessThanOrEqual(0.17 * (highest - lowest) + 1e-9);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('may begin with a high', () => {
    const { values, clock } = seriesOfExtremes('high', [8, -2, 5]);
    expect([clock / hour, values.length]).toEqual([15, 25]);
    expect([values[0], values[14], values[24]]).toEqual([8, -2, 5]);
  });
});

describe('a cold snap', () => {
  const series = snapSeries(snapAt(inventedStation, -12, 10));
  const at = temperatureThrough(series);

  it('of ten hours at the lowest takes three days, from nine in the morning', () => {
    expect([series.clock / hour, lengthOf(series) / hour]).toEqual([9, 72]);
  });

  it('is at its lowest from ten at night for as long as was asked, and warmer at all other times', () => {
    for (const hours of [2, 10, 34]) {
      const snap = snapSeries(snapAt(inventedStation, -12, hours));
      const lowest = Array.from(snap.values).filter((t) => t < -11.999).length;
      expect(lowest).toBe(hours / (snap.every / hour) + 1);
      expectNear(temperatureThrough(snap)(13 * hour), -12, 1e-12, 'at ten at night');
    }
  });

  it('begins and ends in ordinary weather of the coldest month, with half a recovery between', () => {
    const { meanLow, meanHigh } = coldestMonth(inventedStation);
    expectNear(at(6 * hour), meanHigh, 1e-12, 'the afternoon before');
    expectNear(at(30 * hour), (-12 + meanHigh) / 2, 1e-12, 'the day between');
    expectNear(at(40 * hour), (-12 + meanLow) / 2, 1e-12, 'the second night');
    expectNear(at(54 * hour), meanHigh, 1e-12, 'the afternoon after');
    expectNear(at(68 * hour), meanLow, 1e-12, 'an ordinary night');
  });

  it('has no drop where the night that is built for is milder than an ordinary one', () => {
    const mild = Array.from(snapSeries(snapAt(inventedStation, 12, 10)).values);
    expect([Math.min(...mild), Math.max(...mild)]).toEqual([12, 12]);
  });
});

describe('the sun on a house', () => {
  it('shines from eight to four, most at noon, and leaves the night alone', () => {
    expect([0, 8, 12, 16, 23].map((clock) => sunShare(clock * hour))).toEqual([0, 0, 1, 0, 0]);
    const one = situation({ place: { houseOffset: 2, dayOffset: 9 } });
    const outside = { clock: 0, every: 24 * hour, values: [-3, -3] };
    const withSun = houseThrough(one, outside, 2, 'with-sun');
    expect([3, 12, 20].map((time) => withSun(time * hour))).toEqual([-1, 6, -1]);
    expect(houseThrough(one, outside, 2, 'without-sun')(12 * hour)).toBe(-1);
  });

  it('does not take a heated house below its minimum', () => {
    const one = situation({ place: { houseKind: 'held', houseMinimum: 3 } });
    const outside = { clock: 0, every: hour, values: [-20, -20] };
    expect(houseThrough(one, outside, 2, 'with-sun')(0)).toBe(3);
  });
});

describe('an ordinary winter', () => {
  const days = ordinaryWinter(inventedStation);

  it('has the days of October to April, the means of the months, and the usual lowest as its lowest', () => {
    expect(days).toHaveLength(heatingDays);
    let first = 0;
    for (const { month, days: count } of heatingMonths) {
      const here = days.slice(first, (first += count));
      const mean = here.reduce((sum, { low }) => sum + low, 0) / count;
      // The lines between the middles of the months keep means to a hundredth of a kelvin; months differ in length.
      expectNear(mean, inventedStation.months[month - 1]?.meanLow ?? NaN, 0.05, `mean low of month ${month}`);
    }
    expectNear(Math.min(...days.map(({ low }) => low)), inventedStation.usualLowest, 1e-6);
  });

  it('is as cold, hour by hour, as the records that it is made from, and as restless', () => {
    for (const place of ['Seattle', 'New York'] as const) {
      const record = dailyRecord(place);
      const station = { ...inventedStation, ...climateOf(record) };
      const winter = record.filter(({ date }) => [10, 11, 12, 1, 2, 3, 4].includes(Number(date.slice(5, 7))));
      const degreeHours = (list: readonly { low: number; high: number }[], base: number): number =>
        list
          .flatMap(({ low, high }) => hoursOfDay(low, high))
          .reduce((sum, t) => sum + Math.max(0, base - t), 0);
      const made = ordinaryWinter(station);
      // Four winters on the record; heat below 5 °C is what the thermostat of a bench works against.
      const ratio = degreeHours(made, 5) / (degreeHours(winter, 5) / 4);
      expect(ratio, `${place}, degree-hours below 5 °C`).toBeGreaterThan(0.85);
      expect(ratio, `${place}, degree-hours below 5 °C`).toBeLessThan(1.15);
      const ordinary = (date: string) => station.months[Number(date.slice(5, 7)) - 1];
      const deviation = Math.sqrt(
        winter.reduce((sum, { date, low, high }) => {
          const { meanLow = NaN, meanHigh = NaN } = ordinary(date) ?? {};
          return sum + ((low + high - meanLow - meanHigh) / 2) ** 2;
        }, 0) / winter.length,
      );
      const calm = ordinaryWinter({ ...station, usualLowest: 30 });
      const swing = Math.sqrt(
        made.reduce((sum, { low, high }, day) => {
          const plain = calm[day];
          return sum + ((low + high - (plain?.low ?? NaN) - (plain?.high ?? NaN)) / 2) ** 2;
        }, 0) / made.length,
      );
      expectNear(swing / deviation, 1, 0.25, `${place}, spread of the days`);
    }
  });
});

describe('the ground under a winter', () => {
  it('is at its lowest weeks after the air, and warmer in autumn by twice the damped swing at most', () => {
    const at = groundThrough(inventedStation, 7);
    const days = Array.from({ length: heatingDays }, (_, day) => at(day * 24 * hour));
    const coldest = days.indexOf(Math.min(...days));
    expectNear(Math.min(...days), 7, 1e-3);
    // Middle of January is day 107; the wave of the year takes a month to go down three quarters of a metre, less in wet soil.
    expect(coldest).toBeGreaterThan(110);
    expect(coldest).toBeLessThan(140);
    expect(Math.max(...days)).toBeLessThan(7 + 2 * 8);
  });
});

describe('hours in words', () => {
  it('go round the clock', () => {
    expect([0, 5 * hour, 24 * hour - 1, 27.5 * hour].map(hourWords)).toEqual([
      '00:00',
      '05:00',
      '00:00',
      '03:30',
    ]);
    const said = [9 * hour, 33.5 * hour].map((time) =>
      sentenceText(clockWords(time), { system: 'metric', locale: 'en' }),
    );
    expect(said).toEqual(['day 1, 09:00', 'day 2, 09:30']);
  });
});
