import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rangedAll } from '../../calculators/bench/range.ts';
import {
  binEnergy,
  ordinarySeason,
  priceAt,
  seasonRange,
  throughSeason,
  type SeasonWeather,
} from '../../calculators/bench/season.ts';
import { expectedParameters } from '../../calculators/bench/priors.ts';
import { simulate } from '../../calculators/bench/simulate.ts';
import { settle } from '../../calculators/bench/settle.ts';
import type { Body } from '../../calculators/bench/assemble.ts';
import { sensible } from '../../calculators/bench/enthalpy.ts';
import type { Situation } from '../../calculators/calculator.ts';
import { climateOf } from '../../calculators/climate/record.ts';
import { seriesOfDays } from '../../calculators/weather/days.ts';
import { hourlySeries, temperatureThrough } from '../../calculators/weather/series.ts';
import { anyBench, type BenchChanges } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { dailyRecord, hourlyNormals, hoursOfBeijing } from '../support/records.ts';
import { inventedStation, metricRegion, situation } from '../support/situations.ts';

const hour = 3600;
const kilowattHour = 3.6e6;

/** October to April of a list of hours that begins with a year's first. */
const constant = (outside: SeasonWeather['outside']): SeasonWeather => ({ outside, ground: () => 7 });

describe('a season', () => {
  it('adds up: months to the whole, energy times price to cost', () => {
    const one = situation();
    const season = throughSeason(one);
    const sum = (of: (month: (typeof season.months)[number]) => number): number =>
      season.months.reduce((total, month) => total + of(month), 0);
    expect(season.months.map(({ name }) => name)).toEqual([
      'October',
      'November',
      'December',
      'January',
      'February',
      'March',
      'April',
    ]);
    expectNear(
      sum(({ energy }) => energy),
      season.energy,
      1,
    );
    expectNear(season.cost, season.energy * metricRegion.tariff.price, 1e-6);
    expectNear(season.months[3]?.outside ?? NaN, 4, 1, 'mean of January: 0 to 8 °C');
  });

  it('switched at each crossing and averaged within the hour uses the same energy within 1 %', () => {
    const benches: BenchChanges[] = [
      {},
      { control: { sensor: 'loop', setPoint: 4.5, differential: 0.1 } },
      { control: { sensor: 'air', setPoint: 2 }, cover: { kind: 'film' } },
      { control: { sensor: 'pot', setPoint: 2 }, cover: { kind: 'film' } },
    ];
    for (const changes of benches) {
      const one = situation(changes);
      const parameters = expectedParameters(one);
      // The six coldest weeks: the other months are alike, and longer.
      const whole = ordinarySeason(one, parameters);
      const weather: SeasonWeather = {
        outside: { ...whole.outside, values: Array.from(whole.outside.values).slice(85 * 24, 127 * 24) },
        ground: (time) => whole.ground(time + 85 * 24 * hour),
      };
      const energy = (every: number, control: 'switched' | 'averaged'): number =>
        throughSeason(one, parameters, weather, { every, control }).energy;
      const switched = energy(600, 'switched');
      const averaged = energy(hour, 'averaged');
      // A fifth of a kilowatt-hour is what a loop holds between two switchings.
      expectNear(averaged, switched, 0.01 * switched + 0.2 * kilowattHour, JSON.stringify(changes));
    }
  });

  it('costs less at a cheap hour, by the hours that the cheap price holds', () => {
    const flat = situation({ money: { tariff: 0.3 / kilowattHour } });
    const night = situation({
      money: {
        tariff: 0.3 / kilowattHour,
        nightTariff: 0.1 / kilowattHour,
        nightFrom: 22 * hour,
        nightUntil: 6 * hour,
      },
    });
    const price = priceAt(night);
    expect(
      [21, 22, 23, 0, 5, 6, 12].map((clock) => Math.round(price(clock * hour) * kilowattHour * 10) / 10),
    ).toEqual([0.3, 0.1, 0.1, 0.1, 0.1, 0.3, 0.3]);
    expect(throughSeason(night).cost).toBeLessThan(throughSeason(flat).cost);
    expect(throughSeason(night).energy).toBe(throughSeason(flat).energy);
  });

  it('takes more energy at a higher set point, and less in a warmer house, whatever the bench', () => {
    const weather = (one: Situation): SeasonWeather => {
      const { outside, ground } = ordinarySeason(one, expectedParameters(one));
      return { outside: { ...outside, values: Array.from(outside.values).slice(95 * 24, 103 * 24) }, ground };
    };
    fc.assert(
      fc.property(anyBench, fc.double({ min: 0, max: 6, noNaN: true }), (bench, setPoint) => {
        const energy = (more: number, offset: number): number => {
          const one = {
            bench: {
              ...bench,
              control: {
                ...bench.control,
                sensor: 'air' as const,
                setPoint: setPoint + more,
                differential: 0.5,
              },
              place: { ...bench.place, houseKind: 'unheated' as const, houseOffset: offset },
            },
            region: metricRegion,
            station: inventedStation,
          };
          return throughSeason(one, expectedParameters(one), weather(one)).energy;
        };
        const base = energy(0, 2);
        const slack = 0.02 * base + 0.2 * kilowattHour;
        expect(energy(2, 2)).toBeGreaterThan(base - slack);
        expect(energy(0, 6)).toBeLessThan(base + slack);
      }),
      { numRuns: 12 },
    );
  });
});

