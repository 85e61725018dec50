import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { topArea } from '../../calculators/bench/geometry.ts';
import {
  nightForPrograms,
  nightOf,
  nightRange,
  nightSteps,
  summaryOf,
} from '../../calculators/bench/night.ts';
import { surroundingsThrough } from '../../calculators/bench/place.ts';
import { expectedParameters, priorsOf, type PriorId } from '../../calculators/bench/priors.ts';
import { coldestRoots, firstAt, throughWeather, timeBelow } from '../../calculators/bench/through.ts';
import type { Situation } from '../../calculators/calculator.ts';
import { ratedPower } from '../../calculators/electric/cable.ts';
import { seriesOfExtremes } from '../../calculators/weather/days.ts';
import { anyBench, changed, type BenchChanges } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { inventedStation, metricRegion, situation } from '../support/situations.ts';

const hour = 3600;
const fahrenheit = (level: number): number => ((level - 32) * 5) / 9;

const at = (bench: Situation['bench']): Situation => ({
  bench,
  region: metricRegion,
  station: inventedStation,
});
const anySituation = anyBench.map(at);

const lowest = (one: Situation, manner: Parameters<typeof nightOf>[2] = {}): number =>
  summaryOf(one, nightOf(one, expectedParameters(one), manner)).lowestRoots;

describe('a cold night', () => {
  it('closes its account to 1e-6 whatever the bench, through a power cut and in steps of any length', () => {
    fc.assert(
      fc.property(
        anySituation,
        fc.constantFrom(300, 600, 1800, 3600),
        fc.integer({ min: 0, max: 60 }),
        (one, every, cut) => {
          const powered = (time: number): boolean => time < cut * hour || time > (cut + 6) * hour;
          const { body, course } = nightOf(one, expectedParameters(one), { every, powered });
          const scale = Math.abs(course.brought) + Math.abs(course.lost) + Math.abs(course.gained) + 1;
          // Where next to nothing flows, the rounding of the heat held (some 1e8 J, to sixteen digits) in each step is more.
          const rounding = 1e-16 * 1e8 * course.times.length * body.nodeCount;
          expectNear(
            course.brought - course.lost - course.gained,
            0,
            1e-6 * scale + rounding,
            'heat unaccounted for',
          );
        },
      ),
      { numRuns: 40 },
    );
  });

  it('never makes a bench without heat colder than the coldest around it, in short steps and long ones', () => {
    // A node that freezes within a step may not leap over its freezing and come out kelvins below everything around it.
    // In the steps that a night takes, of half an hour at most. A light node swings past a corner of the weather by about
    // a tenth of what the weather changes in a step (second order): a quarter of a kelvin and more in a step of an hour.
    fc.assert(
      fc.property(anySituation, fc.constantFrom(600, 1800), (one, every) => {
        const parameters = expectedParameters(one);
        const { course, body, weather } = nightOf(one, parameters, { every, heat: false });
        const { roof, ground } = surroundingsThrough(one, weather.outside, parameters, 'without-sun');
        const coldest = Math.min(
          ground(0),
          ...course.house,
          ...Array.from(course.times, roof),
          ...course.temperatures.map((of) => of[0] ?? NaN),
        );
        course.temperatures.forEach((of, node) =>
          expect(Math.min(...of), body.ids[node]).toBeGreaterThan(coldest - 0.2),
        );
      }),
      { numRuns: 40 },
    );
  });

  it('comes to the same in longer steps', () => {
    // More than half a kilowatt on a square metre is no bench; there a thermostat chatters.
    const benches = fc
      .sample(anySituation, { numRuns: 60, seed: 72 })
      .filter(({ bench }) => ratedPower(bench.cable) < 500 * topArea(bench));
    expect(benches.length).toBeGreaterThan(30);
    const errors = { usual: [] as number[][], coarse: [] as number[][] };
    for (const one of benches) {
      const of = (every: number, control: 'switched' | 'averaged') =>
        summaryOf(one, nightOf(one, expectedParameters(one), { every, control }));
      const fine = of(nightSteps.fine, 'switched');
      for (const step of ['usual', 'coarse'] as const) {
        const found = of(nightSteps[step], 'averaged');
        // A tenth of a kilowatt-hour is nothing on any bill.
        const energy = Math.max(0, Math.abs(found.energy - fine.energy) - 0.36e6) / Math.max(fine.energy, 1);
        errors[step].push([Math.abs(found.lowestRoots - fine.lowestRoots), energy]);
      }
    }
    const worst = (of: number[][], which: number, share: number): number =>
      of.map((one) => one[which] ?? NaN).toSorted((a, b) => a - b)[Math.ceil(share * of.length) - 1] ?? NaN;
    expect(worst(errors.usual, 0, 1), 'roots, ten minutes [K]').toBeLessThan(0.03);
    expect(worst(errors.coarse, 0, 1), 'roots, half hours [K]').toBeLessThan(0.2);
    // In one bench of twenty a sensor just comes, or just does not come, to where it switches: one heating more or less.
    expect(worst(errors.usual, 1, 0.95), 'energy, ten minutes').toBeLessThan(0.005);
    expect(worst(errors.coarse, 1, 0.95), 'energy, half hours').toBeLessThan(0.01);
  });

  it('has ranges by its few largest inputs that are near those of all of them', () => {
    const shapes: Parameters<typeof situation>[0][] = [
      {},
      { cover: { kind: 'film' }, control: { sensor: 'pot', setPoint: 2 } },
      { skirt: { bottomGap: 0, topGap: 0 }, control: { sensor: 'air', setPoint: 0 } },
    ];
    for (const shape of shapes) {
      const one = situation(shape);
      const [few, all] = [nightRange(one), nightRange(one, Object.keys(priorsOf(one)) as PriorId[])];
      for (const name of ['lowestRoots', 'energy'] as const) {
        const width = all[name].high - all[name].low;
        expectNear(few[name].low, all[name].low, 0.1 * width, `${name}, low`);
        expectNear(few[name].high, all[name].high, 0.1 * width, `${name}, high`);
      }
    }
  });

  it('is handed to other programs with times, power and every node, in one length', () => {
    const { time, outside, power, nodes } = nightForPrograms(situation({ cover: { kind: 'film' } }));
    expect(Object.keys(nodes)).toEqual([
      'loop',
      'under',
      'roots-1',
      'roots-2',
      'roots-3',
      'canopy',
      'floor-1',
      'floor-2',
      'floor-3',
      'floor-4',
      'house',
    ]);
    expect([time[0], time[1], time.at(-1)]).toEqual([0, 600, 72 * hour]);
    for (const of of [outside, power, ...Object.values(nodes)]) expect(of).toHaveLength(time.length);
    expectNear(Math.min(...outside), inventedStation.usualLowest, 1e-9);
  });
});