describe('a season on real weather', () => {
  it('of the hourly normals of Seattle has the degree-hours that were published for them', () => {
    // 8759 hours; below 5 °C 1065 h and 761.5 °C·h, below 7 °C 2562 h and 4519.8, below 10 °C 4207 h and 14 922.1.
    const normals = hourlyNormals();
    expect(normals).toHaveLength(8759);
    for (const [base, count, degreeHours] of [
      [5, 1065, 761.5],
      [7, 2562, 4519.8],
      [10, 4207, 14_922.1],
    ] as const) {
      const below = normals.filter((t) => t < base);
      expect(below).toHaveLength(count);
      expectNear(
        below.reduce((sum, t) => sum + base - t, 0),
        degreeHours,
        0.05,
        `degree-hours below ${base} °C`,
      );
    }
  });

  it('of a bench with one constant loss takes its conductance times those degree-hours', () => {
    // One node of little mass behind 25 W/K, held at 7 °C without a differential to speak of: Q = UA × DH = 25 × 4519.8 W·h.
    const conductance = 25;
    const body: Body = {
      ids: ['node', 'house', 'ground', 'roof'],
      nodeCount: 1,
      curves: [sensible(20_000)],
      roots: [0],
      loop: 0,
      under: 0,
      plants: 1,
      house: 1,
      ground: 2,
      roof: 3,
      faceCount: 0,
      at: () => ({
        links: [{ from: 0, to: 1, conductance, path: 'skirt' }],
        draws: [],
        heat: [{ node: 0, share: 1 }],
        fullPower: 400,
      }),
    };
    const { series } = hourlySeries(hourlyNormals(), hour);
    const house = temperatureThrough(series);
    const course = simulate({
      body,
      start: settle(
        body,
        { house: series.values[0] ?? 0, ground: 0, roof: 0 },
        { hold: [0], at: 7, by: 'cable' },
      ).temperatures,
      surroundings: { house, ground: () => 0, roof: () => 0 },
      thermostat: { sensor: 0, setPoint: 7, differential: 0.1 },
      powered: () => true,
      until: 8758 * hour,
      every: hour,
      control: 'averaged',
    });
    // The sums of the table take each hour for its whole length, we run straight between the hours: where a straight line
    // crosses 7 °C within an hour the two differ, as does the heat that the node takes up.
    expectNear(course.brought / hour, conductance * 4519.8, 0.02 * conductance * 4519.8, 'energy [W·h]');
  });

  it('of four years of daily lows and highs takes about the energy of the ordinary winter made from them', () => {
    for (const place of ['Seattle', 'New York'] as const) {
      const record = dailyRecord(place);
      const station = { ...inventedStation, ...climateOf(record) };
      const one: Situation = {
        ...situation({ control: { sensor: 'air', setPoint: 2 }, cover: { kind: 'film' } }),
        station,
      };
      const parameters = expectedParameters(one);
      const made = throughSeason(one).energy;
      const winters = [2012, 2013, 2014].map((year) => {
        const days = record.filter(({ date }) => date >= `${year}-10-01` && date <= `${year + 1}-04-30`);
        const outside = seriesOfDays(days);
        return throughSeason(one, parameters, { outside, ground: ordinarySeason(one, parameters).ground })
          .energy;
      });
      // Winters differ among themselves; the one that was made lies among them, give or take a quarter.
      expect(made).toBeGreaterThan(0.75 * Math.min(...winters));
      expect(made).toBeLessThan(1.25 * Math.max(...winters));
    }
  });

  it('of the hours of four real winters takes more the colder they were, switched or averaged', () => {
    const one = situation({ control: { sensor: 'air', setPoint: 2 }, cover: { kind: 'film' } });
    const parameters = expectedParameters(one);
    const { ground } = ordinarySeason(one, parameters);
    const read = hoursOfBeijing()
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(',').map(Number));
    const winters = [2010, 2011, 2012, 2013].map((year) => {
      const hours = read
        .filter(([y, month = 0]) => (y === year && month >= 10) || (y === year + 1 && month <= 4))
        .map(([, , , , level]) => level ?? NaN);
      expect(hours).toHaveLength((year === 2011 ? 213 : 212) * 24);
      const { series, gaps } = hourlySeries(hours, 0);
      expect(gaps).toEqual([]);
      const weather = { outside: series, ground };
      const averaged = throughSeason(one, parameters, weather);
      expect(averaged.lowestRoots).toBeLessThan(0);
      // Degree-hours below the set point, the oldest measure of a winter.
      const degreeHours = hours.reduce((sum, level) => sum + Math.max(0, 2 - level), 0);
      return { weather, energy: averaged.energy, degreeHours };
    });
    const byEnergy = winters.toSorted((a, b) => a.energy - b.energy);
    expect(byEnergy).toEqual(winters.toSorted((a, b) => a.degreeHours - b.degreeHours));
    // A whole season, and not one that was made from months.
    const [first] = winters;
    const switched = throughSeason(one, parameters, first!.weather, { every: 600, control: 'switched' });
    expectNear(first!.energy, switched.energy, 0.01 * switched.energy, 'energy [J]');
  });

  it('runs through a record with nothing but its hours', () => {
    const one = situation();
    const hours = hourlyNormals();
    const { series, gaps } = hourlySeries([...hours.slice(-92 * 24), ...hours.slice(0, 120 * 24)], 0);
    expect(gaps).toEqual([]);
    const season = throughSeason(one, expectedParameters(one), constant(series));
    // Normals never freeze: the heat has little to do and the roots nothing to fear.
    expect(season.lowestRoots).toBeGreaterThan(0);
    expect(season.energy).toBeGreaterThanOrEqual(0);
  });
});

describe('the range of a season', () => {
  it('by its few largest inputs is near that of all of them', () => {
    const one = situation({ control: { sensor: 'air', setPoint: 2 } });
    const season = throughSeason(one);
    const { low, high } = seasonRange(one, season.energy);
    const quick = { every: 3 * hour, control: 'averaged' } as const;
    const { energy } = rangedAll(one, (parameters) => ({
      energy: throughSeason(one, parameters, ordinarySeason(one, parameters), quick).energy,
    }));
    expectNear(low / season.energy, energy.low / energy.value, 0.1);
    expectNear(high / season.energy, energy.high / energy.value, 0.1);
  });

  it('by bins ranks the inputs, though bins leave out what pots hold back', () => {
    const one = situation({ control: { sensor: 'air', setPoint: 2 } });
    const parameters = expectedParameters(one);
    const ratio = binEnergy(one, parameters) / throughSeason(one).energy;
    expect(ratio).toBeGreaterThan(1);
    expect(ratio).toBeLessThan(2);
  });
});