describe('what makes a night milder for the roots', () => {
  it('is a milder night, without heat, whatever the bench', () => {
    fc.assert(
      fc.property(
        anyBench,
        fc.double({ min: -20, max: 5, noNaN: true }),
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        (bench, level, by) => {
          const on = (ownLowest: number): number =>
            lowest(at(changed(bench, { place: { designNight: 'own', ownLowest } })), {
              heat: false,
              every: 1800,
            });
          expect(on(level + by)).toBeGreaterThan(on(level) - 0.02);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('is a cover, a warmer house, a shorter night, wetter pots', () => {
    const hard: BenchChanges = { place: { coldHours: 34 * hour } };
    const bare = lowest(situation(hard));
    expect(lowest(situation({ ...hard, cover: { kind: 'film' } }))).toBeGreaterThan(bare);
    expect(lowest(situation({ place: { coldHours: 34 * hour, houseOffset: 4 } }))).toBeGreaterThan(bare);
    expect(lowest(situation({ place: { coldHours: 10 * hour } }))).toBeGreaterThan(bare);
    expect(lowest(situation({ ...hard, pots: { moisture: 1 } }))).toBeGreaterThan(bare);
  });

  it('is heat, more with the sensor at the roots than on the loop, in a spell that lasts', () => {
    const long = {
      place: { designNight: 'own', ownLowest: -15, coldHours: 34 * hour },
      cover: { kind: 'film' },
    } as const;
    const with_ = (control: BenchChanges['control']) => {
      const one = situation({ ...long, control: control ?? {} });
      return summaryOf(one, nightOf(one));
    };
    const onLoop = with_({ sensor: 'loop', setPoint: 4.5 });
    const inAir = with_({ sensor: 'air', setPoint: 2 });
    const inPot = with_({ sensor: 'pot', setPoint: 2 });
    const none = lowest(situation(long), { heat: false });
    expect(onLoop.lowestRoots).toBeGreaterThanOrEqual(none);
    expect(inPot.lowestRoots).toBeGreaterThanOrEqual(onLoop.lowestRoots);
    expect(onLoop.energy).toBeLessThan(inAir.energy);
    expect(inAir.energy).toBeLessThan(inPot.energy);
  });

  it('is wet pots: a night of ten hours is held by water that freezes, with or without heat', () => {
    for (const heat of [true, false])
      expect(lowest(situation({ cover: { kind: 'film' } }), { heat })).toBeGreaterThan(-0.5);
    expect(
      lowest(situation({ cover: { kind: 'film' }, pots: { moisture: 0.05 } }), { heat: false }),
    ).toBeLessThan(-0.5);
  });
});

describe('plausible against what was measured in the field', () => {
  it('an unprotected root ball at −16.1 °C under air of −31.1 °C (McNeil and Duncan 1983, as quoted)', () => {
    // Assumed, as the text quoted says only the two temperatures: containers of 7.6 L set tight on the ground, bark
    // between six and nine tenths wet, thawed the day before, one clear night to −31.1 °C by the ordinary daily course
    // after an afternoon at 0 to −10 °C, no wind, no snow. Set apart, or frozen through before, they come to −18 to −30.
    const coldest = (high: number, moisture: number): number => {
      const one = situation({
        place: { houseOffset: 0, groundTemperature: 1 },
        skirt: { material: 'none' },
        frame: { height: 0.2, floor: 'soil', top: 'film', potShare: 0.8 },
        cover: { kind: 'none' },
        pots: { count: 150, diameter: 0.22, height: 0.2, medium: 'bark', moisture, spacing: 'tight' },
      });
      const outside = seriesOfExtremes('high', [high, -31.1, high - 10]);
      const weather = { outside, sun: 'without-sun', before: 2 } as const;
      const through = throughWeather(one, expectedParameters(one), weather, { heat: false, every: 600 });
      return Math.min(...coldestRoots(through));
    };
    const found = [0, -10].flatMap((high) => [0.6, 0.9].map((moisture) => coldest(high, moisture)));
    expect(Math.min(...found)).toBeLessThan(-16.1);
    expect(Math.max(...found)).toBeGreaterThan(-16.1);
    for (const t of found) expectNear(t, -16.1, 6);
  });

  it('a film cover holding root balls 10 to 12 °F above the air (Tinus 2002)', () => {
    // Assumed: plain film over and around pots on low slats, wet inside, nothing else; a night of ten hours at 20 °F, which
    // is cold enough to freeze a part of the water in the pots, as the paper's nights were.
    const night = fahrenheit(20);
    const one = situation({
      place: { designNight: 'own', ownLowest: night, houseOffset: 0 },
      skirt: { material: 'film-plain', wet: 'wet' },
      frame: { height: 0.2, floor: 'soil' },
      cover: { kind: 'film' },
    });
    const above = ((lowest(one, { heat: false }) - night) * 9) / 5;
    expect(above).toBeGreaterThan(10 - 1);
    expect(above).toBeLessThan(12 + 1);
  });
});

describe('reading a line through time', () => {
  it('finds when it first comes to a level, and how long it stays below', () => {
    const times = [0, 10, 20, 30];
    expect(firstAt(times, [5, 1, -3, 1], 0, 'falling')).toBe(12.5);
    expect(firstAt(times, [5, 1, -3, 1], 6, 'falling')).toBe(0);
    expect(firstAt(times, [5, 1, -3, 1], -9, 'falling')).toBeNull();
    expect(firstAt(times, [-5, -1, 3, 1], 1, 'rising')).toBe(15);
    expect(timeBelow(times, [5, 1, -3, 1], 0)).toBe(7.5 + 7.5);
    expect(timeBelow(times, [-1, -1, -1, -1], 0)).toBe(30);
    expect(timeBelow(times, [1, 0, 0, 1], 0)).toBe(0);
  });
});
